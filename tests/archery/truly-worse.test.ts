import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceTrulyWorse, type Way } from '../../src/archery/truly-worse.ts';

const known = { sd: 0.1, df: Infinity };
/** Two settings, a step apart, four shots at each: a difference of `d` is known to 0.1 / sqrt(2). */
const points = (from: number, d: number, count = 4) => [{ x: 0, mean: from, count, group: 0 }, { x: 1, mean: from + d, count, group: 0 }];
const sure = (share: number, mean: number): Way => ({ share, slope: { mean, sd: 1e-3 } });
const WAYS: readonly Way[] = [{ share: 0.2, slope: null }, sure(0.5, -0.2), sure(0.3, 0.2)];

describe('chanceTrulyWorse', () => {
  it('is the share of the ways that make it worse, each as likely as it makes what was seen (by hand, normal density)', () => {
    const density = (far: number): number => Math.exp(-(far ** 2) / (2 * 0.005));
    for (const d of [-0.3, -0.1, 0, 0.1, 0.15, 0.3]) {
      const [dead, better, worse] = [0.2 * density(d), 0.5 * density(d + 0.2), 0.3 * density(d - 0.2)];
      expect([d, chanceTrulyWorse(points(1, d), 0, known, WAYS, 0, 1)]).toEqual([d, expect.closeTo(worse / (dead + better + worse), 2)]);
    }
  });

  it('does not call luck worse: where most adjustments do nothing, what little is seen is nothing', () => {
    const mostlyDead: readonly Way[] = [{ share: 0.9, slope: null }, sure(0.05, -0.2), sure(0.05, 0.2)];
    expect(chanceTrulyWorse(points(1, 0.1), 0, known, mostlyDead, 0, 1)).toBeLessThan(0.1);
    expect(chanceTrulyWorse(points(1, 0.1), 0, known, WAYS, 0, 1)).toBeGreaterThan(0.4);
    expect(chanceTrulyWorse(points(1, 0.1), 0, known, [{ share: 1, slope: null }], 0, 1)).toBe(0);
  });

  it('past the target to its other side it is worse only if it is further off there', () => {
    const wide: readonly Way[] = [{ share: 1, slope: { mean: -0.5, sd: 0.3 } }];
    expect(chanceTrulyWorse(points(0.5, -0.6, 50), 0, known, wide, 0, 1)).toBeLessThan(0.01);
    expect(chanceTrulyWorse(points(0.5, -1.4, 50), 0, known, wide, 0, 1)).toBeGreaterThan(0.99);
    // Of a target of its own: from 1 above it to 0.4 above it.
    expect(chanceTrulyWorse(points(0.5, -0.6, 50), 0, known, wide, 0, 1, -0.5)).toBeLessThan(0.01);
  });

  it('a setting that stands alone, while another adjustment stood elsewhere, takes nothing from what the others show', () => {
    const alone = { x: 0, mean: 5, count: 3, group: 1 };
    expect(chanceTrulyWorse([...points(1, 0.3), alone], 0, known, WAYS, 0, 1)).toBeCloseTo(chanceTrulyWorse(points(1, 0.3), 0, known, WAYS, 0, 1), 9);
  });

  it('says nothing where the points show no slope, and is the same in a mirror', () => {
    expect(chanceTrulyWorse([], 0, known, WAYS, 0, 1)).toBe(0);
    expect(chanceTrulyWorse([{ x: 0, mean: 1, count: 4, group: 0 }, { x: 1, mean: 2, count: 4, group: 1 }], 0, known, WAYS, 0, 1)).toBe(0);
    const inch = fc.integer({ min: -16, max: 16 }).map((n) => n / 16);
    fc.assert(fc.property(inch, inch, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 2, max: 30 }), (from, d, count, df) => {
      const ways: readonly Way[] = [{ share: 0.2, slope: null }, { share: 0.5, slope: { mean: -0.2, sd: 0.1 } }, { share: 0.3, slope: { mean: 0.2, sd: 0.1 } }];
      const mirrored = ways.map(({ share, slope }): Way => ({ share, slope: slope === null ? null : { ...slope, mean: -slope.mean } }));
      const chance = chanceTrulyWorse(points(from, d, count), 0, { sd: 0.15, df }, ways, 0, 1);
      expect(chanceTrulyWorse(points(-from, -d, count), 0, { sd: 0.15, df }, mirrored, 0, 1)).toBe(chance);
      expect(chance).toBeGreaterThanOrEqual(0);
      expect(chance).toBeLessThanOrEqual(1);
    }));
  });

  it('refuses what cannot be meant, in its own name', () => {
    expect(() => chanceTrulyWorse(points(1, 0.1), 0, known, [], 0, 1)).toThrow('chanceTrulyWorse: there is no way in which it may work; give at least one');
    for (const act of [
      () => chanceTrulyWorse(points(NaN, 0), 0, known, WAYS, 0, 1), () => chanceTrulyWorse(points(1, 0), NaN, known, WAYS, 0, 1), () => chanceTrulyWorse(points(1, 0), 0, { sd: 0, df: 3 }, WAYS, 0, 1),
      () => chanceTrulyWorse(points(1, 0), 0, known, [{ share: 0, slope: null }], 0, 1), () => chanceTrulyWorse(points(1, 0), 0, known, WAYS, NaN, 1),
    ]) expect(act).toThrow(/^chanceTrulyWorse: /);
  });
});
