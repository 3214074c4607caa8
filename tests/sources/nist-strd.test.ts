// NIST, Statistical Reference Datasets (StRD): certified to 15 digits from arithmetic with 500 of them. Data and certified values
// read in reprints among the tests of statistics packages; public domain.
// The kernel has no regression of its own: the response line with its priors taken away, and the plumb line with its weights made
// equal, are one, and are held to what is certified for it.

import { describe, expect, it } from 'vitest';
import { oneWay } from '../../src/archery/one-way.ts';
import { fitPlumb, type PlumbPoint } from '../../src/archery/plumb-line.ts';
import { fitLine, predict, type Line, type SettingPoint } from '../../src/archery/response.ts';
import { squaresAround } from '../../src/archery/squares.ts';
import { sum } from '../../src/maths/sum.ts';
import { mrad, yards } from '../../src/maths/units.ts';
import { near } from './near.ts';

type Pairs = readonly (readonly [y: number, x: number])[];

const NOTHING_KNOWN = { mean: 0, sd: Infinity };
const settings = (pairs: Pairs): readonly SettingPoint[] => pairs.map(([mean, x]) => ({ x, mean, count: 1, group: 0 }));
const residualSquares = (pairs: Pairs, line: Line): number => sum(pairs.map(([y, x]) => (y - predict(line, x).mean) ** 2));

