// Every rival on one bow of the bench.

import { seededRandom } from '../../../src/maths/random.ts';
import { allBows } from '../rivals/all-bows.ts';
import { blendedLine } from '../rivals/blended-line.ts';
import { byMean, chart, confirmed } from '../rivals/chart.ts';
import type { Rule } from '../rivals/one-knob.ts';
import { oracle } from '../rivals/oracle.ts';
import { randomKeep } from '../rivals/random-keep.ts';
import { secant } from '../rivals/secant.ts';
import { Hands, type Outcome } from './hands.ts';
import { isFixable, type KnobBow, type Wanted, type World } from './world.ts';

/** 1/32 in; at least one step. */
const steps = (inches: number, { stepInches }: World): number => Math.max(1, Math.round(inches / stepInches));

/** Steps: 1/8 in where one is 1/64 in. */
const CAP = 8;

export const RIVALS = {
  allBows: () => allBows,
  blendedLine: () => blendedLine,
  chart: (world) => chart(byMean, steps(1 / 32, world)),
  chartConfirmed: (world) => chart(confirmed, steps(1 / 32, world)),
  secant: (world) => secant(byMean, steps(1 / 32, world)),
  secantConfirmed: (world) => secant(confirmed, steps(1 / 32, world)),
  random: (_world, bow) => randomKeep(byMean, seededRandom(bow.seed + 2 ** 30)),
  oracle: (world, bow, wanted) => oracle(bow.response, isFixable(world, bow, wanted)),
} as const satisfies Readonly<Record<string, (world: World, bow: KnobBow, wanted: Wanted) => Rule>>;

export type RivalName = keyof typeof RIVALS;
export const RIVAL_NAMES = Object.keys(RIVALS) as readonly RivalName[];

export function playRival(name: RivalName, world: World, bow: KnobBow, wanted: Wanted, side: 1 | -1 = 1): Outcome {
  const hands = new Hands(world, bow, wanted, side);
  const rule: Rule = RIVALS[name](world, bow, wanted);
  const { tuned } = rule(hands, { book: world.book, reach: world.reach, cap: CAP, within: wanted.within });
  return hands.outcome(tuned);
}
