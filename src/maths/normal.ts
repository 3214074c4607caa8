// The normal distribution with mean 0 and standard deviation 1.
// A NaN is never given back.

import jStat from 'jstat';
import { checks } from './check.ts';

const must = checks('normalCdf', 'normalQuantile');

/** Chance of a value below z. normalCdf(-z) + normalCdf(z) is 1. Throws RangeError on NaN. */
// Example: normalCdf(1.96) is 0.9750.
export function normalCdf(z: number): number {
  must.normalCdf.number(z, 'z');
  if (z > 0) return 1 - normalCdf(-z);
  if (z === 0) return 0.5;
  if (z < -38) return 0; // below the smallest double
  return (1 - jStat.erf(-z / Math.SQRT2)) / 2;
}

/** The z below which a value lies with chance p; -Infinity and Infinity for 0 and 1. Throws RangeError outside 0 to 1. */
// Example: normalQuantile(0.975) is 1.95996.
export function normalQuantile(p: number): number {
  must.normalQuantile.chance(p, 'p');
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p === 0) return -Infinity;
  return p === 0.5 ? 0 : jStat.normal.inv(p, 0, 1);
}
