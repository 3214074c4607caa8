import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kineticEnergy, momentum } from '../../src/archery/arrow-energy.ts';
import { fps, grains } from '../../src/maths/units.ts';
import { said } from './said.ts';

const mass = fc.double({ min: 100, max: 2000, noNaN: true });
const speed = fc.double({ min: 50, max: 500, noNaN: true });

describe('energy and momentum of an arrow', () => {
  it('in SI units first (by hand: 20 g at 100 m/s carry 100 J and 2 N s)', () => {
    const [m, v] = [grains(20 / 0.06479891), fps(100 / 0.3048)];
    expect(kineticEnergy(m, v).joules).toBeCloseTo(100, 10);
    expect(momentum(m, v).newtonSeconds).toBeCloseTo(2, 12);
  });
  it('both measures say the same: a foot pound is 1.3558179483314 J, a slug foot a second 4.4482216152605 N s (SP 811)', () => {
    fc.assert(fc.property(mass, speed, (m, v) => {
      const [energy, push] = [kineticEnergy(grains(m), fps(v)), momentum(grains(m), fps(v))];
      expect(energy.joules / energy.footPounds).toBeCloseTo(1.3558179483314, 12);
      expect(push.newtonSeconds / push.slugFeetPerSecond).toBeCloseTo(4.4482216152605, 12);
      // Energy is half the momentum times the speed, in either system.
      expect((push.newtonSeconds * v * 0.3048) / 2 / energy.joules).toBeCloseTo(1, 12);
      expect((push.slugFeetPerSecond * v) / 2 / energy.footPounds).toBeCloseTo(1, 12);
    }));
  });
  it('twice the mass is twice of both, twice the speed four times the energy and twice the momentum', () => {
    fc.assert(fc.property(mass, speed, (m, v) => {
      const [energy, push] = [kineticEnergy(grains(m), fps(v)), momentum(grains(m), fps(v))];
      expect(kineticEnergy(grains(2 * m), fps(v)).joules / energy.joules).toBeCloseTo(2, 12);
      expect(kineticEnergy(grains(m), fps(2 * v)).footPounds / energy.footPounds).toBeCloseTo(4, 12);
      expect(momentum(grains(2 * m), fps(v)).newtonSeconds / push.newtonSeconds).toBeCloseTo(2, 12);
      expect(momentum(grains(m), fps(2 * v)).slugFeetPerSecond / push.slugFeetPerSecond).toBeCloseTo(2, 12);
    }));
  });
  it('refuse what is no arrow, by name', () => {
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => kineticEnergy(grains(bad), fps(300)))).toBe(`kineticEnergy: the arrow's mass is ${bad}; a number above 0 is needed`);
      expect(said(() => kineticEnergy(grains(400), fps(bad)))).toBe(`kineticEnergy: the arrow's speed is ${bad}; a number above 0 is needed`);
      expect(said(() => momentum(grains(bad), fps(300)))).toBe(`momentum: the arrow's mass is ${bad}; a number above 0 is needed`);
      expect(said(() => momentum(grains(400), fps(bad)))).toBe(`momentum: the arrow's speed is ${bad}; a number above 0 is needed`);
    }
  });
});
