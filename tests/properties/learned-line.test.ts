// What a line that was learned must do whatever the shots: never foretell with less than nothing unsure, and never send an adjustment beyond where it is thought
// to belong.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSetting, fitLine, predict } from '../../src/archery/response.ts';
import { FUNCTIONS } from './functions.ts';
import { valuesOf } from './shape.ts';

const [points, sd, belief] = FUNCTIONS.find(({ fn }) => fn === fitLine)?.args ?? [];
if (points === undefined || sd === undefined || belief === undefined) throw new Error('fitLine is not in the registry');
type Args = Parameters<typeof fitLine>;
// The registry draws them for this very function.
const lines = fc.tuple(valuesOf(points, 'on marks'), valuesOf(sd, 'on marks'), valuesOf(belief, 'on marks'))
  .map(([p, s, b]) => fitLine(p as Args[0], s as Args[1], b as Args[2], 1));
const setting = fc.integer({ min: -64, max: 64 }).map((n) => n / 4);

describe('a line that was learned', () => {
  it('foretells with a variance that is never below 0, but for the last digits', () => {
    fc.assert(fc.property(lines, setting, (line, x) => {
      const terms = [line.varIntercept, 2 * x * line.cov, x * x * line.varSlope];
      const variance = terms.reduce((total, one) => total + one, 0);
      expect(variance).toBeGreaterThanOrEqual(-1e-12 * Math.max(...terms.map(Math.abs)));
      expect(predict(line, x).sd).toBeGreaterThanOrEqual(0);
    }), { numRuns: 500 });
  });
  it('knows the tear best in the middle of what was tried', () => {
    fc.assert(fc.property(lines, setting, (line, x) => {
      const middle = -line.cov / line.varSlope;
      expect(predict(line, middle).sd).toBeLessThanOrEqual(predict(line, x).sd * (1 + 1e-9));
    }));
  });
  it('sends the adjustment from there towards where the tear should be as wanted, and never past it', () => {
    let short = 0;
    fc.assert(fc.property(lines, fc.integer({ min: -8, max: 8 }).map((n) => n / 16), (line, target) => {
      if (Math.abs(line.slope) < 1e-6) return;
      const middle = -line.cov / line.varSlope;
      const wanted = (target - line.intercept) / line.slope;
      const best = bestSetting(line, target);
      const share = (best - middle) / (wanted - middle);
      if (!Number.isFinite(share) || Math.abs(wanted - middle) < 1e-6) return;
      expect(share).toBeGreaterThan(-1e-9);
      expect(share).toBeLessThanOrEqual(1 + 1e-9);
      // By so much the less, the less the slope is known (derived).
      expect(share).toBeCloseTo(line.slope ** 2 / (line.slope ** 2 + line.varSlope), 6);
      if (share < 0.9) short++;
    }), { numRuns: 300 });
    expect(short).toBeGreaterThan(10);
  });
});