describe('analysis of variance: SiRstv (lower difficulty)', () => {
  const INSTRUMENTS = [
    [196.3052, 196.1240, 196.1890, 196.2569, 196.3403], [196.3042, 196.3825, 196.1669, 196.3257, 196.0422], [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
    [196.2795, 196.1748, 196.1494, 196.1485, 195.9885], [196.2119, 196.1051, 196.1850, 196.0052, 196.2090],
  ];
  const found = oneWay([INSTRUMENTS]);
  const { within, withinDf, f, p, between } = found ?? { within: NaN, withinDf: NaN, f: NaN, p: NaN, between: NaN };

  it('F, both sums of squares, R2 and the residual standard deviation (read)', () => {
    expect(withinDf).toBe(20);
    near(f, 1.18046237440255, 1e-9, 'F');
    const [among, inside] = [f * within * 4, within * withinDf];
    near(among, 5.11462616e-2, 1e-9, 'sum of squares between');
    near(inside, 2.1663656e-1, 1e-9, 'sum of squares within');
    near(among / (among + inside), 1.90999039051129e-1, 1e-9, 'R2');
    near(Math.sqrt(within), 1.04076068334656e-1, 1e-9, 'residual standard deviation');
  });
  it('variance between the instruments (derived from the certified squares), and not significant: 2.866 leaves 5 % beyond', () => {
    near(between, (5.11462616e-2 / 4 - 2.1663656e-1 / 20) / 5, 1e-8);
    expect(p).toBeGreaterThan(0.05);
  });
});

describe('a line: Norris (lower difficulty)', () => {
  const NORRIS: Pairs = [
    [0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888, 884.6], [9.2, 10.1], [228.1, 226.5], [668.5, 666.3], [998.5, 996.3], [449.1, 448.6],
    [778.9, 777], [559.2, 558.2], [0.3, 0.4], [0.1, 0.6], [778.1, 775.5], [668.8, 666.9], [339.3, 338], [448.9, 447.5], [10.8, 11.6],
    [557.7, 556], [228.3, 228.1], [998, 995.8], [888.8, 887.6], [119.6, 120.2], [0.3, 0.3], [0.6, 0.3], [557.6, 556.8], [339.3, 339.1],
    [888, 887.2], [998.5, 999], [778.9, 779], [10.2, 11.1], [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9], [0.2, 0.5],
  ];
  const B0 = -0.262323073774029;
  const B1 = 1.00211681802045;
  const SE0 = 0.232818234301152;
  const SE1 = 0.429796848199937e-3;
  const S = 0.884796396144373;

  // The response line expects an intercept of 0 give or take 3 in. Against shots with a spread of 1e-5 that weighs
  // (0.23 / 0.88)^2 * 1e-10 / 9, less than 1e-12 of the intercept; and of the slope nothing is known beforehand.
  const TINY = 1e-5;
  const line = fitLine(settings(NORRIS), TINY, NOTHING_KNOWN, 0);
  it('response line: intercept and slope (read)', () => {
    near(line.intercept, B0, 1e-9, 'B0');
    near(line.slope, B1, 1e-10, 'B1');
  });
  it('response line: residual standard deviation, F and R2 (read)', () => {
    const squares = residualSquares(NORRIS, line);
    near(squares, 26.6173985294224, 1e-9, 'residual sum of squares');
    const s = Math.sqrt(squares / (NORRIS.length - 2));
    near(s, S, 1e-9, 'residual standard deviation');
    // The slope's own share of the squares: slope squared over its variance, in units of the residual variance.
    const f = (line.slope ** 2 * TINY ** 2) / (line.varSlope * s ** 2);
    near(f, 5436385.54079785, 1e-8, 'F');
    near(f / (f + NORRIS.length - 2), 0.999993745883712, 1e-12, 'R2');
  });
  it('response line: standard errors of both (read)', () => {
    near((Math.sqrt(line.varIntercept) / TINY) * S, SE0, 1e-9, 'standard error of B0');
    near((Math.sqrt(line.varSlope) / TINY) * S, SE1, 1e-9, 'standard error of B1');
  });

  it('response line: in the middle of the data a mean is known to s over the root of 36, and away from it by both standard errors (derived)', () => {
    const middle = sum(NORRIS.map(([, x]) => x)) / NORRIS.length;
    near((predict(line, middle).sd / TINY) * S, S / Math.sqrt(NORRIS.length), 1e-9);
    for (const x of [0, 1000]) near((predict(line, x).sd / TINY) * S, Math.hypot(S / Math.sqrt(NORRIS.length), SE1 * (x - middle)), 1e-9);
  });

  // Down a plumb line a shot weighs less the farther it flew, as the square of the distance. With counts that grow with that square
  // every mean of Norris weighs the same, and its spread is the residual one.
  const plumb = fitPlumb(NORRIS.map(([mean, x]): PlumbPoint => ({ distance: yards(x), mean, count: ((36 * x) / 1000 / S) ** 2 })), { sd: mrad(1), df: Infinity });
  it('plumb line: the same line and the same standard errors (read)', () => {
    near(plumb.slope, B1, 1e-10, 'B1');
    near(plumb.at(0).mean, B0, 1e-9, 'B0');
    near(plumb.se, SE1, 1e-9, 'standard error of B1');
    near(plumb.at(0).se, SE0, 1e-9, 'standard error of B0');
  });
});

// The other limit of the same line. With shots that say next to nothing (a spread S that is huge) the intercept's prior of 0 give or take 3
// holds it at 0, and what is left of the slope is sum(x y) / sum(x^2). By the normal equations the intercept moves the slope by a share of
// 9 (sum x)^2 / (S^2 sum x^2), which is at most 9 n / S^2: with S = 1e7 and eleven points 1e-12.
describe.each<[string, Pairs, { slope: number; error: number; s: number; f: number }]>([
  ['NoInt1', Array.from({ length: 11 }, (_, i) => [130 + i, 60 + i] as const), { slope: 2.07438016528926, error: 0.0165289256198347, s: 3.56753034006338, f: 15750.25 }],
  ['NoInt2', [[3, 4], [4, 5], [4, 6]], { slope: 0.727272727272727, error: 0.0420827318078432, s: 0.369274472937998, f: 298.666666666667 }],
])('a line through the origin: %s (average difficulty)', (_name, pairs, certified) => {
  const HUGE = 1e7;
  const line = fitLine(settings(pairs), HUGE, NOTHING_KNOWN, 0);
  const s = Math.sqrt(residualSquares(pairs, line) / (pairs.length - 1));
  it('response line: slope, with nothing left of the intercept (read)', () => {
    near(line.slope, certified.slope, 1e-9);
    expect(Math.abs(line.intercept)).toBeLessThan(1e-9);
  });
  it('response line: residual standard deviation (read)', () => near(s, certified.s, 1e-9));
  it('response line: standard error of the slope (read), F (NoInt1 read, NoInt2 from memory)', () => {
    const error = (Math.sqrt(line.varSlope) / HUGE) * s;
    near(error, certified.error, 1e-9);
    near((line.slope / error) ** 2, certified.f, 1e-9);
  });
});

// Means and standard deviations far from zero, where digits are lost by squaring first and subtracting after.
// NumAcc1 and NumAcc4 read; NumAcc2 and NumAcc3 from memory, the same row nearer to zero.
describe('univariate summaries: NumAcc1 to NumAcc4', () => {
  const swing = (middle: number, tenths: readonly [number, number]): readonly number[] =>
    [middle, ...Array.from({ length: 1000 }, (_, i) => tenths[i % 2] ?? NaN)];
  const cases: readonly (readonly [string, readonly number[], number, number, number, number])[] = [
    // name, values, certified mean and sd, digits reached by each (16 is all of them)
    ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, 16, 16],
    ['NumAcc2', swing(1.2, [1.1, 1.3]), 1.2, 0.1, 13, 14],
    ['NumAcc3', swing(1000000.2, [1000000.1, 1000000.3]), 1000000.2, 0.1, 13, 9],
    // At ten million the tenths themselves are rounded to two parts in a thousand million: no more of the sd is in the data.
    ['NumAcc4', swing(10000000.2, [10000000.1, 10000000.3]), 10000000.2, 0.1, 14, 8],
  ];
  it.each(cases)('%s', (_name, values, mean, sd, meanDigits, sdDigits) => {
    const n = values.length;
    const found = {
      'mean by sum': [sum(values) / n, mean, meanDigits],
      // All of the squares lie on one axis; the other one is 0.
      'sd by squaresAround': [Math.sqrt(squaresAround(values.map((x) => ({ x, y: 0 }))).squares / (n - 1)), sd, sdDigits],
      'sd by oneWay': [Math.sqrt(oneWay([[values, values]])?.within ?? NaN), sd, sdDigits],
    } as const;
    for (const [what, [value, certified, digits]] of Object.entries(found)) {
      if (digits === 16) expect(value, what).toBe(certified);
      else near(value, certified, 10 ** -digits, what);
    }
  });
});
