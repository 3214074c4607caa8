// The tests that C1 and C2 compare, and the groups that they are tried on. All hold their level at 5 %.

import type { Point } from '../../../src/archery/shots.ts';
import type { TwoGroups } from '../../../src/archery/two-groups.ts';
import type { Random } from '../../../src/maths/random.ts';
import { summarise, twoSample } from '../rivals/hotelling.ts';
import { pooledTP, welchP } from '../rivals/per-axis.ts';
import { roundGroupP } from '../rivals/round-group.ts';
import { away, honest, knownSpread, plus, times } from './world.ts';

export const LEVEL = 0.05;
/** Over both axes. Read as 8 on each axis it would find 3.35 spreads with 2 + 2 shots where 3.54 are printed. */
const PRIOR_DF = 8;

/** Two groups around one centre, which way they will be shifted, and how wide one shot was known to spread before. */
export interface Trial extends TwoGroups { readonly way: Point; readonly known: number }

export function trialOf(random: Random, n: number, wide = 1): Trial {
  const [a, b] = [times(n, () => honest(random)), times(n, () => honest(random, wide))];
  return { a, b, way: away(random, 1), known: knownSpread(random, PRIOR_DF) };
}

export const shifted = ({ a, b, way }: Trial, by: number): TwoGroups => ({ a, b: b.map((p) => plus(p, { x: by * way.x, y: by * way.y })) });

const rowsOf = (points: readonly Point[]): readonly (readonly number[])[] => points.map((p) => [p.x, p.y]);

/** Whether a difference is found, by the name of the test. */
export const TESTS: Readonly<Record<string, (groups: TwoGroups, trial: Trial) => boolean>> = {
  'Hotelling': ({ a, b }) => (twoSample(summarise(rowsOf(a)), summarise(rowsOf(b)))?.p ?? 1) < LEVEL,
  'Welch, two axes': (groups) => welchP(groups) < LEVEL,
  'pooled t, two axes': (groups) => pooledTP(groups) < LEVEL,
  'round F': (groups) => (roundGroupP(groups) ?? 1) < LEVEL,
  'round F, known spread': (groups, { known }) => (roundGroupP(groups, { sd: known, df: PRIOR_DF }) ?? 1) < LEVEL,
};
