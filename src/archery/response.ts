// What the tear does when one knob is turned: a straight line, learned from the shots and from what the book says.
// Several groups of sets share the slope; each has its own height. A group is all the sets shot while every other
// adjustment stood still: moving another one shifts the line but does not change what this knob is worth.
// Model: tear = c_j + g * x. Priors: g ~ N(prior.mean, prior.sd^2), each c_j ~ N(0, 3^2) in.
// Derived: normal equations of weighted least squares with a conjugate prior, the heights eliminated.
// Order of the points never matters, and mirrored tears with a mirrored book give the mirrored line, to the last bit.

import { checks, type Checks } from '../maths/check.ts';
import { normalCdf, normalQuantile } from '../maths/normal.ts';
import { sum } from '../maths/sum.ts';
import { chanceAbove, chanceBelow } from './tolerance.ts';

const must = checks('fitLine', 'predict', 'bestSetting', 'chanceWorse', 'chanceWrongSign', 'chanceNotReachable', 'priorFromBook');

/** One set of shots: knob at `x` (in the knob's unit), tear `mean` (in) over `count` full shots, shot in `group`. */
export interface SettingPoint { readonly x: number; readonly mean: number; readonly count: number; readonly group: number }

/** Intercept in inches, slope in inches of tear per unit of the knob. */
export interface Line {
  readonly intercept: number; readonly slope: number;
  readonly varIntercept: number; readonly varSlope: number; readonly cov: number;
}

/** A belief about a slope: inches of tear per unit of the knob. */
export interface SlopePrior { readonly mean: number; readonly sd: number }

/** Throws RangeError in the name that `must` carries unless each of these sets can be meant. */
// Example: checkSettings(checks('checkSettings').checkSettings, [{ x: 0, mean: 1, count: 0, group: 0 }]) throws
// 'checkSettings: a count of shots is 0; a number above 0 is needed'.
export function checkSettings(must: Checks, points: readonly SettingPoint[]): void {
  for (const { x, mean, count, group } of points) {
    must.measure(x, 'a setting');
    must.measure(mean, 'a mean tear');
    must.size(count, 'a count of shots');
    must.finite(group, 'a group');
  }
}

const INTERCEPT_PRECISION = 1 / 9; // tears of up to a few inches are possible before anything is known

/**
 * The line of one `group`, learned from all points. `sd` is the spread of one shot (in). `prior.sd` may be Infinity
 * (nothing known) if the points themselves fix a slope. Throws RangeError on numbers that cannot be meant.
 */
// Example: fitLine([{ x: 0, mean: 1, count: 3, group: 0 }, { x: -8, mean: 0.45, count: 3, group: 0 }], 0.2, { mean: 0.09375, sd: 0.05625 }, 0).slope
// is 0.071494.
export function fitLine(points: readonly SettingPoint[], sd: number, prior: SlopePrior, group: number): Line {
  must.fitLine.size(sd, 'the spread of one shot');
  must.fitLine.measure(prior.mean, 'the slope expected beforehand');
  must.fitLine.size(prior.sd, 'the spread of the slope expected beforehand', true);
  must.fitLine.finite(group, 'the group asked for');
  checkSettings(must.fitLine, points);
  const precision = 1 / prior.sd ** 2;
  const groups = [...new Set(points.map((p) => p.group))];
  const sums = new Map(groups.map((id) => [id, sumsOf(points.filter((p) => p.group === id), sd)]));

  const each = [...sums.values()];
  const information = precision + sum(each.map((s) => s.xx - (s.b * s.b) / s.a));
  if (!(information > 0)) throw must.fitLine.error('no slope can be learned from these points; give a prior with a finite spread');
  const slope = (precision * prior.mean + sum(each.map((s) => s.v - (s.b * s.u) / s.a))) / information;

  const own = sums.get(group) ?? { a: INTERCEPT_PRECISION, b: 0, u: 0, v: 0, xx: 0 };
  const lever = own.b / own.a;
  const varSlope = 1 / information;
  return {
    intercept: own.u / own.a - lever * slope,
    slope,
    varIntercept: 1 / own.a + lever * lever * varSlope,
    varSlope,
    cov: 0 - lever * varSlope,
  };
}

function sumsOf(points: readonly SettingPoint[], sd: number): { a: number; b: number; u: number; v: number; xx: number } {
  const weighted = (f: (p: SettingPoint) => number): number => sum(points.map((p) => (p.count / sd ** 2) * f(p)));
  return {
    a: weighted(() => 1) + INTERCEPT_PRECISION,
    b: weighted((p) => p.x),
    u: weighted((p) => p.mean),
    v: weighted((p) => p.x * p.mean),
    xx: weighted((p) => p.x * p.x),
  };
}

/** The tear (in) to expect with the knob at `x`, and how well that is known (one standard deviation, without shot noise).
 *  Throws RangeError on numbers that cannot be meant. */
// Example: predict({ intercept: 1, slope: 0.1, varIntercept: 0.01, varSlope: 0.0004, cov: 0 }, -5) is { mean: 0.5, sd: 0.1414 }.
export function predict(line: Line, x: number): { readonly mean: number; readonly sd: number } {
  return foretold(must.predict, line, x);
}

