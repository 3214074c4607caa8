// What follows from an answer in this chapter: a nock that was replaced or turned, and what was seen on an arrow.

import { countArrowsAgain } from '../arrow-fails.ts';
import type { Deciding } from '../deciding.ts';
import { TUNING_ARROWS } from '../limits.ts';
import type { State } from '../state.ts';
import { isNotMoved, type MovedAnswer } from '../types.ts';
import { phrase } from '../words.ts';
import { isLook, LOOKS } from './answers.ts';
import { classify } from './end.ts';
import { asTurn, waysOf } from './ways.ts';

/** Takes a change of one arrow; false where the advice that stood was about the bow. */
export function afterArrowMove(d: Deciding, moved: MovedAnswer): boolean {
  const { advice } = d.before;
  const { arrows } = d.state.notes;
  const arrow = advice?.arrow;
  const one = arrow === undefined ? undefined : arrows.cases[arrow];
  const knob = advice?.knob;
  if (arrow === undefined || one === undefined || (knob !== 'nock-swap' && knob !== 'nock-turn')) return false;
  const keep = (changed: Partial<typeof one>): void => d.add({ advice: null, loop: { arrows: { ...arrows, cases: { ...arrows.cases, [arrow]: { ...one, ...changed } } } } });
  if (isNotMoved(moved)) {
    keep({ declined: [...one.declined, knob] });
    d.say('arrow-change-declined', { arrow });
    return true;
  }
  const by = moved === 'as told' ? (advice?.amount?.value ?? 0) : Math.round(moved.value);
  if (knob === 'nock-swap') {
    // A new nock has its own seat: turns that were tried with the old one say nothing of it.
    keep({ swapped: d.draft.seq, tried: [one.turn] });
  } else {
    const ways = waysOf(d.state);
    // Turned otherwise than told, it stands where it was turned to.
    const turn = 'ask' in ways ? one.turn : asTurn({ ...ways, step: 1 }, one.turn + by);
    keep({ turn, tried: one.tried.includes(turn) ? one.tried : [...one.tried, turn] });
  }
  if (moved !== 'as told' && knob === 'nock-turn') d.say('moved-other');
  return d.where('moved').event({ type: 'moved' }, { loop: { arrowTold: { arrow, knob, by } } });
}

export function afterLook(d: Deciding, value: string): void {
  const [arrow] = d.state.notes.arrows.odd;
  if (arrow !== undefined && isLook(value)) {
    classify(d, arrow, LOOKS[value], phrase(d.content, `arrow-why-${value}`));
    d.say(`arrow-look-said-${value}`, { arrow });
    if (value === 'crack' && soundArrows(d.state) < TUNING_ARROWS) countArrowsAgain(d);
  }
  d.where('looked').event({ type: 'looked' });
}

/** Arrows of the set that may still be shot. */
const soundArrows = ({ notes: { arrows: { inSet, classes } } }: State): number =>
  inSet - Object.values(classes).filter((one) => one.class === 'never again' || one.class === 'repair').length;
