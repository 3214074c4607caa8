// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import * as plumb from '../../src/archery/plumb-line.ts';
import type { Spread } from '../../src/archery/spread.ts';
import { seededRandom } from '../../src/maths/random.ts';
import { mrad, yards } from '../../src/maths/units.ts';

// Here a bare spread is in milliradians.
const angle = ({ sd, df }: Spread): plumb.AngleSpread => ({ sd: mrad(sd), df });
const bends = (points: readonly plumb.PlumbPoint[], spread: Spread): boolean => plumb.bends(points, angle(spread));
const judgePlumb = (points: readonly plumb.PlumbPoint[], spread: Spread, margin?: number): ReturnType<typeof plumb.judgePlumb> => plumb.judgePlumb(points, angle(spread), margin);
const plumbSpread = (shots: Parameters<typeof plumb.plumbSpread>[0], prior: Spread): Spread => plumb.plumbSpread(shots, angle(prior));

const at = (distance: number, mean: number, count = 3): plumb.PlumbPoint => ({ distance: yards(distance), mean, count });

describe('judgePlumb', () => {
  it('rarely calls a straight line slanted, or 4 in of drift at 40 yd straight (simulated; three shots at each of three distances, 1.4 mrad)', () => {
    const random = seededRandom(40);
    const trials = 700;
    const wrong = (slope: number, verdict: string): number => {
      let count = 0;
      for (let i = 0; i < trials; i++) {
        const shots = [20, 30, 40].map(yards).flatMap((distance) => Array.from({ length: 3 }, () => ({ distance, x: slope * (distance - 20) + 1.4 * 0.036 * distance * random.normal() })));
        const spread = plumbSpread(shots, { sd: 1.4, df: 4 });
        const means = [20, 30, 40].map((d) => at(d, shots.filter((s) => s.distance === d).reduce((t, s) => t + s.x, 0) / 3));
        if (judgePlumb(means, spread).verdict === verdict) count++;
      }
      return count / trials;
    };
    // Both are below 2 % (measured 0.6 and 1.4); three standard errors more.
    expect(wrong(0, 'slant')).toBeLessThan(0.02 + 3 * Math.sqrt((0.02 * 0.98) / trials));
    expect(wrong(0.2, 'straight')).toBeLessThan(0.02 + 3 * Math.sqrt((0.02 * 0.98) / trials));
  });
});

describe('bends', () => {
  it('accuses a straight line once in a hundred, and finds 6 in at 30 yd (simulated; spread from 8 df, three standard errors)', () => {
    const random = seededRandom(30);
    const trials = 1500;
    const found = (sag: number): number => {
      let count = 0;
      for (let i = 0; i < trials; i++) {
        const sd = 1.4 * Math.sqrt(Array.from({ length: 8 }, () => random.normal() ** 2).reduce((t, x) => t + x, 0) / 8);
        const means = [20, 30, 40].map((d) => at(d, 0.1 * d + (d === 30 ? sag : 0) + (1.4 * 0.036 * d * random.normal()) / Math.sqrt(3)));
        if (bends(means, { sd, df: 8 })) count++;
      }
      return count / trials;
    };
    expect(Math.abs(found(0) - 0.01)).toBeLessThan(3 * Math.sqrt((0.01 * 0.99) / trials));
    expect(found(6)).toBeGreaterThan(0.9);
  });
});
