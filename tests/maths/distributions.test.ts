// Normal and Student's t against closed forms and their own properties. Printed tables: tests/sources/distribution-tables.test.ts.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '../../src/maths/normal.ts';
import { studentCdf, studentQuantile } from '../../src/maths/student.ts';

describe('closed forms (derived)', () => {
  const ts = [-30, -2, -0.3, 0, 0.7, 4];
  it.each(ts)('one df is the arc tangent at %f', (t) => expect(studentCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 7));
  it.each(ts)('two df is algebraic at %f', (t) => expect(studentCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 7));
  it('runs smoothly from many df into endless', () => {
    for (const t of [-6, -2, -0.5, 1, 3]) {
      expect(studentCdf(t, 1.0001e5)).toBeCloseTo(studentCdf(t, 0.9999e5), 7);
      expect(studentCdf(t, 1e12)).toBeCloseTo(normalCdf(t), 10);
    }
    for (const p of [0.001, 0.2, 0.9]) {
      expect(studentQuantile(p, 1.0001e5)).toBeCloseTo(studentQuantile(p, 0.9999e5), 6);
      expect(studentQuantile(p, 1e9)).toBeCloseTo(normalQuantile(p), 7);
      expect(studentQuantile(p, Infinity)).toBe(normalQuantile(p));
    }
    // Far out nothing is left, with any number of df.
    for (const df of [2e5, 1e9, Infinity]) expect([studentCdf(-1000, df), studentCdf(-21, df), studentCdf(1000, df)]).toEqual([0, 0, 1]);
  });
});

describe('properties', () => {
  const df = fc.oneof(fc.double({ min: 0.5, max: 1e7, noNaN: true }), fc.constant(Infinity));
  const t = fc.double({ min: -60, max: 60, noNaN: true });
  it('both sides add up to one, and it never falls', () => {
    fc.assert(fc.property(t, t, df, (a, b, n) => {
      expect(studentCdf(a, n) + studentCdf(-a, n)).toBeCloseTo(1, 12);
      expect(studentCdf(Math.max(a, b), n)).toBeGreaterThanOrEqual(studentCdf(Math.min(a, b), n) - 1e-7);
    }));
  });
  it('the quantile undoes the chance', () => {
    fc.assert(fc.property(fc.double({ min: 1e-4, max: 1 - 1e-4, noNaN: true }), df, (p, n) => {
      expect(studentCdf(studentQuantile(p, n), n)).toBeCloseTo(p, 6);
      expect(Math.abs(studentQuantile(1 - p, n) / studentQuantile(p, n) + 1) < 1e-6 || Math.abs(p - 0.5) < 1e-6).toBe(true);
      expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 9);
    }));
  });
  it('ends are infinite, the middle is 0, with any number of df', () => {
    for (const df of [0.5, 3, 1e4, 2e5, Infinity]) {
      expect([studentQuantile(0, df), studentQuantile(0.5, df), studentQuantile(1, df)]).toEqual([-Infinity, 0, Infinity]);
      expect([studentCdf(-Infinity, df), studentCdf(0, df), studentCdf(Infinity, df)]).toEqual([0, 0.5, 1]);
    }
    expect([studentQuantile(0, 3), studentQuantile(1, 3), normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity, -Infinity, Infinity]);
    expect([studentCdf(-Infinity, 3), studentCdf(Infinity, 3), normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([0, 1, 0, 1]);
  });
});

describe('what cannot be meant throws and says so', () => {
  it.each<[string, () => number]>([
    ['studentCdf: t is NaN; a number is needed', () => studentCdf(NaN, 3)], ['studentCdf: df is 0; a number above 0 is needed', () => studentCdf(1, 0)], ['df is -1', () => studentQuantile(0.5, -1)],
    ['df is NaN', () => studentCdf(1, NaN)], ['p is NaN', () => studentQuantile(NaN, 3)], ['studentQuantile: p is 1.5; a chance lies between 0 and 1', () => studentQuantile(1.5, 3)],
    ['normalCdf: z is NaN; a number is needed', () => normalCdf(NaN)], ['p is -0.1', () => normalQuantile(-0.1)],
  ])('%s', (message, act) => {
    expect(act).toThrow(RangeError);
    expect(act).toThrow(message);
  });
});
