// Arrows that leave the set while it is being shot: one is set aside, or they are counted anew.

import type { Deciding } from '../deciding.ts';
import { measured } from '../guards.ts';
import type { State } from '../state.ts';
import type { Answer } from '../types.ts';
import { phrase } from '../words.ts';
import { classify } from './end.ts';
import { arrowsCounted, arrowsInPlay, roundShots } from './shots.ts';

/** Asks which arrow is out where some were set aside since the rounds began; true where something was decided. */
export function arrowsGone(d: Deciding): boolean {
  const { notes } = d.state;
  const unshot = roundShots(d.state).length === 0 && Object.keys(notes.arrows.classes).length === 0;
  if (unshot && countAnew(d)) return true;
  const aside = d.state.answers['arrows-set-aside']?.seq ?? 0;
  const begun = roundShots(d.state)[0]?.seq ?? Infinity;
  const since = Math.max(!unshot && aside >= begun ? aside : 0, failedCheck(d.state));
  const asked = d.state.answers['arrow-out'];
  if (since === 0 || (asked !== undefined && asked.seq > since && measured(d.state, 'arrow-out') === 0)) return false;
  d.add({ due: ['arrow-out'] });
  return true;
}

// An arrow that failed when it was looked at alone, after a miss or a word of it, since all were at the bench: mended, or out.
function failedCheck({ answers }: State): number {
  const check = answers['arrow-check'];
  if (check === undefined || check.seq < (answers['arrow-bench']?.seq ?? Infinity)) return 0;
  return failedOf(check.answer).length > 0 ? check.seq : 0;
}

const failedOf = (answer: Answer): readonly string[] => (answer.kind === 'choice' ? answer.values.filter((value) => value !== 'all true') : []);

// A nock, point or vane is mended; a shaft that ticks or is split is not, and neither is one that was flexed with the others.
const MENDED = ['arrow-nock', 'arrow-point', 'arrow-vanes', 'arrow-same'];

function classOfOut({ answers }: State): 'repair' | 'never again' {
  const check = answers['arrow-check'];
  if (check === undefined || check.seq < (answers['arrows-set-aside']?.seq ?? 0)) return 'never again';
  const failed = failedOf(check.answer);
  return failed.length > 0 && failed.every((id) => MENDED.includes(id)) ? 'repair' : 'never again';
}

// Nothing is shot yet: the arrows are those that were counted last.
function countAnew(d: Deciding): boolean {
  const { arrows } = d.state.notes;
  const inSet = arrowsCounted(d.state);
  if (inSet === null) { d.add({ due: ['arrows-in-set'] }); return true; }
  if (inSet !== arrows.inSet) d.add({ loop: { arrows: { ...arrows, inSet } } });
  return false;
}

/** An arrow that was named as out is not shot again here, and the rest are compared without it. */
export function afterArrowOut(d: Deciding, number: number): void {
  const arrow = `${number}`;
  if (number === 0) return;
  if (!arrowsInPlay(d.state).includes(arrow)) { d.say('arrow-out-unknown', { arrow }); return; }
  classify(d, arrow, classOfOut(d.state), phrase(d.content, 'arrow-why-set-aside'));
}
