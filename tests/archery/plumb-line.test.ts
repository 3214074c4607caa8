import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as plumb from '../../src/archery/plumb-line.ts';
import type { PlumbPoint } from '../../src/archery/plumb-line.ts';
import type { Spread } from '../../src/archery/spread.ts';
import { mrad, yards } from '../../src/maths/units.ts';

// Here a bare spread is in milliradians.
const angle = ({ sd, df }: Spread): plumb.AngleSpread => ({ sd: mrad(sd), df });
const fitPlumb = (points: readonly PlumbPoint[], spread: Spread): plumb.PlumbFit => plumb.fitPlumb(points, angle(spread));
const bends = (points: readonly PlumbPoint[], spread: Spread): boolean => plumb.bends(points, angle(spread));
const judgePlumb = (points: readonly PlumbPoint[], spread: Spread, margin?: number): ReturnType<typeof plumb.judgePlumb> => plumb.judgePlumb(points, angle(spread), margin);
const plumbSpread = (shots: Parameters<typeof plumb.plumbSpread>[0], prior: Spread): Spread => plumb.plumbSpread(shots, angle(prior));

/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));
const known = { sd: 1, df: Infinity };
const at = (distance: number, mean: number, count = 3): PlumbPoint => ({ distance: yards(distance), mean, count });
const points = (least: number): fc.Arbitrary<PlumbPoint[]> => fc.uniqueArray(
  fc.record({ distance: fc.integer({ min: 10, max: 60 }).map(yards), mean: fc.integer({ min: -40, max: 40 }).map((n) => n / 4), count: fc.integer({ min: 1, max: 6 }) }),
  { minLength: least, maxLength: 6, selector: (p) => p.distance });

describe('fitPlumb', () => {
  it('goes through two means (by hand), and is as sure as they are', () => {
    const fit = fitPlumb([at(20, 1, 4), at(40, 3, 4)], known);
    expect(fit.slope).toBeCloseTo(0.1, 12);
    expect([fit.at(20).mean, fit.at(30).mean, fit.at(40).mean]).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12), expect.closeTo(3, 12)]);
    // 0.72 in and 1.44 in for one shot, half for four; the slope is their difference over 20 yd.
    expect(fit.at(20).se).toBeCloseTo(0.36, 12);
    expect(fit.at(40).se).toBeCloseTo(0.72, 12);
    expect(fit.se).toBeCloseTo(Math.hypot(0.36, 0.72) / 20, 12);
  });
  it('takes two means of one distance as one', () => {
    const split = fitPlumb([at(20, 0, 1), at(20, 3, 2), at(40, 3)], known);
    const whole = fitPlumb([at(20, 2, 3), at(40, 3)], known);
    expect([split.slope, split.se]).toEqual([expect.closeTo(whole.slope, 12), expect.closeTo(whole.se, 12)]);
  });
  it('does not depend on order, and mirrors, to the last bit; more shots make it surer', () => {
    const told = (p: readonly PlumbPoint[]): unknown => {
      const { slope, se, at: line } = fitPlumb(p, { sd: 1.3, df: 8 });
      return [slope, se, line(25)];
    };
    fc.assert(fc.property(points(2), (p) => {
      same(told(p.toReversed()), told(p));
      const [a, b] = [fitPlumb(p, known), fitPlumb(p.map((q) => at(q.distance, -q.mean, q.count)), known)];
      same([-b.slope, b.se, -b.at(33).mean, b.at(33).se], [a.slope, a.se, a.at(33).mean, a.at(33).se]);
      expect(fitPlumb(p.map((q) => at(q.distance, q.mean, 2 * q.count)), known).se).toBeLessThan(a.se);
    }));
  });
});

