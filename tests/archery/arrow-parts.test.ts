import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceOfParts, foc, focOfParts, leastMass, massOfParts, massProperties, USUAL_PLACES, type ArrowParts } from '../../src/archery/arrow-parts.ts';
import { checks } from '../../src/maths/check.ts';
import { grains, grainsPerInch, inches } from '../../src/maths/units.ts';
import { said } from './said.ts';

// An invented hunting arrow, its parts in the usual ranges (common practice).
const HUNTING: ArrowParts = {
  length: inches(28), shaft: grainsPerInch(10), point: grains(100), insert: grains(20), nock: grains(10), pin: grains(8),
  vanes: { count: 3, each: grains(7) }, wrap: grains(6),
};
const SHAFT: ArrowParts = { length: inches(28), shaft: grainsPerInch(10) };

const mass = fc.double({ min: 0, max: 300, noNaN: true }).map(grains);
const parts: fc.Arbitrary<ArrowParts> = fc.record({
  length: fc.double({ min: 20, max: 34, noNaN: true }).map(inches), shaft: fc.double({ min: 4, max: 16, noNaN: true }).map(grainsPerInch),
  point: mass, insert: mass, nock: mass, pin: mass, vanes: fc.record({ count: fc.integer({ min: 0, max: 6 }), each: mass }), wrap: mass,
}, { requiredKeys: ['length', 'shaft'] });
const LUMPS = ['point', 'insert', 'nock', 'pin', 'wrap'] as const;

describe('mass of the parts', () => {
  it('is their sum; what is left out weighs nothing (by hand)', () => {
    expect(massOfParts(HUNTING)).toBe(280 + 100 + 20 + 10 + 8 + 21 + 6);
    expect(massOfParts(SHAFT)).toBe(280);
    for (const part of LUMPS) expect(massOfParts({ ...SHAFT, [part]: grains(12.5) })).toBe(292.5);
    expect(massOfParts({ ...SHAFT, vanes: { count: 4, each: grains(7) } })).toBe(308);
    expect(massOfParts({ ...SHAFT, vanes: { count: 0, each: grains(7) } })).toBe(280);
  });
});

describe('least mass', () => {
  it('takes half an inch of shaft and then 3 in 100 off (by hand)', () => {
    expect(leastMass(HUNTING)).toBeCloseTo(0.97 * (445 - 5), 10);
    expect(leastMass({ ...SHAFT, length: inches(0.25) })).toBe(0);
    expect(leastMass({ ...SHAFT, length: inches(0.5) })).toBe(0);
    expect(leastMass({ ...SHAFT, length: inches(1) })).toBeCloseTo(0.97 * 5, 12);
  });
  it('covers makers whose figures are all wrong to the light side at once: shaft 2 in 100 and half its last digit, point 2 gr, 3/8 in of nock (from memory)', () => {
    // The last digit matters most on the lightest shafts, 2 gr on the lightest points.
    for (const shaft of [5, 7, 9, 13]) {
      for (const point of [70, 100, 150, 300]) {
        const told: ArrowParts = { ...HUNTING, shaft: grainsPerInch(shaft), point: grains(point) };
        const real = massOfParts({
          ...told, length: inches(28 - 3 / 8), shaft: grainsPerInch((shaft - 0.05) * 0.98), point: grains(point - 2),
          insert: grains(19.5), nock: grains(9.7), pin: grains(7.8), vanes: { count: 3, each: grains(6.8) }, wrap: grains(5.8),
        });
        expect(leastMass(told)).toBeLessThanOrEqual(real);
      }
    }
  });
  it('is below the sum, and not so far that the figure is of no use: 3 to 6 in 100 of a real arrow', () => {
    fc.assert(fc.property(parts, (arrow) => {
      const share = leastMass(arrow) / massOfParts(arrow);
      expect(share).toBeLessThan(0.97);
      expect(share).toBeGreaterThan(0.94);
    }));
  });
  it('a heavier part never makes the least mass, or the mass, smaller', () => {
    fc.assert(fc.property(parts, mass, fc.constantFrom(...LUMPS), (arrow, more, part) => {
      const heavier = { ...arrow, [part]: grains((arrow[part] ?? 0) + more) };
      expect(leastMass(heavier)).toBeGreaterThanOrEqual(leastMass(arrow));
      expect(massOfParts(heavier)).toBeGreaterThanOrEqual(massOfParts(arrow));
    }));
  });
});

