// Impacts on a target as angles, so that distances can be compared: how far is far enough apart, and what drag alone does.

import { checks } from '../maths/check.ts';
import { FOOT, GRAIN, GRAVITY, INCH } from '../maths/exact.ts';
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

/** A hunting arrow of 395 gr and 0.246 in at 280 fps; drag of the whole arrow on its shaft's section, with a field point and with three fixed blades.
 *  Typical figures; 1.56 to 2.05 were measured on smaller arrows (Proceedings 2020, 49(1), 56, read). */
const ARROW = { mass: 395 * GRAIN, section: (Math.PI * (0.246 * INCH) ** 2) / 4, speed: 280 * FOOT } as const;
const DRAG = { field: 2.2, broadhead: 2.9 } as const;
const FLAT = 200;
/** kg/m3, at about 20 degrees C by the sea. */
const AIR = 1.2;

/**
 * How much lower than a field point a fixed-blade broadhead strikes because its blades brake, in inches (0 or negative): 0.06 at 20 yd, 0.2 at 30,
 * 0.5 at 40. Drag alone, by the closed form for flat fire; what lift does besides hangs on how the arrow leaves, which is what tuning
 * changes. Throws RangeError unless the distance is from 0 to 200 yd; beyond, no arrow flies flat.
 */
// Example: dragShare(yards(20)) is -0.056; dragShare(yards(40)) is -0.465.
export function dragShare(distance: Yards): number {
  if (!(distance >= 0 && distance <= FLAT)) throw must.dragShare.error(`the distance is ${distance} yd; 0 to ${FLAT} are needed`);
  return 0 - (drop(distance, DRAG.broadhead) - drop(distance, DRAG.field));
}

/** Drop (in) of a level shot with drag that goes with the square of the speed (derived; in a vacuum g (x / v)^2 / 2). */
function drop(distance: Yards, drag: number): number {
  const x = distance * 3 * FOOT;
  const slowing = (2 * ARROW.mass) / (AIR * drag * ARROW.section);
  const way = (2 * x) / slowing;
  return (GRAVITY * slowing ** 2 * (Math.expm1(way) - way)) / (4 * ARROW.speed ** 2) / INCH;
}
