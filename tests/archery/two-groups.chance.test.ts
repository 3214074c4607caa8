// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { difference, judgeDifference, LOOKS, pairSpread } from '../../src/archery/two-groups.ts';
import { seededRandom, type Random } from '../../src/maths/random.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const shots = (random: Random, n: number, x: number, y: number, sd: number): { x: number; y: number }[] =>
  Array.from({ length: n }, () => at(x + sd * random.normal(), y + sd * random.normal()));
/** Three standard errors of the difference of two simulated shares, each of so many trials. */
const error = (share: number, trials: number, theirs = trials): number => 3 * Math.sqrt(share * (1 - share) * (1 / trials + 1 / theirs));

describe('judgeDifference', () => {
  // An earlier, independent simulation of 4,000 cases: same / different / undecided and mean shots of each kind. Prior on 8 df, plain
  // means on one axis, margin 1.5 true spreads. Ours within 3 standard errors of both (mean shots: standard deviation about 1.7).
  it.each([[0, 0.82, 0.02, 4.4], [1.5, 0.16, 0.37, 4.5], [3, 0, 0.98, 2.5]])('looks after 2, 3, 4 and 6: a true difference of %f spreads', (shift, sameShare, different, meanShots) => {
    const random = seededRandom(5302);
    const trials = 2000;
    const count = { same: 0, different: 0, undecided: 0 };
    let taken = 0;
    const mean = (v: readonly number[]): number => v.reduce((t, x) => t + x, 0) / v.length;
    const squares = (v: readonly number[]): number => v.reduce((t, x) => t + (x - mean(v)) ** 2, 0);
    for (let i = 0; i < trials; i++) {
      const draw = (n: number, m: number): number[] => Array.from({ length: n }, () => m + random.normal());
      const before = draw(8, 0).reduce((t, x) => t + x * x, 0);
      const [a, b] = [draw(6, 0), draw(6, shift)];
      for (const n of LOOKS) {
        const [first, second] = [a.slice(0, n), b.slice(0, n)];
        const df = 8 + 2 * (n - 1);
        const { verdict } = judgeDifference(mean(second) - mean(first), n / 2, { sd: Math.sqrt((before + squares(first) + squares(second)) / df), df }, 0, 1.5);
        if (verdict === 'undecided' && n !== 6) continue;
        count[verdict]++;
        taken += n;
        break;
      }
    }
    expect(Math.abs(count.same / trials - sameShare)).toBeLessThan(error(Math.max(0.02, sameShare), trials, 4000) + 0.005);
    expect(Math.abs(count.different / trials - different)).toBeLessThan(error(different, trials, 4000) + 0.005); // told to whole percents
    expect(Math.abs(taken / trials - meanShots)).toBeLessThan(3 * 1.7 * Math.sqrt(1 / trials + 1 / 4000) + 0.05);
  });
  it('in full use, with robust centres and the margin from the spread as found, is hardly different', () => {
    const random = seededRandom(5303);
    const trials = 400;
    const ends = { same: 0, different: 0, undecided: 0 };
    for (let i = 0; i < trials; i++) {
      const all = { a: shots(random, 6, 0, 0, 1), b: shots(random, 6, 0, 0, 1) };
      for (const n of LOOKS) {
        const g = { a: all.a.slice(0, n), b: all.b.slice(0, n) };
        const spread = pairSpread([g], { sd: 1, df: 4 });
        const d = difference(g, spread.sd)!;
        const { verdict } = judgeDifference(d.mean.x, d.count.x, spread, 0, 1.5 * spread.sd);
        if (verdict === 'undecided' && n !== 6) continue;
        ends[verdict]++;
        break;
      }
    }
    expect(ends.different / trials).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / trials));
    expect(ends.same / trials).toBeGreaterThan(0.8 - 3 * Math.sqrt((0.8 * 0.2) / trials));
  });
});
