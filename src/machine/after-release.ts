// What follows from a dealer's release. Nobody here knows what was done to the bow, so it is another bow as far as its shots
// go, also where the dealer found nothing: what was shot and learned before says nothing of it, and it is judged anew.

import { forgotten, judgeAsAnother } from './after-happening.ts';
import type { Deciding } from './deciding.ts';
import { chosen } from './guards.ts';
import type { LoopNotes } from './notes.ts';
import type { State } from './state.ts';

export function afterRelease(d: Deciding): void {
  d.trigger('released-by-dealer');
  // Powder showed how the vanes passed the rest as it stood then.
  if (d.state.answers['contact'] !== undefined) d.add({ due: ['contact'] });
  if (d.state.shotCount > 0) d.say('released-anew');
  asAnotherBow(d);
}

/** Nothing that was shot, found, learned or advised before says anything of the bow as it is now. */
export function asAnotherBow(d: Deciding): void {
  judgeAsAnother(d, {
    ...forgotten(d.state), ended: closedByManual(d.state), declined: [], shop: [],
    offered: null, inspection: null, inspections: 0, grossSeen: false, resumeSet: false,
  });
}

// Without the maker's words on them the cams are not moved, whoever had the bow.
function closedByManual(state: State): LoopNotes['ended'] {
  const range = chosen(state, 'cam-range');
  return range === undefined || range === 'known' ? {} : { 'cam-screw': 'limit', 'cam-spacers': 'limit' };
}
