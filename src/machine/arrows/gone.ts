// Arrows that leave the set while it is being shot: one is set aside, or they are counted anew.

import type { Deciding } from '../deciding.ts';
import { measured } from '../guards.ts';
import { phrase } from '../words.ts';
import { classify } from './end.ts';
import { arrowsCounted, arrowsInPlay, roundShots } from './shots.ts';

/** Asks which arrow is out where some were set aside since the rounds began; true where something was decided. */
export function arrowsGone(d: Deciding): boolean {
  const { notes } = d.state;
  if (roundShots(d.state).length === 0 && Object.keys(notes.arrows.classes).length === 0) return countAnew(d);
  const aside = d.state.answers['arrows-set-aside']?.seq ?? 0;
  const begun = roundShots(d.state)[0]?.seq ?? Infinity;
  const asked = d.state.answers['arrow-out'];
  if (aside < begun || (asked !== undefined && asked.seq > aside && measured(d.state, 'arrow-out') === 0)) return false;
  d.add({ due: ['arrow-out'] });
  return true;
}

// Nothing is shot yet: the arrows are those that were counted last.
function countAnew(d: Deciding): boolean {
  const { arrows } = d.state.notes;
  const inSet = arrowsCounted(d.state);
  if (inSet === null) { d.add({ due: ['arrows-in-set'] }); return true; }
  if (inSet !== arrows.inSet) d.add({ loop: { arrows: { ...arrows, inSet } } });
  return false;
}

/** An arrow that was named as out is never shot again, and the rest are compared without it. */
export function afterArrowOut(d: Deciding, number: number): void {
  const arrow = `${number}`;
  if (number === 0) return;
  if (!arrowsInPlay(d.state).includes(arrow)) { d.say('arrow-out-unknown', { arrow }); return; }
  classify(d, arrow, 'never again', phrase(d.content, 'arrow-why-set-aside'));
}
