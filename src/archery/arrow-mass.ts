// Arrow mass against draw weight: too light an arrow breaks bows as a shot without an arrow does.
// Units: mass in grains, weights in pounds, result in grains per pound.

import { checks } from '../maths/check.ts';
import type { Grains, Pounds } from '../maths/units.ts';

const must = checks('grainsPerPound', 'worstGrainsPerPound');

/** Grains of arrow for each pound of peak draw weight. Throws RangeError unless both are above 0. */
// Example: grainsPerPound(grains(350), pounds(70)) is 5.
export function grainsPerPound(mass: Grains, peak: Pounds): number {
  must.grainsPerPound.size(mass, "the arrow's mass");
  must.grainsPerPound.size(peak, 'the peak draw weight');
  return mass / peak;
}

/** The same with the bow scale reading low by its whole error (in pounds): the figure that must pass.
 *  Throws RangeError unless mass and peak are above 0 and the error 0 or more. */
// Example: worstGrainsPerPound(grains(350), pounds(70), pounds(2)) is 4.861.
export function worstGrainsPerPound(mass: Grains, peak: Pounds, scaleError: Pounds): number {
  must.worstGrainsPerPound.size(mass, "the arrow's mass");
  must.worstGrainsPerPound.size(peak, 'the peak draw weight');
  must.worstGrainsPerPound.notNegative(scaleError, "the scale's error");
  return mass / (peak + scaleError);
}
