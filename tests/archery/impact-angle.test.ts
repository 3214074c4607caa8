import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as angle from '../../src/archery/impact-angle.ts';
import { mrad, yards } from '../../src/maths/units.ts';
import { fly } from './rigid-arrow.ts';

// Here a bare distance is in yards.
const dragShare = (distance: number): number => angle.dragShare(yards(distance));
const inchesAt = (size: number, distance: number): number => angle.inchesAt(mrad(size), yards(distance));
const margin = (sd: number, distance: number): number => angle.margin(sd, yards(distance));
const milliradians = (inches: number, distance: number): number => angle.milliradians(inches, yards(distance));
/** How far (in) a level shot of 395 gr and 0.246 in at 280 fps has fallen at `distance` (yd): a point with drag along its path, in steps of 0.1 ms. */
function fall(distance: number, drag: number): number {
  const [mass, section, step] = [395 * 64.79891e-6, (Math.PI * (0.246 * 0.0254) ** 2) / 4, 1e-4];
  let [x, z, u, w] = [0, 0, 280 * 0.3048, 0];
  while (x < distance * 0.9144) {
    const slowing = (1.2 * section * drag * Math.hypot(u, w)) / (2 * mass);
    [x, z] = [x + step * u, z + step * w];
    [u, w] = [u - step * slowing * u, w - step * (slowing * w + 9.80665)];
  }
  return -(z + (w / u) * (distance * 0.9144 - x)) / 0.0254;
}
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
  it('is what drag alone does: the drop of the same arrow, flown step by step without any lift', () => {
    for (const distance of [10, 20, 30, 40, 60]) expect(dragShare(distance)).toBeCloseTo(fall(distance, 2.2) - fall(distance, 2.9), 2);
  });
  it('is little at 20 yd, half an inch at 40', () => {
    expect([0, 20, 30, 40].map((d) => Number(dragShare(d).toFixed(2)) + 0)).toEqual([0, -0.06, -0.19, -0.47]);
  });
  it('is the smaller part: a broadhead whose tail follows level lifts by more than it is braked (derived with a rigid arrow)', () => {
    for (const distance of [20, 30, 40]) {
      const apart = fly({ gravity: true, broadhead: true }, 3 * distance).point - fly({ gravity: true }, 3 * distance).point;
      expect(apart).toBeGreaterThan(0.3);
      expect(apart - dragShare(distance)).toBeGreaterThan(Math.abs(dragShare(distance)));
    }
  });
  it('never rises with the distance and does not jump', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (d, more) => {
      const fall = dragShare(d) - dragShare(d + more);
      expect(fall).toBeGreaterThanOrEqual(-1e-12);
      expect(fall).toBeLessThanOrEqual(0.4 * more + 1e-12);
    }));
  });
});

it('refuse what cannot be meant', () => {
  for (const act of [() => milliradians(NaN, 20), () => milliradians(1, 0), () => inchesAt(1, -1), () => margin(0, 20), () => margin(1, NaN), () => dragShare(-1), () => dragShare(NaN)]) {
    expect(act).toThrow(RangeError);
  }
  expect(() => dragShare(-5)).toThrow('dragShare: the distance is -5 yd; 0 to 200 are needed');
});
