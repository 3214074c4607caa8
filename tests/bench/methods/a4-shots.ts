// A4: how many shots it takes until a tear of truly zero is shown to be within a tolerance, with a chance of 80 %.
//
// The printed figures follow from the textbook's formula: the fewest n with (t at 95 % on 4 + n - 1 df + z at 90 %) * sigma / sqrt n within
// the tolerance. It takes the spread as if it came out right. With the spread's own chance worked in (integral over chi-square),
// 24, 41 and 90 shots take the place of 23, 40 and 89.

import { normalQuantile } from '../../../src/maths/normal.ts';
import { studentQuantile } from '../../../src/maths/student.ts';
import { cellOf } from './cell.ts';
import { rowsOf, type Table } from './table.ts';

const PRIOR_DF = 4;
const TOLERANCES = [[1 / 8, '1/8'], [3 / 16, '3/16'], [1 / 4, '1/4'], [3 / 8, '3/8']] as const;

const PRINTED = `
0.1 | 7 | 3 | 2 | 2
0.15 | 14 | 7 | 4 | 2
0.2 | 23 | 11 | 7 | 3
0.25 | 36 | 17 | 10 | 5
0.3 | 51 | 23 | 14 | 7
0.4 | 89 | 40 | 23 | 11`;

export function shotsFor(sigma: number, tolerance: number): number {
  for (let n = 2; ; n++) {
    if (((studentQuantile(0.95, PRIOR_DF + n - 1) + normalQuantile(0.9)) * sigma) / Math.sqrt(n) <= tolerance) return n;
  }
}

export const A4_SHOTS: Table = {
  id: 'A4', name: 'A4 shots needed', about: 'exact: studentQuantile and normalQuantile; a whole number of shots, so nothing is free',
  run: () => ({
    cells: rowsOf(PRINTED).flatMap(([sigma = '', ...counts]) => TOLERANCES.map(([tolerance, name], i) =>
      cellOf('A4 shots needed', `spread ${sigma} in, tolerance ${name} in`, { expected: Number(counts[i]), got: shotsFor(Number(sigma), tolerance), tolerance: 0 }))),
    own: [],
  }),
};
