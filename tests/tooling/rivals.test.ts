// The rivals of the bench: rules that the walk does not use. A rival that is wrong would make the walk's own look good.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TwoGroups } from '../../src/archery/two-groups.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { seededRandom, type Random } from '../../src/maths/random.ts';
import { studentCdf } from '../../src/maths/student.ts';
import { equivalentByOwnSpread, meanInside, notSignificant } from '../bench/rivals/fixed-rules.ts';
import { summarise, twoSample } from '../bench/rivals/hotelling.ts';
import { againstRest, beyondOneSpread, beyondTwoSd } from '../bench/rivals/odd-arrows.ts';
import { pooledTP, welchP } from '../bench/rivals/per-axis.ts';
import { roundGroupP } from '../bench/rivals/round-group.ts';

interface P { readonly x: number; readonly y: number }
const at = (x: number, y = 0): P => ({ x, y });
const three = (x: number, y = 0): P[] => [at(x - 1, y), at(x, y), at(x + 1, y)];
const impact = fc.integer({ min: -32, max: 32 }).map((n) => n / 4);
const group = (minLength: number): fc.Arbitrary<P[]> => fc.array(fc.record({ x: impact, y: impact }), { minLength, maxLength: 6 });
const pair = (minLength: number): fc.Arbitrary<TwoGroups> => fc.record({ a: group(minLength), b: group(minLength) });
const turned = (g: TwoGroups): TwoGroups => ({ a: g.a.toReversed(), b: g.b.toReversed() });
const mirrored = (g: TwoGroups): TwoGroups => ({ a: g.a.map((p) => at(-p.x, p.y)), b: g.b.map((p) => at(-p.x, p.y)) });
/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));
const shots = (random: Random, n: number, x: number, y: number, sd: number): P[] => Array.from({ length: n }, () => at(x + sd * random.normal(), y + sd * random.normal()));

describe('roundGroupP', () => {
  const square = (x: number): P[] => [at(x - 1, 0), at(x + 1, 0), at(x, 1), at(x, -1)];
  it('is the tail of F on 2 and 2 (na + nb - 2) df (by hand: squares within 4 + 4 on 12 df, 2 apart on one axis, F 6)', () => {
    // s^2 = 8 / 12; F = 4 / (2 * 8 / 12 * (1 / 4 + 1 / 4)) = 6, on 2 and 12 df.
    expect(roundGroupP({ a: square(0), b: square(2) })).toBeCloseTo(fAbove(6, 2, 12), 9);
    expect(roundGroupP({ a: square(0), b: square(2) })).toBeCloseTo(0.0156, 4);
  });
  it('with a spread known before on 8 df (by hand: squares 8 + 8 on 12 + 8 df, F 5)', () => {
    expect(roundGroupP({ a: square(0), b: square(2) }, { sd: 1, df: 8 })).toBeCloseTo(fAbove(5, 2, 20), 9);
    expect(roundGroupP({ a: [at(0)], b: [at(0)] }, { sd: 1, df: 8 })).toBe(1);
  });
  it('meets the table: F 4.459 on 2 and 8 df is 5 % (any F table, from memory)', () => {
    // Three and three with squares 2 + 2 in all on 8 df: F = d^2 / (2 * 0.5 * 2 / 3).
    expect(roundGroupP({ a: three(0), b: three(Math.sqrt((4.459 * 2) / 3)) })).toBeCloseTo(0.05, 4);
  });
  it('says nothing without two shots in a group, and all or nothing without spread', () => {
    expect([roundGroupP({ a: [at(0)], b: [at(1)] }), roundGroupP({ a: [], b: [at(1), at(2)] })]).toEqual([null, null]);
    expect([roundGroupP({ a: [at(0), at(0)], b: [at(1)] }), roundGroupP({ a: [at(1), at(1)], b: [at(1)] })]).toEqual([0, 1]);
    expect(() => roundGroupP({ a: [at(NaN), at(0)], b: [at(0)] })).toThrow(RangeError);
  });
  it('is a chance that does not depend on order, side, axis or which group is which', () => {
    fc.assert(fc.property(pair(2), (g) => {
      const p = roundGroupP(g)!;
      expect(p).toBeGreaterThanOrEqual(0);
      expect(p).toBeLessThanOrEqual(1);
      for (const other of [turned(g), mirrored(g), { a: g.b, b: g.a }]) same(roundGroupP(other), p);
      const swapped = { a: g.a.map((s) => at(s.y, s.x)), b: g.b.map((s) => at(s.y, s.x)) };
      expect(roundGroupP(swapped)).toBeCloseTo(p, 12);
    }));
  });
  // Shares of an earlier, independent simulation of 4,000 pairs of groups; ours within 3 standard errors of both. The bench holds all of them.
  it.each([{ n: 2, shift: 3, wide: 1, share: 0.44 }, { n: 3, shift: 0, wide: 1.5, share: 0.055 }])('$n + $n shots, shift $shift, broadheads $wide times as wide: found in $share', ({ n, shift, wide, share }) => {
    const random = seededRandom(5301);
    const trials = 3000;
    let found = 0;
    for (let i = 0; i < trials; i++) {
      const angle = 2 * Math.PI * random.uniform();
      if (roundGroupP({ a: shots(random, n, 0, 0, 1), b: shots(random, n, shift * Math.cos(angle), shift * Math.sin(angle), wide) })! < 0.05) found++;
    }
    expect(Math.abs(found / trials - share)).toBeLessThan(3 * Math.sqrt(share * (1 - share) * (1 / trials + 1 / 4000)));
  });
});

