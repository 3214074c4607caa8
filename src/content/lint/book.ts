// A small closed book of what common practice demands. Lint holds content to it: content may be stricter, never looser.

import { ADJUSTING } from './book/adjusting.ts';
import { AGAIN } from './book/again.ts';
import { AT_PAPER } from './book/at-paper.ts';
import { BEFORE_THE_FIRST_SHOT } from './book/before-the-first-shot.ts';
import { HANDLING } from './book/handling.ts';
import { LATER_ON } from './book/later-on.ts';
import type { Book } from './book/shape.ts';
import { TRADE_WORDS } from './book/trade-words.ts';
import { CAUTIONS, FOUND, FOUND_SAYS, PHRASES, SAYS } from './book/words.ts';

export type { Book } from './book/shape.ts';

export const COMMON_PRACTICE: Book = {
  steps: [BEFORE_THE_FIRST_SHOT, AT_PAPER, LATER_ON],
  chapters: 'safety baseline warm-up paper broadheads arrows finish',
  before: [
    // Who it is decides what is asked: nobody who grows is asked as a grown archer.
    ['release', 'backstop'], ['growing', 'backstop'],
    // What another figure or answer is held against comes first.
    ['rated-weight', 'arrow-mass'], ['arrow-mass', 'mass-way'], ['bolts-top', 'bolt-limit'], ['bolts-bottom', 'bolt-limit'],
    ['arrow-count', 'arrows-flexed'], ['arrows-flexed', 'arrows-set-aside'], ['peak-weight', 'scale-error'],
    // One slow draw that is let down comes before any other draw.
    ['first-draw', 'peak-weight'], ['first-draw', 'shaft-ahead'],
    // Place, heads and clearance before the first broadhead; the sight before it too, and then no more.
    ['broadheads-wanted', 'broadhead-place'], ['broadhead-place', 'first-broadhead'], ['broadhead-arrows', 'first-broadhead'],
    ['blades-ahead', 'first-broadhead'], ['sight-at-20', 'first-broadhead'],
    // All is tight before the last shots.
    ['tightened', 'sight-last'], ['sight-last', 'proving-shot'], ['sight-last', 'arrow-speed'], ['figures-wanted', 'arrow-speed'],
  ],
  again: AGAIN,
  knobs: ADJUSTING,
  cautions: CAUTIONS,
  says: SAYS,
  phrases: PHRASES,
  handling: HANDLING,
  found: FOUND,
  foundSays: FOUND_SAYS,
  tradeWords: TRADE_WORDS,
};
