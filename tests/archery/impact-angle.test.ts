import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as angle from '../../src/archery/impact-angle.ts';
import { mrad, yards } from '../../src/maths/units.ts';

// Here a bare distance is in yards.
const dragShare = (distance: number): number => angle.dragShare(yards(distance));
const inchesAt = (size: number, distance: number): number => angle.inchesAt(mrad(size), yards(distance));
const margin = (sd: number, distance: number): number => angle.margin(sd, yards(distance));
const milliradians = (inches: number, distance: number): number => angle.milliradians(inches, yards(distance));
const anyDistance = fc.double({ min: 1, max: 90, noNaN: true });

describe('inches and milliradians', () => {
  // Derived: 1 in over 36 in a yard. 1 in at 100 yd is 1 / 3600 of a radian.
  it.each([[20, 1.389], [30, 0.926], [40, 0.694], [100, 0.278]])('1 in at %d yd is %f mrad', (d, mrad) => expect(milliradians(1, d)).toBeCloseTo(mrad, 3));
  it('undo each other, and mirror exactly', () => {
    fc.assert(fc.property(fc.double({ min: -30, max: 30, noNaN: true }), anyDistance, (x, d) => {
      expect(inchesAt(milliradians(x, d), d)).toBeCloseTo(x, 9);
      expect(milliradians(-x, d) + milliradians(x, d)).toBe(0);
    }));
  });
});

describe('margin', () => {
  it('is 1.5 spreads, and 1 mrad where the archer is better than that', () => {
    expect(margin(1, 20)).toBe(1.5);
    expect(margin(0.2, 20)).toBeCloseTo(0.72, 12);
    expect(margin(0.2, 40)).toBeCloseTo(1.44, 12);
  });
  it('of 1.5 spreads widens what both groups hit by 13 % (derived: two normal groups D apart, sight between them)', () => {
    const D = margin(1, 20);
    // Mean squared distance on that axis is sd^2 + D^2 / 4, on the other sd^2: together 2 sd^2 (1 + D^2 / 8 sd^2).
    expect(Math.sqrt((1 + D ** 2 / 4 + 1) / 2)).toBeCloseTo(1.13, 2);
  });
});

describe('dragShare', () => {
  it('is what is told at 20, 30 and 40 yd, straight between, in proportion below, with the last slope above', () => {
    expect([0, 10, 20, 25, 30, 35, 40].map(dragShare)).toEqual([0, -0.25, -0.5, -0.65, -0.8, expect.closeTo(-0.925, 12), expect.closeTo(-1.05, 12)]);
    expect(dragShare(60)).toBeCloseTo(-1.55, 12);
  });
  it('never rises with the distance and does not jump', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (d, more) => {
      const fall = dragShare(d) - dragShare(d + more);
      expect(fall).toBeGreaterThanOrEqual(-1e-12);
      expect(fall).toBeLessThanOrEqual(0.03 * more + 1e-12);
    }));
  });
});

it('refuse what cannot be meant', () => {
  for (const act of [() => milliradians(NaN, 20), () => milliradians(1, 0), () => inchesAt(1, -1), () => margin(0, 20), () => margin(1, NaN), () => dragShare(-1), () => dragShare(NaN)]) {
    expect(act).toThrow(RangeError);
  }
  expect(() => dragShare(-5)).toThrow('dragShare: the distance is -5; a finite number, 0 or more, is needed');
});
