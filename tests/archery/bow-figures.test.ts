import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawLength, holdingWeight, letOff, ratingArrow } from '../../src/archery/bow-figures.ts';
import { inches, percent, pounds } from '../../src/maths/units.ts';
import { said } from './said.ts';

const peaks = fc.double({ min: 10, max: 100, noNaN: true });

describe('let-off and holding weight', () => {
  it('by hand: 12 of 60 lb held are 80 percent let off, and nothing let off is 0', () => {
    expect(letOff(pounds(60), pounds(12))).toBe(80);
    expect(letOff(pounds(60), pounds(60))).toBe(0);
    expect(holdingWeight(pounds(60), percent(80))).toBe(12);
    expect(holdingWeight(pounds(60), percent(0))).toBe(60);
  });
  it('lead to each other, and less held is more let off', () => {
    fc.assert(fc.property(peaks, fc.double({ min: 0.01, max: 1, noNaN: true }), (peak, share) => {
      const holding = peak * share;
      const off = letOff(pounds(peak), pounds(holding));
      expect(off).toBeGreaterThanOrEqual(0);
      expect(off).toBeLessThan(100);
      expect(holdingWeight(pounds(peak), off)).toBeCloseTo(holding, 10);
      expect(letOff(pounds(peak), pounds(holding / 2))).toBeGreaterThan(off);
    }));
  });
  it('refuse what no bow does, by name', () => {
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => letOff(pounds(bad), pounds(12)))).toBe(`letOff: the peak draw weight is ${bad}; a number above 0 is needed`);
      expect(said(() => letOff(pounds(60), pounds(bad)))).toBe(`letOff: the holding weight is ${bad}; a number above 0 is needed`);
      expect(said(() => holdingWeight(pounds(bad), percent(80)))).toBe(`holdingWeight: the peak draw weight is ${bad}; a number above 0 is needed`);
    }
    expect(said(() => letOff(pounds(60), pounds(61)))).toBe('letOff: the holding weight is 61 lb, the peak 60 lb; nobody holds more than the peak');
    for (const bad of [NaN, -0.1, 100, Infinity]) {
      expect(said(() => holdingWeight(pounds(60), percent(bad)))).toBe(`holdingWeight: the let-off is ${bad}; percent from 0 to below 100 are needed`);
    }
  });
});

describe('draw length and the arrow of the rating', () => {
  it('an inch more of one is an inch more of the other; mass goes with the peak', () => {
    fc.assert(fc.property(peaks, (n) => {
      expect(drawLength(inches(n + 1)) - drawLength(inches(n))).toBeCloseTo(1, 10);
      expect(ratingArrow(pounds(n)) / n).toBeCloseTo(5, 10);
    }));
  });
  it('refuse what cannot be measured, by name', () => {
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => drawLength(inches(bad)))).toBe(`drawLength: the length from nocking point to pivot is ${bad}; a number above 0 is needed`);
      expect(said(() => ratingArrow(pounds(bad)))).toBe(`ratingArrow: the peak draw weight is ${bad}; a number above 0 is needed`);
    }
  });
});
