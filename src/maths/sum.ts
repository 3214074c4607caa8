// Sums that do not depend on the order of the terms, and whose sign flips exactly when every term's does.
// Plain floating-point addition has neither property; verdicts must not change in the last digit because
// the archer told the same tears in another order, or because the bow is left-handed.

import { checks } from './check.ts';

const must = checks('sum', 'median');

/** Sum of `values`. Positive and negative terms are each added from small to large, then subtracted. Throws RangeError unless all are finite. */
// Example: sum([0.1, 0.2, -0.1, -0.2]) is 0.
export function sum(values: readonly number[]): number {
  let plus = 0;
  let minus = 0;
  for (const value of bySize(values)) {
    must.sum.finite(value, 'a term');
    if (value > 0) plus += value;
    else minus -= value;
  }
  return plus - minus;
}

/** A set of shots has so many terms at the most, and is summed thousands of times in a tune: put in by hand they are in order sooner. */
const FEW = 16;

function bySize(values: readonly number[]): readonly number[] {
  // Of two terms it is all one which comes first.
  if (values.length < 3) return values;
  const inOrder = values.slice();
  if (values.length > FEW) return inOrder.sort((a, b) => Math.abs(a) - Math.abs(b));
  for (let i = 1; i < inOrder.length; i++) {
    const value = inOrder[i] ?? 0;
    let k = i;
    for (; k > 0 && Math.abs(inOrder[k - 1] ?? 0) > Math.abs(value); k--) inOrder[k] = inOrder[k - 1] ?? 0;
    inOrder[k] = value;
  }
  return inOrder;
}

/** Middle value; the mean of the two middle ones where the count is even. Throws RangeError on no values, or one that is not finite. */
// Example: median([4, 1, 2, 3]) is 2.5.
export function median(values: readonly number[]): number {
  for (const value of values) must.median.finite(value, 'a value');
  if (values.length === 0) throw must.median.error('there is no middle of no values; give at least one');
  const half = values.length / 2;
  const middle = [...values].sort((a, b) => a - b).slice(Math.ceil(half) - 1, Math.floor(half) + 1);
  return sum(middle.map((value) => value / middle.length));
}
