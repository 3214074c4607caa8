import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, judgeDifference, largestNotExcluded, pairSpread, type TwoGroups } from '../../src/archery/two-groups.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const impact = fc.integer({ min: -32, max: 32 }).map((n) => n / 4);
const group = (minLength: number): fc.Arbitrary<{ x: number; y: number }[]> => fc.array(fc.record({ x: impact, y: impact }), { minLength, maxLength: 6 });
const pair = (minLength: number): fc.Arbitrary<TwoGroups> => fc.record({ a: group(minLength), b: group(minLength) });
const turned = (g: TwoGroups): TwoGroups => ({ a: g.a.toReversed(), b: g.b.toReversed() });
const mirrored = (g: TwoGroups): TwoGroups => ({ a: g.a.map((p) => at(-p.x, p.y)), b: g.b.map((p) => at(-p.x, p.y)) });
/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));

describe('difference', () => {
  it('is b less a, worth the harmonic count (by hand)', () => {
    expect(difference({ a: [at(0, 1), at(1, 1)], b: [at(2, 0), at(2, 0), at(2, 0), at(2, 0)] }, 1)).toEqual({
      mean: { x: 1.5, y: -1 }, count: { x: expect.closeTo(4 / 3, 12), y: expect.closeTo(4 / 3, 12) },
    });
    // 0, 0.1 and 3 have their robust centre at 0.8 and are worth 2 + 1.5 / 2.2 shots.
    const stray = difference({ a: [at(0), at(0.1), at(3)], b: [at(0), at(0), at(0)] }, 1)!;
    expect(stray.mean.x).toBe(-0.8);
    expect(stray.count.x).toBeCloseTo(1 / (1 / (2 + 1.5 / 2.2) + 1 / 3), 12);
  });
  it('is nothing where a group is empty', () => {
    expect(difference({ a: [], b: [at(1)] }, 1)).toBeNull();
    expect(difference({ a: [at(1)], b: [] }, 1)).toBeNull();
  });
  it('does not depend on order, and mirrors, to the last bit; exchanged groups turn its sign', () => {
    fc.assert(fc.property(pair(1), fc.double({ min: 0.1, max: 3, noNaN: true }), (g, sd) => {
      const d = difference(g, sd)!;
      same(difference(turned(g), sd), d);
      same(difference(mirrored(g), sd), { mean: { x: -d.mean.x, y: d.mean.y }, count: d.count });
      same(difference({ a: g.b, b: g.a }, sd)!.mean, { x: -d.mean.x, y: -d.mean.y });
      for (const count of [d.count.x, d.count.y]) {
        expect(count).toBeGreaterThan(0);
        expect(count).toBeLessThanOrEqual(1 / (1 / g.a.length + 1 / g.b.length) + 1e-12);
      }
    }));
  });
});

describe('pairSpread', () => {
  it('pools both groups and axes around their own centres (by hand), however far apart they lie', () => {
    const prior = { sd: 1, df: 2 };
    const g = (shift: number): TwoGroups => ({ a: [at(-1), at(0), at(1)], b: [at(shift, -1), at(shift, 0), at(shift, 1)] });
    // (2 * 2 * 1 + 2 + 2) / (4 + 4 + 4); rounding to 1/16 in is added once.
    const expected = { sd: expect.closeTo(Math.hypot(Math.sqrt(8 / 12), 1 / 16 / Math.sqrt(12)), 12), df: 12 };
    expect(pairSpread([g(0)], prior)).toEqual(expected);
    expect(pairSpread([g(9)], prior)).toEqual(expected);
    expect(pairSpread([], prior).df).toBe(4);
    expect(pairSpread([{ a: [], b: [at(3)] }], prior).df).toBe(4);
  });
});

