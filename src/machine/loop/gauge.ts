// What a measuring chapter measures, and how a set of its shots is read: a tear in paper, the difference between two
// groups, or the drift from a plumb line. The loop (judge, advise, put back, prove) is the same for all of them.

import type { Spread } from '../../archery/spread.ts';
import type { Axis } from '../../content/types.ts';
import type { Shot, ShotSet, State } from '../state.ts';
import type { SetKind } from '../notes.ts';
import type { Centre } from './centre.ts';
import { currentSet, goodShots, subjectOf } from './sets.ts';
import { groupsGauge } from './gauge-groups.ts';
import { paperGauge } from './gauge-paper.ts';
import { plumbGauge } from './gauge-plumb.ts';

export interface Tolerance { readonly low: number; readonly high: number; readonly aim: number }

export interface Gauge {
  readonly of: Exclude<SetKind, 'arrows'>;
  /** Axes that it can show. */
  readonly axes: readonly Axis[];
  /** Shots of a first set, of a set at another new setting, and the most at one setting. */
  readonly first: number;
  readonly again: number;
  readonly most: number;
  /** Fewest shots here from which "in tolerance" may be said. */
  readonly enough: number;
  /** In tolerance from this chance on; out from this chance down; with fewer shots than `cheap` one more is shot in between. */
  readonly sure: number;
  readonly near: number;
  readonly far: number;
  readonly cheap: number;
  /** How many shots are wanted after so many. */
  readonly next: (taken: number) => number;
  /** How many shots count towards `wanted`: whole rounds of what belongs together. */
  readonly count: (shots: readonly Shot[]) => number;
  /** What shots at one setting show; null while they show nothing yet. `sd` is the spread of one shot (in). */
  readonly read: (shots: readonly Shot[], sd: number) => Centre | null;
  /** The good shots of a set, brought to the present distance; none where they cannot be compared with shots here. */
  readonly comparable: (set: ShotSet) => readonly Shot[];
  /** Spread of one shot, inches at the present distance, pooled over sets. */
  readonly spread: (sets: readonly ShotSet[]) => Spread;
  readonly tolerance: (axis: Axis, spread: Spread) => Tolerance;
  /**
   * What one inch of tear in paper is worth here, inches; how unsure that ratio is (one standard deviation, as a share);
   * and the most doubt that the trade has about the side to which the book's adjustments work here.
   */
  readonly perTear: { readonly ratio: number; readonly unsure: number; readonly wrongSide: number };
}

export function gaugeOf(state: State): Gauge {
  const of = subjectOf(state);
  if (of === 'paper') return paperGauge(state);
  return of === 'plumb' ? plumbGauge(state) : groupsGauge(state, of);
}

/** Good shots of the present set, as far as they count towards the wanted ones. */
export function taken(state: State): number {
  const set = currentSet(state);
  return set === null ? 0 : gaugeOf(state).count(goodShots(set));
}
