// Figures of the bow that follow from two others: let-off, holding weight, draw length, and the arrow that a bow is rated with.
// The energy that a bow stores would take a whole draw curve, which nobody measures while tuning: it is not here.

import { checks } from '../maths/check.ts';
import { grains, inches, percent, pounds, type Grains, type Inches, type Percent, type Pounds } from '../maths/units.ts';

const must = checks('letOff', 'holdingWeight', 'drawLength', 'ratingArrow');

/**
 * How much less the archer holds at full draw than pulls at the peak, percent of the peak; both in pounds. Source: ASTM F1880 by name, the
 * formula from memory. Whether the standard means the holding weight while drawing or while letting down could not be read: friction
 * parts the two by a pound or so, and the last digit with them. Throws RangeError unless both are above 0 and the peak is the larger.
 */
// Example: letOff(60, 12) is 80.
export function letOff(peak: Pounds, holding: Pounds): Percent {
  must.letOff.size(peak, 'the peak draw weight');
  must.letOff.size(holding, 'the holding weight');
  if (holding > peak) throw must.letOff.error(`the holding weight is ${holding} lb, the peak ${peak} lb; nobody holds more than the peak`);
  return percent((100 * (peak - holding)) / peak);
}

/** The way back: holding weight, lb, from the peak (lb) and the let-off (percent). Throws RangeError unless the peak is above 0 and the let-off from 0 to below 100. */
// Example: holdingWeight(60, 80) is 12.
export function holdingWeight(peak: Pounds, byLetOff: Percent): Pounds {
  must.holdingWeight.size(peak, 'the peak draw weight');
  if (!(byLetOff >= 0 && byLetOff < 100)) throw must.holdingWeight.error(`the let-off is ${byLetOff}; percent from 0 to below 100 are needed`);
  return pounds((peak * (100 - byLetOff)) / 100);
}

/** Draw lengths are counted from so far ahead of the grip's pivot, in. */
export const AHEAD_OF_PIVOT = 1.75;

/**
 * Draw length as bows are sold by, inches: from the nocking point at full draw to the pivot of the grip, and 1 3/4 in. Sources: AMO FP-3
 * (2000) and ASTM F1880-09, section 3.2.1, both read on secondary pages. Throws RangeError unless the length is above 0.
 */
// Example: drawLength(26.25) is 28.
export function drawLength(nockToPivot: Inches): Inches {
  must.drawLength.size(nockToPivot, 'the length from nocking point to pivot');
  return inches(nockToPivot + AHEAD_OF_PIVOT);
}

/** Grains of arrow for each pound of peak draw weight by which bows are rated. */
export const RATING_MASS = 5;

/**
 * Mass, grains, of the arrow with which a bow of this peak (lb) is rated: 5 for each pound. Lighter ones are not shot (common practice; the
 * bow maker's own figure stands above it). Source: ASTM F1544-11, read on a secondary page. Throws RangeError unless the peak is above 0.
 */
// Example: ratingArrow(62) is 310.
export function ratingArrow(peak: Pounds): Grains {
  must.ratingArrow.size(peak, 'the peak draw weight');
  return grains(RATING_MASS * peak);
}
