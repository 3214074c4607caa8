// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { blame } from '../../src/archery/arrow-rules.ts';
import { seededRandom } from '../../src/maths/random.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const zero = at(0);

describe('blame', () => {
  it.each([[0, 0, 0.01], [3, 0.88, 0.96], [4, 0.95, 1]])('an arrow %f spreads off is blamed in %f to %f of cases (simulated, three standard errors allowed)', (off, least, most) => {
    const random = seededRandom(7);
    const trials = 800;
    const shots = (n: number, x: number): { x: number; y: number }[] => Array.from({ length: n }, () => at(x + 0.2 * random.normal(), 0.2 * random.normal()));
    let blamed = 0;
    for (let i = 0; i < trials; i++) if (blame(shots(3, 0.2 * off), shots(2, 0), zero, { sd: 0.2, df: 30 }) === 'the arrow') blamed++;
    const allowed = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / trials);
    expect(blamed / trials).toBeGreaterThanOrEqual(least - allowed(least));
    expect(blamed / trials).toBeLessThanOrEqual(most + allowed(most));
  });
});