describe('judgeDifference', () => {
  const known = { sd: 1, df: Infinity };
  it('is same, different or undecided (by hand with the normal table: 1.645 leaves 5 % beyond)', () => {
    // One standard error is 1: within 1.645 on both sides with 90 %.
    expect(judgeDifference(0, 1, known, 0, 1.6449)).toEqual({ verdict: 'same', within: expect.closeTo(0.9, 4), beyond: expect.closeTo(0.05, 4) });
    expect(judgeDifference(0, 1, known, 0, 1.6).verdict).toBe('undecided');
    // 0.8416 beyond the margin: 80 %.
    expect(judgeDifference(2.342, 1, known, 0, 1.5)).toMatchObject({ verdict: 'different', beyond: expect.closeTo(0.8, 3) });
    expect(judgeDifference(2.33, 1, known, 0, 1.5).verdict).toBe('undecided');
    // Half an inch low is what drag does: no difference from the aim.
    expect(judgeDifference(-0.5, 20, known, -0.5, 1).verdict).toBe('same');
  });
  it('mirrors exactly, stays a chance, and more shots make it surer', () => {
    const finite = (max: number): fc.Arbitrary<number> => fc.double({ min: -max, max, noNaN: true });
    fc.assert(fc.property(finite(4), fc.double({ min: 0.3, max: 8, noNaN: true }), fc.double({ min: 1, max: 60, noNaN: true }), finite(2), fc.double({ min: 0.1, max: 3, noNaN: true }), (mean, count, df, aim, margin) => {
      const spread = { sd: 0.8, df };
      const judged = judgeDifference(mean, count, spread, aim, margin);
      same(judgeDifference(-mean, count, spread, -aim, margin), judged);
      expect(judged.within).toBeGreaterThanOrEqual(0);
      expect(judged.within + judged.beyond).toBeLessThanOrEqual(1 + 1e-9);
      const inside = Math.abs(mean - aim) <= margin;
      const more = judgeDifference(mean, 2 * count, spread, aim, margin);
      expect(inside ? more.within - judged.within : more.beyond - judged.beyond).toBeGreaterThanOrEqual(-1e-7);
      expect(largestNotExcluded(mean, 2 * count, spread, aim)).toBeLessThan(largestNotExcluded(mean, count, spread, aim));
    }));
  });
});

describe('largestNotExcluded', () => {
  it('is the far end of a one-sided 95 % interval (t 1.812 on 10 df, any t table, from memory)', () => {
    expect(largestNotExcluded(-1.5, 4, { sd: 2, df: 10 }, -0.5)).toBeCloseTo(1 + 1.812, 3);
    // Beyond it the verdict is same: the chance of a difference larger than this is 5 %.
    const x = largestNotExcluded(0.3, 3, { sd: 1, df: 12 }, 0);
    expect(judgeDifference(0.3, 3, { sd: 1, df: 12 }, 0, x).within).toBeGreaterThan(0.9);
  });
});

it('refuse what cannot be meant', () => {
  const spread = { sd: 1, df: 8 };
  const bad: (() => unknown)[] = [
    () => difference({ a: [at(NaN)], b: [at(0)] }, 1), () => difference({ a: [at(0)], b: [at(0, Infinity)] }, 1), () => difference({ a: [at(0)], b: [at(0)] }, 0),
    () => pairSpread([{ a: [at(NaN), at(0)], b: [] }], spread), () => pairSpread([], { sd: NaN, df: 2 }),
    () => judgeDifference(NaN, 1, spread, 0, 1), () => judgeDifference(0, 0, spread, 0, 1), () => judgeDifference(0, 1, { sd: 1, df: 0 }, 0, 1),
    () => judgeDifference(0, 1, spread, NaN, 1), () => judgeDifference(0, 1, spread, 0, -1), () => judgeDifference(0, 1, spread, 0, NaN), () => largestNotExcluded(0, NaN, spread, 0),
  ];
  for (const act of bad) expect(act).toThrow(RangeError);
  expect(() => judgeDifference(0, 1, spread, 0, -1)).toThrow('judgeDifference: the margin is -1; a finite number, 0 or more, is needed');
});
