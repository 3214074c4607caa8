// What every gauge says of itself: how its shots are read, how many belong together, and what is good enough.

import type { Feet } from '../../maths/units.ts';
import type { Spread } from '../../archery/spread.ts';
import type { Axis } from '../../content/types.ts';
import type { SetKind } from '../notes.ts';
import type { Shot, ShotSet } from '../state.ts';
import type { Centre } from './centre.ts';

/** In tolerance or out of it, as far as is asked for here; or shots decide it sooner than a move would; or it is open, and shots no longer help. */
export interface Judged {
  readonly says: 'in' | 'out' | 'more' | 'open';
  /** Chance of being in tolerance. */
  readonly within: number;
}

export interface Tolerance { readonly low: number; readonly high: number; readonly aim: number }

export interface Impacts {
  /** What an estimate of an axis (in, with its standard error) comes to after so many shots at this setting. */
  readonly judge: (axis: Axis, mean: number, se: number, spread: Spread, shots: number) => Judged;
  readonly tolerance: (axis: Axis, spread: Spread) => Tolerance;
}

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
  /** While a change may have made it worse, and that is not sure, so many shots are taken at the most before it is put back or kept. */
  readonly doubtful: number;
  /** How impacts are judged; null on paper, where all bows that fit the tears are weighed, and content says what is tuned. */
  readonly impacts: Impacts | null;
  /** The same from the shots themselves, where they have a rule of their own. */
  readonly judgeShots?: (shots: readonly Shot[], spread: Spread) => Judged;
  /** How many shots are wanted after so many. */
  readonly next: (taken: number) => number;
  /** How many shots count towards `wanted`: whole rounds of what belongs together. */
  readonly count: (shots: readonly Shot[]) => number;
  /** False where something still lacks its partner: nothing is judged before it has one. */
  readonly whole: (shots: readonly Shot[]) => boolean;
  /** What shots at one setting show; null while they show nothing yet. `sd` is the spread of one shot (in). */
  readonly read: (shots: readonly Shot[], sd: number) => Centre | null;
  /** The good shots of a set, brought to the present distance; none where they cannot be compared with shots here. */
  readonly comparable: (set: ShotSet) => readonly Shot[];
  /** From where it is shot, feet. */
  readonly distance: Feet;
  /** What is known of the spread before a shot counts, as `spread` takes it. */
  readonly prior: Spread;
  /** Spread of one shot, inches at the present distance, pooled over sets: made of nothing else but `of`, `distance` and `prior`. */
  readonly spread: (sets: readonly ShotSet[]) => Spread;
  /**
   * What one inch of tear in paper is worth here, inches; how unsure that ratio is (one standard deviation, as a share);
   * and the most doubt that the trade has about the side to which the book's adjustments work here.
   */
  readonly perTear: { readonly ratio: number; readonly unsure: number; readonly wrongSide: number };
}
