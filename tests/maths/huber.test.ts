import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { huberCentre } from '../../src/maths/huber.ts';
import { median, sum } from '../../src/maths/sum.ts';

const values = fc.array(fc.integer({ min: -64, max: 64 }).map((n) => n / 16), { minLength: 1, maxLength: 9 });
const shuffled = values.chain((v) => fc.tuple(fc.constant(v), fc.shuffledSubarray(v, { minLength: v.length, maxLength: v.length })));
const scale = fc.double({ min: 0.03, max: 2, noNaN: true });

describe('huberCentre', () => {
  it('0, 0.1, 3 with scale 1 has its centre at 0.8 (by hand: 0 + 0.1 - 2m + 1.5 = 0)', () => {
    const found = huberCentre([0, 0.1, 3], 1);
    expect(found.centre).toBe(0.8);
    expect(found.weights).toEqual([1, 1, 1.5 / 2.2]);
    expect(found.count).toBeCloseTo(2 + 1.5 / 2.2, 15);
  });
  it('is the mean where nothing strays, the middle where two are far apart', () => {
    expect(huberCentre([0.5, 0.625, 0.75], 0.2)).toEqual({ centre: 0.625, count: 3, weights: [1, 1, 1] });
    expect(huberCentre([-4, 4], 0.1).centre).toBe(0);
    expect(huberCentre([1, 9], 0.1).centre).toBe(5);
    expect(huberCentre([0.1, 0.7, 8.3, 9.9], 0.1).centre).toBe(4.5);
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.7, max: 5, noNaN: true }), (a, d) => {
      expect(huberCentre([a, a + d], 0.2).centre).toBe((a + (a + d)) / 2);
    }));
    expect(huberCentre([0.25], 0.1)).toEqual({ centre: 0.25, count: 1, weights: [1] });
  });
  it('does not depend on the order, and is mirrored by a mirrored set, to the last bit', () => {
    fc.assert(fc.property(shuffled, scale, ([v, w], s) => {
      const a = huberCentre(v, s);
      expect(huberCentre(w, s).centre).toBe(a.centre);
      expect(huberCentre(w, s).count).toBe(a.count);
      const mirrored = huberCentre(v.map((x) => -x), s);
      expect(mirrored.centre + a.centre).toBe(0);
      expect(mirrored.count).toBe(a.count);
    }));
  });
  it('balances the limited pulls, and stays between the least and the largest', () => {
    fc.assert(fc.property(values, scale, (v, s) => {
      const { centre, count, weights } = huberCentre(v, s);
      expect(sum(v.map((x) => Math.max(-1.5 * s, Math.min(1.5 * s, x - centre))))).toBeCloseTo(0, 9);
      expect(sum(v.map((x, i) => weights[i]! * (x - centre)))).toBeCloseTo(0, 9);
      expect(centre).toBeGreaterThanOrEqual(Math.min(...v));
      expect(centre).toBeLessThanOrEqual(Math.max(...v));
      expect(count).toBeGreaterThan(0);
      expect(count).toBeLessThanOrEqual(v.length);
    }));
  });
  it('does not depend on the unit: level pulls stay level, large and small', () => {
    for (const unit of [1e-9, 1, 1e9]) {
      expect(huberCentre([0.1, 0.7, 8.3, 9.9].map((v) => v * unit), 0.1 * unit).centre / unit).toBeCloseTo(4.5, 12);
      expect(huberCentre([0, 0.1, 3].map((v) => v * unit), unit).centre / unit).toBeCloseTo(0.8, 12);
    }
  });
  it('one value can drag it only so far', () => {
    const near = huberCentre([0, 0.1, 3], 1).centre;
    expect(huberCentre([0, 0.1, 3000], 1).centre).toBe(near);
  });
  it.each([[[], 1, 1.5], [[1, NaN], 1, 1.5], [[1, Infinity], 1, 1.5], [[1], 0, 1.5], [[1], NaN, 1.5], [[1], 1, -1]])('refuses %j, scale %d, k %d', (v, s, k) => {
    expect(() => huberCentre(v, s, k)).toThrow(RangeError);
  });
  it('says what is missing', () => expect(() => huberCentre([], 1)).toThrow('huberCentre: there is no centre of no values; give at least one'));
});

describe('sum and median', () => {
  it('order never shows, the sign flips exactly', () => {
    fc.assert(fc.property(fc.array(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })), (v) => {
      expect(sum(v.toReversed())).toBe(sum(v));
      expect(sum(v.map((x) => -x)) + sum(v)).toBe(0);
    }));
    expect(sum([0.1, 0.2, -0.3])).toBeCloseTo(0, 15);
    expect(sum([])).toBe(0);
  });
  it('middle of odd and even counts; none of nothing', () => {
    expect([median([3, 1, 2]), median([4, 1, 2, 3])]).toEqual([2, 2.5]);
    expect([median([7]), median([1e308, 1.5e308])]).toEqual([7, 1.25e308]);
    expect(() => median([])).toThrow('median: there is no middle of no values; give at least one');
    for (const bad of [[1, NaN, 2], [NaN, 1, 2], [1, 2, Infinity]]) expect(() => median(bad)).toThrow('median: a value is');
    expect(() => sum([1, NaN])).toThrow(RangeError);
  });
});
