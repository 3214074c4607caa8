// Impacts beside a plumb line from several distances, one sight setting and one dot: a slant shows that the arrow leaves to one
// side. A straight line by weighted least squares; shots spread wider the farther they fly, so far means count less.
// Sideways only: heights differ by gravity.

import { checks, type Checks } from '../maths/check.ts';
import { fAbove } from '../maths/fisher.ts';
import { sum } from '../maths/sum.ts';
import { mrad, yards, type Mrad, type Yards } from '../maths/units.ts';
import { checkPrior, checkSpread } from './shots.ts';
import { inchesAt, margin as usualMargin, milliradians } from './impact-angle.ts';
import { pooledOf } from './spread.ts';
import { chanceAbove, chanceBelow, chanceWithin } from './tolerance.ts';
import { SURE_DIFFERENT, SURE_SAME } from './two-groups.ts';

const must = checks('fitPlumb', 'judgePlumb', 'bends', 'plumbSpread');

/** Distance in yards; mean of `count` shots there in inches, to the right positive. */
export interface PlumbPoint { readonly distance: Yards; readonly mean: number; readonly count: number }

/** Spread of one shot as an angle, and its degrees of freedom: never in inches, for these depend on the distance. */
export interface AngleSpread { readonly sd: Mrad; readonly df: number }

export interface PlumbFit {
  /** Inches to the right per yard, and its standard error with the spread taken as known. */
  readonly slope: number;
  readonly se: number;
  /** The line at `d` yards, inches. */
  readonly at: (d: number) => { mean: number; se: number };
}

interface Weighted { readonly distance: number; readonly mean: number; readonly weight: number }

/** The line. Throws RangeError on fewer than two distances or a number that cannot be meant. */
// Example: fitPlumb([{ distance: 20, mean: 0, count: 3 }, { distance: 40, mean: 1, count: 3 }], { sd: 1, df: 8 }).slope is 0.05.
export function fitPlumb(points: readonly PlumbPoint[], spread: AngleSpread): PlumbFit {
  return lineThrough(must.fitPlumb, byDistance(must.fitPlumb, points, spread));
}

function lineThrough(by: Checks, merged: readonly Weighted[]): PlumbFit {
  if (merged.length < 2) throw by.error(`a line needs two distances; there is ${merged.length === 0 ? 'none' : 'one'}. Shoot from another distance as well`);
  const total = sum(merged.map((p) => p.weight));
  const middle = sum(merged.map((p) => p.weight * p.distance)) / total;
  const height = sum(merged.map((p) => p.weight * p.mean)) / total;
  const lever = sum(merged.map((p) => p.weight * (p.distance - middle) ** 2));
  const slope = sum(merged.map((p) => p.weight * (p.distance - middle) * p.mean)) / lever;
  return {
    slope,
    se: 1 / Math.sqrt(lever),
    at: (d) => {
      by.measure(d, 'the distance');
      return { mean: height + slope * (d - middle), se: Math.sqrt(1 / total + (d - middle) ** 2 / lever) };
    },
  };
}

export type PlumbVerdict = 'straight' | 'slant' | 'undecided';

/**
 * Does the arrow drift to one side from the nearest to the farthest distance? `drift` in inches, to the right positive.
 * `margin` is what may be left of it, inches at the farthest distance; usually 1.5 spreads there, at least 1 mrad.
 * Throws RangeError as fitPlumb does, or on a margin below 0.
 */
