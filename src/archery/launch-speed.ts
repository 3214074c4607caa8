// The speed of an arrow that was not shot over a chronograph, from arrows that were. A bow throws an arrow as if some mass of its own
// went along: E = (m + K) v^2 / 2, with E and K nearly the same for all arrows of one bow.
// Source: P. E. Klopsteg, "Physics of Bows and Arrows", Am. J. Phys. 11 (1943), from memory; the rest derived.
//
// As 1 / v^2 = (m + K) / 2E, all bows that could have given the readings lie in a flat region with straight edges, and the least and the
// most speed of another arrow lie in its corners: a range that holds as long as the readings are within their error and K is believable.

import { mustBePositive } from '../maths/check.ts';
import { FOOT, FOOT_POUND, GRAIN } from '../maths/exact.ts';
import { footPounds, fps, grains, type FootPounds, type Fps, type Grains, type Inches, type Pounds } from '../maths/units.ts';

/** One arrow over a chronograph. */
export interface Reading { readonly mass: Grains; readonly speed: Fps }

/** A chronograph is good to 1 in 100 (common practice, from memory). */
export const CHRONOGRAPH_ERROR = 0.01;

/** Believable virtual masses of a compound, grains: from a third of a light string alone (from memory) to a published longbow's 250. */
export const VIRTUAL_MASS = { low: grains(30), high: grains(250) } as const;

export interface BowModel { readonly energy: FootPounds; readonly virtualMass: Grains }

/**
 * Speed, fps, of an arrow of `mass` grains from a bow that gives `energy` (ft lbf) to it and to its own `virtualMass` (gr).
 * Throws RangeError unless all are above 0 (the virtual mass 0 or more).
 */
export function speedFor({ energy, virtualMass: own }: BowModel, mass: Grains): Fps {
  mustBePositive(energy, "speedFor: the bow's energy");
  mustBePositive(mass, "speedFor: the arrow's mass");
  if (!(own >= 0 && own < Infinity)) throw new RangeError(`speedFor: the virtual mass is ${own} gr; 0 or more is needed`);
  return fps(Math.sqrt((2 * energy * FOOT_POUND) / ((mass + own) * GRAIN)) / FOOT);
}

export type NoModel = 'masses too close' | 'heavier is not slower' | 'virtual mass not believable';

/**
 * Virtual mass and energy of the bow from two readings: K = (m2 v2^2 - m1 v1^2) / (v1^2 - v2^2). A reason instead where two readings do not say it.
 * Throws RangeError unless masses and speeds are above 0.
 */
export function bowModel(first: Reading, second: Reading): BowModel | NoModel {
  mustBeReadings('bowModel', [first, second]);
  const [light, heavy] = first.mass <= second.mass ? [first, second] : [second, first];
  if (heavy.mass < light.mass * LEAST_APART) return 'masses too close';
  if (heavy.speed >= light.speed) return 'heavier is not slower';
  const own = (heavy.mass * heavy.speed ** 2 - light.mass * light.speed ** 2) / (light.speed ** 2 - heavy.speed ** 2);
  if (own < VIRTUAL_MASS.low || own > VIRTUAL_MASS.high) return 'virtual mass not believable';
  return { virtualMass: grains(own), energy: footPounds(((light.mass + own) * GRAIN * (light.speed * FOOT) ** 2) / 2 / FOOT_POUND) };
}

/** Masses nearer than this differ in speed by little more than a chronograph's error. */
const LEAST_APART = 1.1;

export interface SpeedRange { readonly low: Fps; readonly high: Fps }

/**
 * Least and most speed (fps) of an arrow of `mass` grains, given one or more readings. null where no believable bow gives all of them.
 * Throws RangeError where there is no reading, or unless masses and speeds are above 0.
 */
