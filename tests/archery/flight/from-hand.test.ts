import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fromPoint } from '../../../src/archery/flight/from-hand.ts';
import { feet, inches } from '../../../src/maths/units.ts';
import { said } from '../said.ts';

it('an arrow of 28.5 in reaches 21.5 in beyond the hand at a brace height of 7: 7 ft from the hand are 5.2 from its point, 8.8 are 7 (by hand)', () => {
  expect(fromPoint(feet(7), inches(28.5))).toBeCloseTo(7 - 21.5 / 12, 12);
  expect(fromPoint(feet(7), inches(28.5))).toBeCloseTo(5.2, 1);
  expect(fromPoint(feet(8.8), inches(28.5), inches(7))).toBeCloseTo(7, 1);
  expect(fromPoint(feet(20), inches(28), inches(6))).toBeCloseTo(20 - 22 / 12, 12);
});
it('a longer arrow and a lower brace height bring the point nearer', () => {
  const length = fc.double({ min: 24, max: 32, noNaN: true });
  fc.assert(fc.property(length, length, fc.double({ min: 5, max: 9, noNaN: true }), (one, other, brace) => {
    const by = fromPoint(feet(20), inches(one), inches(brace)) - fromPoint(feet(20), inches(other), inches(brace));
    expect(by).toBeCloseTo((other - one) / 12, 9);
    expect(fromPoint(feet(20), inches(one), inches(brace + 1.2)) - fromPoint(feet(20), inches(one), inches(brace))).toBeCloseTo(0.1, 9);
  }));
});
it('refuses, by name, what is nearer than the point and what is no length', () => {
  expect(said(() => fromPoint(feet(1.5), inches(28)))).toBe('fromPoint: 1.5 ft from the bow hand is nearer than the point of the arrow; give a distance beyond it');
  expect(said(() => fromPoint(feet(1.75), inches(28)))).toBe('fromPoint: 1.75 ft from the bow hand is nearer than the point of the arrow; give a distance beyond it');
  expect(said(() => fromPoint(feet(NaN), inches(28)))).toBe('fromPoint: the distance from the bow hand is NaN; a number above 0 is needed');
  expect(said(() => fromPoint(feet(7), inches(0)))).toBe("fromPoint: the arrow's length is 0; a number above 0 is needed");
  expect(said(() => fromPoint(feet(7), inches(28), inches(-1)))).toBe('fromPoint: the brace height is -1; a number above 0 is needed');
});
