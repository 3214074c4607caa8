// A3: how far apart the two tears furthest from each other may lie, in units of the spread, 99 % / 95 %.
//
// The printed limits are from 60,000 groups a cell. Held against them: a simulation of our own that uses `widest`, and the limits that
// are shipped (`pairLimits`), whose own error stands in the head of src/archery/consistency-limits.ts.

import { pairLimits } from '../../../src/archery/consistency.ts';
import { widest } from '../../../src/archery/widest.ts';
import { seededRandom } from '../../../src/maths/random.ts';
import { at, cellOf, ERRORS, halfDigit, quantile, type Cell } from './cell.ts';
import { figuresOf, rowsOf, type Table } from './table.ts';
import { honest, knownSpread, times } from './world.ts';

const GROUPS = 40_000;
const THEIRS = 60_000;
const DFS = [8, 16, 32, Infinity];
/** One standard error of a shipped limit, as a share of it. */
const SHIPPED = { 0.99: 0.002, 0.95: 0.0015 } as const;

const PRINTED = `
3 | 6.84 / 5.05 | 5.71 / 4.49 | 5.22 / 4.22 | 4.78 / 4.00 | – | – | – | –
4 | 7.49 / 5.59 | 6.12 / 4.88 | 5.53 / 4.59 | 5.02 / 4.30 | 4.88 / 3.57 | 4.03 / 3.18 | 3.67 / 3.00 | 3.36 / 2.83
5 | 8.01 / 5.93 | 6.42 / 5.17 | 5.81 / 4.83 | 5.21 / 4.50 | 5.61 / 4.18 | 4.59 / 3.66 | 4.12 / 3.44 | 3.77 / 3.22
6 | 8.29 / 6.25 | 6.64 / 5.40 | 5.98 / 5.04 | 5.37 / 4.69 | 6.19 / 4.61 | 4.90 / 4.00 | 4.44 / 3.73 | 3.96 / 3.47
7 | 8.59 / 6.49 | 6.87 / 5.60 | 6.10 / 5.18 | 5.50 / 4.82 | 6.55 / 4.91 | 5.16 / 4.26 | 4.62 / 3.96 | 4.16 / 3.67
8 | 8.80 / 6.65 | 6.98 / 5.75 | 6.26 / 5.33 | 5.60 / 4.94 | 6.83 / 5.17 | 5.43 / 4.48 | 4.85 / 4.15 | 4.29 / 3.83`;

function simulated(seed: number, n: number): readonly { readonly pair: number; readonly oddOut: number | null }[] {
  const random = seededRandom(seed + n);
  return times(GROUPS, () => widest(times(n, () => honest(random))));
}

function row(seed: number, [shots = '', ...entries]: readonly string[]): readonly Cell[] {
  const n = Number(shots);
  const widths = simulated(seed, n);
  const random = seededRandom(seed + 100 + n);
  return DFS.flatMap((df, i) => {
    const spreads = widths.map(() => knownSpread(random, df));
    const limits = pairLimits(n, df);
    const sets = [
      { what: 'pair', entry: entries[i], values: widths.map((w, j) => w.pair / (spreads[j] ?? NaN)), shipped: [limits.pair99, limits.pair95] },
      { what: 'odd one out', entry: entries[i + DFS.length], values: widths.map((w, j) => (w.oddOut ?? NaN) / (spreads[j] ?? NaN)), shipped: [limits.oddOut99, limits.oddOut95] },
    ];
    return sets.flatMap(({ what, entry = '', values, shipped }) => {
      const printed = figuresOf(entry);
      if (printed.length === 0) return [];
      const sorted = values.sort((a, b) => a - b);
      return ([0.99, 0.95] as const).flatMap((level, k) => {
        const figure = printed[k] ?? '';
        const cell = `${n} shots, ${what}, df ${df}, ${100 * level} %`;
        return [
          cellOf(TABLE, `${cell}, simulated`, quantile(figure, sorted, level, THEIRS)),
          cellOf(TABLE, `${cell}, shipped`, { expected: Number(figure), got: shipped[k] ?? NaN, tolerance: shippedError(sorted, level, shipped[k] ?? NaN) + halfDigit(figure) }),
        ];
      });
    });
  });
}

/** Three standard errors: the printed limit's by the slope of the simulated figures around it, the shipped one's as its source states. */
function shippedError(sorted: readonly number[], level: 0.99 | 0.95, limit: number): number {
  const off = Math.sqrt((level * (1 - level)) / THEIRS);
  const theirs = (at(sorted, level + ERRORS * off) - at(sorted, level - ERRORS * off)) / (2 * ERRORS);
  return ERRORS * Math.hypot(theirs, SHIPPED[level] * limit);
}

const TABLE = 'A3 limits';

export const A3_LIMITS: Table = {
  id: 'A3', name: TABLE, about: `ours ${GROUPS} groups for each number of shots, theirs ${THEIRS}; df count the spread of both axes`,
  run: (seed) => ({ cells: rowsOf(PRINTED).flatMap((entries) => row(seed, entries)), own: [] }),
};
