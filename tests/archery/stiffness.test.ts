import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boltShift, cutShift, pointShift } from '../../src/archery/stiffness.ts';
import { bendingStiffness } from '../../src/archery/static-spine.ts';
import { grains, inches, turns } from '../../src/maths/units.ts';
import { said } from './said.ts';

// Deflections that shafts are sold with (from memory): the steps of a chart.
const SOLD = [0.5, 0.4, 0.34, 0.3, 0.25];
const stepsOf = SOLD.slice(1).map((stiffer, i) => SOLD[i]! / stiffer);

describe('a cut', () => {
  it('lies between a column and a beam, over the steps that there are (derived here from deflections and stiffness alone)', () => {
    const { steps } = cutShift(inches(28), inches(1));
    const [least, most] = [Math.min(...stepsOf), Math.max(...stepsOf)];
    expect(steps.low).toBeCloseTo(Math.log((28 / 27) ** 2) / Math.log(most), 12);
    expect(steps.high).toBeCloseTo(Math.log((28 / 27) ** 3) / Math.log(least), 12);
    // A step of deflection is a step of stiffness.
    expect(bendingStiffness(inches(0.4)).poundInchesSquared / bendingStiffness(inches(0.5)).poundInchesSquared).toBeCloseTo(most, 12);
  });
  it('an inch off 28 bends a tenth less (derived: cube of the length)', () => {
    expect(1 - (27 / 28) ** 3).toBeCloseTo(0.103, 3);
  });
  it('half a step for an inch, as the trade has it (common practice, from memory), lies inside for shafts of 25 to 32 in', () => {
    for (let length = 25; length <= 32; length++) {
      const { steps } = cutShift(inches(length), inches(1));
      expect(steps.low).toBeLessThan(0.5);
      expect(steps.high).toBeGreaterThan(0.5);
      expect(steps.high).toBeLessThan(1);
    }
  });
  it('acts stiffer, more so the more is cut; two cuts add up', () => {
    const cut = fc.double({ min: 0.1, max: 5, noNaN: true });
    fc.assert(fc.property(fc.double({ min: 20, max: 34, noNaN: true }), cut, cut, (length, first, second) => {
      const [one, two] = [cutShift(inches(length), inches(first)), cutShift(inches(length - first), inches(second))];
      const both = cutShift(inches(length), inches(first + second));
      expect([one.acts, two.acts, both.acts]).toEqual(['stiffer', 'stiffer', 'stiffer']);
      expect(both.steps.low).toBeCloseTo(one.steps.low + two.steps.low, 9);
      expect(both.steps.high).toBeCloseTo(one.steps.high + two.steps.high, 9);
      expect(one.steps.low).toBeGreaterThan(0);
      expect(one.steps.high).toBeGreaterThan(one.steps.low);
    }));
  });
});

describe('a point and the limb bolts', () => {
  it('25 gr are like 3 to 5 lb, half a turn of both bolts is 1 to 2 lb, a step 5 to 10 lb (from memory, and derived below)', () => {
    expect(pointShift(grains(25))).toEqual({ acts: 'weaker', steps: { low: expect.closeTo(0.3, 12), high: expect.closeTo(1, 12) } });
    expect(pointShift(grains(-25))).toEqual({ acts: 'stiffer', steps: { low: expect.closeTo(0.3, 12), high: expect.closeTo(1, 12) } });
    expect(boltShift(turns(0.5))).toEqual({ acts: 'weaker', steps: { low: expect.closeTo(0.1, 12), high: expect.closeTo(0.4, 12) } });
    expect(boltShift(turns(-0.5))).toEqual({ acts: 'stiffer', steps: { low: expect.closeTo(0.1, 12), high: expect.closeTo(0.4, 12) } });
    expect(pointShift(grains(0))).toBeNull();
    expect(boltShift(turns(0))).toBeNull();
  });
  it('the second opinion: a step of stiffness is 5 to 13 lb at 60 lb, and the ten of the range lies among them', () => {
    const poundsOf = stepsOf.map((step) => 60 * Math.log(step));
    expect(Math.min(...poundsOf)).toBeCloseTo(7.5, 1);
    expect(Math.max(...poundsOf)).toBeCloseTo(13.4, 1);
    expect(poundsOf.reduce((a, b) => a + b) / poundsOf.length).toBeCloseTo(10, 0);
  });
  it('the second opinion: a column under 25 gr more of point is pushed as by 3 lb more (derived; a hunting arrow of 393 gr and 85 gr of bow)', () => {
    // The middle of the shaft carries the share of the push that the mass ahead of it needs.
    const push = (point: number): number => (8.6 * 28.25 / 2 + 20 + point) / (8.6 * 28.25 + 20 + 9 + 21 + point + 85);
    expect(60 * (push(125) / push(100) - 1)).toBeGreaterThan(2.5);
    expect(60 * (push(125) / push(100) - 1)).toBeLessThan(3.5);
  });
  it('go with the change, and the other way with its sign', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 200, noNaN: true }), (change) => {
      for (const shift of [(n: number) => pointShift(grains(n)), (n: number) => boltShift(turns(n))]) {
        const [up, down, twice] = [shift(change), shift(-change), shift(2 * change)];
        expect(up?.acts).toBe('weaker');
        expect(down).toEqual({ acts: 'stiffer', steps: up?.steps });
        expect(twice!.steps.low / up!.steps.low).toBeCloseTo(2, 12);
        expect(twice!.steps.high / up!.steps.high).toBeCloseTo(2, 12);
        expect(up!.steps.low).toBeLessThan(up!.steps.high);
      }
    }));
  });
});

it('refuse what cannot be meant, by name', () => {
  for (const bad of [NaN, Infinity, 0, -1]) {
    expect(said(() => cutShift(inches(bad), inches(1)))).toBe(`cutShift: the shaft's length is ${bad}; a number above 0 is needed`);
    expect(said(() => cutShift(inches(28), inches(bad)))).toBe(`cutShift: the cut is ${bad}; a number above 0 is needed`);
  }
  expect(said(() => cutShift(inches(28), inches(28)))).toBe('cutShift: the cut is 28 in of a shaft of 28 in; nothing would be left');
  expect(said(() => cutShift(inches(28), inches(29)))).toBe('cutShift: the cut is 29 in of a shaft of 28 in; nothing would be left');
  for (const bad of [NaN, Infinity, -Infinity]) {
    expect(said(() => pointShift(grains(bad)))).toBe(`pointShift: the change of the point is ${bad}; a finite number is needed`);
    expect(said(() => boltShift(turns(bad)))).toBe(`boltShift: the turn of both bolts is ${bad}; a finite number is needed`);
  }
});
