// Arrow mass against draw weight: too light an arrow breaks bows as a shot without an arrow does.
// Units: mass in grains, weights in pounds, result in grains per pound.

import { mustBePositive } from '../maths/check.ts';
import { pounds, type Grains, type Pounds } from '../maths/units.ts';

/** Grains of arrow for each pound of peak draw weight. Throws RangeError unless both are above 0. */
export function grainsPerPound(mass: Grains, peak: Pounds): number {
  mustBePositive(mass, "the arrow's mass");
  mustBePositive(peak, 'the peak draw weight');
  return mass / peak;
}

/** The same with the bow scale reading low by its whole error (in pounds, 0 or more): the figure that must pass. */
export function worstGrainsPerPound(mass: Grains, peak: Pounds, scaleError: Pounds): number {
  if (!(scaleError >= 0 && scaleError < Infinity)) {
    throw new RangeError(`the scale's error is ${scaleError}; 0 lb or more is needed`);
  }
  mustBePositive(peak, 'the peak draw weight');
  return grainsPerPound(mass, pounds(peak + scaleError));
}
