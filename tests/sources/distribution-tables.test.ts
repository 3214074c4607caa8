// Printed tables of t, chi-square, F and the normal distribution, as in any statistics book (NIST/SEMATECH e-Handbook 1.3.6.7, section
// number from memory). All values from memory, and each agrees with an independent program.

import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { fAbove } from '../../src/maths/fisher.ts';
import { normalCdf, normalQuantile } from '../../src/maths/normal.ts';
import { studentCdf, studentQuantile } from '../../src/maths/student.ts';
import { prints } from './near.ts';

describe('t', () => {
  const TABLE = [
    [0.975, 1, 12.706], [0.975, 2, 4.303], [0.975, 3, 3.182], [0.975, 4, 2.776], [0.975, 5, 2.571], [0.975, 6, 2.447],
    [0.975, 8, 2.306], [0.975, 10, 2.228], [0.975, 12, 2.179], [0.975, 15, 2.131], [0.975, 20, 2.086], [0.975, 30, 2.042],
    [0.975, 60, 2.0], [0.975, 120, 1.98], [0.975, Infinity, 1.96],
    [0.95, 1, 6.314], [0.95, 2, 2.92], [0.95, 5, 2.015], [0.95, 10, 1.812], [0.95, 20, 1.725], [0.95, 30, 1.697], [0.95, Infinity, 1.645],
    [0.99, 2, 6.965], [0.99, 10, 2.764], [0.99, 30, 2.457], [0.99, Infinity, 2.326],
  ] as const;
  it.each(TABLE)('%f on %d df: %f', (p, df, t) => {
    prints(studentQuantile(p, df), t, 3);
    prints(-studentQuantile(1 - p, df), t, 3);
    // What half of the last printed digit is worth as a chance is at most that digit times the normal's density there.
    expect(Math.abs(studentCdf(t, df) - p)).toBeLessThan(0.4 * 0.0005);
    expect(Math.abs(studentCdf(-t, df) - (1 - p))).toBeLessThan(0.4 * 0.0005);
  });
});

describe('chi-square, as F above with nothing uncertain below', () => {
  const TABLE = [
    [0.95, 1, 3.841], [0.95, 2, 5.991], [0.95, 3, 7.815], [0.95, 4, 9.488], [0.95, 5, 11.070], [0.95, 10, 18.307], [0.95, 20, 31.410], [0.95, 30, 43.773],
    [0.05, 2, 0.103], [0.05, 5, 1.145], [0.05, 10, 3.940], [0.05, 20, 10.851], [0.99, 1, 6.635], [0.99, 5, 15.086],
  ] as const;
  it.each(TABLE)('%f on %d df: %f', (p, df, x) => {
    // Half of the last digit is worth at most half of it as a chance: the density is nowhere here above 1/2.
    expect(Math.abs(fAbove(x / df, df, Infinity) - (1 - p))).toBeLessThan(0.5 * 0.0005);
    // The library's quantile, as typed by us: the limits of consistency are made with it.
    prints(jStat.chisquare.inv(p, df), x, 3);
  });
});

describe('F', () => {
  const TABLE = [
    [0.95, 2, 3, 9.552], [0.95, 2, 8, 4.459], [0.95, 2, 9, 4.256], [0.95, 2, 10, 4.103], [0.95, 2, 20, 3.493], [0.95, 4, 20, 2.866], [0.95, 1, 10, 4.965],
    [0.95, 3, 16, 3.239], [0.95, 4, 4, 6.388], [0.95, 6, 6, 4.284], [0.95, 10, 10, 2.978], [0.99, 1, 10, 10.044],
  ] as const;
  it.each(TABLE)('%f on %d and %d df: %f', (p, df1, df2, f) => {
    expect(Math.abs(fAbove(f, df1, df2) - (1 - p))).toBeLessThan(0.1 * 0.0005);
    prints(jStat.centralF.inv(p, df1, df2), f, 3);
  });
});

describe('normal', () => {
  it.each([[0, 0.5], [1, 0.84134], [1.645, 0.95002], [1.96, 0.975], [2.576, 0.995], [3, 0.99865]])('below %f: %f', (z, p) => {
    prints(normalCdf(z), p, 5);
    prints(normalCdf(-z), 1 - p, 5);
  });
  it.each([[0.9, 1.28155], [0.95, 1.64485], [0.975, 1.95996], [0.99, 2.32635], [0.995, 2.57583], [0.999, 3.09023]])('%f lies below %f', (p, z) => {
    prints(normalQuantile(p), z, 5);
    prints(normalQuantile(1 - p), -z, 5);
  });
});
