// F. E. Grubbs, "Statistical Measures of Accuracy for Riflemen and Missile Engineers" (1964): how wide groups of n shots are, in units of the spread
// of one shot on one axis. His means are known from memory and within 0.3 % of the ones below, which come from 8 to 20 million simulated groups and, for
// two and three shots, from exact integrals (derived). Range constants d2 and d3: printed in any table of control charts (read).

import { describe, expect, it } from 'vitest';
import { squaresAround } from '../../src/archery/squares.ts';
import { widest } from '../../src/archery/widest.ts';
import { groupAt } from '../../src/machine/loop/gauge-groups.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { seededRandom } from '../../src/maths/random.ts';
import { yards } from '../../src/maths/units.ts';
import { near, prints } from './near.ts';

/** Mean width of so many simulated groups, and its standard deviation. */
function simulated(n: number, groups: number, flat: boolean): { readonly mean: number; readonly sd: number } {
  const random = seededRandom(1964 + n);
  let [total, squares] = [0, 0];
  for (let i = 0; i < groups; i++) {
    const { pair } = widest(Array.from({ length: n }, () => ({ x: random.normal(), y: flat ? 0 : random.normal() })));
    total += pair;
    squares += pair * pair;
  }
  const mean = total / groups;
  return { mean, sd: Math.sqrt(squares / groups - mean * mean) };
}

/** Groups that make `errors` standard errors of the mean as small as this share of it. */
const enough = (mean: number, sd: number, share: number, errors: number): number => Math.ceil(((errors * sd) / (share * mean)) ** 2);

describe('extreme spread: the two shots that lie farthest apart', () => {
  it.each([
    [2, 1.7724, 0.927], [3, 2.4086, 0.892], [5, 3.0659, 0.827], [6, 3.2751, 0.803], [12, 3.988, 0.721],
  ])('%i shots: mean %f, standard deviation %f (simulated here; 0.5 in 100 for five shots, else 1, three standard errors)', (n, mean, sd) => {
    const share = n === 5 ? 0.005 : 0.01;
    const groups = enough(mean, sd, share, 3);
    const found = simulated(n, groups, false);
    near(found.mean, mean, share, `mean of ${groups} groups`);
    // The standard deviation itself is known to 1 / sqrt(2 groups).
    near(found.sd, sd, 4 / Math.sqrt(2 * groups) + 0.0005, 'standard deviation');
  });
});

// Three shots are a triangle whose size and shape are independent: size^2 is chi-square on 4 df with mean size sqrt(2) * 3 sqrt(pi) / 4, and the shape a point
// spread evenly over a sphere (D. G. Kendall, 1984), on which the square of each side is size^2 * (1 + its projection on one of three directions a third of a turn apart).
function exactWidthOfThree(): number {
  const steps = 400;
  let total = 0;
  for (let i = 0; i < steps; i++) {
    const sine = Math.sqrt(1 - ((2 * (i + 0.5)) / steps - 1) ** 2);
    // The widest of three sides is the one whose direction is within a sixth of a turn.
    for (let j = 0; j < steps; j++) total += Math.sqrt(1 + sine * Math.cos(((j + 0.5) / steps) * (Math.PI / 3)));
  }
  return ((Math.SQRT2 * 3 * Math.sqrt(Math.PI)) / 4) * (total / steps ** 2);
}

describe('a group of three, with which archers tell how good they are', () => {
  it('is 2.4088 spreads wide on the average (exact, derived)', () => {
    expect(exactWidthOfThree()).toBeCloseTo(2.4088, 4);
    near(exactWidthOfThree(), 2.4086, 2e-4, 'against the simulated table');
  });
  it('and the coach reckons with that', () => {
    near(groupAt({ sd: 1, df: 9 }, yards(20), yards(20)), exactWidthOfThree(), 2e-5);
    near(groupAt({ sd: 0.5, df: 9 }, yards(20), yards(40)), exactWidthOfThree(), 2e-5);
  });
});

describe('range on one axis', () => {
  // d2 and d3 of control charts.
  it.each([[2, 1.128, 0.8525], [3, 1.693, 0.8884], [5, 2.326, 0.8641], [10, 3.078, 0.7971]])(
    '%i values: mean %f, standard deviation %f (simulated here; 1 in 100, three standard errors)', (n, d2, d3) => {
      const groups = enough(d2, d3, 0.01, 3);
      const found = simulated(n, groups, true);
      near(found.mean, d2, 0.01, `mean of ${groups} ranges`);
      near(found.sd, d3, 4 / Math.sqrt(2 * groups), 'standard deviation');
    });
  it('six arrows: 2.53 spreads, give or take 0.334 of that (J. Park, "Fine tuning: when to adjust?", read; simulated here)', () => {
    const groups = 6000;
    const found = simulated(6, groups, true);
    near(found.mean, 2.53, 0.005 + 3 * (0.334 / Math.sqrt(groups)));
    near(found.sd / found.mean, 0.334, 0.005 + 3 / Math.sqrt(2 * groups));
  });
});

describe('spread of one shot from one group', () => {
  it('the squares around the centre over 2 (n - 1) are the variance, whatever n (derived; simulated)', () => {
    for (const n of [2, 3, 6]) {
      const random = seededRandom(n);
      const groups = 4000;
      let total = 0;
      for (let i = 0; i < groups; i++) {
        const { squares, df } = squaresAround(Array.from({ length: n }, () => ({ x: random.normal(), y: random.normal() })));
        total += squares / df;
      }
      expect(Math.abs(total / groups - 1)).toBeLessThan(3 * Math.sqrt(2 / (2 * (n - 1)) / groups));
    }
  });
  it.each([[3, 0.599, 2.874], [6, 0.699, 1.755], [12, 0.773, 1.415], [24, 0.831, 1.256], [36, 0.858, 1.198]])(
    'of %i shots it is sure to a factor of %f to %f (derived from chi-square: 1 in 40 beyond on each side)', (n, low, high) => {
      const df = 2 * (n - 1);
      // Each factor is printed to half of 0.001: the chance beyond it lies between those of its two neighbours.
      const beyond = (factor: number): number => fAbove(1 / factor ** 2, df, Infinity);
      expect(beyond(low - 0.0005)).toBeLessThan(0.025);
      expect(beyond(low + 0.0005)).toBeGreaterThan(0.025);
      expect(beyond(high - 0.0005)).toBeLessThan(0.975);
      expect(beyond(high + 0.0005)).toBeGreaterThan(0.975);
    });
  it('50, 90 and 95 of 100 shots lie within 1.1774, 2.1460 and 2.4477 spreads; 39.3, 86.5 and 98.9 within 1, 2 and 3 (read; chi-square on 2 df)', () => {
    for (const [radius, share] of [[1.177410, 0.5], [2.145966, 0.9], [2.447747, 0.95], [1, 0.39347], [2, 0.86466], [3, 0.98889]] as const) {
      prints(1 - fAbove(radius ** 2 / 2, 2, Infinity), share, 5);
    }
  });
});
