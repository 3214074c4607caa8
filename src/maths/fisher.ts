// Fisher's F distribution: the ratio of two variances that were each estimated from few shots.

import jStat from 'jstat';
import { checks } from './check.ts';

const must = checks('fAbove');

/**
 * Chance of a ratio above `f` on `df1` and `df2` degrees of freedom; `df2` may be Infinity (the spread below is known).
 * Throws RangeError on NaN, f < 0 or df <= 0; a NaN is never given back.
 */
// Example: fAbove(4.459, 2, 8) is 0.0500.
export function fAbove(f: number, df1: number, df2: number): number {
  if (!(f >= 0)) throw must.fAbove.error(`the ratio of two variances is ${f}; 0 or more is needed`);
  must.fAbove.positive(df1, 'the df of the upper variance');
  must.fAbove.positive(df2, 'the df of the lower variance', true);
  if (f === Infinity) return 0;
  if (df2 === Infinity) return 1 - jStat.chisquare.cdf(f * df1, df1);
  // The upper tail itself, not 1 less the lower one: small chances keep their digits.
  return jStat.ibeta(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
}
