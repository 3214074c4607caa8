// The content that the kernel bench plays: the shipped one, in which one adjustment of the height has the travel, the steps and the book of the bench's
// world. Content is data, so nothing of the program is changed. Its own limits are for bows in hands; these are for numbers only.

import type { Content } from '../../../src/content/types.ts';
import type { Wanted, World } from './world.ts';

/** The adjustment that is moved. */
export const KNOB = 'rest-height';
/** The longest first move, in steps; later ones may go as far as the travel does, as those of the rules that the coach is held against. */
const FIRST_MOVE = 10;
/** What the book says of responses to the other side, and of none. */
const [WRONG_SIGN, DEAD] = [0.05, 0.05];
/** Stands before the chance in what the coach says after each shot. */
export const SAYS = 'CHANCE';

/** Up takes the tail down: one step up of the world is one step down of the rest. */
export const settingOf = (ledgerInches: number, { stepInches }: World): number => Math.round(-ledgerInches / stepInches) + 0;

export function smallContent(shipped: Content, world: World, { aim, within }: Wanted): Content {
  const reach = world.reach * world.stepInches;
  const knob: Content['knobs'][typeof KNOB] = {
    ...shipped.knobs[KNOB], book: { change: -world.book, per: world.stepInches }, books: [], wrongSign: WRONG_SIGN, dead: DEAD,
    first: Math.min(FIRST_MOVE * world.stepInches, reach), firstWhenFar: null, later: 2 * reach, soft: reach, hard: reach, smallest: world.stepInches, alternative: null,
  };
  return {
    ...shipped,
    tolerance: { ...shipped.tolerance, height: { low: aim - within, high: aim + within } },
    knobs: { ...shipped.knobs, [KNOB]: knob },
    phrases: { ...shipped.phrases, 'axis-summary': `${SAYS} {chance}` },
  };
}
