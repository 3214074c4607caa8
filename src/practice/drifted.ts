// The same archer with the same bow, some months later: what each adjustment is worth has drifted, and something else stands off. How widely the archer's shots
// spread, the arrows, and which way an adjustment works are as they were.

import { knobEntries, type Content } from '../content/types.ts';
import { sum } from '../maths/sum.ts';
import { chanceOf } from './chance.ts';
import { withFaults } from './faults.ts';
import { centreShot, FIGURE, mirrored, type World } from './world.ts';

/** Of the natural logarithm of what an adjustment is worth, from one tune to the next: a quarter (assumed). */
export const GAIN_DRIFT = 0.25;
/** More than all numbers of bows, so that no other tune has the same luck. */
const ANOTHER_TUNE = 2 ** 40;
const DRIFT = 300;

/** Before its `nth` tune after the first. A string that settles has settled by then. */
export function drifted(world: World, knobs: Content['knobs'], nth = 1): World {
  if (world.side === -1) return mirrored(drifted(mirrored(world), knobs, nth));
  const { bow } = world;
  const seed = sum([world.seed, nth * ANOTHER_TUNE]);
  const sound = Object.fromEntries(knobEntries(bow.adjustments).map(([id, one], i) => {
    const share = Math.exp(GAIN_DRIFT * chanceOf(seed, 'bow', DRIFT + i).normal());
    return [id, { ...one, optimum: 0, worth: { x: share * one.worth.x, y: share * one.worth.y } }];
  }));
  const adjustments = withFaults(seed, knobs, bow.hardware, sound);
  const stands = centreShot(bow.hardware.hand, FIGURE, adjustments['rest-side']?.optimum ?? 0);
  return { ...world, seed, bow: { ...bow, adjustments, creep: null, measures: { ...bow.measures, centreShot: stands } } };
}