describe('balance point and FOC', () => {
  it('a bare shaft balances in its middle', () => {
    expect(balanceOfParts(SHAFT)).toBe(14);
    expect(focOfParts(SHAFT)).toBe(0);
  });
  it('each part pulls from where it lies (by hand: 280 gr of shaft at 14 in, 70 gr more, 350 in all)', () => {
    const places = { point: inches(1), insert: inches(2), nock: inches(-0.5), pin: inches(0.75), vanes: inches(2.5), wrap: inches(3) };
    const at = { point: 29, insert: 26, nock: -0.5, pin: 0.75, wrap: 3 };
    for (const part of LUMPS) {
      expect(balanceOfParts({ ...SHAFT, [part]: grains(70), places })).toBeCloseTo((280 * 14 + 70 * at[part]) / 350, 12);
    }
    expect(balanceOfParts({ ...SHAFT, vanes: { count: 5, each: grains(14) }, places })).toBeCloseTo((280 * 14 + 70 * 2.5) / 350, 12);
  });
  it('where nothing else is said parts lie as usual (from memory)', () => {
    expect(USUAL_PLACES).toEqual({ point: 0, insert: 0.5, nock: 0.2, pin: 0.5, vanes: 2, wrap: 2.4 });
    const { places: _, ...usual } = { ...HUNTING, places: USUAL_PLACES };
    expect(balanceOfParts(usual)).toBe(balanceOfParts({ ...usual, places: USUAL_PLACES }));
    const by = 280 * 14 + 100 * 28 + 20 * 27.5 + 10 * 0.2 + 8 * 0.5 + 21 * 2 + 6 * 2.4;
    expect(balanceOfParts(HUNTING)).toBeCloseTo(by / 445, 12);
    // One place told, the others as usual.
    expect(balanceOfParts({ ...HUNTING, places: { point: inches(0.25) } })).toBeCloseTo((by + 25) / 445, 12);
  });
  it('is as good as the doc says: a point 1/4 in off its usual place is 0.2 percent, and all parts off together 0.6', () => {
    const off = (places: ArrowParts['places']): number => Math.abs(focOfParts({ ...HUNTING, ...(places ? { places } : {}) }) - focOfParts(HUNTING));
    expect(off({ point: inches(0.25) })).toBeCloseTo(0.2, 1);
    expect(off({ point: inches(0.5), insert: inches(0.25), nock: inches(0.3), pin: inches(0.75), vanes: inches(2.5), wrap: inches(2.9) })).toBeLessThan(0.6);
  });
  it('measured, by hand: an arrow of 28 in that balances at 17.5 in has 12.5 percent, at its middle 0, behind it less', () => {
    expect(foc(inches(28), inches(17.5))).toBe(12.5);
    expect(foc(inches(28), inches(14))).toBe(0);
    expect(foc(inches(28), inches(7))).toBe(-25);
  });
  it('measured and added up are one formula', () => {
    fc.assert(fc.property(parts, (arrow) => {
      expect(focOfParts(arrow)).toBeCloseTo((100 * (balanceOfParts(arrow) - arrow.length / 2)) / arrow.length, 9);
      expect(focOfParts({ ...arrow, places: { point: inches(-1) } })).toBe(foc(arrow.length, balanceOfParts({ ...arrow, places: { point: inches(-1) } })));
    }));
  });
  it('does not depend on the unit: all lengths and all masses may be told in others', () => {
    fc.assert(fc.property(parts, fc.double({ min: 0.1, max: 10, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true }), (arrow, long, heavy) => {
      const scaled: ArrowParts = {
        length: inches(arrow.length * long), shaft: grainsPerInch((arrow.shaft * heavy) / long),
        point: grains((arrow.point ?? 0) * heavy), insert: grains((arrow.insert ?? 0) * heavy), nock: grains((arrow.nock ?? 0) * heavy),
        pin: grains((arrow.pin ?? 0) * heavy), wrap: grains((arrow.wrap ?? 0) * heavy),
        vanes: { count: arrow.vanes?.count ?? 0, each: grains((arrow.vanes?.each ?? 0) * heavy) },
        places: {
          point: inches(USUAL_PLACES.point * long), insert: inches(USUAL_PLACES.insert * long), nock: inches(USUAL_PLACES.nock * long),
          pin: inches(USUAL_PLACES.pin * long), vanes: inches(USUAL_PLACES.vanes * long), wrap: inches(USUAL_PLACES.wrap * long),
        },
      };
      expect(focOfParts(scaled)).toBeCloseTo(focOfParts(arrow), 8);
      expect(balanceOfParts(scaled) / long).toBeCloseTo(balanceOfParts(arrow), 8);
      expect(massOfParts(scaled) / heavy).toBeCloseTo(massOfParts(arrow), 8);
    }));
  });
  it('a heavier point moves the balance forward, heavier vanes back', () => {
    fc.assert(fc.property(parts, fc.double({ min: 1, max: 50, noNaN: true }), (arrow, more) => {
      const before = focOfParts(arrow);
      fc.pre(balanceOfParts(arrow) > USUAL_PLACES.vanes + 1); // no arrow balances on its vanes
      expect(focOfParts({ ...arrow, point: grains((arrow.point ?? 0) + more) })).toBeGreaterThan(before);
      const { count, each } = arrow.vanes ?? { count: 0, each: grains(0) };
      const at = { ...arrow, vanes: { count: 1, each: grains(count * each) } };
      expect(focOfParts({ ...at, vanes: { count: 1, each: grains(count * each + more) } })).toBeLessThan(before);
    }));
  });
});

