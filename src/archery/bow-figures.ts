// Figures of the bow that follow from two others: let-off, holding weight, draw length, and the arrow that a bow is rated with.
// Stored energy needs a whole draw curve, which the walk never measures, so it is not here.

import { mustBePositive } from '../maths/check.ts';
import { grains, inches, inUnit, pounds, type Grains, type Inches, type Measured, type Pounds } from '../maths/units.ts';

export type Percent = Measured<'percent'>;
export const percent = (n: number): Percent => inUnit(n, 'percent');

/**
 * How much lighter the bow is at full draw than at its peak, percent. Source: percent of let-off as ASTM F1880 names it; formula from
 * memory. Which holding force the standard means (drawing, letting down or their mean) could not be read: friction of the cables makes
 * them differ by a pound or two, so the last digit means nothing.
 * Throws RangeError unless both are above 0 and the holding weight is no more than the peak.
 * Example: letOff(pounds(60), pounds(12)) is 80.
 */
export function letOff(peak: Pounds, holding: Pounds): Percent {
  mustBePositive(peak, 'letOff: the peak draw weight');
  mustBePositive(holding, 'letOff: the holding weight');
  if (holding > peak) throw new RangeError(`letOff: the holding weight is ${holding} lb and the peak ${peak}; the peak is the larger of the two`);
  return percent((100 * (peak - holding)) / peak);
}

/**
 * The same the other way round, lb. Throws RangeError unless the peak is above 0 and the let-off at least 0 and below 100 percent.
 * Example: holdingWeight(pounds(60), percent(80)) is 12.
 */
export function holdingWeight(peak: Pounds, letOffShare: Percent): Pounds {
  mustBePositive(peak, 'holdingWeight: the peak draw weight');
  if (!(letOffShare >= 0 && letOffShare < 100)) throw new RangeError(`holdingWeight: the let-off is ${letOffShare}; a share from 0 to below 100 percent is needed`);
  return pounds((peak * (100 - letOffShare)) / 100);
}

const PIVOT_TO_FACE = 1.75;

/**
 * Draw length as the trade gives it, inches: from the nocking point at full draw to the pivot of the grip, and 1 3/4 in more.
 * Sources: AMO field publication FP-3 (2000) and ASTM F1880-09, section 3.2.1, both after secondary pages. Throws RangeError unless above 0.
 * Example: drawLength(inches(26.25)) is 28.
 */
export function drawLength(nockToPivot: Inches): Inches {
  mustBePositive(nockToPivot, 'drawLength: the length from nocking point to pivot');
  return inches(nockToPivot + PIVOT_TO_FACE);
}

const RATING = 5;

/**
 * Mass of the arrow that a bow's speed is rated with, grains: 5 for each pound of peak draw weight. Also the usual floor (common
 * practice); the bow maker's own figure stands above it. Source: ASTM F1544-11, after a secondary page. Throws RangeError unless above 0.
 * Example: ratingArrow(pounds(62)) is 310.
 */
export function ratingArrow(peak: Pounds): Grains {
  mustBePositive(peak, 'ratingArrow: the peak draw weight');
  return grains(RATING * peak);
}
