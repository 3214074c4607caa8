import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betweenVariance, oneWay, shrinkFactor } from '../../src/archery/one-way.ts';

/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));

const GROUPS = [[1, 3, 2, 5, 4], [4, 2, 6, 5, 3], [7, 5, 6, 8, 4]];

describe('oneWay', () => {
  it('two like axes tell the same variances, on twice the df', () => {
    const [one, two] = [oneWay([GROUPS])!, oneWay([GROUPS, GROUPS])!];
    expect([two.f, two.between, two.withinDf]).toEqual([expect.closeTo(one.f, 9), expect.closeTo(one.between, 9), 24]);
    expect(two.p).toBeLessThan(one.p);
  });
  it('groups of unequal size (by hand): 0 2, 4 8, 9', () => {
    // Means 1, 6, 9 and counts 2, 2, 1: middle 4.6; squares among 2 * 12.96 + 2 * 1.96 + 19.36 = 49.2 on 2 df; within 2 + 8 on 2 df.
    const found = oneWay([[[0, 2], [4, 8], [9], []]])!;
    expect(found.f).toBeCloseTo(24.6 / 5, 12);
    // Shots in a group: (5 - 9 / 5) / 2 = 1.6.
    expect(found.between).toBeCloseTo((24.6 - 5) / 1.6, 12);
  });
  it('an axis or a group without a shot changes nothing', () => {
    same(oneWay([[], GROUPS]), oneWay([GROUPS]));
    same(oneWay([[[]], [[], ...GROUPS, []]]), oneWay([GROUPS]));
    same(betweenVariance([[], [{ mean: 0, count: 2 }, { mean: 2, count: 2 }], [{ mean: 9, count: 4 }]], 1), 1.5);
  });
  it('is nothing where nothing can be learned', () => {
    expect([oneWay([]), oneWay([[[1, 2]]]), oneWay([[[1], [2]]]), oneWay([[[1, 1], [2, 2]]])]).toEqual([null, null, null, null]);
  });
  it('does not depend on the order of shots or groups, nor on the side', () => {
    const value = fc.integer({ min: -32, max: 32 }).map((n) => n / 16);
    fc.assert(fc.property(fc.array(fc.array(value, { maxLength: 4 }), { maxLength: 6 }), (groups) => {
      const found = oneWay([groups]);
      same(oneWay([groups.toReversed().map((g) => g.toReversed())]), found);
      same(oneWay([groups.map((g) => g.map((v) => -v))]), found);
      expect(found === null || (found.between >= 0 && found.p >= 0 && found.p <= 1)).toBe(true);
    }));
  });
});

describe('betweenVariance and shrinkFactor', () => {
  it('is never below zero, and zero for one group', () => {
    expect(betweenVariance([[{ mean: 1, count: 3 }, { mean: 1.1, count: 3 }]], 1)).toBe(0);
    expect(betweenVariance([[{ mean: 1, count: 3 }]], 1)).toBe(0);
    expect(betweenVariance([], 1)).toBe(0);
  });
  it('shrinks to nothing where groups do not differ, and less with more shots', () => {
    expect(shrinkFactor(0, 1, 3)).toBe(0);
    fc.assert(fc.property(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.integer({ min: 1, max: 20 }), (between, n) => {
      const [few, more] = [shrinkFactor(between, 1, n), shrinkFactor(between, 1, n + 1)];
      expect(few).toBeGreaterThan(0);
      expect(more).toBeGreaterThan(few);
      expect(more).toBeLessThan(1);
    }));
  });
  it('refuse what cannot be meant', () => {
    for (const act of [
      () => betweenVariance([], 0), () => betweenVariance([[{ mean: NaN, count: 1 }, { mean: 0, count: 1 }]], 1), () => betweenVariance([[{ mean: 0, count: 0 }, { mean: 0, count: 1 }]], 1),
      () => shrinkFactor(-1, 1, 1), () => shrinkFactor(NaN, 1, 1), () => shrinkFactor(1, 0, 1), () => shrinkFactor(1, 1, 0), () => oneWay([[[NaN, 1], [2, 3]]]),
    ]) expect(act).toThrow(RangeError);
  });
});
