// What many shots say, for tests of what is drawn.

import { expect } from 'vitest';
import { sum } from '../../src/maths/sum.ts';

export const mean = (values: readonly number[]): number => sum(values) / values.length;

export function spread(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(sum(values.map((value) => (value - middle) ** 2)) / (values.length - 1));
}

/** A share is what it is said to be, within three standard errors. */
export const often = (hits: number, of: number, p: number): void => expect(Math.abs(hits / of - p)).toBeLessThanOrEqual(3 * Math.sqrt((p * (1 - p)) / of));

/** So is a mean, and a spread (its error is 1 in the root of 2 n for normal values). */
export const means = (values: readonly number[], expected: number): void =>
  expect(Math.abs(mean(values) - expected)).toBeLessThanOrEqual((3 * spread(values)) / Math.sqrt(values.length));
export const spreads = (values: readonly number[], expected: number): void =>
  expect(Math.abs(spread(values) / expected - 1)).toBeLessThanOrEqual(3 / Math.sqrt(2 * values.length));
