// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { pooledSpread } from '../../src/archery/spread.ts';
import { seededRandom } from '../../src/maths/random.ts';

describe('pooledSpread', () => {
  it('finds the true spread within 10 %, with no stray shots or one in twenty (simulated: 40 sets of 3, 50 archers)', () => {
    for (const stray of [0, 0.05]) {
      const random = seededRandom(21);
      const one = (): number => 0.25 * random.normal() * (random.uniform() < stray ? 4 : 1);
      const found = Array.from({ length: 50 }, () => pooledSpread(Array.from({ length: 40 }, () => Array.from({ length: 3 }, () => ({ x: one(), y: one() })))).sd);
      const mean = found.reduce((t, s) => t + s, 0) / found.length;
      expect(mean / 0.25).toBeGreaterThan(0.9);
      expect(mean / 0.25).toBeLessThan(1.1);
    }
  });
});