describe('judgePlumb', () => {
  it('tells straight, slant and undecided apart (by hand: standard error of the drift 0.805 in, normal table)', () => {
    const drift = (x: number): ReturnType<typeof judgePlumb> => judgePlumb([at(20, 0, 4), at(40, x, 4)], known, 1.5);
    expect(drift(0)).toMatchObject({ verdict: 'straight', drift: 0, within: expect.closeTo(0.9376, 3) });
    expect(drift(1)).toMatchObject({ verdict: 'undecided', drift: expect.closeTo(1, 12) });
    // 1.5 + 0.8416 standard errors.
    expect(drift(2.19)).toMatchObject({ verdict: 'slant', beyond: expect.closeTo(0.804, 3) });
    expect(drift(2.16).verdict).toBe('undecided');
    expect(drift(-2.19).verdict).toBe('slant');
  });
  it('has a margin of 1.5 spreads at the farthest distance, 1 mrad at the least', () => {
    const p = [at(20, 0), at(40, 2)];
    for (const [sd, give] of [[2, 1.5 * 2 * 1.44], [0.2, 1.44]] as const) same(judgePlumb(p, { sd, df: 9 }), judgePlumb(p, { sd, df: 9 }, give));
  });
  it('mirrors and does not depend on order', () => {
    fc.assert(fc.property(points(2), fc.double({ min: 0.3, max: 4, noNaN: true }), (p, sd) => {
      const judged = judgePlumb(p, { sd, df: 10 });
      same(judgePlumb(p.toReversed(), { sd, df: 10 }), judged);
      same(judgePlumb(p.map((q) => at(q.distance, -q.mean, q.count)), { sd, df: 10 }), { ...judged, drift: -judged.drift });
    }));
  });
});

describe('bends', () => {
  it('holds the middle against the line at 1 % (by hand: chi-square 6.635 on 1 df, any table, from memory)', () => {
    // Weights of three shots are 3 / d^2 for one mrad; the middle's distance from the line of the outer two has this variance:
    const variance = (0.036 ** 2 / 3) * (30 ** 2 + (20 ** 2 + 40 ** 2) / 4);
    const limit = Math.sqrt(6.635 * variance);
    expect(bends([at(20, 0), at(30, limit * 1.001), at(40, 0)], known)).toBe(true);
    expect(bends([at(20, 0), at(30, limit * 0.999), at(40, 0)], known)).toBe(false);
    expect(bends([at(20, 1), at(30, 2), at(40, 3)], known)).toBe(false);
  });
  it('holds four distances against a chi-square of 9.210 on 2 df (any table, from memory)', () => {
    // Weighted squares around the best line, with every straight line taken out of one impact off at 30 yd (derived).
    const distances = [20, 30, 40, 50];
    const weight = (d: number): number => 3 / (0.036 * d) ** 2;
    const total = (f: (d: number) => number): number => distances.reduce((t, d) => t + weight(d) * f(d), 0);
    const [w, wd, wdd] = [total(() => 1), total((d) => d), total((d) => d * d)];
    const leverage = (weight(30) * (wdd - 2 * 30 * wd + 900 * w)) / (w * wdd - wd * wd);
    const limit = Math.sqrt(9.2103 / (weight(30) * (1 - leverage)));
    const off = (x: number): PlumbPoint[] => distances.map((d) => at(d, d === 30 ? x : 0));
    expect(bends(off(limit * 1.001), known)).toBe(true);
    expect(bends(off(limit * 0.999), known)).toBe(false);
  });
  it('says nothing with two distances', () => {
    expect(bends([], known)).toBe(false);
    expect(bends([at(20, 0), at(40, 50)], known)).toBe(false);
    expect(bends([at(20, 0), at(20, 9), at(40, 50)], known)).toBe(false);
  });
  it('does not depend on order or side', () => {
    fc.assert(fc.property(points(3), (p) => {
      const spread = { sd: 1.5, df: 7 };
      expect(bends(p.toReversed(), spread)).toBe(bends(p, spread));
      expect(bends(p.map((q) => at(q.distance, -q.mean, q.count)), spread)).toBe(bends(p, spread));
    }));
  });
});

