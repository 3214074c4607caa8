// How far the shots of one group stray from their own centre, as plain squares: for tests that need the textbook's variance.

import { checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { checkPoints, type Point } from './shots.ts';

const must = checks('squaresAround');

/** Sum of squared distances (in^2) from the mean over both axes, and its degrees of freedom; both 0 for fewer than two shots.
 *  Throws RangeError on a shot that is not a finite number. */
// Example: squaresAround([{ x: 0, y: 0 }, { x: 2, y: 0 }]) is { squares: 2, df: 2 }.
export function squaresAround(shots: readonly Point[]): { readonly squares: number; readonly df: number } {
  checkPoints(must.squaresAround, shots, 'a shot');
  if (shots.length < 2) return { squares: 0, df: 0 };
  const axes = [shots.map((s) => s.x), shots.map((s) => s.y)];
  const squares = axes.map((values) => {
    const mean = sum(values) / values.length;
    return sum(values.map((v) => (v - mean) ** 2));
  });
  return { squares: sum(squares), df: 2 * (shots.length - 1) };
}
