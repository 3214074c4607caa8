// NIST/SEMATECH, e-Handbook of Statistical Methods: worked examples. Read in reprints where nothing else is said; section numbers from memory.

import { describe, expect, it } from 'vitest';
import { oneWay } from '../../src/archery/one-way.ts';
import { squaresAround } from '../../src/archery/squares.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { studentQuantile } from '../../src/maths/student.ts';
import { sum } from '../../src/maths/sum.ts';
import { near, prints } from './near.ts';

const THREE = [[6.9, 5.4, 5.8, 4.6, 4.0], [8.3, 6.8, 7.8, 9.2, 6.5], [8.0, 10.5, 8.1, 6.9, 9.3]] as const;
const FOURTH = [5.8, 3.8, 6.1, 5.6, 6.2] as const;
const mean = (values: readonly number[]): number => sum(values) / values.length;

describe('7.4.3.3, one-way analysis of variance of three resistors', () => {
  const found = oneWay([THREE]);
  const { within, withinDf, f, p } = found ?? { within: NaN, withinDf: NaN, f: NaN, p: NaN };
  it('sums of squares 27.897 and 17.452, together 45.349; on 2 and 12 df', () => {
    const [among, inside] = [f * within * 2, within * withinDf];
    expect(withinDf).toBe(12);
    prints(among, 27.897, 3);
    prints(inside, 17.452, 3);
    prints(among + inside, 45.349, 3);
  });
  it('F 9.59 (9.591107 by an independent program), chance 0.003248 (0.0032482)', () => {
    prints(f, 9.59, 2);
    near(f, 9.591107, 1e-7);
    prints(p, 0.003248, 6);
    near(p, 0.0032482, 1e-5);
  });
});

describe('7.4.7.1, a fourth resistor', () => {
  const all = [...THREE, FOURTH];
  const { within, withinDf } = oneWay([all]) ?? { within: NaN, withinDf: NaN };
  it('the differences of means that its intervals are built round: 2 and 1, 3 and 1, 1 and 4', () => {
    const middle = (low: number, high: number): number => (low + high) / 2;
    const m = all.map(mean);
    for (const [a, b, low, high] of [[1, 0, 0.29, 4.47], [2, 0, 1.13, 5.31], [0, 3, -2.25, 1.93]] as const) {
      expect(Math.abs((m[a] ?? NaN) - (m[b] ?? NaN) - middle(low, high))).toBeLessThan(0.005 + 1e-9);
    }
  });
  it('the half width of those intervals, 2.09, from our variance within and the studentised range 4.05 on 4 means and 16 df (table, from memory)', () => {
    expect(withinDf).toBe(16);
    prints(4.05 * Math.sqrt(within / 5), 2.09, 2);
  });
});

describe('1.3.5.17, an outlier among eight readings (Grubbs)', () => {
  // No function of ours is this test: it is held for the mean, the standard deviation and t's quantile that it is made of.
  const READINGS = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  const n = READINGS.length;
  it('the largest lies 2.4687 standard deviations from the mean', () => {
    const sd = Math.sqrt(squaresAround(READINGS.map((x) => ({ x, y: 0 }))).squares / (n - 1));
    // 2.468765: the last printed digit is cut off, not rounded.
    expect(Math.abs((245.57 - mean(READINGS)) / sd - 2.4687)).toBeLessThan(1e-4);
  });
  it.each([['one-sided', 1, 2.032, 3], ['two-sided', 2, 2.1266, 4]] as const)('the %s limit, 1 in 20', (_side, sides, limit, digits) => {
    const t = studentQuantile(1 - 0.05 / (sides * n), n - 2);
    prints(((n - 1) / Math.sqrt(n)) * Math.sqrt(t ** 2 / (n - 2 + t ** 2)), limit, digits);
  });
});

describe('1.3.5.4, one-way analysis of ten batches of gears (from memory: 100 diameters, only the table of results)', () => {
  it('F 2.2969 on 9 and 90 df leaves 2.3 % beyond, and 1.9856 leaves 5 %', () => {
    expect(fAbove(2.2969, 9, 90)).toBeCloseTo(0.0227, 4);
    expect(fAbove(1.9856, 9, 90)).toBeCloseTo(0.05, 4);
  });
});
