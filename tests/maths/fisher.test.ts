import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fAbove } from '../../src/maths/fisher.ts';
import { studentCdf } from '../../src/maths/student.ts';

describe('fAbove', () => {
  it('is the square of t with one df above, and a plain power with two (derived)', () => {
    for (const t of [0.3, 1, 2.228, 7]) expect(fAbove(t * t, 1, 10)).toBeCloseTo(2 * studentCdf(-t, 10), 9);
    for (const f of [0.2, 1, 5, 60]) expect(fAbove(f, 2, 8) / (1 + (2 * f) / 8) ** -4).toBeCloseTo(1, 9);
  });
  it('is a chance that never rises', () => {
    const f = fc.double({ min: 0, max: 1e4, noNaN: true });
    const df = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(fc.property(f, f, df, df, (a, b, df1, df2) => {
      const [near, far] = [fAbove(Math.min(a, b), df1, df2), fAbove(Math.max(a, b), df1, df2)];
      expect(near).toBeLessThanOrEqual(1 + 1e-12);
      expect(far).toBeGreaterThanOrEqual(0);
      expect(far).toBeLessThanOrEqual(near + 1e-7);
    }));
    for (const df2 of [8, Infinity]) expect([fAbove(0, 2, df2), fAbove(Infinity, 2, df2)]).toEqual([1, 0]);
  });
  it.each([[NaN, 2, 8], [-1, 2, 8], [1, 0, 8], [1, NaN, 8], [1, 2, 0], [1, Infinity, 8]])('refuses %d on %d and %d', (...args) =>
    expect(() => fAbove(...args)).toThrow(RangeError));
  it('says what is needed', () => expect(() => fAbove(-1, 2, 8)).toThrow('fAbove: the ratio of two variances is -1; 0 or more is needed'));
});
