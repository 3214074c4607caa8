// How far a figure may be from the published one. A share of it, or half of the last digit that is printed.

import { expect } from 'vitest';

/** Within `share` of what is published (1e-9 is nine digits). */
export function near(found: number, published: number, share: number, what = 'figure'): void {
  expect(Math.abs(found / published - 1), `${what}: ${found}, published ${published}`).toBeLessThan(share);
}

/** Rounds to what is printed: `digits` after the point. */
export function prints(found: number, published: number, digits: number, what = 'figure'): void {
  // A hair more than half a digit: the printed figure is itself rounded.
  expect(Math.abs(found - published), `${what}: ${found}, printed ${published}`).toBeLessThanOrEqual(0.5000001 * 10 ** -digits);
}
