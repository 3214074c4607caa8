// A share or a mean with its 95 % interval.

import { sum } from '../../../src/maths/sum.ts';
import { moments } from '../methods/cell.ts';

export interface Interval { readonly value: number; readonly low: number; readonly high: number; readonly of: number }

/** 97.5 % of a normal distribution lie below. */
const Z = 1.959964;

/** Wilson's score interval (Wilson 1927), which holds also where nearly none or nearly all are so. Of nothing: anything. */
// Example: shareWithin([1, 2, 3, 4], (n) => n > 2) has value 0.5, low 0.150 and high 0.850.
export function shareWithin<T>(all: readonly T[], is: (one: T) => boolean): Interval {
  const of = all.length;
  if (of === 0) return { value: 0, low: 0, high: 1, of };
  const value = all.filter(is).length / of;
  const [shrunk, middle] = [1 + Z ** 2 / of, value + Z ** 2 / (2 * of)];
  const half = Z * Math.sqrt((value * (1 - value)) / of + Z ** 2 / (4 * of ** 2));
  return { value, low: Math.max(0, (middle - half) / shrunk), high: Math.min(1, (middle + half) / shrunk), of };
}

/** The mean, and two standard errors of it each way. Of fewer than two there is no interval: both ends are the mean. */
export function meanWithin<T>(all: readonly T[], count: (one: T) => number): Interval {
  const of = all.length;
  const values = all.map(count);
  if (of < 2) return { value: sum(values), low: sum(values), high: sum(values), of };
  const { mean, sd } = moments(values);
  const half = (Z * sd) / Math.sqrt(of);
  return { value: mean, low: mean - half, high: mean + half, of };
}
