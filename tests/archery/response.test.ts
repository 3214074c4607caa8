// The response line against a worked example and its own symmetries. Certified regressions: tests/sources/nist-strd.test.ts.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bestSetting, chanceNotReachable, chanceWorse, chanceWrongSign, fitLine, predict, priorFromBook, type Line, type SettingPoint,
} from '../../src/archery/response.ts';
import { normalCdf, normalQuantile } from '../../src/maths/normal.ts';

const at = (x: number, mean: number, count: number, group = 0): SettingPoint => ({ x, mean, count, group });

describe('one group: worked example (derived; an independent matrix solve gives the same digits)', () => {
  const line = fitLine([at(0, 1, 3), at(-8, 0.45, 3)], 0.2, { mean: 0.09375, sd: 0.05625 }, 0);
  it('line, variances, next setting, prediction', () => {
    expect(line.intercept).toBeCloseTo(1.010227, 6);
    expect(line.slope).toBeCloseTo(0.071494, 6);
    expect(line.varIntercept).toBeCloseTo(0.01254, 6);
    expect(line.varSlope).toBeCloseTo(0.000368, 6);
    expect(line.cov).toBeCloseTo(0.001471, 6);
    expect(bestSetting(line)).toBeCloseTo(-13.4498, 4);
    expect(predict(line, -8).mean).toBeCloseTo(0.438277, 6);
    expect(predict(line, -8).sd).toBeCloseTo(0.11206, 5);
  });
  it('with nothing shot but one set, the first move is 1 / (1 + 0.36) of the book (derived)', () => {
    const first = fitLine([at(0, 1, 1e9)], 0.2, { mean: 0.1, sd: 0.06 }, 0);
    expect(bestSetting(first)).toBeCloseTo(-10 / 1.36, 6);
  });
});

describe('several groups share the slope', () => {
  it('equals the full normal equations of two groups, solved by elimination (derived)', () => {
    const points = [at(0, 1, 3, 1), at(-8, 0.45, 2.5, 1), at(-8, 0.1, 3, 2), at(4, 0.9, 4, 2), at(6, 1.2, 2, 2)];
    const sd = 0.25;
    const prior = { mean: 0.09, sd: 0.05 };
    // Unknowns c1, c2, g.
    const m = [[1 / 9, 0, 0, 0], [0, 1 / 9, 0, 0], [0, 0, prior.sd ** -2, prior.mean / prior.sd ** 2]];
    for (const p of points) {
      const row = [p.group === 1 ? 1 : 0, p.group === 2 ? 1 : 0, p.x];
      for (let i = 0; i < 3; i++) {
        for (let j = 0; j < 3; j++) m[i]![j]! += (p.count / sd ** 2) * row[i]! * row[j]!;
        m[i]![3]! += (p.count / sd ** 2) * row[i]! * p.mean;
      }
    }
    const inverse = invert(m.map((r) => r.slice(0, 3)));
    const solved = inverse.map((r) => r.reduce((t, v, j) => t + v * m[j]![3]!, 0));
    for (const group of [1, 2]) {
      const line = fitLine(points, sd, prior, group);
      const i = group - 1;
      expect(line.intercept).toBeCloseTo(solved[i]!, 10);
      expect(line.slope).toBeCloseTo(solved[2]!, 12);
      expect(line.varIntercept).toBeCloseTo(inverse[i]![i]!, 12);
      expect(line.varSlope).toBeCloseTo(inverse[2]![2]!, 12);
      expect(line.cov).toBeCloseTo(inverse[i]![2]!, 12);
    }
  });
  it('a group with no sets knows the slope but not its height', () => {
    const points = [at(0, 1, 3), at(-8, 0.45, 3)];
    const prior = { mean: 0.09, sd: 0.05 };
    const line = fitLine(points, 0.2, prior, 7);
    expect(line).toEqual({ intercept: 0, slope: fitLine(points, 0.2, prior, 0).slope, varIntercept: 9, varSlope: fitLine(points, 0.2, prior, 0).varSlope, cov: 0 });
  });
});

const point = fc.record({
  x: fc.integer({ min: -16, max: 16 }).map((n) => n / 2), mean: fc.integer({ min: -32, max: 32 }).map((n) => n / 16),
  count: fc.double({ min: 0.5, max: 9, noNaN: true }), group: fc.integer({ min: 0, max: 2 }),
});
const points = fc.array(point, { maxLength: 8 });
const slope = fc.record({ mean: fc.double({ min: -0.5, max: 0.5, noNaN: true }), sd: fc.double({ min: 0.01, max: 1, noNaN: true }) });
const spread = fc.double({ min: 0.03, max: 1, noNaN: true });

