// The speed of an arrow that was not shot over a chronograph, from arrows that were. A bow throws an arrow as if some mass of its own
// flew along, and gives both together nearly the same energy whatever the arrow: E = (m + K) v^2 / 2.
// Source: P. E. Klopsteg, "Physics of Bows and Arrows", Am. J. Phys. 11 (1943), from memory; the ranges are derived.
//
// K itself is badly known from two readings: 1 in 100 on each of 350 and 450 gr leaves it anywhere from 30 to 190 gr. Speeds between and
// near the readings are known well all the same. So whatever is told is a range: the least and the most over all bows with a
// believable K that could have given the readings. As 1 / v^2 = (m + K) / 2E, those bows fill a flat patch with straight edges in the
// plane of a = 1 / 2E and b = K / 2E, and what is least or most lies at one of its corners.

import { checks, type Checks } from '../maths/check.ts';
import { FOOT, FOOT_POUND, GRAIN } from '../maths/exact.ts';
import { footPounds, fps, grains, type FootPounds, type Fps, type Grains, type Inches, type Pounds } from '../maths/units.ts';
import { AHEAD_OF_PIVOT, RATING_MASS } from './bow-figures.ts';

const must = checks('speedFor', 'throwFrom', 'speedRange', 'speedFromRating');

/** An arrow (gr) over a chronograph (fps). */
export interface Reading { readonly mass: Grains; readonly speed: Fps }

/** How far off a chronograph may be, as a share (common practice, from memory). */
export const CHRONOGRAPH_ERROR = 0.01;

/**
 * Believable virtual masses of a compound, gr. At least a third of a light string, some 100 gr, goes along (from memory); and none needs more
 * than the 250 gr that are published for a plain bow (500 gr at 170 fps out of 48 ft lbf; read on a secondary page).
 */
export const VIRTUAL_MASS = { low: grains(30), high: grains(250) } as const;

/** What a bow gives to arrow and virtual mass together (ft lbf), and that mass (gr). */
export interface Throw { readonly energy: FootPounds; readonly virtualMass: Grains }

/** Speed, fps, of an arrow of `mass` grains. Throws RangeError unless energy and mass are above 0 and the virtual mass 0 or more. */
// Example: speedFor({ energy: 48, virtualMass: 238 }, 300) is 200.47.
export function speedFor({ energy, virtualMass }: Throw, mass: Grains): Fps {
  must.speedFor.size(energy, "the bow's energy");
  must.speedFor.size(mass, "the arrow's mass");
  must.speedFor.notNegative(virtualMass, 'the virtual mass');
  return fps(Math.sqrt((2 * energy * FOOT_POUND) / ((mass + virtualMass) * GRAIN)) / FOOT);
}

export type Unknown = 'masses too close' | 'heavier not slower' | 'not believable';

/**
 * The bow behind two readings: K = (m2 v2^2 - m1 v1^2) / (v1^2 - v2^2), with the least and most K (gr) that they leave. A reason instead of
 * figures where they do not tell: the two masses are so close that any believable K fits; the heavier arrow was not the slower one; or K is
 * not believable, so that a reading, or a mass, is wrong. `error` is the chronograph's, as a share.
 * Throws RangeError unless masses and speeds are above 0 and the error is from 0 to below 1.
 */
// Example: throwFrom({ mass: 350, speed: 300 }, { mass: 450, speed: 270.22 }) is { energy: 85.92, virtualMass: 80.0, low: 30.0, high: 192.8 }.
export function throwFrom(first: Reading, second: Reading, error = CHRONOGRAPH_ERROR): (Throw & { readonly low: Grains; readonly high: Grains }) | Unknown {
  const all = corners(must.throwFrom, [first, second], error).map(({ a, b }) => b / a);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const anyFits = low < VIRTUAL_MASS.low * (1 + SLACK) && high > VIRTUAL_MASS.high * (1 - SLACK);
  if (first.mass === second.mass || anyFits) return 'masses too close';
  const [light, heavy] = first.mass < second.mass ? [first, second] : [second, first];
  if (heavy.speed >= light.speed) return 'heavier not slower';
  const own = (heavy.mass * heavy.speed ** 2 - light.mass * light.speed ** 2) / (light.speed ** 2 - heavy.speed ** 2);
  if (own < VIRTUAL_MASS.low || own > VIRTUAL_MASS.high) return 'not believable';
  const joules = ((light.mass + own) * GRAIN * (light.speed * FOOT) ** 2) / 2;
  return { energy: footPounds(joules / FOOT_POUND), virtualMass: grains(own), low: grains(low), high: grains(high) };
}

export interface SpeedRange { readonly low: Fps; readonly high: Fps }

/**
 * Least and most speed, fps, of an arrow of `mass` grains, from one reading or more. null where no bow with a believable virtual mass could
 * have given them all: a reading, or a mass, is wrong. Throws RangeError where there is no reading, and as throwFrom does.
 */
