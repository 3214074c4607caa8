// The bow was tuned with three of these arrows. Where one of them was odd, or their nocks were turned with the whole set, "tuned" rests on
// arrows that are other ones now: three shots at paper tell whether it stands.

import { judgeAsAnother } from '../after-happening.ts';
import type { Deciding } from '../deciding.ts';
import { chosen } from '../guards.ts';
import { FIRST_DISTANCE } from '../loop/sets.ts';
import type { State } from '../state.ts';
import { judgeRounds } from './judge.ts';
import { turnNow } from './plan.ts';
import { TUNING } from './shots.ts';

/** Asks whether to shoot at paper once more, where a tuning arrow was odd; true while that is to be asked. */
export function asksForPaper(d: Deciding): boolean {
  if (!tunedByShots(d.state) || !oneWasOdd(d.state) || turnedOrOut(d) || d.state.answers['paper-again'] !== undefined) return false;
  d.add({ due: ['paper-again'] });
  return true;
}

/** Back to paper once the arrows are done with, where that is wanted or needed; true then. */
export function backToPaper(d: Deciding): boolean {
  if (!tunedByShots(d.state)) return false;
  const needed = turnedOrOut(d);
  if (!needed && (!oneWasOdd(d.state) || chosen(d.state, 'paper-again') !== 'now')) return false;
  if (needed) d.say('set-turned-paper');
  d.add({ loop: { distance: FIRST_DISTANCE } });
  judgeAsAnother(d, { axis: notTuned(d.state) });
  return d.state.notes.backTo !== null;
}

/** What is no word of these arrows: an axis that was left as it is, or that cannot be brought in, is not gone through again. */
const notTuned = ({ notes: { axis } }: State): State['notes']['axis'] => Object.fromEntries(Object.entries(axis).filter(([, end]) => end.result !== 'tuned'));
const tunedByShots = ({ notes: { axis } }: State): boolean => Object.values(axis).some((end) => end.result === 'tuned');

/** A tuning arrow that the rounds found odd, whatever became of it. */
const oneWasOdd = ({ notes: { arrows: { cases, classes } } }: State): boolean =>
  TUNING.some((arrow) => {
    const one = cases[arrow];
    return one !== undefined && (one.swapped !== null || one.tried.length > 1 || classes[arrow]?.class !== 'first choice');
  });

// What is common to all arrows is the bow's: the whole set was turned, and with it an arrow that the bow was tuned with; or the tear that is
// left in all of them is outside what counts as tuned.
function turnedOrOut({ content: { tolerance }, state }: Deciding): boolean {
  const { together } = state.notes.arrows;
  if (together?.how !== 'kept') return false;
  if (TUNING.some((arrow) => (together.from[arrow] ?? turnNow(state, arrow)) !== turnNow(state, arrow))) return true;
  const typical = judgeRounds(state)?.typical;
  if (typical === undefined) return false;
  return (['height', 'side'] as const).some((axis) => {
    const { low, high } = tolerance[axis];
    const tear = axis === 'height' ? typical.y : typical.x;
    return tear < low || tear > high;
  });
}
