// Hotelling's T-squared against textbooks. The walk does not use it; the bench does, as a rival (tests/bench/rivals/hotelling.ts), and a rival that is
// wrong would prove nothing.
//
// R. A. Johnson, D. W. Wichern, "Applied Multivariate Statistical Analysis", sixth edition: examples 5.1, 5.2, 5.3 and 6.3.
// A. C. Rencher, "Methods of Multivariate Analysis": the two groups of the psychological tests.
// All from memory; where a printed result comes out to all its digits, that is the proof that the data are right. "Derived" is worked out here.

import { describe, expect, it } from 'vitest';
import { fAbove } from '../../src/maths/fisher.ts';
import { criticalTSquared, oneSample, pooledCovariance, summarise, twoSample, type Matrix } from '../bench/rivals/hotelling.ts';
import { near, prints } from './near.ts';

describe('example 5.1: three observations in two directions', () => {
  const group = summarise([[6, 9], [10, 6], [8, 3]]);
  it('mean and covariance (from memory, exact by hand)', () => {
    expect(group.mean).toEqual([8, 6]);
    expect(group.covariance).toEqual([[4, -3], [-3, 9]]);
  });
  it('T-squared is 7 / 9 (from memory, exact by hand)', () => {
    const found = oneSample(group, [9, 5]);
    near(found?.tSquared ?? NaN, 7 / 9, 1e-12);
    // It is F on 2 and 1 df times 4 (derived).
    near(found?.p ?? NaN, fAbove(7 / 36, 2, 1), 1e-12);
  });
});

describe('example 5.2: sweat of twenty people, three measures', () => {
  const SWEAT: Matrix = [
    [3.7, 48.5, 9.3], [5.7, 65.1, 8.0], [3.8, 47.2, 10.9], [3.2, 53.2, 12.0], [3.1, 55.5, 9.7], [4.6, 36.1, 7.9], [2.4, 24.8, 14.0],
    [7.2, 33.1, 7.6], [6.7, 47.4, 8.5], [5.4, 54.1, 11.3], [3.9, 36.9, 12.7], [4.5, 58.8, 12.3], [3.5, 27.8, 9.8], [4.5, 40.2, 8.4],
    [1.5, 13.5, 10.1], [8.5, 56.4, 7.1], [4.5, 71.6, 8.2], [6.5, 52.8, 10.9], [4.1, 44.1, 11.2], [5.5, 40.9, 9.4],
  ];
  const group = summarise(SWEAT);
  it('means 4.640, 45.400, 9.965 and variances 2.879, 199.788, 3.628 (printed, from memory, all digits)', () => {
    [4.64, 45.4, 9.965].forEach((mean, i) => prints(group.mean[i] ?? NaN, mean, 3));
    [2.879, 199.788, 3.628].forEach((variance, i) => prints(group.covariance[i]?.[i] ?? NaN, variance, 3));
  });
  it('covariances 10.010 and -5.640 (printed, from memory, all digits); -1.810 is -1.809 from the data, remembered or printed one too far', () => {
    const [[, first = NaN, second = NaN] = [], [, , third = NaN] = []] = group.covariance;
    prints(first, 10.01, 3);
    prints(third, -5.64, 3);
    prints(second, -1.81, 2);
  });
  it('T-squared is 9.74 (printed, from memory; 9.7388 derived by an independent program)', () => {
    const found = oneSample(group, [4, 50, 10]);
    prints(found?.tSquared ?? NaN, 9.74, 2);
    prints(found?.tSquared ?? NaN, 9.7388, 4);
  });
  it('10 % are beyond 8.18 (printed, from a table of F to two digits: 2.44 * 19 * 3 / 17); 8.173 derived by an independent program', () => {
    prints((2.44 * 19 * 3) / 17, 8.18, 2);
    prints(criticalTSquared(0.1, 3, 19), 8.173, 3);
  });
});

