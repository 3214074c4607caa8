// C2: what a number of shots can see: the shift found with 80 % power, in spreads of one shot on one axis; and the margin within which no
// difference can be shown.
//
// The shift is where the simulated power crosses 80 %, the same groups shifted further and further. How many trials are behind the printed
// ones is not said; 4,000 are taken, as in C1. The margin's printed figures follow from (t at 95 % + z at 90 %) * sqrt(2 / n), t on
// 8 + 4 (n - 1) df (both axes), the spread as if it came out right; with its own chance worked in they would be 1 to 2 % larger.

import { normalQuantile } from '../../../src/maths/normal.ts';
import { seededRandom } from '../../../src/maths/random.ts';
import { studentQuantile } from '../../../src/maths/student.ts';
import { fAbove } from '../../../src/maths/fisher.ts';
import { cellOf, ERRORS, exact, halfDigit, type Cell } from './cell.ts';
import { shifted, TESTS, trialOf, type Trial } from './c-rules.ts';
import { figuresOf, rowsOf, type Table } from './table.ts';
import { times } from './world.ts';

const TRIALS = 2500;
const THEIRS = 4000;
const POWER = 0.8;
const SIMULATED = ['Hotelling', 'Welch, two axes', 'round F', 'round F, known spread'];

const PRINTED = `
2 | – | 16.14 | 4.75 | 3.54 | 3.10 | 3.06
3 | 4.63 | 4.62 | 3.12 | 2.78 | 2.53 | 2.47
4 | 3.06 | 3.12 | 2.46 | 2.39 | 2.19 | 2.13
5 | 2.48 | 2.52 | 2.19 | 2.06 | 1.96 | 1.89
6 | 2.14 | 2.17 | 1.94 | 1.88 | 1.79 | 1.72
8 | 1.78 | 1.79 | 1.62 | 1.63 | 1.55 | 1.48
10 | 1.52 | 1.56 | 1.43 | 1.43 | 1.39 | 1.32`;

/** One axis, spread known: difference or margin, shots of each kind to show there is none, shots to find it. */
const KNOWN = `
0.5 | 69 | 63
0.75 | 31 | 28
1 | 18 | 16
1.5 | 8 | 7
2 | 5 | 4
2.5 | 3 | 3
3 | 2 | 2`;

/** Where something that grows with x passes `goal`, between 0 and `most`. */
function crossing(goal: number, most: number, at: (x: number) => number, steps: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < steps; i++) {
    const middle = (low + high) / 2;
    if (at(middle) < goal) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function simulatedCell(seed: number, n: number, name: string, printed: string): Cell {
  const test = TESTS[name];
  if (test === undefined) throw new Error(`there is no test called ${name}`);
  const random = seededRandom(seed);
  const trials: readonly Trial[] = times(TRIALS, () => trialOf(random, n));
  const power = (by: number): number => trials.filter((trial) => test(shifted(trial, by), trial)).length / TRIALS;
  const got = crossing(POWER, 32, power, 13);
  const slope = (power(1.1 * got) - power(0.9 * got)) / (0.2 * got);
  const error = Math.sqrt(POWER * (1 - POWER) * (1 / TRIALS + 1 / THEIRS)) / slope;
  return cellOf(TABLE, `${n}+${n}, ${name}: shift found with 80 %`, { expected: Number(printed), got, tolerance: ERRORS * error + halfDigit(printed) });
}

/** Both axes, spread known: a chi-square on 2 df that is off centre is a mixture of such with 2 + 2 j df, j by Poisson. */
function knownPower(shift: number, n: number): number {
  const limit = -2 * Math.log(0.05); // 5 % of chi-square on 2 df, whose tail is exp(-x / 2)
  const half = (n * shift ** 2) / 4;
  let [weight, power] = [Math.exp(-half), 0];
  for (let j = 0; j < 200; j++) {
    power += weight * fAbove(limit / (2 + 2 * j), 2 + 2 * j, Infinity);
    weight *= half / (j + 1);
  }
  return power;
}

const margin = (n: number): number => (studentQuantile(0.95, 8 + 4 * (n - 1)) + normalQuantile(0.9)) * Math.sqrt(2 / n);
const shotsFor = (difference: number, z: number): number => Math.ceil(2 * (z / difference) ** 2);

const TABLE = 'C2 what n can see';

function run(seed: number): { cells: readonly Cell[]; own: [] } {
  const byShots = rowsOf(PRINTED).flatMap(([shots = '', ...entries], i) => {
    const n = Number(shots);
    const simulated = SIMULATED.flatMap((name, j) => figuresOf(entries[j] ?? '').map((printed) => simulatedCell(seed + 10 * i + j, n, name, printed)));
    return [
      ...simulated,
      cellOf(TABLE, `${n}+${n}, spread known: shift found with 80 %`, exact(entries[4] ?? '', crossing(POWER, 6, (by) => knownPower(by, n), 50))),
      cellOf(TABLE, `${n}+${n}, margin within which none is shown with 80 %`, exact(entries[5] ?? '', margin(n))),
    ];
  });
  const known = rowsOf(KNOWN).flatMap(([size = '', none = '', found = '']) => [
    cellOf(TABLE, `one axis, spread known: shots of each to show less than ${size}`, exact(none, shotsFor(Number(size), normalQuantile(0.95) + normalQuantile(0.9)))),
    cellOf(TABLE, `one axis, spread known: shots of each to find ${size}`, exact(found, shotsFor(Number(size), normalQuantile(0.975) + normalQuantile(0.8)))),
  ]);
  return { cells: [...byShots, ...known], own: [] };
}

export const C2: Table = {
  id: 'C2', name: TABLE, about: `ours ${TRIALS} pairs of groups, theirs ${THEIRS} (not stated, taken from C1); margins and known spreads exact`,
  run,
};
