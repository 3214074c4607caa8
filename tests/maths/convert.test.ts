import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert } from '../../src/maths/convert.ts';
import { UNITS, type Unit } from '../../src/maths/units.ts';

describe('convert', () => {
  // NIST SP 811, appendix B.8 (from memory; exact definitions).
  it.each<[number, Unit, number, Unit]>([
    [1, 'in', 25.4, 'mm'], [1, 'in', 2.54, 'cm'], [1, 'ft', 12, 'in'], [1, 'ft', 0.3048, 'm'], [1, 'yd', 0.9144, 'm'], [1, 'yd', 3, 'ft'],
    [1, 'lb', 0.45359237, 'kg'], [1, 'lb', 7000, 'gr'], [7000, 'gr', 453.59237, 'g'], [1, 'gr', 0.06479891, 'g'], [1, 'kg', 1000, 'g'],
  ])('%d %s is exactly %d %s', (a, from, b, to) => {
    expect(convert(a, from, to)).toBe(b);
    expect(convert(b, to, from)).toBeCloseTo(a, 12);
  });
  // ASTM F1544 prints 350 gr as 22.7 g (from memory).
  it('350 gr is 22.7 g', () => expect(convert(350, 'gr', 'g')).toBeCloseTo(22.67962, 5));

  it('different kinds have no conversion; the same unit is left alone', () => {
    const kinds: Unit[][] = [['mm', 'cm', 'ft', 'yd', 'm', 'in'], ['gr', 'g', 'lb', 'kg']];
    const kind = (u: Unit): number => { const k = kinds.findIndex((list) => list.includes(u)); return k < 0 ? 10 + UNITS.indexOf(u) : k; };
    for (const a of UNITS) for (const b of UNITS) {
      if (kind(a) === kind(b)) expect(convert(1, a, b)).toBeGreaterThan(0);
      else expect(convert(1, a, b)).toBeNull();
      expect(convert(0.1, a, a)).toBe(0.1);
    }
  });
  it('there and back again', () => {
    fc.assert(fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constantFrom<Unit>('mm', 'cm', 'ft', 'yd', 'm'), (x, unit) => {
      expect(convert(convert(x, 'in', unit)!, unit, 'in')).toBeCloseTo(x, 9 - Math.ceil(Math.log10(1 + Math.abs(x))));
    }));
  });
  it('refuses NaN', () => expect(() => convert(NaN, 'in', 'mm')).toThrow('the value to convert is NaN'));
});