describe('example 5.3: radiation of 42 ovens, doors closed and open', () => {
  const mean = [0.564, 0.603];
  const rounded: Matrix = [[0.0144, 0.0117], [0.0117, 0.0146]];
  /** The inverse is printed to six digits, the covariance to three: it is turned round here to have the covariance as the book had it. */
  const [[a, b], [, d]] = [[203.018, -163.391], [-163.391, 200.228]] as const;
  const determinant = a * d - b * b;
  const precise: Matrix = [[d / determinant, -b / determinant], [-b / determinant, a / determinant]];
  it('the two agree to the digits of the covariance', () => {
    // Half a digit of the covariance, and what half a digit of the inverse moves it (derived: below a millionth).
    precise.forEach((row, i) => row.forEach((value, j) => expect(Math.abs(value - (rounded[i]?.[j] ?? NaN))).toBeLessThan(0.5e-4 + 1e-6)));
  });
  it('T-squared at (0.562, 0.589) is 1.30 (printed, from memory), by the printed inverse; 1.298 derived', () => {
    const found = oneSample({ n: 42, mean, covariance: precise }, [0.562, 0.589]);
    prints(found?.tSquared ?? NaN, 1.3, 2);
    prints(found?.tSquared ?? NaN, 1.298, 3);
    // By the covariance with its three digits it is 1.274 (derived): such near directions forgive no rounding.
    prints(oneSample({ n: 42, mean, covariance: rounded }, [0.562, 0.589])?.tSquared ?? NaN, 1.274, 3);
  });
  it('95 % are below 6.62 (printed, from a table: 3.23 * 41 * 2 / 40)', () => {
    prints((3.23 * 41 * 2) / 40, 6.62, 2);
    near(criticalTSquared(0.05, 2, 41), 6.62, 0.005 / 3.23);
  });
  it('half an axis of 0.064 along (0.704, 0.710) ends on the limit (printed, from memory; its own digits allow 1.6 %). The other, 0.018, is printed from an eigenvalue of one digit and holds nothing', () => {
    const end = mean.map((value, i) => value + 0.064 * ([0.704, 0.71][i] ?? NaN));
    near(oneSample({ n: 42, mean, covariance: rounded }, end)?.tSquared ?? NaN, 6.62, 2 * (0.0005 / 0.064) + 0.005);
  });
});

describe('example 6.3: soap made in two ways, fifty bars each', () => {
  const first = { n: 50, mean: [8.3, 4.1], covariance: [[2, 1], [1, 6]] };
  const second = { n: 50, mean: [10.2, 3.9], covariance: [[2, 1], [1, 4]] };
  it('the pooled covariance is 2, 1, 5 (printed, from memory, exact)', () => {
    expect(pooledCovariance(first, second)).toEqual([[2, 1], [1, 5]]);
  });
  it('95 % are below 6.25 (printed, from memory: 98 * 2 / 97 times F, 3.1 in the book\'s table)', () => {
    near(criticalTSquared(0.05, 2, 98), 6.25, 0.05 / 3.1);
    prints((98 * 2 * 3.0902) / 97, criticalTSquared(0.05, 2, 98), 2); // F 3.0902 on 2 and 97 df (derived)
  });
  it('half axes of 1.15 along (0.290, 0.957) and 0.65 along (0.957, -0.290) end on the limit (printed, from memory; their digits allow 1 and 2 %)', () => {
    for (const [half, direction] of [[1.15, [0.29, 0.957]], [0.65, [0.957, -0.29]]] as const) {
      const [x, y] = direction;
      const shifted = { ...second, mean: [8.3 + half * x, 4.1 + half * y] };
      near(twoSample(first, shifted)?.tSquared ?? NaN, 6.25, 2 * (0.005 / half) + 0.002);
    }
  });
  it('the two kinds differ beyond doubt: T-squared 52.5 (derived by hand: 25 * (5 * 3.61 + 2 * 1.9 * 0.2 + 2 * 0.04) / 9)', () => {
    const found = twoSample(first, second);
    near(found?.tSquared ?? NaN, (25 * (5 * 1.9 ** 2 + 2 * 1.9 * 0.2 + 2 * 0.2 ** 2)) / 9, 1e-12);
    expect(found?.p).toBeLessThan(1e-8);
  });
});

describe('Rencher: four tests, 32 men and 32 women', () => {
  const pooled: Matrix = [[7.164, 6.047, 5.693, 4.701], [6.047, 15.89, 8.492, 5.856], [5.693, 8.492, 29.36, 13.98], [4.701, 5.856, 13.98, 22.32]];
  it('T-squared is 97.6015 (printed, from memory): 97.68 from means and covariance with their four digits, and so within 0.1 %', () => {
    const found = twoSample(
      { n: 32, mean: [15.97, 15.91, 27.19, 22.75], covariance: pooled },
      { n: 32, mean: [12.34, 13.91, 16.66, 21.94], covariance: pooled },
    );
    near(found?.tSquared ?? NaN, 97.6015, 1e-3);
  });
  it('1 % are beyond 15.363 (printed, from memory)', () => prints(criticalTSquared(0.01, 4, 62), 15.363, 3));
});

describe('5 % points of T-squared in two directions, two groups of n (derived by an independent program)', () => {
  it.each([[3, 25.472], [4, 13.887], [5, 10.828], [6, 9.459], [9, 7.856], [12, 7.264], [18, 6.769], [24, 6.551]])('n = %d: %f', (n, limit) => {
    prints(criticalTSquared(0.05, 2, 2 * n - 2), limit, 3);
  });
});