describe('plumbSpread', () => {
  it('pools over the distances as angles (by hand)', () => {
    // At 20 yd 0.72 in is 1 mrad, at 40 yd 1.44 in. Squares 2 + 2 on 2 + 2 df, before that 1 on 2 * 3.
    const shots = [...[-0.72, 0, 0.72].map((x) => ({ distance: yards(20), x })), ...[5 - 1.44, 5, 5 + 1.44].map((x) => ({ distance: yards(40), x }))];
    expect(plumbSpread(shots, { sd: 1, df: 3 })).toEqual({ sd: expect.closeTo(1, 12), df: 10 });
    expect(plumbSpread([], { sd: 1.3, df: 3 })).toEqual({ sd: expect.closeTo(1.3, 12), df: 6 });
  });
  it('pools inside each setting of the bow: what a move shifted is no spread', () => {
    const shots = [0, 1].flatMap((set) => [-0.72, 0, 0.72].map((x) => ({ distance: yards(20), x: x + 5 * set, set })));
    expect(plumbSpread(shots, { sd: 1, df: 3 })).toEqual({ sd: expect.closeTo(1, 12), df: 10 });
  });
  it('a stray shot widens it much less than plain squares would, and it never vanishes', () => {
    const shots = [0, 0, 6].map((x) => ({ distance: yards(20), x }));
    expect(plumbSpread(shots, { sd: 0.5, df: 3 }).sd).toBeLessThan(0.6 * Math.sqrt((6 * 0.25 + 24 * 1.389 ** 2) / 8));
    expect(plumbSpread([0, 0, 0].map((x) => ({ distance: yards(20), x })), { sd: 0.001, df: 1 }).sd).toBe(0.07);
  });
  it('does not depend on order or side', () => {
    const shot = fc.record({ distance: fc.constantFrom(...[20, 30, 40].map(yards)), x: fc.integer({ min: -40, max: 40 }).map((n) => n / 8) });
    fc.assert(fc.property(fc.array(shot, { maxLength: 12 }), (shots) => {
      const spread = plumbSpread(shots, { sd: 1.2, df: 3 });
      same(plumbSpread(shots.toReversed(), { sd: 1.2, df: 3 }), spread);
      same(plumbSpread(shots.map(({ distance, x }) => ({ distance, x: -x })), { sd: 1.2, df: 3 }), spread);
    }));
  });
});

it('refuse what cannot be meant, and say what to do', () => {
  const bad: (() => unknown)[] = [
    () => fitPlumb([], known), () => fitPlumb([at(20, 0), at(20, 1)], known), () => fitPlumb([at(20, NaN), at(40, 1)], known), () => fitPlumb([at(0, 0), at(40, 1)], known),
    () => fitPlumb([at(20, 0, 0), at(40, 1)], known), () => fitPlumb([at(20, 0), at(40, 1)], { sd: 0, df: 8 }), () => fitPlumb([at(20, 0), at(40, 1)], { sd: 1, df: NaN }),
    () => fitPlumb([at(20, 0), at(40, 1)], known).at(NaN), () => judgePlumb([at(20, 0), at(40, 1)], known, -1), () => judgePlumb([at(20, 0)], known),
    () => bends([at(20, NaN), at(30, 0), at(40, 0)], known), () => plumbSpread([{ distance: yards(20), x: NaN }], known), () => plumbSpread([{ distance: yards(0), x: 1 }], { sd: 1, df: 2 }),
    () => plumbSpread([], { sd: 1, df: 0 }),
  ];
  for (const act of bad) expect(act).toThrow(RangeError);
  expect(() => fitPlumb([at(20, 0)], known)).toThrow('a line needs two distances; there is one. Shoot from another distance as well');
  expect(() => fitPlumb([], known)).toThrow('a line needs two distances; there is none. Shoot from another distance as well');
  expect(() => fitPlumb([at(20, 0), at(40, 1)], known).at(Infinity)).toThrow('fitPlumb: the distance is Infinity; a finite number is needed');
  expect(() => judgePlumb([at(20, 0), at(40, 1)], known, -1)).toThrow('judgePlumb: the margin is -1; a finite number, 0 or more, is needed');
  expect(() => plumbSpread([{ distance: yards(20), x: 0, set: NaN }], { sd: 1, df: 2 })).toThrow('plumbSpread: a set is NaN; a finite number is needed');
});
