// Student's t distribution: what a mean over few shots is worth when the spread itself is only estimated.
// `df` (degrees of freedom) is any number above 0; Infinity gives the normal distribution.
// A NaN is never given back.

import jStat from 'jstat';
import { checks } from './check.ts';
import { normalCdf, normalQuantile } from './normal.ts';

const must = checks('studentCdf', 'studentQuantile');

// From here on the first term of the expansion in 1/df (Fisher) is more exact than the incomplete beta function.
const MANY = 1e5;

/** Chance of a value below t. studentCdf(-t, df) + studentCdf(t, df) is 1. Throws RangeError on NaN or df <= 0. */
// Example: studentCdf(2.228, 10) is 0.9750.
export function studentCdf(t: number, df: number): number {
  must.studentCdf.number(t, 't');
  must.studentCdf.positive(df, 'df', true);
  if (t > 0) return 1 - studentCdf(-t, df);
  // Far out (t^2 comparable to df) the expansion does not hold, but there nothing is left either.
  if (df > MANY) return t < -20 ? 0 : normalCdf(t - (t ** 3 + t) / (4 * df));
  return jStat.ibeta(df / (df + t * t), df / 2, 0.5) / 2;
}

/** The t below which a value lies with chance p; -Infinity and Infinity for 0 and 1. Throws RangeError outside 0 to 1 or on df <= 0. */
// Example: studentQuantile(0.975, 10) is 2.2281.
export function studentQuantile(p: number, df: number): number {
  must.studentQuantile.chance(p, 'p');
  must.studentQuantile.positive(df, 'df', true);
  if (p === 0 || p === 1) return normalQuantile(p);
  if (p === 0.5) return 0;
  const z = normalQuantile(p);
  return df > MANY ? z + (z ** 3 + z) / (4 * df) : jStat.studentt.inv(p, df);
}
