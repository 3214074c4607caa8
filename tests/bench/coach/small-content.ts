// The content that the kernel bench plays: the shipped one, in which one adjustment of the height has the travel, the steps and the book of the bench's
// world. Content is data, so nothing of the program is changed. Its own limits are for bows in hands; these are for numbers only.

import type { Content } from '../../../src/content/types.ts';
import type { World } from './world.ts';

/** The adjustment that is moved. */
export const KNOB = 'rest-height';
/** The longest single move, inches. */
const LONGEST_MOVE = 1 / 8;
/** What the book says of responses to the other side, and of none. */
const [WRONG_SIGN, DEAD] = [0.05, 0.05];
/** Stands before the chance in what the coach says after each shot. */
export const SAYS = 'CHANCE';

/** Up takes the tail down: one step up of the world is one step down of the rest. */
export const settingOf = (ledgerInches: number, { stepInches }: World): number => Math.round(-ledgerInches / stepInches) + 0;

export function smallContent(shipped: Content, world: World): Content {
  const reach = world.reach * world.stepInches;
  const longest = Math.max(LONGEST_MOVE, world.stepInches);
  const knob: Content['knobs'][typeof KNOB] = {
    ...shipped.knobs[KNOB], book: { change: -world.book, per: world.stepInches }, books: [], wrongSign: WRONG_SIGN, dead: DEAD,
    first: longest, firstWhenFar: null, later: longest, soft: reach, hard: reach, smallest: world.stepInches, alternative: null,
  };
  return {
    ...shipped,
    knobs: { ...shipped.knobs, [KNOB]: knob },
    phrases: { ...shipped.phrases, 'axis-summary': `${SAYS} {chance}` },
  };
}