export function speedRange(readings: readonly Reading[], mass: Grains): SpeedRange | null {
  mustBeReadings('speedRange', readings);
  mustBePositive(mass, "speedRange: the arrow's mass");
  // In the plane of a = 1 / 2E and b = K / 2E each limit is a line p a + q b = r, the allowed side below it.
  const edges = [
    { p: VIRTUAL_MASS.low, q: -1, r: 0 }, { p: -VIRTUAL_MASS.high, q: 1, r: 0 },
    ...readings.flatMap(({ mass: m, speed }) => [
      { p: m, q: 1, r: 1 / (speed * (1 - CHRONOGRAPH_ERROR)) ** 2 }, { p: -m, q: -1, r: -1 / (speed * (1 + CHRONOGRAPH_ERROR)) ** 2 },
    ]),
  ];
  const speeds: number[] = [];
  for (const [i, e] of edges.entries()) {
    for (const f of edges.slice(i + 1)) {
      const det = e.p * f.q - f.p * e.q;
      if (det === 0) continue;
      const a = (e.r * f.q - f.r * e.q) / det;
      const b = (e.p * f.r - f.p * e.r) / det;
      if (a > 0 && edges.every(({ p, q, r }) => p * a + q * b - r <= 1e-9 * (Math.abs(p * a) + Math.abs(b)))) speeds.push(1 / Math.sqrt(mass * a + b));
    }
  }
  return speeds.length === 0 ? null : { low: fps(Math.min(...speeds)), high: fps(Math.max(...speeds)) };
}

/** What stands in a bow's papers: speed (fps) with an arrow of 5 gr a pound at `peak` (lb) and 30 in of draw. */
export interface Rating { readonly speed: Fps; readonly peak: Pounds }

/** The bow as it is shot. */
export interface AsShot { readonly peak: Pounds; readonly draw: Inches; readonly brace: Inches; readonly mass: Grains }

const RATED = { grainsPerPound: 5, draw: 30, pivot: 1.75 } as const;
/** Loop, peep, and a rating that flatters: up to 8 in 100 slower than it says (from memory). */
const FLATTERS = 0.08;
/** Energy goes with the string's way, and shorter draws come with smaller cams: to the power of 1 to 1.5 (10 fps an inch, from memory). */
const WAY = [1, 1.5] as const;

/**
 * Least and most speed (fps) to expect from the bow's rating alone. Far wider than any reading. Throws RangeError unless all figures are above 0
 * and the draw is longer than brace height and 1 3/4 in.
 */
export function speedFromRating(rating: Rating, { peak, draw, brace, mass }: AsShot): SpeedRange {
  mustBePositive(rating.speed, 'speedFromRating: the rated speed');
  mustBePositive(rating.peak, 'speedFromRating: the peak of the rating');
  mustBePositive(peak, 'speedFromRating: the peak draw weight');
  mustBePositive(draw, 'speedFromRating: the draw length');
  mustBePositive(brace, 'speedFromRating: the brace height');
  mustBePositive(mass, "speedFromRating: the arrow's mass");
  const way = draw - RATED.pivot - brace;
  const ratedWay = RATED.draw - RATED.pivot - brace;
  if (!(way > 0 && ratedWay > 0)) throw new RangeError(`speedFromRating: the draw length is ${draw} in and the brace height ${brace}; the string has no way to go`);
  const all = [VIRTUAL_MASS.low, VIRTUAL_MASS.high].flatMap((own) => WAY.map((power) => {
    const energy = (peak / rating.peak) * (way / ratedWay) ** power;
    return rating.speed * Math.sqrt((energy * (RATED.grainsPerPound * rating.peak + own)) / (mass + own));
  }));
  return { low: fps(Math.min(...all) * (1 - FLATTERS)), high: fps(Math.max(...all)) };
}

function mustBeReadings(caller: string, readings: readonly Reading[]): void {
  if (readings.length === 0) throw new RangeError(`${caller}: there is no reading; give at least one`);
  for (const { mass, speed } of readings) {
    mustBePositive(mass, `${caller}: the mass of a reading`);
    mustBePositive(speed, `${caller}: the speed of a reading`);
  }
}
