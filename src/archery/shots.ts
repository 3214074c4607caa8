// Where a shot went and how far shots stray, and what every function asks of both. `must` carries the name of the one that was called.

import type { Checks } from '../maths/check.ts';

/** Inches, x to the right and y up: a tear in paper, or an impact from its dot. */
export interface Point { readonly x: number; readonly y: number }

/** Spread of one shot on one axis (inches), and the degrees of freedom behind it. */
export interface Spread { readonly sd: number; readonly df: number }

export function checkPoint(must: Checks, { x, y }: Point, what: string): void {
  must.measure(x, what);
  must.measure(y, what);
}

export function checkPoints(must: Checks, points: readonly Point[], what: string): void {
  for (const point of points) checkPoint(must, point, what);
}

/** `Infinity` degrees of freedom: the spread is known. */
export function checkSpread(must: Checks, { sd, df }: Spread): void {
  must.size(sd, 'the spread');
  must.size(df, 'the df of the spread', true);
}

/** What was known before the shots: it is worth a number of shots, so its degrees of freedom have an end. */
export function checkPrior(must: Checks, { sd, df }: Spread): void {
  must.size(sd, 'the spread known beforehand');
  must.size(df, 'the df known beforehand');
}
