// How likely the true tear lies inside a tolerance. "Tuned" is shown by this chance being high,
// never by a difference from zero being "not significant".
// Source: the two one-sided tests of D. J. Schuirmann (1987), read as a chance.

import { checks, type Checks } from '../maths/check.ts';
import { studentCdf } from '../maths/student.ts';

const must = checks('chanceWithin', 'chanceAbove', 'chanceBelow');

/**
 * Chance that the truth lies between `low` and `high` (inches), given an estimate `mean` (in) whose standard error is `se` (in)
 * on `df` degrees of freedom. With se = 0 it is 1 or 0. Throws RangeError on NaN, se < 0, df <= 0 or low > high.
 */
// Example: chanceWithin(0, 1, 10, -2.228, 2.228) is 0.9500.
export function chanceWithin(mean: number, se: number, df: number, low: number, high: number): number {
  return within(must.chanceWithin, mean, se, df, low, high);
}

/** Chance that the truth lies above `limit`; see chanceWithin. Throws RangeError on NaN, se < 0 or df <= 0. */
// Example: chanceAbove(0, 1, 2, 2.92) is 0.0500.
export function chanceAbove(mean: number, se: number, df: number, limit: number): number {
  must.chanceAbove.number(limit, 'the limit');
  return within(must.chanceAbove, mean, se, df, limit, Infinity);
}

/** Chance that the truth lies below `limit`; see chanceWithin. Throws RangeError on NaN, se < 0 or df <= 0. */
// Example: chanceBelow(0, 1, 2, -2.92) is 0.0500.
export function chanceBelow(mean: number, se: number, df: number, limit: number): number {
  must.chanceBelow.number(limit, 'the limit');
  return within(must.chanceBelow, mean, se, df, -Infinity, limit);
}

function within(by: Checks, mean: number, se: number, df: number, low: number, high: number): number {
  by.finite(mean, 'the mean');
  by.notNegative(se, 'the standard error');
  by.positive(df, 'df', true);
  if (!(low <= high)) throw by.error(`the tolerance goes from ${low} to ${high}; the lower end comes first`);
  if (se === 0) return mean >= low && mean <= high ? 1 : 0;
  const a = (low - mean) / se;
  const b = (high - mean) / se;
  // Take the difference on the side where both tails are small, so that mirrored tears give the same chance.
  const chance = a > -b ? studentCdf(-a, df) - studentCdf(-b, df) : studentCdf(b, df) - studentCdf(a, df);
  return Math.max(0, Math.min(1, chance));
}
