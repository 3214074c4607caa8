// Where a shot went and how far shots stray, and what every function asks of both. `must` carries the name of the one that was called.

import type { Checks } from '../maths/check.ts';

/** Inches, x to the right and y up: a tear in paper, or an impact from its dot. */
export interface Point { readonly x: number; readonly y: number }

/** Spread of one shot on one axis (inches), and the degrees of freedom behind it. */
export interface Spread { readonly sd: number; readonly df: number }

/** What a point must be. Throws RangeError in the name that `must` carries unless both figures are measures. */
// Example: checkPoint(checks('checkPoint').checkPoint, { x: 0, y: NaN }, 'a tear') throws 'checkPoint: a tear is NaN; a finite number is needed'.
export function checkPoint(must: Checks, { x, y }: Point, what: string): void {
  must.measure(x, what);
  must.measure(y, what);
}

/** The same of each. Throws RangeError as checkPoint does. */
// Example: checkPoints(checks('checkPoints').checkPoints, [{ x: 0, y: 0 }, { x: NaN, y: 0 }], 'a tear') throws 'checkPoints: a tear is NaN; a finite number is needed'.
export function checkPoints(must: Checks, points: readonly Point[], what: string): void {
  for (const point of points) checkPoint(must, point, what);
}

/** What a spread must be; with `Infinity` degrees of freedom it is known. Throws RangeError in the name that `must` carries unless both are above 0. */
// Example: checkSpread(checks('checkSpread').checkSpread, { sd: 0, df: 8 }) throws 'checkSpread: the spread is 0; a number above 0 is needed'.
export function checkSpread(must: Checks, { sd, df }: Spread): void {
  must.size(sd, 'the spread');
  must.size(df, 'the df of the spread', true);
}

/** What was known before the shots: it is worth a number of shots, so its degrees of freedom have an end.
 *  Throws RangeError in the name that `must` carries unless both are above 0 and finite. */
// Example: checkPrior(checks('checkPrior').checkPrior, { sd: 1, df: Infinity }) throws 'checkPrior: the df known beforehand is Infinity; a number above 0 is needed'.
export function checkPrior(must: Checks, { sd, df }: Spread): void {
  must.size(sd, 'the spread known beforehand');
  must.size(df, 'the df known beforehand');
}
