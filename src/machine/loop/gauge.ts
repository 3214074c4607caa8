// What a measuring chapter measures, and how a set of its shots is read: a tear in paper, the difference between two
// groups, or the drift from a plumb line. The loop (judge, advise, put back, prove) is the same for all of them.

import type { Feet } from '../../maths/units.ts';
import type { State } from '../state.ts';
import type { Gauge } from './gauge-shape.ts';
import { currentSet, goodShots, subjectOf } from './sets.ts';
import { groupsGauge } from './gauge-groups.ts';
import { paperGauge } from './gauge-paper.ts';
import { plumbGauge } from './gauge-plumb.ts';

export type { Gauge, Impacts, Judged, Tolerance } from './gauge-shape.ts';

/** Of what is measured now, from where it is shot now. */
export const gaugeOf = (state: State): Gauge => gaugeAt(state, subjectOf(state), state.notes.distance);

/** Of anything that was measured, from `distance` feet. */
export function gaugeAt(state: State, of: Gauge['of'], distance: Feet): Gauge {
  if (of === 'paper') return paperGauge(state, distance);
  return of === 'plumb' ? plumbGauge(state, distance) : groupsGauge(state, of, distance);
}

/** More shots belong to the present set before it is judged. */
export function wantsShots(state: State): boolean {
  const set = currentSet(state);
  return taken(state) < state.notes.wanted || (set !== null && !gaugeOf(state).whole(goodShots(set)));
}

/** Good shots of the present set, as far as they count towards the wanted ones. */
export function taken(state: State): number {
  const set = currentSet(state);
  return set === null ? 0 : gaugeOf(state).count(goodShots(set));
}