// Common practice: a vane of 7 gr; some fletch four where others fletch three.
describe('four vanes of 7 gr put 28 gr on the tail', () => {
  const three: ArrowParts = { length: inches(28), shaft: grainsPerInch(10), point: grains(100), insert: grains(20), nock: grains(10), vanes: { count: 3, each: grains(7) } };
  const four: ArrowParts = { ...three, vanes: { count: 4, each: grains(7) } };
  const withoutVanes: ArrowParts = { length: inches(28), shaft: grainsPerInch(10), point: grains(100), insert: grains(20), nock: grains(10) };
  it('by hand: 410 gr and 7272 gr in without vanes, at 2 in from the throat', () => {
    expect(massOfParts(withoutVanes)).toBe(410);
    expect(balanceOfParts(withoutVanes)).toBeCloseTo(7272 / 410, 12);
    expect(massOfParts(four) - massOfParts(withoutVanes)).toBe(28);
    expect(massOfParts(four) - massOfParts(three)).toBe(7);
    expect(balanceOfParts(three)).toBeCloseTo((7272 + 42) / 431, 12);
    expect(balanceOfParts(four)).toBeCloseTo((7272 + 56) / 438, 12);
  });
  it('and by hand: the fourth moves the balance back by 0.24 in and takes 0.85 percent of FOC, all four 1.01 in and 3.6', () => {
    expect(balanceOfParts(three) - balanceOfParts(four)).toBeCloseTo(0.2392, 4);
    expect(focOfParts(three) - focOfParts(four)).toBeCloseTo(0.8544, 4);
    expect(balanceOfParts(withoutVanes) - balanceOfParts(four)).toBeCloseTo(1.006, 4);
    expect(focOfParts(withoutVanes) - focOfParts(four)).toBeCloseTo(3.5928, 4);
  });
});