describe('a t-test on each axis', () => {
  it('doubles the smaller chance (by hand: 3 apart on one axis, variances 1, t 3 / sqrt(2 / 3) on 4 df; alike on the other)', () => {
    const shape = (x: number): P[] => [at(x - 1, -1), at(x, 0), at(x + 1, 1)];
    const p = 2 * 2 * studentCdf(-3 / Math.sqrt(2 / 3), 4);
    expect(pooledTP({ a: shape(0), b: shape(3) })).toBeCloseTo(p, 12);
    // Equal numbers and variances: Welch's df are the pooled ones.
    expect(welchP({ a: shape(0), b: shape(3) })).toBeCloseTo(p, 12);
    expect([pooledTP({ a: shape(0), b: shape(0) }), welchP({ a: shape(0), b: shape(0) })]).toEqual([1, 1]);
  });
  it('Welch: one group without spread leaves the df of the other (by hand: variance 1 / 3 on 2 df)', () => {
    const b = [at(2, 2), at(2, 2), at(2, 2)];
    expect(welchP({ a: [at(-1, -1), at(0, 0), at(1, 1)], b })).toBeCloseTo(2 * 2 * studentCdf(-2 / Math.sqrt(1 / 3), 2), 12);
  });
});

describe('rules with a fixed number of shots', () => {
  it('disagree about three shots that scatter (by hand: mean 1/8, standard deviation 3/8; t 4.303 and 2.920 on 2 df, any t table)', () => {
    const scattered = [-1 / 4, 1 / 8, 1 / 2];
    // 1/8 is inside; 4.303 * 0.2165 = 0.93 is more than 1/8; 1/8 + 2.920 * 0.2165 = 0.757 is not inside.
    expect([meanInside(scattered, 1 / 4), notSignificant(scattered), equivalentByOwnSpread(scattered, 1 / 4), equivalentByOwnSpread(scattered, 0.76), equivalentByOwnSpread(scattered, 0.75)]).toEqual([true, true, false, true, false]);
    // Close together and off: in tolerance only by being few.
    expect([meanInside([0.3, 0.31, 0.32], 1 / 4), notSignificant([0.3, 0.31, 0.32]), notSignificant([0, 0.3, 0.6])]).toEqual([false, false, true]);
  });
});

describe('odd arrows', () => {
  const arrows = (last: number): P[][] => [...Array.from({ length: 5 }, (_, i) => three(0, i / 10)), three(last)];
  it('each rule calls the one that stands far out; F calls all, since it holds the others against a rest with the bad one in it', () => {
    const alone = [false, false, false, false, false, true];
    expect([beyondTwoSd(arrows(9)), beyondOneSpread(arrows(9), 0.05)]).toEqual([alone, alone]);
    expect(againstRest(arrows(9), 0.05)).toEqual(alone.map(() => true));
  });
  it('of arrows that are alike two call none, and two standard deviations call one (by hand: 0.4 is 0.233 off the mean, the limit 0.231)', () => {
    const none = [false, false, false, false, false, false];
    expect([againstRest(arrows(0), 0.05), beyondOneSpread(arrows(0), 0.05)]).toEqual([none, none]);
    expect(beyondTwoSd(arrows(0))).toEqual([false, false, false, false, true, false]);
  });
  it('F of one against the rest (by hand: six arrows of squares 2 on 24 df, 3 apart: F 9 / (2 * 0.5 * (1 / 3 + 1 / 15)) = 22.5)', () => {
    const set = [...Array.from({ length: 5 }, () => three(0)), three(3)];
    const p = fAbove(22.5, 2, 24);
    expect([againstRest(set, p * 1.001)[5], againstRest(set, p * 0.999)[5]]).toEqual([true, false]);
  });
  it('one spread beyond luck (by hand: luck 2.574 * sqrt(0.5 * (1 / 3 + 1.57 / 18)) is 1.18, the spread 0.707; t at 1 - 0.05 / 6 on 24 df, any program)', () => {
    const set = (x: number): P[][] => [...Array.from({ length: 5 }, () => three(0)), three(x)];
    expect([beyondOneSpread(set(1.85), 0.05)[5], beyondOneSpread(set(1.95), 0.05)[5]]).toEqual([false, true]);
  });
});

describe('Hotelling', () => {
  it('in one direction it is the square of t (by hand: 3 apart, variance 1, t^2 9 / (2 / 3))', () => {
    const found = twoSample(summarise([[-1], [0], [1]]), summarise([[2], [3], [4]]))!;
    expect(found.tSquared).toBeCloseTo(13.5, 12);
    expect(found.p).toBeCloseTo(2 * studentCdf(-Math.sqrt(13.5), 4), 12);
  });
  it('does not care how the target is turned or stretched, and says nothing of shots on a line', () => {
    const found = (g: TwoGroups, turn: (p: P) => readonly number[]) => twoSample(summarise(g.a.map(turn)), summarise(g.b.map(turn)))?.tSquared ?? null;
    const g = { a: [at(0), at(2, 1), at(1, 3)], b: [at(4, 1), at(5, 2), at(3, 3)] };
    const plain = found(g, (p) => [p.x, p.y])!;
    expect(found(g, (p) => [0.6 * p.x - 0.8 * p.y, 0.8 * p.x + 0.6 * p.y])).toBeCloseTo(plain, 9);
    expect(found(g, (p) => [7 * p.x + 2, p.y / 3])).toBeCloseTo(plain, 9);
    expect(found({ a: [at(0), at(1)], b: [at(2), at(3)] }, (p) => [p.x, p.y])).toBeNull();
    expect(twoSample(summarise([[0, 0], [1, 2]]), summarise([[1, 1]]))).toBeNull();
  });
});
