// The bench itself, as far as it is fast: that it prints what it promises, that its tolerances are what they claim, and that a kernel that
// is wrong makes it fail. The tables are simulated by `npm run bench -- methods`.

import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { bestSetting, fitLine } from '../../src/archery/response.ts';
import { average, cellOf, exact, halfDigit, moments, quantile, rootMeanSquare, share, statedShare, type Cell } from '../bench/methods/cell.ts';
import { workedExample } from '../bench/methods/b1.ts';
import { codeOf, runTables, TABLES } from '../bench/methods/methods.ts';
import { endLines, tableLines } from '../bench/methods/print.ts';
import { figuresOf, rowsOf } from '../bench/methods/table.ts';
import { ROOT } from '../tools/build.mjs';

function bench(...args: readonly string[]): { readonly status: number | null; readonly stdout: string; readonly stderr: string } {
  return spawnSync(process.execPath, ['--import', 'tsx', 'tests/bench/bench.ts', ...args], { cwd: ROOT, encoding: 'utf8' });
}

const b1 = TABLES.filter((table) => table.id === 'B1');

describe('the program', () => {
  it('prints one list with --json and nothing else, and ends with 0 where all is within its error', () => {
    const { status, stdout, stderr } = bench('methods', '--json', '--only', 'B1');
    expect([status, stderr]).toEqual([0, '']);
    const cells = JSON.parse(stdout) as Cell[];
    expect(cells).toHaveLength(9);
    for (const cell of cells) {
      expect(Object.keys(cell)).toEqual(['table', 'cell', 'expected', 'got', 'tolerance', 'ok']);
      expect(cell).toMatchObject({ table: 'B1', cell: expect.any(String), ok: true });
      expect([cell.expected, cell.got, cell.tolerance].every(Number.isFinite)).toBe(true);
    }
    expect(cells.find((cell) => cell.cell === 'best setting, steps')?.expected).toBe(-13.4498);
  });
});

describe('a kernel that is wrong', () => {
  it('makes cells fail, and the program end with 1', () => {
    const steeper: typeof fitLine = (...args) => ({ ...fitLine(...args), slope: 1.001 * fitLine(...args).slope });
    const planted = runTables(b1.map((table) => ({ ...table, run: () => workedExample(steeper) })), 1);
    const failed = planted.flatMap(({ cells }) => cells).filter((cell) => !cell.ok);
    expect(failed.map(({ cell }) => cell)).toEqual(expect.arrayContaining(['tear a step, in', 'best setting, steps', 'tear at -8, in']));
    expect(codeOf(planted)).toBe(1);
    expect(codeOf(runTables(b1, 1))).toBe(0);
    expect(endLines(planted).at(-1)).toBe(`${9 - failed.length} of 9 cells within their Monte-Carlo error`);
    expect(tableLines(planted[0]!).filter((line) => line.endsWith('FAILED'))).toHaveLength(failed.length);
  });
  it('may leave out the caution of the first move, and that is seen', () => {
    const sure: typeof fitLine = (...args) => ({ ...fitLine(...args), varSlope: 0 });
    expect(bestSetting(sure([], 0.2, { mean: 0.1, sd: 0.06 }, 0), 1)).toBeCloseTo(10, 9);
    expect(workedExample(sure).cells.find(({ cell }) => cell.startsWith('first move'))?.ok).toBe(false);
  });
});

describe('how far a figure may be from the printed one', () => {
  const ok = (held: Parameters<typeof cellOf>[2]): boolean => cellOf('', '', held).ok;
  it('half of the last printed digit, where nothing is simulated', () => {
    expect(['0.6', '83', '-13.4498', '0.012540'].map(halfDigit)).toEqual([0.05, 0.5, 0.00005, 0.0000005].map((half) => expect.closeTo(half, 12)));
    expect([ok(exact('1.43', 1.4349)), ok(exact('1.43', 1.4351)), ok(exact('1.43', NaN))]).toEqual([true, false, false]);
  });
  it('shares (by hand): 500 of 1,000 against 50 of 100 in 4,000: 3 * sqrt(1 / 4 * (1 / 1000 + 1 / 4000)), and half a percent', () => {
    expect(share('50', 500, 1000, 4000)).toEqual({ expected: 50, got: 50, tolerance: expect.closeTo(300 * Math.sqrt(0.25 * 0.00125) + 0.5, 12) });
    // What never happened on either side has no error but the printed digit's.
    expect(share('0', 0, 1000, 4000).tolerance).toBe(0.5);
    expect([ok(share('0.0', 1, 1000, 4000)), ok(share('0.0', 20, 1000, 4000))]).toEqual([true, false]);
  });
  it('means (by hand): standard deviation 1 of two and two', () => {
    const found = moments([1, 1, 3, 3].map((v) => v / Math.sqrt(4 / 3)));
    expect(found).toEqual({ count: 4, mean: expect.closeTo(Math.sqrt(3), 12), sd: expect.closeTo(1, 12) });
    expect(average('1.7', found, 4).tolerance).toBeCloseTo(3 * Math.sqrt(1 / 2) + 0.05, 12);
    // The root has the error of the mean over twice the root.
    expect(rootMeanSquare('1.3', found, 4)).toEqual({ expected: 1.3, got: expect.closeTo(3 ** 0.25, 12), tolerance: expect.closeTo((3 * Math.sqrt(1 / 2)) / (2 * 3 ** 0.25) + 0.05, 12) });
  });
  it('quantiles: by the figures on the side where the printed one lies', () => {
    // 10,000 on each side: three errors of a share of a half are 0.0212; of 0 to 1 evenly that is as far, of 0 to 2 above the middle twice.
    const even = Array.from({ length: 10_000 }, (_, i) => i / 10_000);
    const bent = even.map((v) => (v < 0.5 ? v : 0.5 + 3 * (v - 0.5)));
    expect(quantile('0.49', even, 0.5, 10_000).tolerance).toBeCloseTo(0.0212 + 0.005, 3);
    expect(quantile('0.49', bent, 0.5, 10_000).tolerance).toBeCloseTo(0.0212 + 0.005, 3);
    expect(quantile('0.55', bent, 0.5, 10_000).tolerance).toBeCloseTo(0.0636 + 0.005, 3);
    // More than half are zero: so is the middle, and no error leads below.
    expect(quantile('0.00', even.map((v) => Math.max(0, v - 0.55)), 0.5, 10_000)).toEqual({ expected: 0, got: 0, tolerance: 0.005 });
  });
  it('a range that a comment states, and our error', () => {
    expect(statedShare('89', '94', 450, 500)).toEqual({ expected: 91.5, got: 90, tolerance: expect.closeTo(3 + 300 * Math.sqrt(0.09 / 500), 9) });
  });
});

it('tables written as text are read as they stand', () => {
  expect(rowsOf('\na | 1 / 2.0 | –\nb|3|4/5\n')).toEqual([['a', '1 / 2.0', '–'], ['b', '3', '4/5']]);
  expect(['1 / 2.0', '–', '43.0 / –', '93/7/0/3.0'].map(figuresOf)).toEqual([['1', '2.0'], [], ['43.0'], ['93', '7', '0', '3.0']]);
});
