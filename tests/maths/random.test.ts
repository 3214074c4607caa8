import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.ts';
import jStat from 'jstat';

const take = (n: number, f: () => number): number[] => Array.from({ length: n }, f);

describe('seededRandom', () => {
  it('tells the same story for the same seed, another for the next', () => {
    const [a, b, c] = [seededRandom(7), seededRandom(7), seededRandom(8)];
    const first = take(50, () => a.uniform());
    expect(take(50, () => b.uniform())).toEqual(first);
    expect(take(50, () => c.uniform()).filter((x) => first.includes(x))).toEqual([]);
  });
  it('fills 0 to 1 evenly (chi-square over 100 boxes, false alarm 1 in 10,000)', () => {
    const random = seededRandom(1);
    const boxes = take(100, () => 0);
    const drawn = take(50_000, () => random.uniform());
    for (const u of drawn) boxes[Math.floor(u * 100)]! += 1;
    expect(drawn.every((u) => u >= 0 && u < 1)).toBe(true);
    const chi2 = boxes.reduce((t, b) => t + (b - 500) ** 2 / 500, 0);
    expect(jStat.chisquare.cdf(chi2, 99)).toBeLessThan(0.9999);
    expect(jStat.chisquare.cdf(chi2, 99)).toBeGreaterThan(0.0001);
  });
  it('normal numbers have mean 0, spread 1, fourth moment 3 and no memory (4 standard errors)', () => {
    const random = seededRandom(2);
    const n = 50_000;
    const z = take(n, () => random.normal());
    const mean = (f: (x: number, i: number) => number): number => z.reduce((t, x, i) => t + f(x, i), 0) / n;
    expect(Math.abs(mean((x) => x))).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(mean((x) => x * x) - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(mean((x) => x ** 4) - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
    expect(Math.abs(mean((x, i) => x * (z[i + 1] ?? 0)))).toBeLessThan(4 / Math.sqrt(n));
  });
  it('normal numbers come in pairs, each from two even ones (Box and Muller 1958, from memory)', () => {
    const [even, normal] = [seededRandom(9), seededRandom(9)];
    for (let pair = 0; pair < 3; pair++) {
      const radius = Math.sqrt(-2 * Math.log(1 - even.uniform()));
      const angle = 2 * Math.PI * even.uniform();
      expect(normal.normal()).toBeCloseTo(radius * Math.cos(angle), 12);
      expect(normal.normal()).toBeCloseTo(radius * Math.sin(angle), 12);
    }
  });
  it('seeds that are neighbours have nothing in common (4 standard errors)', () => {
    const n = 20_000;
    const pairs = take(n, () => 0).map((_, i) => [seededRandom(i).normal(), seededRandom(i + 1).normal()] as const);
    expect(Math.abs(pairs.reduce((t, [a, b]) => t + a * b, 0) / n)).toBeLessThan(4 / Math.sqrt(n));
  });
  it('refuses a seed that is no number', () => expect(() => seededRandom(NaN)).toThrow('the seed'));
});
