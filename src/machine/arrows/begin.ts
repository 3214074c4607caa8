// How the chapter begins: whether the arrows can be told apart at all, how many there are, and what it will take.

import type { Deciding } from '../deciding.ts';
import { chosen, holds } from '../guards.ts';
import { FIRST_DISTANCE } from '../loop/sets.ts';
import type { State } from '../state.ts';
import { FEWEST_ROUNDS, roundsLeft, roundsOf } from './plan.ts';
import { arrowsCounted, roundShots } from './shots.ts';

/** Why the arrows are passed over; null where they are not. */
export function skipReason(state: State): 'done' | 'no-paper' | 'scatter' | 'later' | null {
  const { axis, arrows } = state.notes;
  if (arrows.done) return 'done';
  if (holds(state, ['no-paper'])) return 'no-paper';
  if (axis.height?.result === 'inconsistent' || axis.side?.result === 'inconsistent') return 'scatter';
  return chosen(state, 'arrows-wanted') === 'all' ? null : 'later';
}

/** Opens the rounds, or first asks how many arrows there are. */
export function beginRounds(d: Deciding<'arrows.preparing'>): true {
  const inSet = arrowsCounted(d.state);
  if (inSet === null) { d.add({ due: ['arrows-in-set'] }); return true; }
  const { notes } = d.state;
  if (notes.distance !== FIRST_DISTANCE) d.trigger('distance-changed');
  d.event({ type: 'settled' }, {
    advice: null,
    loop: { of: 'arrows', newSet: true, distance: FIRST_DISTANCE, purpose: 'judge', arrows: { ...notes.arrows, inSet }, inspection: null, offered: null },
  });
  d.say('arrows-begin', { arrows: inSet, rounds: FEWEST_ROUNDS, shots: roundsLeft(roundsOf(d.state), roundShots(d.state)).length });
  return true;
}
