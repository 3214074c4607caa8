import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grainsPerPound, worstGrainsPerPound } from '../../src/archery/arrow-mass.ts';
import { grains, pounds } from '../../src/maths/units.ts';

describe('grains per pound', () => {
  it('is mass over peak, and the worst case adds the error of the scale (derived)', () => {
    expect(grainsPerPound(grains(350), pounds(70))).toBe(5);
    expect(worstGrainsPerPound(grains(350), pounds(70), pounds(0))).toBe(5);
    expect(worstGrainsPerPound(grains(350), pounds(68), pounds(2))).toBe(5);
    expect(worstGrainsPerPound(grains(350), pounds(70), pounds(1))).toBeCloseTo(350 / 71, 12);
  });
  it('the worst case is never better', () => {
    const n = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(fc.property(n, n, fc.double({ min: 0, max: 5, noNaN: true }), (mass, peak, error) => {
      expect(worstGrainsPerPound(grains(mass), pounds(peak), pounds(error))).toBeLessThanOrEqual(grainsPerPound(grains(mass), pounds(peak)));
    }));
  });
  it.each([[NaN, 60, 1], [0, 60, 1], [-1, 60, 1], [400, NaN, 1], [400, 0, 1], [400, Infinity, 1], [400, 60, NaN], [400, 60, -1], [400, -1, 2]])('refuses %d gr, %d lb, %d lb', (m, p, e) => {
    expect(() => worstGrainsPerPound(grains(m), pounds(p), pounds(e))).toThrow(RangeError);
  });
});
