// What may be before a shot, held against the laws that it is made of.

import { describe, expect, it } from 'vitest';
import { bowsBefore, type Answers } from '../../src/archery/bows-before.ts';
import { sum } from '../../src/maths/sum.ts';

const WAYS: readonly Answers[] = [{ share: 0.6, about: 0.1, logSd: 0.6 }, { share: 0.3, about: -0.1, logSd: 0.6 }, { share: 0.1, about: null }];
const usual = { sd: 0.2, df: 3 };
/** By response and by spread, whatever the other is. */
function apart(answers: readonly Answers[], spread = usual) {
  const { gains, sds, shares } = bowsBefore(answers, spread);
  const share = (g: number, s: number): number => shares[g * sds.length + s] ?? NaN;
  return { gains, sds, shares, byGain: gains.map((_, g) => sum(sds.map((_sd, s) => share(g, s)))), bySpread: sds.map((_, s) => sum(gains.map((_g, g) => share(g, s)))), share };
}

describe('bowsBefore', () => {
  it('gives each way its share, whatever the shares add up to, and response and spread know nothing of each other', () => {
    for (const times of [1, 5]) {
      const { gains, byGain, bySpread, shares, share } = apart(WAYS.map((one) => ({ ...one, share: times * one.share })));
      expect(sum(shares)).toBeCloseTo(1, 12);
      expect(sum(byGain.filter((_, g) => (gains[g] ?? 0) > 0))).toBeCloseTo(0.6, 12);
      expect(sum(byGain.filter((_, g) => (gains[g] ?? 0) < 0))).toBeCloseTo(0.3, 12);
      expect(byGain.filter((_, g) => gains[g] === 0)).toEqual([expect.closeTo(0.1, 12)]);
      for (const [g, one] of byGain.entries()) for (const [s, other] of bySpread.entries()) expect(share(g, s)).toBeCloseTo(one * other, 12);
    }
  });

  it('a response of about so much is so on a scale of ratios: middle and spread of its logarithm', () => {
    const { gains, byGain } = apart([{ share: 1, about: -0.1, logSd: 0.6 }]);
    const logs = gains.map((gain) => Math.log(gain / -0.1));
    expect(sum(logs.map((log, g) => log * (byGain[g] ?? 0)))).toBeCloseTo(0, 12);
    // A normal number cut half a node beyond 2.8, at 2.93 of its deviations, has 0.984 of them (derived: 1 - 2 * 2.93 * density(2.93) / 0.9966, square root).
    expect(Math.sqrt(sum(logs.map((log, g) => log * log * (byGain[g] ?? 0)))) / 0.6).toBeCloseTo(0.984, 2);
  });

  it('a response that was learned has its mean and its spread, and may be to either side', () => {
    const { gains, byGain } = apart([{ share: 1, mean: 0.05, sd: 0.04 }]);
    expect(sum(gains.map((gain, g) => gain * (byGain[g] ?? 0)))).toBeCloseTo(0.05, 12);
    expect(Math.sqrt(sum(gains.map((gain, g) => (gain - 0.05) ** 2 * (byGain[g] ?? 0)))) / 0.04).toBeCloseTo(0.984, 2);
    expect(Math.min(...gains)).toBeLessThan(0);
  });

  it('spreads: the usual one among them, further down than up, and none below what a reading itself strays', () => {
    const { sds, bySpread } = apart(WAYS);
    expect(sds.some((sd) => Math.abs(sd - 0.2) < 1e-12)).toBe(true);
    expect(bySpread.indexOf(Math.max(...bySpread))).toBe(sds.findIndex((sd) => Math.abs(sd - 0.2) < 1e-12));
    expect((sds[0] ?? 0) / 0.2).toBeLessThan(0.2 / (sds.at(-1) ?? 0));
    // Read to 1/16 in by an eye good to 0.03 in (derived: width squared / 12).
    for (const sd of [0.002, 0.03, 0.2]) expect(Math.min(...bowsBefore(WAYS, { sd, df: 3 }).sds)).toBeGreaterThan(Math.sqrt(0.03 ** 2 + (1 / 16) ** 2 / 12));
    // What is known for sure leaves one.
    expect(new Set(bowsBefore(WAYS, { sd: 0.2, df: Infinity }).sds.map((sd) => sd.toFixed(12))).size).toBe(1);
  });

  it('the more is known of the spread the closer they lie (by the logarithm: 1 / (2 df))', () => {
    const ratio = (df: number): number => {
      const sds = bowsBefore(WAYS, { sd: 2, df }).sds;
      return Math.log((sds[7] ?? 0) / (sds[5] ?? 0));
    };
    expect(ratio(4) / ratio(16)).toBeCloseTo(2, 1);
    expect(ratio(8)).toBeCloseTo(2 * 0.8 / Math.sqrt(16), 2);
  });

  it('refuses what cannot be meant, in its own name', () => {
    expect(() => bowsBefore([], usual)).toThrow('bowsBefore: there is no way in which it may work; give at least one');
    const wrong: readonly Answers[] = [{ share: 0, about: null }, { share: NaN, about: null }, { share: 1, about: NaN, logSd: 0.6 }, { share: 1, about: 0.1, logSd: 0 }, { share: 1, mean: NaN, sd: 1 }, { share: 1, mean: 0.1, sd: -1 }];
    for (const one of wrong) expect(() => bowsBefore([one], usual)).toThrow(/^bowsBefore: /);
    for (const spread of [{ sd: 0, df: 3 }, { sd: 0.2, df: 0 }, { sd: NaN, df: 3 }]) expect(() => bowsBefore(WAYS, spread)).toThrow(/^bowsBefore: /);
  });
});
