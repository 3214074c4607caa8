// Sums that do not depend on the order of the terms, and whose sign flips exactly when every term's does.
// Plain floating-point addition has neither property; verdicts must not change in the last digit because
// the archer told the same tears in another order, or because the bow is left-handed.

import { mustBeFinite } from './check.ts';

/** Sum of `values`. Positive and negative terms are each added from small to large, then subtracted. */
export function sum(values: readonly number[]): number {
  let plus = 0;
  let minus = 0;
  // Of two terms it is all one which comes first.
  for (const value of values.length < 3 ? values : [...values].sort((a, b) => Math.abs(a) - Math.abs(b))) {
    mustBeFinite(value, 'a term of a sum');
    if (value > 0) plus += value;
    else minus -= value;
  }
  return plus - minus;
}

/** Middle value; the mean of the two middle ones where the count is even. Throws RangeError where there are none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)];
  const high = sorted[Math.ceil((sorted.length - 1) / 2)];
  if (low === undefined || high === undefined) throw new RangeError('there is no middle of no values; give at least one');
  mustBeFinite(low + high, 'the middle value');
  return (low + high) / 2;
}