// Example: speedRange([{ mass: 350, speed: 300 }], 450) is { low: 264.3, high: 280.5 }.
export function speedRange(readings: readonly Reading[], mass: Grains, error = CHRONOGRAPH_ERROR): SpeedRange | null {
  must.speedRange.size(mass, "the arrow's mass");
  const speeds = corners(must.speedRange, readings, error).map(({ a, b }) => 1 / Math.sqrt(mass * a + b));
  return speeds.length === 0 ? null : { low: fps(Math.min(...speeds)), high: fps(Math.max(...speeds)) };
}

/** Rounding, as a share. */
const SLACK = 1e-9;

/** Corners of the patch of bows that could have given the readings; none where there is no such bow. Units of a and b: s2/ft2, for a by grain. */
function corners(by: Checks, readings: readonly Reading[], error: number): readonly { readonly a: number; readonly b: number }[] {
  if (!(error >= 0 && error < 1)) throw by.error(`the chronograph's error is ${error}; a share from 0 to below 1 is needed`);
  for (const { mass, speed } of readings) {
    by.size(mass, 'the mass of a reading');
    by.size(speed, 'the speed of a reading');
  }
  const [first] = readings;
  if (first === undefined) throw by.error('there is no reading; give at least one');
  // Each edge is a line b = at + slope a; the patch lies above it (side 1) or below it (side -1).
  const edges = [
    { at: 0, slope: VIRTUAL_MASS.low, side: 1 },
    { at: 0, slope: VIRTUAL_MASS.high, side: -1 },
    ...readings.flatMap(({ mass, speed }) => [
      { at: 1 / (speed * (1 + error)) ** 2, slope: -mass, side: 1 },
      { at: 1 / (speed * (1 - error)) ** 2, slope: -mass, side: -1 },
    ]),
  ];
  const slack = SLACK / first.speed ** 2;
  // Lines that never meet, or everywhere, give no finite corner, and such a one lies on no side.
  return edges.flatMap((one) => edges.map((other) => {
    const a = (other.at - one.at) / (one.slope - other.slope);
    return { a, b: one.at + one.slope * a };
  })).filter(({ a, b }) => edges.every(({ at, slope, side }) => side * (b - at - slope * a) >= -slack));
}

/** What a bow's papers say: speed (fps) with an arrow of 5 gr for each pound of `peak` (lb) at a draw of `draw` (in; 30 for most bows). */
export interface Rating { readonly speed: Fps; readonly peak: Pounds; readonly draw: Inches }

/** The bow as it is shot: peak (lb), draw length and brace height (in), and the arrow (gr). */
export interface AsShot { readonly peak: Pounds; readonly draw: Inches; readonly brace: Inches; readonly mass: Grains }

/** Papers flatter, and peep, loop and silencers slow the string: so much slower at the most, as a share (from memory). */
const FLATTERS = 0.08;
/** Energy grows with the string's way, or faster, since a longer draw comes with a larger cam: 10 fps for an inch (from memory) is a power of 1.3. */
const WAY_POWERS = [1, 1.5] as const;

/**
 * Least and most speed, fps, to be expected from a bow's papers: energy goes with the peak and the string's way, the virtual mass is anywhere that is
 * believable. Wide, and never a figure to reckon on with. Sources of the rating: ASTM F1544-11 (30 in), ATA/BOW-105-2008 (28 in), read on
 * secondary pages. Throws RangeError unless all figures are above 0 and both draws are longer than brace height and 1 3/4 in.
 */
// Example: speedFromRating({ speed: 330, peak: 70, draw: 30 }, { peak: 60, draw: 29, brace: 6.5, mass: 400 })
// is { low: 255.1, high: 286.7 }.
export function speedFromRating(rating: Rating, shot: AsShot): SpeedRange {
  must.speedFromRating.size(rating.speed, 'the rated speed');
  must.speedFromRating.size(rating.peak, 'the rated peak');
  must.speedFromRating.size(shot.peak, 'the peak draw weight');
  must.speedFromRating.size(shot.brace, 'the brace height');
  must.speedFromRating.size(shot.mass, "the arrow's mass");
  const wayAt = (draw: Inches, what: string): number => {
    must.speedFromRating.size(draw, what);
    const way = draw - AHEAD_OF_PIVOT - shot.brace;
    if (way <= 0) throw must.speedFromRating.error(`${what} is ${draw} in, the brace height ${shot.brace} in; the string has no way to go`);
    return way;
  };
  const ways = wayAt(shot.draw, 'the draw length') / wayAt(rating.draw, 'the rated draw length');
  const speeds = [VIRTUAL_MASS.low, VIRTUAL_MASS.high].flatMap((own) => WAY_POWERS.map((power) => {
    const energy = (shot.peak / rating.peak) * ways ** power;
    return rating.speed * Math.sqrt((energy * (RATING_MASS * rating.peak + own)) / (shot.mass + own));
  }));
  return { low: fps(Math.min(...speeds) * (1 - FLATTERS)), high: fps(Math.max(...speeds)) };
}
