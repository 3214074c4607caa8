// How many decisions of each kind this machine makes in a second: the median of several rounds, by the processor's time and not the clock's,
// since other work on the machine is no matter of ours. No limit, nothing to pass: it is there to see that a change made something ten times slower.

import { screenArrows } from '../../../src/archery/arrow-set.ts';
import { judgeConsistency } from '../../../src/archery/consistency.ts';
import { bestSetting, fitLine } from '../../../src/archery/response.ts';
import { pooledSpread } from '../../../src/archery/spread.ts';
import { chanceWithin } from '../../../src/archery/tolerance.ts';
import { difference, judgeDifference } from '../../../src/archery/two-groups.ts';
import { judgeAxis } from '../../../src/machine/loop/judge.ts';
import { huberCentre } from '../../../src/maths/huber.ts';
import { seededRandom } from '../../../src/maths/random.ts';
import { median } from '../../../src/maths/sum.ts';
import { content, stateOf } from '../../machine/state-of.ts';
import { honest, times } from '../methods/world.ts';

const ROUNDS = 9;
const ROUND_SECONDS = 0.04;
/** Asking for the time costs as much as the cheapest decision. */
const BETWEEN_LOOKS = 10;

const random = seededRandom(1);
const shots = (n: number) => times(n, () => honest(random, 0.2));
const SIX = shots(6);
const SEVEN = shots(7);
const SETS = times(6, () => shots(3));
const ARROWS = times(12, (i) => ({ arrow: `${i}`, shots: shots(3) }));
const SETTINGS = [{ x: 0, mean: 1, count: 3, group: 0 }, { x: -8, mean: 0.45, count: 3, group: 0 }, { x: -13, mean: 0.1, count: 3, group: 0 }];
const GROUPS = { a: shots(6), b: shots(6) };
const SPREAD = { sd: 0.2, df: 16 };
const STATE = stateOf({ sets: [{ shots: SIX.map(({ x, y }) => [x, y] as const) }] });

const WORK: readonly (readonly [string, () => unknown])[] = [
  ['huberCentre, 6 shots', () => huberCentre(SIX.map((p) => p.x), 0.2)],
  ['pooledSpread, 6 sets of 3', () => pooledSpread(SETS)],
  ['chanceWithin', () => chanceWithin(0.1, 0.08, 9, -0.25, 0.25)],
  ['judgeConsistency, 7 shots', () => judgeConsistency(SEVEN, SPREAD)],
  ['fitLine and bestSetting, 3 settings', () => bestSetting(fitLine(SETTINGS, 0.2, { mean: 0.094, sd: 0.056 }, 0))],
  ['difference and judgeDifference, 6 + 6', () => { const d = difference(GROUPS, 0.2); return d && judgeDifference(d.mean.x, d.count.x, SPREAD, 0, 0.3); }],
  ['screenArrows, 12 arrows x 3', () => screenArrows(ARROWS, null)],
  ['judgeAxis, the walk\'s whole judgement of a set of 6', () => judgeAxis(content, STATE, 'side')],
];

/** Of the processor, spent by this program so far. */
function seconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function perSecond(work: () => unknown): number {
  return median(times(ROUNDS, () => {
    const began = seconds();
    let done = 0;
    while (seconds() - began < ROUND_SECONDS) {
      for (let i = 0; i < BETWEEN_LOOKS; i++) work();
      done += BETWEEN_LOOKS;
    }
    return done / (seconds() - began);
  }));
}

export function speedLines(): readonly string[] {
  const width = Math.max(...WORK.map(([name]) => name.length));
  return [
    `decisions in a second of one core, median of ${ROUNDS} rounds, Node ${process.versions.node}, as measured on this machine now`,
    ...WORK.map(([name, work]) => `  ${name.padEnd(width)}  ${Math.round(perSecond(work)).toLocaleString('en').padStart(9)}`),
  ];
}
