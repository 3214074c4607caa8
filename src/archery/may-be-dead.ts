// An adjustment that now and then does nothing at all: what that leaves of a belief about its slope.
// Derived: a slope is 0 with chance `dead`, else it is as believed; mean and variance of the two together. A normal belief with these two moments is
// a little nearer to nothing and a little wider, so that the first step is more careful and the bow's own answer counts sooner.

import { checks } from '../maths/check.ts';
import type { SlopePrior } from './response.ts';

const must = checks('mayBeDead');

/** The belief with the chance of doing nothing in it. Throws RangeError on figures that cannot be meant, and unless `dead` is from 0 to below 1. */
// Example: mayBeDead({ mean: -4, sd: 2 }, 0.2).mean is -3.2; mayBeDead({ mean: -4, sd: 2 }, 0.2).sd is 2.4.
export function mayBeDead({ mean, sd }: SlopePrior, dead: number): SlopePrior {
  must.mayBeDead.measure(mean, 'the slope expected beforehand');
  must.mayBeDead.size(sd, 'the spread of the slope expected beforehand');
  if (!(dead >= 0 && dead < 1)) throw must.mayBeDead.error(`the chance of doing nothing is ${dead}; it lies between 0 and 1, 1 left out`);
  const alive = 1 - dead;
  return { mean: alive * mean, sd: Math.sqrt(alive * (sd ** 2 + dead * mean ** 2)) };
}
