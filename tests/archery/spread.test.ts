import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriedPrior, pooledSpread, USUAL_PRIOR } from '../../src/archery/spread.ts';

const ROUNDING = 1 / 16 / Math.sqrt(12); // derived: standard deviation of rounding to 1/16
const coordinate = fc.integer({ min: -48, max: 48 }).map((n) => n / 16);
const shots = fc.array(fc.record({ x: coordinate, y: coordinate }), { maxLength: 7 });

describe('pooledSpread', () => {
  it('is the prior where nothing was shot, with rounding added once', () => {
    expect(pooledSpread([])).toEqual({ sd: Math.hypot(0.2, ROUNDING), df: 6 });
    expect(pooledSpread([[{ x: 1, y: 2 }], []])).toEqual(pooledSpread([]));
    expect(ROUNDING).toBeCloseTo(0.018, 3);
  });
  it('pools by hand (derived): x -0.1, 0, 0.1 and y all 0', () => {
    const set = [{ x: -0.1, y: 0 }, { x: 0, y: 0 }, { x: 0.1, y: 0 }];
    // (2 * 3 * 0.04 + 0.02) / (6 + 4)
    expect(pooledSpread([set])).toEqual({ sd: expect.closeTo(Math.hypot(Math.sqrt(0.26 / 10), ROUNDING), 12), df: 10 });
    expect(pooledSpread([set, set])).toEqual({ sd: expect.closeTo(Math.hypot(Math.sqrt(0.28 / 14), ROUNDING), 12), df: 14 });
    // Where the sets lie does not matter, only how they scatter.
    expect(pooledSpread([set.map((s) => ({ x: s.x + 2, y: s.y - 1 }))]).sd).toBeCloseTo(pooledSpread([set]).sd, 12);
  });
  it('a stray shot widens it much less than plain squares would', () => {
    const set = [{ x: 0, y: 0 }, { x: 0, y: 0 }, { x: 3, y: 0 }];
    const plain = Math.sqrt((6 * 0.04 + 6) / 10);
    expect(pooledSpread([set]).sd).toBeLessThan(0.6 * plain);
    expect(pooledSpread([set]).sd).toBeGreaterThan(0.2);
  });
  it('never goes below 0.03 in', () => {
    const same = [{ x: 0.5, y: 0 }, { x: 0.5, y: 0 }, { x: 0.5, y: 0 }];
    expect(pooledSpread([same], { sd: 0.001, df: 1 }).sd).toBeGreaterThanOrEqual(0.03);
    expect(carriedPrior({ sd: 0.03, df: 8 }).sd).toBe(0.03);
  });
  it('does not depend on the order of sets or shots, nor on the side, to the last bit', () => {
    fc.assert(fc.property(fc.array(shots, { maxLength: 4 }), (sets) => {
      const { sd, df } = pooledSpread(sets);
      expect(pooledSpread(sets.toReversed().map((s) => s.toReversed()))).toEqual({ sd, df });
      expect(pooledSpread(sets.map((s) => s.map((t) => ({ x: -t.x, y: t.y }))))).toEqual({ sd, df });
      expect(pooledSpread(sets.map((s) => s.map((t) => ({ x: t.y, y: t.x }))))).toEqual({ sd, df });
      expect(df).toBe(6 + sets.reduce((t, s) => t + 2 * Math.max(0, s.length - 1), 0));
    }));
  });
  it('hands on half its df, at most 16, without adding the rounding twice', () => {
    expect(carriedPrior(pooledSpread([]))).toEqual({ sd: expect.closeTo(USUAL_PRIOR.sd, 12), df: USUAL_PRIOR.df });
    expect(carriedPrior({ sd: 0.3, df: 80 }).df).toBe(16);
  });
  it('refuses NaN', () => {
    expect(() => pooledSpread([[{ x: NaN, y: 0 }, { x: 0, y: 0 }]])).toThrow('a tear is NaN');
    expect(() => pooledSpread([], { sd: NaN, df: 3 })).toThrow(RangeError);
    expect(() => pooledSpread([], { sd: 0.2, df: 0 })).toThrow(RangeError);
    expect(() => carriedPrior({ sd: NaN, df: 3 })).toThrow(RangeError);
  });
});
