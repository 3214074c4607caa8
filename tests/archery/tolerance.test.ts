import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceAbove, chanceBelow, chanceWithin } from '../../src/archery/tolerance.ts';

const finite = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('chanceWithin', () => {
  // Any table of t (NIST/SEMATECH e-Handbook 1.3.6.7.2, from memory): 2.228 leaves 2.5 % beyond on each side at 10 df.
  it('is 95 % between the 2.5 % points of t', () => {
    expect(chanceWithin(0, 1, 10, -2.228, 2.228)).toBeCloseTo(0.95, 4);
    expect(chanceWithin(0.3, 0.1, Infinity, 0.3 - 0.196, 0.3 + 0.196)).toBeCloseTo(0.95, 4);
    expect(chanceAbove(0, 1, 2, 2.92)).toBeCloseTo(0.05, 4);
    expect(chanceBelow(0, 1, 2, -2.92)).toBeCloseTo(0.05, 4);
  });
  it('is a chance, mirrored exactly, and grows with the tolerance', () => {
    fc.assert(fc.property(finite(-4, 4), finite(1e-6, 3), finite(1, 200), finite(-2, 2), finite(0, 2), finite(0, 1), (m, se, df, low, width, more) => {
      const p = chanceWithin(m, se, df, low, low + width);
      expect(p).toBeGreaterThanOrEqual(0);
      expect(p).toBeLessThanOrEqual(1);
      expect(chanceWithin(-m, se, df, -(low + width), -low)).toBe(p);
      expect(chanceWithin(m, se, df, low - more, low + width)).toBeGreaterThanOrEqual(p - 1e-7);
      expect(chanceWithin(m, se, df, low, low + width + more)).toBeGreaterThanOrEqual(p - 1e-7);
      expect(chanceAbove(m, se, df, low) + chanceBelow(m, se, df, low)).toBeCloseTo(1, 9);
    }));
  });
  it('falls as the mean leaves the middle', () => {
    fc.assert(fc.property(finite(0, 3), finite(0.01, 1), finite(1e-3, 1), finite(1, 50), (m, step, se, df) => {
      expect(chanceWithin(m + step, se, df, -0.25, 0.25)).toBeLessThanOrEqual(chanceWithin(m, se, df, -0.25, 0.25) + 1e-7);
    }));
  });
  it('is sure where nothing is left to chance', () => {
    expect([chanceWithin(0.25, 0, 3, -0.25, 0.25), chanceWithin(0.26, 0, 3, -0.25, 0.25)]).toEqual([1, 0]);
  });
  it.each([[NaN, 1, 3, 0, 1], [0, NaN, 3, 0, 1], [0, -1, 3, 0, 1], [0, 1, NaN, 0, 1], [0, 1, 0, 0, 1], [0, 1, 3, NaN, 1], [0, 1, 3, 1, 0], [0, 0, NaN, 0, 1]])(
    'refuses %d %d %d %d %d', (...args) => expect(() => chanceWithin(...args)).toThrow(RangeError));
});
