import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scatters } from '../../src/archery/scatters.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const cross = (size: number): { x: number; y: number }[] => [at(size, 0), at(-size, 0), at(0, size), at(0, -size)];

describe('scatters', () => {
  it('needs twice the spread and more than luck over 1.5 times (F 4.284 on 6 and 6 df: any F table, from memory)', () => {
    // Equal crosses: the ratio of variances is the square of the ratio of sizes; the limit is 2.25 * 4.284.
    const limit = Math.sqrt(2.25 * 4.284);
    expect(scatters([{ a: cross(1), b: cross(limit * 1.001) }])).toBe(true);
    expect(scatters([{ a: cross(1), b: cross(limit * 0.999) }])).toBe(false);
    expect(scatters([{ a: cross(1), b: cross(1) }])).toBe(false);
    // However sure: with very many shots 1.9 times as wide is beyond 1.5, but nobody calls it scatter.
    const many = Array.from({ length: 30 }, () => ({ a: cross(1), b: cross(1.9) }));
    expect(scatters(many)).toBe(false);
    expect(scatters(many.map(({ a }) => ({ a, b: cross(2) })))).toBe(false);
    expect(scatters(many.map(({ a }) => ({ a, b: cross(2.1) })))).toBe(true);
  });
  it('field points known from before make it surer; where the centres lie does not matter', () => {
    const now = { a: cross(1), b: cross(2.6).map((s) => at(s.x + 9, s.y - 4)) };
    expect(scatters([now])).toBe(false);
    expect(scatters([now, ...Array.from({ length: 10 }, () => ({ a: cross(1), b: [] }))])).toBe(true);
  });
  it('says nothing without two shots of each, and field points that were told alike are not endlessly good', () => {
    expect(scatters([])).toBe(false);
    expect(scatters([{ a: cross(1), b: [at(50)] }])).toBe(false);
    expect(scatters([{ a: [at(50)], b: cross(9) }])).toBe(false);
    const alike = [at(0), at(0), at(0)];
    expect(scatters([{ a: alike, b: [at(0), at(0.25), at(0, 0.25)] }])).toBe(false);
    expect(scatters([{ a: alike, b: [at(4), at(-3), at(0, 5)] }])).toBe(true);
  });
  it('does not depend on order or side, and wider broadheads never scatter less', () => {
    const impact = fc.integer({ min: -16, max: 16 }).map((n) => n / 4);
    const group = fc.array(fc.record({ x: impact, y: impact }), { maxLength: 6 });
    fc.assert(fc.property(fc.array(fc.record({ a: group, b: group }), { maxLength: 3 }), (pairs) => {
      const found = scatters(pairs);
      expect(scatters(pairs.toReversed().map(({ a, b }) => ({ a: a.toReversed(), b: b.toReversed() })))).toBe(found);
      expect(scatters(pairs.map(({ a, b }) => ({ a: a.map((s) => at(-s.x, s.y)), b: b.map((s) => at(-s.x, s.y)) })))).toBe(found);
      const wider = scatters(pairs.map(({ a, b }) => ({ a, b: b.map((s) => at(2 * s.x, 2 * s.y)) })));
      expect(Number(wider)).toBeGreaterThanOrEqual(Number(found));
    }));
  });
  it('refuses NaN', () => expect(() => scatters([{ a: cross(1), b: [at(NaN), at(0)] }])).toThrow('scatters: an impact is NaN; a finite number is needed'));
});
