// How likely the true tear lies inside a tolerance. "Tuned" is shown by this chance being high,
// never by a difference from zero being "not significant".
// Source: the two one-sided tests of D. J. Schuirmann (1987), read as a chance.

import { mustBeNumber, mustBePositive } from '../maths/check.ts';
import { studentCdf } from '../maths/student.ts';

/**
 * Chance that the truth lies between `low` and `high` (inches), given an estimate `mean` (in) whose standard error is `se` (in)
 * on `df` degrees of freedom. With se = 0 it is 1 or 0. Throws RangeError on NaN, se < 0, df <= 0 or low > high.
 */
export function chanceWithin(mean: number, se: number, df: number, low: number, high: number): number {
  mustBeNumber(mean, 'the mean');
  mustBePositive(df, 'df', true);
  if (!(se >= 0)) throw new RangeError(`the standard error is ${se}; 0 or more is needed`);
  if (!(low <= high)) throw new RangeError(`the tolerance goes from ${low} to ${high}; the lower end comes first`);
  if (se === 0) return mean >= low && mean <= high ? 1 : 0;
  const a = (low - mean) / se;
  const b = (high - mean) / se;
  // Take the difference on the side where both tails are small, so that mirrored tears give the same chance.
  const chance = a > -b ? studentCdf(-a, df) - studentCdf(-b, df) : studentCdf(b, df) - studentCdf(a, df);
  return Math.max(0, Math.min(1, chance));
}

/** Chance that the truth lies above `limit`; see chanceWithin. */
export function chanceAbove(mean: number, se: number, df: number, limit: number): number {
  return chanceWithin(mean, se, df, limit, Infinity);
}

/** Chance that the truth lies below `limit`; see chanceWithin. */
export function chanceBelow(mean: number, se: number, df: number, limit: number): number {
  return chanceWithin(mean, se, df, -Infinity, limit);
}
