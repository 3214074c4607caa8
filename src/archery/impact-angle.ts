// Impacts on a target as angles, so that distances can be compared: how far is far enough apart, and what drag alone does.

import { checks } from '../maths/check.ts';
import { mrad, type Mrad, type Yards } from '../maths/units.ts';

const must = checks('milliradians', 'inchesAt', 'margin', 'dragShare');

const INCHES_PER_YARD = 36;

/** Inches at a distance as milliradians. Throws RangeError unless finite, and the distance above 0. */
// Example: milliradians(1, yards(20)) is 1.389.
export function milliradians(inches: number, distance: Yards): Mrad {
  must.milliradians.measure(inches, 'the length');
  must.milliradians.size(distance, 'the distance');
  return mrad((1000 * inches) / (INCHES_PER_YARD * distance));
}

/** Milliradians as inches at a distance. Throws RangeError unless finite, and the distance above 0. */
// Example: inchesAt(mrad(1), yards(20)) is 0.72.
export function inchesAt(angle: Mrad, distance: Yards): number {
  must.inchesAt.measure(angle, 'the angle');
  must.inchesAt.size(distance, 'the distance');
  return length(angle, distance);
}

const length = (angle: number, distance: number): number => (angle * INCHES_PER_YARD * distance) / 1000;

/**
 * How far apart (in) two groups may lie and still be called together: 1.5 spreads of one shot, never below 1 mrad.
 * Derived: two groups D apart under one sight set between them have rms distances from the dot larger by sqrt(1 + D^2 / 8 sd^2),
 * that is 13 % at 1.5 spreads. `sd` is in inches at `distance`. Throws RangeError unless both are above 0.
 */
// Example: margin(1, yards(20)) is 1.5; margin(0.1, yards(20)) is 0.72.
export function margin(sd: number, distance: Yards): number {
  must.margin.positive(sd, 'the spread');
  must.margin.size(distance, 'the distance');
  return Math.max(1.5 * sd, length(1, distance));
}

/** Distance (yd) and what drag alone lowers a fixed-blade broadhead there (in): derived with a rigid-arrow flight model, launch perfect. */
const DRAG = [[20, -0.5], [30, -0.8], [40, -1.05]] as const;

/**
 * How much lower than a field point a fixed-blade broadhead strikes although the launch is perfect, in inches (0 or negative):
 * blades drag more. Straight between the known distances; in proportion below 20 yd; above 40 yd continued with the last slope,
 * which nothing checks. Throws RangeError on a distance below 0.
 */
// Example: dragShare(yards(25)) is -0.65; dragShare(yards(60)) is -1.55.
export function dragShare(distance: Yards): number {
  must.dragShare.notNegative(distance, 'the distance');
  const [[d1, y1], [d2, y2], [d3, y3]] = DRAG;
  if (distance === 0) return 0;
  if (distance <= d1) return (y1 * distance) / d1;
  if (distance <= d2) return y1 + ((y2 - y1) * (distance - d1)) / (d2 - d1);
  return y2 + ((y3 - y2) * (distance - d2)) / (d3 - d2);
}
