// Do the broadheads scatter? Then their centre is luck, and no adjustment of the bow mends it: spin, heads, vanes and contact do.

import { checks } from '../maths/check.ts';
import { fAbove } from '../maths/fisher.ts';
import { sum } from '../maths/sum.ts';
import { checkPoints, type Point } from './shots.ts';
import { squaresAround } from './squares.ts';

const must = checks('scatters');

/** Broadheads honestly spread this much wider than field points (ratio of spreads). */
const HONEST = 1.5;
/** Below this ratio nobody would call it scatter, however sure. */
const SCATTER = 2;
const ALARM = 0.05;
/** Nobody tells an impact closer than to a quarter of an inch: its rounding (derived: width / sqrt 12) is the least spread. */
const LEAST = 0.25 / Math.sqrt(12);

/**
 * Whether group b is more than twice as wide as group a, and wider than 1.5 times beyond luck (5 %, one-sided; F test on the
 * pooled variances, which uses every shot where the widest pair uses two). Impacts in inches, each group around its own
 * centre; all groups at one distance. Pairs with an empty b add the archer's own field-point shots from before.
 * False where one side has no two shots. Throws RangeError on an impact that is not a finite number.
 *
 * Power, derived from the F distribution: b three times as wide is seen by 3 + 3 shots in 33 of 100 cases, by 4 + 4 in 47,
 * by 6 + 6 in 68; by 3 broadheads with a known from 12 groups of three in 63. So false is no proof of the contrary. Honest
 * broadheads, 1.5 times as wide, are called scattered in 5; in 10 to 14 where one shot in twenty strays fourfold (simulated): look twice.
 */
// Example: scatters([{ a: [{ x: 0, y: 0 }, { x: 1, y: 1 }], b: [{ x: 0, y: 0 }, { x: 20, y: 20 }] }]) is true.
export function scatters(groups: readonly { readonly a: readonly Point[]; readonly b: readonly Point[] }[]): boolean {
  for (const { a, b } of groups) checkPoints(must.scatters, [...a, ...b], 'an impact');
  const [a, b] = [pooled(groups.map((g) => g.a)), pooled(groups.map((g) => g.b))];
  // Without two shots on a side there is no ratio, and what is no number is not beyond anything.
  const ratio = (b.squares / b.df) / Math.max(LEAST ** 2, a.squares / a.df);
  return ratio > SCATTER ** 2 && fAbove(ratio / HONEST ** 2, b.df, a.df) < ALARM;
}

function pooled(groups: readonly (readonly Point[])[]): { readonly squares: number; readonly df: number } {
  const each = groups.map(squaresAround);
  return { squares: sum(each.map((s) => s.squares)), df: sum(each.map((s) => s.df)) };
}