function foretold(by: Checks, line: Line, x: number): { readonly mean: number; readonly sd: number } {
  by.measure(x, 'the setting');
  checkLine(by, line);
  const variance = line.varIntercept + 2 * x * line.cov + x * x * line.varSlope;
  return { mean: line.intercept + line.slope * x, sd: Math.sqrt(Math.max(0, variance)) };
}

function checkLine(by: Checks, { intercept, slope, varIntercept, varSlope, cov }: Line): void {
  by.measure(intercept, "the line's intercept");
  by.measure(slope, "the line's slope");
  by.notNegative(varIntercept, "the variance of the line's intercept");
  by.notNegative(varSlope, "the variance of the line's slope");
  by.finite(cov, "the covariance of the line's two figures");
}

/** The setting with the least expected squared distance from `target` (in). An unsure slope makes it cautious.
 *  Throws RangeError on numbers that cannot be meant. */
// Example: bestSetting({ intercept: 1, slope: 0.1, varIntercept: 0.01, varSlope: 0.0036, cov: 0 }) is -7.353.
export function bestSetting(line: Line, target = 0): number {
  checkLine(must.bestSetting, line);
  must.bestSetting.measure(target, 'the target');
  return 0 - ((line.intercept - target) * line.slope + line.cov) / (line.slope ** 2 + line.varSlope);
}

/**
 * Chance that the tear at `xNow` is further from `target` (in) than at `xPrev`, by the line. Derived: worse means that the change
 * and the sum of both have the same sign; the two are taken as independent. Overstated in mid-range: speak of it from 0.9 on.
 * Throws RangeError on numbers that cannot be meant.
 */
// Example: chanceWorse({ intercept: 1, slope: 0.1, varIntercept: 0.01, varSlope: 0.0001, cov: 0 }, 0, 2, 0) is 1.0000.
export function chanceWorse(line: Line, xPrev: number, xNow: number, target = 0): number {
  const step = xNow - xPrev;
  checkLine(must.chanceWorse, line);
  must.chanceWorse.measure(step, 'the step');
  must.chanceWorse.measure(target, 'the target');
  if (step === 0) return 0;
  const both = xNow + xPrev;
  const [change, total] = [step * line.slope, 2 * (line.intercept - target) + both * line.slope];
  // Either side by itself: one less the other would tell a mirrored tear otherwise, in the last digit.
  const alike = (side: 1 | -1): number => chancePositive(side * change, step * step * line.varSlope)
    * chancePositive(side * total, 4 * line.varIntercept + 4 * both * line.cov + both * both * line.varSlope);
  return alike(1) + alike(-1);
}

/** Chance that the slope's sign is not the book's. Throws RangeError on numbers that cannot be meant. */
// Example: chanceWrongSign({ intercept: 0, slope: 0.196, varIntercept: 1, varSlope: 0.01, cov: 0 }, 1) is 0.0250.
export function chanceWrongSign(line: Line, bookSign: 1 | -1): number {
  checkLine(must.chanceWrongSign, line);
  must.chanceWrongSign.measure(bookSign, "the book's sign");
  return 1 - chancePositive(bookSign * line.slope, line.varSlope);
}

/**
 * Chance that no setting between `lo` and `hi` brings the tear between `low` and `high` (in): both ends of the travel lie
 * beyond the same side of the tolerance. Student's t with `df` degrees of freedom.
 * Throws RangeError on numbers that cannot be meant.
 */
// Example: chanceNotReachable({ intercept: 2, slope: 0.1, varIntercept: 0, varSlope: 0, cov: 0 }, -8, 8, -0.25, 0.25, 8) is 1.
export function chanceNotReachable(line: Line, lo: number, hi: number, low: number, high: number, df: number): number {
  must.chanceNotReachable.measure(low, 'the lower end of the tolerance');
  must.chanceNotReachable.measure(high, 'the upper end of the tolerance');
  must.chanceNotReachable.positive(df, 'df', true);
  const a = foretold(must.chanceNotReachable, line, lo);
  const b = foretold(must.chanceNotReachable, line, hi);
  return Math.max(
    chanceAbove(a.mean, a.sd, df, high) * chanceAbove(b.mean, b.sd, df, high),
    chanceBelow(a.mean, a.sd, df, low) * chanceBelow(b.mean, b.sd, df, low),
  );
}

/**
 * The belief about a slope before any shot: what the book says (`change`, inches of tear per unit), as wide as makes the chance of
 * the other sign `wrongSign` (between 0 and 0.5, ends left out). Throws RangeError where the book says nothing (change 0).
 */
// Example: priorFromBook(0.1, 0.05) is { mean: 0.1, sd: 0.0608 }.
export function priorFromBook(change: number, wrongSign: number): SlopePrior {
  must.priorFromBook.measure(change, "the book's change");
  if (change === 0) throw must.priorFromBook.error('the book gives no change (0); say how large a response is plausible instead');
  if (!(wrongSign > 0 && wrongSign < 0.5)) {
    throw must.priorFromBook.error(`the chance of a wrong sign is ${wrongSign}; it lies between 0 and 0.5, ends left out`);
  }
  return { mean: change, sd: Math.abs(change) / normalQuantile(1 - wrongSign) };
}

/** Chance that a normal number with this mean and variance is above 0; a half where both are 0. */
function chancePositive(mean: number, variance: number): number {
  return variance > 0 ? normalCdf(mean / Math.sqrt(variance)) : (1 + Math.sign(mean)) / 2;
}
