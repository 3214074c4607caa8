// A number that was measured keeps its unit: what content asks for is what the machine reckons with. The lines marked as
// errors are checked by `tsc`, which fails where one of them compiles.

import { describe, expect, expectTypeOf, test } from 'vitest';
import { dragShare } from '../../src/archery/impact-angle.ts';
import { fitPlumb } from '../../src/archery/plumb-line.ts';
import { measured } from '../../src/machine/guards.ts';
import { massRatio, worstMassRatio } from '../../src/machine/limits.ts';
import { MEASURED_IN } from '../../src/machine/measures.ts';
import { feet, feetIn, grains, inches, mrad, pounds, turns, yards, yardsIn, type Feet, type Grains, type Pounds } from '../../src/maths/units.ts';
import { content, stateOf } from './state-of.ts';

describe('what is measured', () => {
  test.each(Object.entries(MEASURED_IN))('%s is asked in the unit that it is reckoned in: %s', (step, unit) => {
    expect(content.steps[step]).toMatchObject({ kind: 'number', unit });
  });

  test('comes with its unit', () => {
    const state = stateOf({ answers: { 'arrow-mass': 420, 'peak-weight': 60 } });
    expectTypeOf(measured(state, 'arrow-mass')).toEqualTypeOf<Grains | undefined>();
    expectTypeOf(measured(state, 'peak-weight')).toEqualTypeOf<Pounds | undefined>();
    expect([measured(state, 'arrow-mass'), measured(state, 'peak-weight'), measured(state, 'scale-error')]).toEqual([420, 60, undefined]);
    // @ts-expect-error -- no number is asked for there
    expect(measured(state, 'release')).toBeUndefined();
  });
});

describe('a number of another unit', () => {
  test('does not compile', () => {
    const [mass, peak] = [grains(350), pounds(70)];
    expect(massRatio(mass, peak)).toBe(5);
    // @ts-expect-error -- the other way round a heavy bow would look safe with any arrow, and this is 0.2
    expect(massRatio(peak, mass)).toBe(0.2);
    expect(worstMassRatio(mass, pounds(68), pounds(2))).toBe(5);
    // @ts-expect-error -- the other way round
    expect(worstMassRatio(pounds(68), mass, pounds(2))).toBeLessThan(0.2);
    // @ts-expect-error -- a bare number says nothing
    expect(worstMassRatio(350, 68, 2)).toBe(5);
    // @ts-expect-error -- what is turned out of a limb bolt is no error of a scale
    expect(worstMassRatio(mass, pounds(68), turns(2))).toBe(5);
    expect(dragShare(yards(20))).toBeCloseTo(-0.056, 3);
    // @ts-expect-error -- 20 yd are 60 ft: blades would be said to brake twenty-nine times as much
    expect(dragShare(feetIn(yards(20)))).toBeCloseTo(-1.625, 3);
    expect([feetIn(yards(20)), yardsIn(feet(60))]).toEqual([60, 20]);
    expect(fitPlumb([{ distance: yards(20), mean: 0, count: 3 }, { distance: yards(40), mean: 1, count: 3 }], { sd: mrad(1), df: 8 }).slope).toBeCloseTo(0.05, 12);
    // @ts-expect-error -- a spread in inches is another one at each distance
    expect(fitPlumb([{ distance: yards(20), mean: 0, count: 3 }, { distance: yards(40), mean: 1, count: 3 }], { sd: inches(1), df: 8 }).slope).toBeCloseTo(0.05, 12);
    // @ts-expect-error -- what is an inch is not yet a foot
    const length: Feet = inches(1);
    expect(length).toBe(1);
  });
});