describe('mass properties', () => {
  const propertiesOf = (arrow: ArrowParts): ReturnType<typeof massProperties> => massProperties(checks('massProperties').massProperties, arrow);
  it('a bare shaft turns about its middle by m l^2 / 12; a lump 6 in from the balance point adds its mass times 36 (by hand)', () => {
    expect(propertiesOf(SHAFT)).toEqual({ mass: 280, balance: 14, inertia: (280 * 28 ** 2) / 12 });
    // As heavy at both ends, the balance stays in the middle.
    const two = propertiesOf({ ...SHAFT, point: grains(50), nock: grains(50), places: { point: inches(-8), nock: inches(8) } });
    expect(two.inertia).toBeCloseTo((280 * 28 ** 2) / 12 + 2 * 50 * 36, 9);
  });
  it('of one more lump: shaft and lump about the balance point between them (by hand, 280 gr at 14 in and 70 at 28)', () => {
    const { balance, inertia } = propertiesOf({ ...SHAFT, point: grains(70) });
    expect(balance).toBeCloseTo(16.8, 12);
    expect(inertia).toBeCloseTo((280 * 28 ** 2) / 12 + 280 * 2.8 ** 2 + 70 * 11.2 ** 2, 9);
  });
  it('mass and balance are those of the parts, and no part makes it easier to turn', () => {
    fc.assert(fc.property(parts, fc.constantFrom(...LUMPS), fc.double({ min: 1, max: 50, noNaN: true }), (arrow, part, more) => {
      const { mass: whole, balance, inertia } = propertiesOf(arrow);
      expect([whole, balance]).toEqual([massOfParts(arrow), balanceOfParts(arrow)]);
      expect(propertiesOf({ ...arrow, [part]: grains((arrow[part] ?? 0) + more) }).inertia).toBeGreaterThanOrEqual(inertia);
    }));
  });
});

describe('refuse what is no arrow, by name', () => {
  const all = { massOfParts, leastMass, balanceOfParts, focOfParts, massProperties: (arrow: ArrowParts) => massProperties(checks('massProperties').massProperties, arrow) };
  it('lengths and shafts', () => {
    for (const [name, act] of Object.entries(all)) {
      for (const bad of [NaN, Infinity, 0, -1]) {
        expect(said(() => act({ ...HUNTING, length: inches(bad) }))).toBe(`${name}: the arrow's length is ${bad}; a number above 0 is needed`);
        expect(said(() => act({ ...HUNTING, shaft: grainsPerInch(bad) }))).toBe(`${name}: the shaft's mass for an inch is ${bad}; a number above 0 is needed`);
      }
    }
  });
  it('parts and their places', () => {
    const named = { point: 'the point', insert: 'the insert', nock: 'the nock', pin: 'the pin', wrap: 'the wrap' };
    for (const [name, act] of Object.entries(all)) {
      for (const part of LUMPS) {
        for (const bad of [NaN, Infinity, -1]) {
          expect(said(() => act({ ...HUNTING, [part]: grains(bad) }))).toBe(`${name}: the mass of ${named[part]} is ${bad}; a finite number, 0 or more, is needed`);
        }
        expect(said(() => act({ ...HUNTING, [part]: grains(1e31) }))).toBe(`${name}: the mass of ${named[part]} is 1e+31; a number up to 1e+30 is needed`);
        expect(said(() => act({ ...HUNTING, places: { [part]: inches(NaN) } }))).toBe(`${name}: the place of ${named[part]} is NaN; a finite number is needed`);
      }
      expect(said(() => act({ ...HUNTING, vanes: { count: 3, each: grains(NaN) } }))).toBe(`${name}: the mass of a vane is NaN; a finite number, 0 or more, is needed`);
      expect(said(() => act({ ...HUNTING, places: { vanes: inches(Infinity) } }))).toBe(`${name}: the place of a vane is Infinity; a finite number is needed`);
      for (const bad of [NaN, 2.5, -1]) {
        expect(said(() => act({ ...HUNTING, vanes: { count: bad, each: grains(7) } }))).toBe(`${name}: the count of vanes is ${bad}; a whole number, 0 or more, is needed`);
      }
    }
  });
  it('balance points', () => {
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => foc(inches(bad), inches(17)))).toBe(`foc: the arrow's length is ${bad}; a number above 0 is needed`);
      expect(said(() => foc(inches(28), inches(bad)))).toBe(`foc: the balance point is ${bad}; a number above 0 is needed`);
    }
    for (const bad of [28, 29]) {
      expect(said(() => foc(inches(28), inches(bad)))).toBe(`foc: the balance point is at ${bad} in, the shaft ends at 28 in; measure both from the nock's throat`);
    }
  });
});
