// Two groups compared over both axes at once, with one spread for all: the test that C1 recommends where a yes or no is wanted. The walk
// asks for more (how likely is the difference within a margin, on each axis), so it stands here beside the tests that it beats.

import type { Spread } from '../../../src/archery/shots.ts';
import { squaresAround } from '../../../src/archery/squares.ts';
import type { TwoGroups } from '../../../src/archery/two-groups.ts';
import type { Point } from '../../../src/archery/shots.ts';
import { sum } from '../../../src/maths/sum.ts';

const NOTHING: Spread = { sd: 1, df: 0 };

/**
 * Chance that two groups with one centre would lie at least this far apart; small means that they differ. F on 2 and
 * df = 2 (na + nb - 2) degrees of freedom; with 2 above, F's tail is a plain power (derived). Holds its level also where
 * broadheads spread 1.5 times as wide (5 to 6 %, equal numbers). `known` is the spread as it was known before, df over both axes; it
 * must be of both kinds, or the level is lost (7 to 9 %). null where a group is empty, or where the spread rests on nothing.
 */
export function roundGroupP({ a, b }: TwoGroups, known = NOTHING): number | null {
  if (a.length === 0 || b.length === 0) return null;
  const own = [squaresAround(a), squaresAround(b)];
  const df = known.df + sum(own.map((s) => s.df));
  if (df === 0) return null;
  const within = known.df * known.sd ** 2 + sum(own.map((s) => s.squares));
  const between = apart({ a, b }, 'x') ** 2 + apart({ a, b }, 'y') ** 2;
  if (between === 0) return 1;
  return within === 0 ? 0 : (1 + between / (1 / a.length + 1 / b.length) / within) ** (-df / 2);
}

function apart({ a, b }: TwoGroups, axis: keyof Point): number {
  return sum(b.map((p) => p[axis])) / b.length - sum(a.map((p) => p[axis])) / a.length;
}
