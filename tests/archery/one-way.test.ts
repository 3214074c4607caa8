import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betweenVariance, oneWay, shrinkFactor } from '../../src/archery/one-way.ts';

/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));

// Both data sets were typed from memory: that the published results come out to all digits is the proof that they are right.
// NIST StRD, data set SiRstv (one-way analysis of variance, lower difficulty).
const SIRSTV = [
  [196.3052, 196.1240, 196.1890, 196.2569, 196.3403], [196.3042, 196.3825, 196.1669, 196.3257, 196.0422], [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
  [196.2795, 196.1748, 196.1494, 196.1485, 195.9885], [196.2119, 196.1051, 196.1850, 196.0052, 196.2090],
];
// Dyestuff: O. L. Davies, "Statistical Methods in Research and Production" (1947), yields of six batches.
const DYESTUFF = [
  [1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495], [1595, 1550, 1605, 1510, 1560],
  [1445, 1440, 1595, 1465, 1545], [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445],
];
const mean = (v: readonly number[]): number => v.reduce((t, x) => t + x, 0) / v.length;

describe('oneWay', () => {
  it('gives the certified F of SiRstv (NIST StRD)', () => {
    const found = oneWay([SIRSTV])!;
    expect(found.f).toBeCloseTo(1.18046237440255, 11);
    expect(found.within).toBeCloseTo(0.0108318280000000, 13);
    expect(found.withinDf).toBe(20);
    expect(found.p).toBeGreaterThan(0.05); // 2.866 is the 5 % point on 4 and 20 df
  });
  it('gives the random effects of Dyestuff: variances 1764.05 and 2451.25 (published, balanced, from memory)', () => {
    const found = oneWay([DYESTUFF])!;
    expect(found.within).toBeCloseTo(2451.25, 9);
    expect(found.between).toBeCloseTo(1764.05, 9);
    expect(shrinkFactor(found.between, found.within, 5)).toBeCloseTo(0.782527, 6);
  });
  it('effects of the six batches of Dyestuff, shrunk (published, from memory)', () => {
    const { between, within } = oneWay([DYESTUFF])!;
    const middle = mean(DYESTUFF.map(mean));
    const effects = DYESTUFF.map((batch) => shrinkFactor(between, within, batch.length) * (mean(batch) - middle));
    expect(effects).toEqual([-17.6069, 0.3913, 28.5622, -23.0845, 56.7332, -44.9953].map((e) => expect.closeTo(e, 4)));
  });
  it('two like axes tell the same variances, on twice the df', () => {
    const [one, two] = [oneWay([DYESTUFF])!, oneWay([DYESTUFF, DYESTUFF])!];
    expect([two.f, two.between, two.withinDf]).toEqual([expect.closeTo(one.f, 9), expect.closeTo(one.between, 9), 48]);
    expect(two.p).toBeLessThan(one.p);
  });
  it('groups of unequal size (by hand): 0 2, 4 8, 9', () => {
    // Means 1, 6, 9 and counts 2, 2, 1: middle 4.6; squares among 2 * 12.96 + 2 * 1.96 + 19.36 = 49.2 on 2 df; within 2 + 8 on 2 df.
    const found = oneWay([[[0, 2], [4, 8], [9], []]])!;
    expect(found.f).toBeCloseTo(24.6 / 5, 12);
    // Shots in a group: (5 - 9 / 5) / 2 = 1.6.
    expect(found.between).toBeCloseTo((24.6 - 5) / 1.6, 12);
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
