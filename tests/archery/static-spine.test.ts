import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amoDeflection, amoPounds, astmDeflection, bendingStiffness } from '../../src/archery/static-spine.ts';
import { inches } from '../../src/maths/units.ts';
import { said } from './said.ts';

const deflections = fc.double({ min: 0.1, max: 2, noNaN: true });

describe('static spine', () => {
  it('the two tests lead to each other; in the shorter one a shaft sags less', () => {
    fc.assert(fc.property(deflections, (d) => {
      const amo = amoDeflection(inches(d));
      expect(amo).toBeLessThan(d);
      expect(astmDeflection(amo)).toBeCloseTo(d, 12);
    }));
  });
  it('both tests find one stiffness, by the law of the beam (deflection = P L^3 / 48 EI; from memory)', () => {
    fc.assert(fc.property(deflections, (d) => {
      const stiffness = bendingStiffness(inches(d)).poundInchesSquared;
      expect((1.94 * 28 ** 3) / (48 * stiffness)).toBeCloseTo(d, 12);
      expect((2 * 26 ** 3) / (48 * stiffness)).toBeCloseTo(amoDeflection(inches(d)), 12);
    }));
  });
  it('half the deflection is twice the stiffness and twice the pounds, in any unit', () => {
    fc.assert(fc.property(deflections, (d) => {
      const [soft, stiff] = [bendingStiffness(inches(d)), bendingStiffness(inches(d / 2))];
      expect(stiff.poundInchesSquared / soft.poundInchesSquared).toBeCloseTo(2, 12);
      expect(stiff.newtonMetresSquared / soft.newtonMetresSquared).toBeCloseTo(2, 12);
      expect(amoPounds(inches(d / 2)) / amoPounds(inches(d))).toBeCloseTo(2, 12);
      // 1 lbf is 4.4482216152605 N, 1 in 0.0254 m (SP 811).
      expect(soft.newtonMetresSquared / soft.poundInchesSquared / (4.4482216152605 * 0.0254 ** 2)).toBeCloseTo(1, 12);
    }));
  });
  it('refuse what is no deflection, by name', () => {
    for (const bad of [NaN, Infinity, 0, -0.4]) {
      for (const [name, act] of Object.entries({ amoDeflection, astmDeflection, amoPounds, bendingStiffness })) {
        expect(said(() => act(inches(bad)))).toBe(`${name}: the deflection is ${bad}; a number above 0 is needed`);
      }
    }
  });
});
