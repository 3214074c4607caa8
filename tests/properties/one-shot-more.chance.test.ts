// Shots cost the archer more than anything, so each must be worth something: whether the interval for the tear is no wider after one shot more. As the walk
// reckons it: spread pooled over both axes with what is usual, robust centre, Student's t; 95 %, on one axis. Simulated.

import { describe, expect, it } from 'vitest';
import { pooledSpread } from '../../src/archery/spread.ts';
import { huberCentre } from '../../src/maths/huber.ts';
import { seededRandom } from '../../src/maths/random.ts';
import { studentQuantile } from '../../src/maths/student.ts';

const FIRST = 3;
const LAST = 8;

/** In how many groups, as a share, the interval after one shot more is no wider; from 3 shots on. `sd` in inches, `stray` the share of shots four times as far off. */
function noWider(sd: number, stray: number, groups: number): readonly number[] {
  const random = seededRandom(2026);
  const shot = (): { x: number; y: number } => {
    const own = random.uniform() < stray ? 4 * sd : sd;
    return { x: own * random.normal(), y: own * random.normal() };
  };
  const found = Array.from({ length: LAST - FIRST + 1 }, () => 0);
  for (let group = 0; group < groups; group++) {
    const shots = Array.from({ length: LAST + 1 }, shot);
    const widths = Array.from({ length: LAST - FIRST + 2 }, (_, i) => {
      const seen = shots.slice(0, FIRST + i);
      const spread = pooledSpread([seen]);
      return studentQuantile(0.975, spread.df) * (spread.sd / Math.sqrt(huberCentre(seen.map(({ x }) => x), spread.sd).count));
    });
    for (const i of found.keys()) if ((widths[i + 1] ?? Infinity) <= (widths[i] ?? 0)) found[i] = (found[i] ?? 0) + 1;
  }
  return found.map((count) => count / groups);
}

describe('one shot more', () => {
  // Measured with 20,000 groups, after 3 to 8 shots: 0.968, 0.951, 0.944, 0.932, 0.921, 0.917 for the usual archer; with strays 0.939, 0.921, 0.916, 0.910, 0.900,
  // 0.900. An archer who shoots wider than is usual learns that by shooting: 0.854 to 0.843. Here fewer groups and three standard errors.
  it.each([
    ['as wide as is usual', 0.2, 0, 1200, 0.917], ['half as wide', 0.1, 0, 300, 0.993],
    ['as wide as is usual, one shot in twenty stray', 0.2, 0.05, 500, 0.9], ['much wider than is usual', 0.35, 0, 500, 0.843],
  ] as const)('%s (spread %f in, strays %f): in so many of %i groups no wider: %f at least, after any of 3 to 8 shots', (_archer, sd, stray, groups, least) => {
    const shares = noWider(sd, stray, groups);
    const luck = 3 * Math.sqrt((least * (1 - least)) / groups);
    const measured = `measured after 3 to 8 shots: ${shares.map((share) => share.toFixed(3)).join(', ')}`;
    expect(Math.min(...shares), measured).toBeGreaterThanOrEqual(least - luck);
    // What is promised of the usual archer: 9 in 10.
    if (stray === 0 && sd <= 0.2) expect(Math.min(...shares), measured).toBeGreaterThanOrEqual(0.9);
  });
});
