// The archer's usual spread: how far single tears stray from the centre of their own set, over all sets and both axes.
//
//   sd^2 = (2 * prior.df * prior.sd^2 + sum of w * d^2 over all sets, shots and both axes)
//          / (2 * prior.df + 2 * sum of (shots - 1) over all sets)
//
// d is the distance from the set's Huber centre on one axis, w the shot's Huber weight there, so that a stray shot
// widens the spread only a little. Weights need a spread: the prior's is taken, then the result, once more.
// The price, by simulation: in sets of six about 6 % too small where no shot strays, about 6 % too large where one in twenty does,
// fourfold; in sets of three 5 and 11 %.
//
// How df counts. `prior.df` is per axis; the result's `df` is over both axes, hence the factors 2: with the default prior
// and no shots it is 6, and each set of 3 shots adds 4. To hand a result on as a prior use `carriedPrior`, which
// halves it and caps it, so that an old history cannot drown what is seen today.

import { checks } from '../maths/check.ts';
import { huberCentre } from '../maths/huber.ts';
import { sum } from '../maths/sum.ts';
import { checkPoints, checkPrior, checkSpread, type Spread } from './shots.ts';

const must = checks('pooledSpread', 'pooledOf', 'carriedPrior');

export type { Spread } from './shots.ts';

/** Before anything is known of the archer; df per axis. */
export const USUAL_PRIOR: Spread = { sd: 0.2, df: 3 };

/** Tears are told to the nearest 1/16 in: standard deviation of that rounding (derived: width / sqrt 12). */
const ROUNDING = 1 / 16 / Math.sqrt(12);
/** Three tears told alike are common; nobody shoots better than this. */
export const LEAST = 0.03;
const MOST_CARRIED_DF = 16;

/** Pooled spread of all sets (`groups`, tears in inches). Throws RangeError on a tear or a prior that is not a finite number. */
// Example: pooledSpread([]) is { sd: 0.2008, df: 6 }.
export function pooledSpread(
  groups: readonly (readonly { readonly x: number; readonly y: number }[])[],
  prior: Spread = USUAL_PRIOR,
): Spread {
  checkPrior(must.pooledSpread, prior);
  for (const shots of groups) checkPoints(must.pooledSpread, shots, 'a tear');
  const axes = groups.flatMap((shots) => [shots.map((s) => s.x), shots.map((s) => s.y)]);
  const sets = axes.filter((values) => values.length > 1);
  const { sd, df } = pooledOf(sets, prior, LEAST);
  return { sd: Math.max(LEAST, Math.hypot(sd, ROUNDING)), df };
}

/**
 * The same for groups of figures on one axis, each around its own centre, in any unit: two passes, since the weights need a
 * spread themselves. `prior.df` counts twice, for what is known beforehand comes from both axes; never below `least`.
 * Throws RangeError on a figure that is not finite, or a prior or least spread that is not above 0.
 */
// Example: pooledOf([[-1, 0, 1]], { sd: 1, df: 2 }, 0.03) is { sd: 1, df: 6 }.
export function pooledOf(groups: readonly (readonly number[])[], prior: Spread, least: number): Spread {
  checkPrior(must.pooledOf, prior);
  must.pooledOf.size(least, 'the least spread');
  for (const value of groups.flat()) must.pooledOf.measure(value, 'a figure');
  const df = 2 * prior.df + sum(groups.map((values) => values.length - 1));
  let { sd } = prior;
  for (let pass = 0; pass < 2; pass++) {
    const scale = sd;
    const squares = sum(groups.map((values) => weightedSquares(values, scale)));
    sd = Math.max(least, Math.sqrt((2 * prior.df * prior.sd ** 2 + squares) / df));
  }
  return { sd, df };
}

/** A result as the prior of the next tune by the same archer: df per axis, at most 16; rounding taken out, for it is added again.
 *  Throws RangeError unless spread and df are above 0. */
// Example: carriedPrior({ sd: 0.3, df: 80 }) is { sd: 0.29946, df: 16 }.
export function carriedPrior(spread: Spread): Spread {
  checkSpread(must.carriedPrior, spread);
  const sd = Math.sqrt(Math.max(0, spread.sd ** 2 - ROUNDING ** 2));
  return { sd: Math.max(LEAST, sd), df: Math.min(MOST_CARRIED_DF, spread.df / 2) };
}

function weightedSquares(values: readonly number[], scale: number): number {
  const { centre, weights } = huberCentre(values, scale);
  return sum(values.map((value, i) => (weights[i] ?? 0) * (value - centre) ** 2));
}
