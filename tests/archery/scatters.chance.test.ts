// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { scatters } from '../../src/archery/scatters.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { seededRandom, type Random } from '../../src/maths/random.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const shots = (random: Random, n: number, sd: number): { x: number; y: number }[] => Array.from({ length: n }, () => at(sd * random.normal(), sd * random.normal()));

describe('scatters', () => {
  // Derived: the share of a true ratio r found is the chance of F above max(4, 2.25 * limit) / r^2 on the same df.
  it.each([[3, 1.5, 0.05, 6.388], [3, 3, 0.33, 6.388], [4, 3, 0.47, 4.284], [6, 3, 0.68, 2.978]])('%d + %d shots, %f times as wide: found in %f', (n, wide, share, limit) => {
    const df = 2 * (n - 1);
    expect(fAbove((2.25 * limit) / wide ** 2, df, df)).toBeCloseTo(share, 2);
    const random = seededRandom(40 + n);
    const trials = 1200;
    let found = 0;
    for (let i = 0; i < trials; i++) if (scatters([{ a: shots(random, n, 1), b: shots(random, n, wide) }])) found++;
    // 4 standard errors, and half a percent for the share told to a whole one.
    expect(Math.abs(found / trials - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / trials) + 0.005);
  });
});
