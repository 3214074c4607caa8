// The same archer's next tune of the same bow, for the kernel's rows: what one tune taught may be carried to it. All of it is assumed.

import { seededRandom } from '../../../src/maths/random.ts';
import { knobBow, type KnobBow, type World } from './world.ts';

/** Of the natural logarithm of a response, from one tune to the next. */
export const DRIFT = 0.25;
/** Numbers of bows apart from all that worlds are drawn by. */
const NEXT_TUNE = 1_500_000_007;
const DRIFTS = 700_000_001;

/**
 * `bow` before its tune number `number` after the first: the archer's spread and the way that the adjustment works stay, its response has drifted by a
 * quarter, the start and all luck are new ones.
 */
export function drifted(world: World, bow: KnobBow, number = 1): KnobBow {
  const seed = bow.seed + NEXT_TUNE * number;
  // The draws of a bow come first: the start is one of them, and nothing else of this world's.
  const { start } = knobBow(world, 0, seed);
  return { ...bow, start, seed, response: bow.response * Math.exp(DRIFT * seededRandom(seed + DRIFTS).normal()) };
}
