// The two tears of a set that lie furthest apart, and the same once the odd one is left out.

import { checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { checkPoints, type Point } from './shots.ts';

const must = checks('widest');

export type { Point } from './shots.ts';

export interface Widest {
  /** Largest distance between two shots, inches; 0 for fewer than two. */
  readonly pair: number;
  /** The same after leaving out the shot whose removal shrinks it most; null for fewer than four. */
  readonly oddOut: number | null;
  /** Index of that shot; null for fewer than four, or where two shots are equally odd. */
  readonly odd: number | null;
}

/** The two shots furthest apart, with and without the odd one. Throws RangeError on a shot that is not a finite number. */
// Example: widest([{ x: 0, y: 0 }, { x: 3, y: 4 }]) is { pair: 5, oddOut: null, odd: null }.
export function widest(shots: readonly Point[]): Widest {
  checkPoints(must.widest, shots, 'a tear');
  const apart = shots.map((a) => shots.map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  const widestWithout = (left: number): number =>
    apart.reduce((most, row, i) => (i === left ? most : row.reduce((m, d, j) => (j === left ? m : Math.max(m, d)), most)), 0);
  const pair = widestWithout(-1);
  if (shots.length < 4) return { pair, oddOut: null, odd: null };

  const without = apart.map((row, i) => ({ i, widest: widestWithout(i), far: sum(row) }));
  const oddOut = Math.min(...without.map((one) => one.widest));
  // Tears are told in sixteenths, so ties are common: the shot further from all others is the odd one.
  const candidates = without.filter((one) => one.widest === oddOut);
  const furthest = Math.max(...candidates.map((one) => one.far));
  const odd = candidates.filter((one) => one.far === furthest).map((one) => one.i);
  return { pair, oddOut, odd: odd.length === 1 ? Math.max(...odd) : null };
}