describe('properties', () => {
  it('order never shows', () => {
    const pair = points.chain((p) => fc.tuple(fc.constant(p), fc.shuffledSubarray(p, { minLength: p.length, maxLength: p.length })));
    fc.assert(fc.property(pair, spread, slope, ([p, q], sd, prior) => {
      expect(fitLine(q, sd, prior, 1)).toEqual(fitLine(p, sd, prior, 1));
    }));
  });
  it('mirrored tears and a mirrored book give the mirrored line and the same setting, exactly', () => {
    fc.assert(fc.property(points, spread, slope, (p, sd, prior) => {
      const line = fitLine(p, sd, prior, 1);
      const mirrored = fitLine(p.map((s) => ({ ...s, mean: -s.mean })), sd, { ...prior, mean: -prior.mean }, 1);
      expect(mirrored.intercept + line.intercept).toBe(0);
      expect(mirrored.slope + line.slope).toBe(0);
      expect([mirrored.varIntercept, mirrored.varSlope, mirrored.cov]).toEqual([line.varIntercept, line.varSlope, line.cov]);
      expect(bestSetting(mirrored, -0.1)).toBe(bestSetting(line, 0.1));
    }));
  });
  it('more shots never make the slope less sure; chances are chances', () => {
    fc.assert(fc.property(points, point, spread, slope, fc.double({ min: -8, max: 8, noNaN: true }), (p, extra, sd, prior, x) => {
      const line = fitLine(p, sd, prior, 1);
      expect(fitLine([...p, extra], sd, prior, 1).varSlope).toBeLessThanOrEqual(line.varSlope * (1 + 1e-9));
      for (const c of [chanceWorse(line, 0, x), chanceWrongSign(line, 1), chanceNotReachable(line, -8, x, -0.25, 0.25, 6)]) {
        expect(c).toBeGreaterThanOrEqual(0);
        expect(c).toBeLessThanOrEqual(1);
      }
      expect(chanceWrongSign(line, 1) + chanceWrongSign(line, -1)).toBeCloseTo(1, 12);
    }));
  });
  it('the best setting has the least expected squared tear', () => {
    fc.assert(fc.property(points, spread, slope, fc.double({ min: -2, max: 2, noNaN: true }), (p, sd, prior, off) => {
      const line = fitLine(p, sd, prior, 1);
      const loss = (x: number): number => { const t = predict(line, x); return (t.mean - 0.05) ** 2 + t.sd ** 2; };
      const best = bestSetting(line, 0.05);
      expect(loss(best)).toBeLessThanOrEqual(loss(best + off) + 1e-9);
    }));
  });
});