// Example: judgePlumb([{ distance: 20, mean: 0, count: 9 }, { distance: 40, mean: 9, count: 9 }], { sd: 1, df: 8 }).verdict is 'slant'.
export function judgePlumb(
  points: readonly PlumbPoint[], spread: AngleSpread, margin?: number,
): { readonly verdict: PlumbVerdict; readonly drift: number; readonly within: number; readonly beyond: number } {
  const fit = lineThrough(must.judgePlumb, byDistance(must.judgePlumb, points, spread));
  const distances = points.map((p) => p.distance);
  const far = yards(Math.max(...distances));
  const length = far - Math.min(...distances);
  const give = margin ?? usualMargin(inchesAt(spread.sd, far), far);
  must.judgePlumb.notNegative(give, 'the margin');
  const [drift, se, { df }] = [fit.slope * length, fit.se * length, spread];
  const within = chanceWithin(drift, se, df, -give, give);
  const beyond = Math.max(chanceAbove(drift, se, df, give), chanceBelow(drift, se, df, -give));
  const verdict = within >= SURE_SAME ? 'straight' : beyond >= SURE_DIFFERENT ? 'slant' : 'undecided';
  return { verdict, drift, within, beyond };
}

const BENT = 0.01;

/**
 * Whether the means lie off the straight line beyond luck (1 %, lack-of-fit F test with the spread's df below). A curve speaks of
 * grip, torque or fletching, not of the rest. False with fewer than three distances: two always lie on a line.
 * Throws RangeError on a number that cannot be meant.
 */
// Example: bends([{ distance: 20, mean: 0, count: 9 }, { distance: 30, mean: 3, count: 9 }, { distance: 40, mean: 0, count: 9 }], { sd: 1, df: 8 }) is true.
export function bends(points: readonly PlumbPoint[], spread: AngleSpread): boolean {
  const merged = byDistance(must.bends, points, spread);
  if (merged.length < 3) return false;
  const { at } = lineThrough(must.bends, merged);
  const squares = sum(merged.map((p) => p.weight * (p.mean - at(p.distance).mean) ** 2));
  const df = merged.length - 2;
  return fAbove(squares / df, df, spread.df) < BENT;
}

/** Nobody shoots better than this, mrad: 0.05 in at 20 yd. */
const LEAST = 0.07;

/**
 * Spread of one shot sideways, mrad, around the centre of its own distance, pooled over the distances (`x` in inches). As in
 * pooledSpread `prior.df` is per axis and counts twice, for what is known beforehand comes from both axes; these shots have
 * one. A shot far from the others counts only partly. Shots of different `set`s (settings of the bow) have centres of their own.
 * Throws RangeError on a number that cannot be meant.
 */
// Example: plumbSpread([{ distance: 20, x: 0 }, { distance: 20, x: 1 }], { sd: 1, df: 4 }) is { sd: 0.9980, df: 9 }.
export function plumbSpread(shots: readonly { readonly distance: Yards; readonly x: number; readonly set?: number }[], prior: AngleSpread): AngleSpread {
  checkPrior(must.plumbSpread, prior);
  for (const { distance, x, set = 0 } of shots) {
    must.plumbSpread.size(distance, 'a distance');
    must.plumbSpread.measure(x, 'an impact');
    must.plumbSpread.finite(set, 'a set');
  }
  const sets = [...new Set(shots.map((s) => s.set))].map((id) => shots.filter((s) => s.set === id));
  const groups = sets.flatMap((set) => [...new Set(set.map((s) => s.distance))].map((d) => set.filter((s) => s.distance === d).map((s) => milliradians(s.x, d))));
  for (const angle of groups.flat()) must.plumbSpread.measure(angle, 'an impact as an angle');
  const { sd, df } = pooledOf(groups, prior, LEAST);
  return { sd: mrad(sd), df };
}

/** One mean and one weight for each distance. */
function byDistance(by: Checks, points: readonly PlumbPoint[], spread: AngleSpread): readonly Weighted[] {
  checkSpread(by, spread);
  for (const point of points) {
    by.size(point.distance, 'a distance');
    by.measure(point.mean, 'a mean impact');
    by.size(point.count, 'a count of shots');
  }
  const distances = [...new Set(points.map((p) => p.distance))];
  return distances.map((distance) => {
    const here = points.filter((p) => p.distance === distance);
    const count = sum(here.map((p) => p.count));
    return {
      distance,
      mean: sum(here.map((p) => p.count * p.mean)) / count,
      weight: count / inchesAt(spread.sd, distance) ** 2,
    };
  });
}
