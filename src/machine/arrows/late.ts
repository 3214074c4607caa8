// A shot that is corrected after its arrow was classed: the class was given and stays, but nobody is left to believe that it
// rests on the figure as it now reads.

import type { Deciding } from '../deciding.ts';
import type { ArrowNotes } from '../notes.ts';
import type { State } from '../state.ts';
import { phrase } from '../words.ts';
import { judgeRounds, standingOf } from './judge.ts';
import { arrowsInWords } from './words.ts';

/** Says which classes would now be others, and keeps it with the class; `of` is the line of the corrected shot. */
export function classedTooEarly(d: Deciding, of: number): void {
  const set = d.state.sets.find((one) => one.shots.some((shot) => shot.seq === of));
  const { arrows } = d.state.notes;
  if (set?.of !== 'arrows' || Object.keys(arrows.classes).length === 0) return;
  const doubtful = Object.keys(arrows.classes).filter((arrow) => wouldDiffer(d.state, arrow));
  const classes: ArrowNotes['classes'] = Object.fromEntries(Object.entries(arrows.classes).map(([arrow, one]) => {
    const why = whyGiven(d.state, arrow) ?? one.why;
    return [arrow, { class: one.class, why: doubtful.includes(arrow) ? phrase(d.content, 'arrow-doubtful', { why }) : why }];
  }));
  const fresh = doubtful.filter((arrow) => classes[arrow]?.why !== arrows.classes[arrow]?.why);
  d.add({ loop: { arrows: { ...arrows, classes } } });
  if (fresh.length > 0) d.say('arrow-corrected-late', { which: arrowsInWords(d.content, fresh) });
}

function wouldDiffer(state: State, arrow: string): boolean {
  const { classes, cases } = state.notes.arrows;
  const as = classes[arrow]?.class;
  // Also where the corrected shot would have asked for a third round, which nobody shoots any more.
  const odd = judgeRounds(state)?.standOut.includes(arrow) === true;
  // What was seen on an arrow (a crack, a vane) does not hang on a figure.
  if (as === 'never again') return false;
  const one = cases[arrow];
  // Nothing was done to it alone: it was cleared by the rounds.
  if (one === undefined || (as === 'first choice' && one.swapped === null && one.tried.length < 2)) return odd;
  return as === 'first choice' ? standingOf(state, arrow)?.near === false : !odd;
}

const whyGiven = (state: State, arrow: string): string | null => {
  const finding = state.findings.find((one) => one.kind === 'arrow' && one.arrow === arrow);
  return finding?.kind === 'arrow' ? finding.why : null;
};
