// Every arrow against the typical one of its set. Arrows always differ a little, and of twelve tears one is always the worst:
// an arrow is called odd only where even the kind reading of its shots is further off than one usual spread. The plain rule
// of two standard deviations of the arrows' means calls a good arrow odd in 4 to 9 of 10 sets of like arrows (by simulation).
//
// The typical arrow is the median of the arrows' centres, taken on each axis by itself: one bent arrow does not move it, and a
// mirrored set has the mirrored median, to the last bit. A median over both axes at once (the point nearest to all) would
// also not care how the target is turned, but comes from an iteration that ends a little elsewhere for every order.

import { checks } from '../maths/check.ts';
import { huberCentre } from '../maths/huber.ts';
import { studentQuantile } from '../maths/student.ts';
import { median, sum } from '../maths/sum.ts';
import { checkPoints, checkPrior, type Point, type Spread } from './shots.ts';
import { betweenVariance, shrinkFactor } from './one-way.ts';
import { pooledSpread } from './spread.ts';
import { squaresAround } from './squares.ts';

const must = checks('screenArrows');

export { blame, tooManyOdd } from './arrow-rules.ts';
export { betweenVariance as betweenArrows } from './one-way.ts';

/** All good shots of one arrow as it is now, inches. */
export interface ArrowShots { readonly arrow: string; readonly shots: readonly Point[] }

export interface ArrowReading {
  readonly arrow: string;
  /** Its centre, inches; a shot far from its others counts only partly. */
  readonly mean: Point;
  /** How many full shots that rests on, on the axis that has fewer. */
  readonly count: number;
  /** From the typical arrow, inches. */
  readonly away: number;
  /** The same less what luck allows, 95 % for all arrows together (one-sided); below 0 where luck allows more. */
  readonly atLeast: number;
  /** How far off the typical arrow it is taken to be: the distance shrunk by what luck explains, inches. */
  readonly effect: Point;
  readonly odd: boolean;
}

export interface ArrowSet {
  readonly typical: Point;
  /** Of one shot of one arrow; df over both axes. */
  readonly spread: Spread;
  /** How much the arrows truly differ, inches on one axis. */
  readonly betweenSd: number;
  /** In the order given, without those that have no shot. */
  readonly arrows: readonly ArrowReading[];
}

/** All odd calls together are wrong so often at the most where arrows differ by nothing. */
const ALARM = 0.05;
/** Variance of a median against that of a mean, many arrows (derived: pi / 2); a little too much for few. */
export const MEDIAN_COST = Math.PI / 2;
/** The pooled spread comes out 5 to 6 % small where nothing strays (see spread.ts); luck is not to be made small with it. */
const TOO_SMALL = 1.06;

/**
 * Reads a set. Two or three shots of each arrow; numbers may differ. `prior` is the archer's own spread at this paper (df per
 * axis, as in pooledSpread), null where none is known: then some arrow needs two shots.
 * By simulation of six and of twelve arrows, three shots each: a good arrow is called odd in fewer than 1 of 100 sets of like arrows, in 4 to 5
 * where the arrows truly differ by half a spread; one that is 4 spreads off is found in 89 to 94, one 2.5 off in 40 to 43 (two shots each: 77
 * to 80 and 26). Where one shot in twenty strays fourfold and nothing is known before, 73 to 79 and 26. Throws RangeError on no shots at all,
 * or on a number that cannot be meant.
 */
// Example: screenArrows([{ arrow: 'a', shots: [{ x: 0, y: 0 }] }, { arrow: 'b', shots: [{ x: 0, y: 1 }] }], { sd: 0.2, df: 8 }).typical is
// { x: 0, y: 0.5 }.
export function screenArrows(set: readonly ArrowShots[], prior: Spread | null): ArrowSet {
  const shot = set.filter(({ shots }) => shots.length > 0);
  for (const { shots } of shot) checkPoints(must.screenArrows, shots, 'a tear');
  if (prior !== null) checkPrior(must.screenArrows, prior);
  if (shot.length === 0) throw must.screenArrows.error('no arrow has a shot; shoot each arrow before the set is judged');
  const spread = spreadWithin(shot.map(({ shots }) => shots), prior);
  const centres = shot.map(({ arrow, shots }) => {
    const [x, y] = [huberCentre(shots.map((s) => s.x), spread.sd), huberCentre(shots.map((s) => s.y), spread.sd)];
    return { arrow, x, y, count: Math.min(x.count, y.count) };
  });
  const typical: Point = { x: median(centres.map((c) => c.x.centre)), y: median(centres.map((c) => c.y.centre)) };
  const axes = (['x', 'y'] as const).map((axis) => centres.map((c) => ({ mean: c[axis].centre, count: c[axis].count })));
  const between = betweenVariance(axes, spread.sd ** 2);
  const typicalVariance = (MEDIAN_COST * sum(centres.map((c) => 1 / c.count))) / centres.length ** 2;
  const t = studentQuantile(1 - ALARM / shot.length, spread.df);

  const arrows = centres.map(({ arrow, x, y, count }): ArrowReading => {
    const off: Point = { x: x.centre - typical.x, y: y.centre - typical.y };
    const away = Math.hypot(off.x, off.y);
    const atLeast = away - t * TOO_SMALL * spread.sd * Math.sqrt(1 / count + typicalVariance);
    const own = (axis: 'x' | 'y', n: number): number => shrinkFactor(between, spread.sd ** 2, n) * off[axis];
    return {
      arrow, mean: { x: x.centre, y: y.centre }, count, away, atLeast,
      effect: { x: own('x', x.count), y: own('y', y.count) },
      odd: atLeast > spread.sd,
    };
  });
  return { typical, spread, betweenSd: Math.sqrt(between), arrows };
}

function spreadWithin(groups: readonly (readonly Point[])[], prior: Spread | null): Spread {
  if (prior !== null) return pooledSpread(groups, prior);
  const each = groups.map(squaresAround);
  const df = sum(each.map((s) => s.df));
  if (df === 0) throw must.screenArrows.error('no arrow has two shots and no usual spread is known; shoot a second round first');
  const plain = Math.sqrt(sum(each.map((s) => s.squares)) / df);
  // The plain spread only says from where on a shot strays; it is no knowledge of its own, so it is worth next to no df.
  return pooledSpread(groups, { sd: Math.max(LEAST, plain), df: NOTHING });
}
const LEAST = 0.03;
const NOTHING = 1e-9;
