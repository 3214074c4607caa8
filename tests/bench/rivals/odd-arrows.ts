// Rules that tell odd arrows apart and that the walk does not use. Each takes all arrows' shots and says of each arrow whether it is odd.
// Plain means throughout; y is taken with x, since a tear has no favourite axis.

import { squaresAround } from '../../../src/archery/squares.ts';
import type { Point } from '../../../src/archery/shots.ts';
import { fAbove } from '../../../src/maths/fisher.ts';
import { studentQuantile } from '../../../src/maths/student.ts';
import { median } from '../../../src/maths/sum.ts';

type Shots = readonly (readonly Point[])[];

const meanOf = (points: readonly Point[]): Point => ({
  x: points.reduce((total, p) => total + p.x, 0) / points.length,
  y: points.reduce((total, p) => total + p.y, 0) / points.length,
});
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Variance of one shot on one axis, all arrows and both axes together, and its df. */
function within(arrows: Shots): { readonly variance: number; readonly df: number } {
  const each = arrows.map(squaresAround);
  const df = each.reduce((total, s) => total + s.df, 0);
  return { variance: each.reduce((total, s) => total + s.squares, 0) / df, df };
}

/** Further from the mean arrow than two standard deviations of the arrows' means: of like arrows one is called odd in 4 to 9 of 10 sets. */
export function beyondTwoSd(arrows: Shots): readonly boolean[] {
  const means = arrows.map(meanOf);
  const { squares, df } = squaresAround(means);
  const centre = meanOf(means);
  return means.map((mean) => apart(mean, centre) > 2 * Math.sqrt(squares / df));
}

/** F of one arrow against all others, on 2 df, at a level for each arrow. It finds true differences that do no harm in up to half of the sets. */
export function againstRest(arrows: Shots, level: number): readonly boolean[] {
  const means = arrows.map(meanOf);
  const { variance, df } = within(arrows);
  return arrows.map((shots, i) => {
    const others = arrows.flatMap((other, j) => (j === i ? [] : other));
    const distance = apart(means[i] ?? meanOf([]), meanOf(others));
    return fAbove(distance ** 2 / (2 * variance * (1 / shots.length + 1 / others.length)), 2, df) < level;
  });
}

/** Variance of a median against that of a mean of many. */
const MEDIAN_COST = 1.57;

/**
 * What the walk's screening (screenArrows) was made from: odd where even the kind reading lies more than one spread off the median arrow,
 * all calls together wrong at the level. Equal numbers of shots.
 */
export function beyondOneSpread(arrows: Shots, level: number): readonly boolean[] {
  const means = arrows.map(meanOf);
  const { variance, df } = within(arrows);
  const typical = { x: median(means.map((m) => m.x)), y: median(means.map((m) => m.y)) };
  const t = studentQuantile(1 - level / arrows.length, df);
  return arrows.map((shots, i) => {
    const luck = t * Math.sqrt(variance * (1 / shots.length + MEDIAN_COST / (shots.length * arrows.length)));
    return apart(means[i] ?? meanOf([]), typical) - luck > Math.sqrt(variance);
  });
}