describe('worse, wrong sign, out of reach', () => {
  const sure = (intercept: number, g: number): Line => ({ intercept, slope: g, varIntercept: 1e-12, varSlope: 1e-12, cov: 0 });
  it('a sure line gives sure answers', () => {
    expect(chanceWorse(sure(1, 0.1), 0, 2)).toBeCloseTo(1, 9);
    expect(chanceWorse(sure(1, 0.1), 0, -2)).toBeCloseTo(0, 9);
    expect(chanceWorse(sure(1, 0.1), 0, -25)).toBeCloseTo(1, 9); // past zero and further off on the other side
    expect(chanceWorse(sure(1, 0.1), 0, -2, 1)).toBeCloseTo(1, 9); // 1 was the aim
    expect(chanceWorse(sure(1, 0.1), 3, 3)).toBe(0);
    expect(chanceNotReachable(sure(1, 0.01), -8, 8, -0.25, 0.25, 6)).toBeCloseTo(1, 6);
    expect(chanceNotReachable(sure(-1, 0.01), -8, 8, -0.125, 0.25, 6)).toBeCloseTo(1, 6);
    expect(chanceNotReachable(sure(1, 0.1), -8, 8, -0.25, 0.25, 6)).toBeCloseTo(0, 6);
    expect(chanceNotReachable({ intercept: 0.8, slope: 0.1, varIntercept: 0, varSlope: 0, cov: 0 }, -8, 8, -0.25, 0.25, 6)).toBe(0);
  });
  it('worse by the normal table (derived): slope one spread from zero, sum sure', () => {
    expect(chanceWorse({ intercept: 100, slope: 0.1, varIntercept: 0, varSlope: 0.01, cov: 0 }, -1, 1)).toBeCloseTo(0.84134, 5);
    expect(chanceWrongSign({ intercept: 0, slope: 0.1, varIntercept: 0, varSlope: 0.01, cov: 0 }, 1)).toBeCloseTo(0.15866, 5);
  });
  it('worse by the normal table (derived): change one spread above zero, sum 0.707 spreads', () => {
    // Change 0.2 with spread 0.2; sum 2 (-0.1) + 4 (0.1) = 0.2 with variance 4 (0.02) + 16 (-0.01) + 16 (0.01): 0.8413 and 0.7602, both or neither.
    const line = { intercept: -0.1, slope: 0.1, varIntercept: 0.02, varSlope: 0.01, cov: -0.01 };
    expect(chanceWorse(line, 1, 3)).toBeCloseTo(0.84134 * 0.76025 + 0.15866 * 0.23975, 5);
    expect(chanceWorse(line, 3, 1)).toBeCloseTo(0.15866 * 0.76025 + 0.84134 * 0.23975, 5);
  });
  it('even odds where a line says nothing at all', () => {
    expect(chanceWrongSign({ intercept: 1, slope: 0, varIntercept: 1, varSlope: 0, cov: 0 }, 1)).toBe(0.5);
    expect(chanceWrongSign({ intercept: 1, slope: 0.1, varIntercept: 1, varSlope: 0, cov: 0 }, 1)).toBe(0);
    expect(chanceWrongSign({ intercept: 1, slope: 0.1, varIntercept: 1, varSlope: 0, cov: 0 }, -1)).toBe(1);
  });
  it('out of reach with a known spread: both ends one spread beyond the limit (normal table)', () => {
    expect(chanceNotReachable({ intercept: 1, slope: 0, varIntercept: 0.01, varSlope: 0, cov: 0 }, -8, 8, -0.25, 0.9, Infinity)).toBeCloseTo(0.841345 ** 2, 5);
  });
  it('a book with a stated chance of the wrong sign has just that', () => {
    for (const [change, wrong] of [[-6, 0.03], [0.25, 0.1], [-4, 0.35], [1, 0.45]] as const) {
      const prior = priorFromBook(change, wrong);
      expect(prior.mean).toBe(change);
      expect(chanceWrongSign(fitLine([], 0.2, prior, 0), Math.sign(change) as 1 | -1)).toBeCloseTo(wrong, 8);
    }
    // Spread of 0.6 of the change is a wrong sign of 4.8 % (derived from the normal table).
    expect(priorFromBook(1, normalCdf(-1 / 0.6)).sd).toBeCloseTo(0.6, 8);
    expect(priorFromBook(1, 0.05).sd).toBeCloseTo(1 / normalQuantile(0.95), 12);
  });
});

describe('what cannot be meant throws and says so', () => {
  const prior = { mean: 0.1, sd: 0.05 };
  it.each<[string, () => unknown]>([
    ['a mean tear is NaN', () => fitLine([at(0, NaN, 3)], 0.2, prior, 0)],
    ['a setting is Infinity', () => fitLine([at(Infinity, 0, 3)], 0.2, prior, 0)],
    ['a count of shots is 0', () => fitLine([at(0, 0, 0)], 0.2, prior, 0)],
    ['the spread of one shot is 0', () => fitLine([], 0, prior, 0)],
    ['the slope expected beforehand is NaN', () => fitLine([], 0.2, { mean: NaN, sd: 1 }, 0)],
    ['no slope can be learned', () => fitLine([], 0.2, { mean: 0, sd: Infinity }, 0)],
    ['the book gives no change', () => priorFromBook(0, 0.1)],
    ['a wrong sign is 0.5', () => priorFromBook(1, 0.5)],
    ['a wrong sign is 0;', () => priorFromBook(1, 0)],
    ['the setting is NaN', () => predict(fitLine([], 0.2, prior, 0), NaN)],
    ['the target is NaN', () => bestSetting(fitLine([], 0.2, prior, 0), NaN)],
    ['the step is NaN', () => chanceWorse(fitLine([], 0.2, prior, 0), 0, NaN)],
  ])('%s', (message, act) => {
    expect(act).toThrow(RangeError);
    expect(act).toThrow(message);
  });
});

/** Inverse of a small matrix by Gauss and Jordan, for the check alone. */
function invert(a: number[][]): number[][] {
  const n = a.length;
  const m = a.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const pivot = m[i]![i]!;
    m[i] = m[i]!.map((v) => v / pivot);
    for (let k = 0; k < n; k++) if (k !== i) { const f = m[k]![i]!; m[k] = m[k]!.map((v, j) => v - f * m[i]![j]!); }
  }
  return m.map((row) => row.slice(n));
}
