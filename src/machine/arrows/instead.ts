// A tuning arrow that is out: which arrow takes its place in the last shots at the finish.

import type { Deciding } from '../deciding.ts';
import type { State } from '../state.ts';
import { isTuningArrow, TUNING } from './shots.ts';

/** Names it for each tuning arrow that is not first choice; each sound arrow stands in for one. */
export function sayInstead(d: Deciding): void {
  const { classes } = d.state.notes.arrows;
  const spare = spareArrows(d.state);
  const out = TUNING.filter((arrow) => classes[arrow] !== undefined && classes[arrow].class !== 'first choice');
  for (const [i, arrow] of out.entries()) {
    const instead = spare[i];
    if (instead === undefined) d.say('tuning-arrow-out', { arrow });
    else d.say('tuning-arrow-instead', { arrow, instead });
  }
}

// First choice, or not told apart yet.
function spareArrows({ notes: { arrows: { inSet, classes } } }: State): readonly string[] {
  const others = Array.from({ length: inSet }, (_, i) => `${i + 1}`).filter((arrow) => !isTuningArrow(arrow));
  const first = others.filter((arrow) => classes[arrow]?.class === 'first choice');
  return [...first, ...others.filter((arrow) => classes[arrow] === undefined)];
}
