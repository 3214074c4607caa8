// NIST Special Publication 811, Guide for the Use of the International System of Units, appendix B.8: factors that are exact. The grain ("exactly
// 64.79891 mg"), the pound, inch, foot and yard read in reprints; pound of force, foot pound and slug from memory. Everything else is derived from them.

import { describe, expect, it } from 'vitest';
import { kineticEnergy, momentum } from '../../src/archery/arrow-energy.ts';
import { convert } from '../../src/maths/convert.ts';
import { FOOT, FOOT_POUND, GRAIN, GRAVITY, INCH, POUND, POUND_FORCE } from '../../src/maths/exact.ts';
import { feet, feetIn, fps, grains, yards, yardsIn } from '../../src/maths/units.ts';
import { near, prints } from './near.ts';

describe('lengths (read)', () => {
  it.each([[1, 'in', 'mm', 25.4], [1, 'ft', 'm', 0.3048], [1, 'yd', 'm', 0.9144], [1, 'ft', 'in', 12], [1, 'yd', 'ft', 3], [1, 'm', 'cm', 100]] as const)('%f %s in %s is %f, exactly', (n, from, to, is) => {
    expect(convert(n, from, to)).toBe(is);
  });
  it('the same in the constants that energies are worked out from, and in yards', () => {
    expect(FOOT).toBe(convert(1, 'ft', 'm'));
    expect(INCH).toBe(0.0254);
    near(FOOT, 12 * INCH, 1e-15);
    expect(feetIn(yards(20))).toBe(60);
    expect(yardsIn(feet(60))).toBe(20);
  });
  it('300 ft/s are 91.44 m/s', () => {
    expect(convert(300, 'ft', 'm')).toBe(91.44);
    near(300 * FOOT, 91.44, 1e-15);
  });
});

describe('masses (read)', () => {
  it('a grain is 64.79891 mg, a pound 0.45359237 kg and 7000 grains, exactly', () => {
    expect(convert(1, 'gr', 'g')).toBe(0.06479891);
    expect(convert(1, 'lb', 'kg')).toBe(0.45359237);
    expect(convert(1, 'lb', 'gr')).toBe(7000);
    expect(convert(7000, 'gr', 'g')).toBe(453.59237);
    expect(POUND).toBe(convert(1, 'lb', 'kg'));
    near(GRAIN, 64.79891e-6, 1e-15);
  });
  it('437.5 grains are an ounce, the 16th of a pound', () => expect(convert(437.5, 'gr', 'lb')).toBe(1 / 16));
  it('15.43 grains are a gram, as the trade reckons (common practice)', () => prints(convert(1, 'g', 'gr') ?? NaN, 15.43, 2));
});

describe('forces and energies (from memory)', () => {
  it('standard gravity is 9.80665 m/s2, 32.174049 ft/s2', () => {
    expect(GRAVITY).toBe(9.80665);
    prints(GRAVITY / FOOT, 32.174049, 6);
  });
  it('a pound of force is 4.4482216152605 N, a foot pound 1.3558179483314 J, a slug 14.59390294 kg', () => {
    near(POUND_FORCE, 4.4482216152605, 1e-14);
    near(FOOT_POUND, 1.3558179483314, 1e-13);
    near(POUND_FORCE / FOOT, 14.59390294, 1e-9);
  });
  it('12 inch pounds are a foot pound', () => near(12 * INCH * POUND_FORCE, FOOT_POUND, 1e-15));
});

// The two constants of the trade (common practice) are each exact with another gravity, and neither with the standard one.
describe('what grains and feet a second are divided by (derived)', () => {
  const [mass, speed] = [grains(1), fps(1)];
  const forEnergy = 1 / kineticEnergy(mass, speed).footPounds;
  const forMomentum = 1 / momentum(mass, speed).slugFeetPerSecond;
  it('energy: 450436.68; 450240 is that with 32.16 ft/s2, and 0.044 % too much energy', () => {
    prints(forEnergy, 450_436.68, 2);
    near(2 * 7000 * 32.16, 450_240, 1e-12);
    prints(100 * (forEnergy / 450_240 - 1), 0.044, 3);
  });
  it('momentum: 225218.34; 225400 is that with 32.2 ft/s2, and 0.081 % too little momentum', () => {
    prints(forMomentum, 225_218.34, 2);
    near(7000 * 32.2, 225_400, 1e-12);
    prints(100 * (forMomentum / 225_400 - 1), -0.081, 3);
  });
});
