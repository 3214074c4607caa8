// How far the shots of one group stray from their own centre, as plain squares: for tests that need the textbook's variance.

import { mustBeFinite } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import type { Point } from './widest.ts';

/** Sum of squared distances (in^2) from the mean over both axes, and its degrees of freedom; both 0 for fewer than two shots. */
export function squaresAround(shots: readonly Point[]): { readonly squares: number; readonly df: number } {
  const axes = [shots.map((s) => s.x), shots.map((s) => s.y)];
  for (const value of axes.flat()) mustBeFinite(value, 'a shot');
  if (shots.length < 2) return { squares: 0, df: 0 };
  const squares = axes.map((values) => {
    const mean = sum(values) / values.length;
    return sum(values.map((v) => (v - mean) ** 2));
  });
  return { squares: sum(squares), df: 2 * (shots.length - 1) };
}
