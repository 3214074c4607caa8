// Rules with a fixed number of shots that the walk does not use, one axis, inches. Kept as rivals: the bench prints how often each is wrong.

import { studentQuantile } from '../../../src/maths/student.ts';

const CONFIDENCE = 0.95;
/** Sums of sixteenths are exact, a third of them is not: a mean on the edge of the tolerance is inside. */
const EDGE = 1e-12;

interface Estimate { readonly mean: number; readonly se: number; readonly df: number }

function estimate(shots: readonly number[]): Estimate {
  const n = shots.length;
  const mean = shots.reduce((total, v) => total + v, 0) / n;
  const variance = shots.reduce((total, v) => total + (v - mean) ** 2, 0) / (n - 1);
  return { mean, se: Math.sqrt(variance / n), df: n - 1 };
}

/** Tuned where the mean lies within the tolerance, however the shots scatter. It calls a bow that is 3/8 in off tuned in 19 of 100 cases (3 shots). */
export const meanInside = (shots: readonly number[], tolerance: number): boolean => Math.abs(estimate(shots).mean) <= tolerance + EDGE;

/** Tuned where the t-test finds no significant difference from zero (5 %, two-sided): the fewer shots, the oftener everything is "tuned". */
export function notSignificant(shots: readonly number[]): boolean {
  const { mean, se, df } = estimate(shots);
  return Math.abs(mean) <= studentQuantile((1 + CONFIDENCE) / 2, df) * se + EDGE;
}

/**
 * Tuned where both one-sided 5 % tests say so with the spread of these shots alone: the 90 % interval lies inside the tolerance.
 * Right, and blunt: with 6 shots it misses 43 of 100 bows that are in tune. Source: D. J. Schuirmann (1987).
 */
export function equivalentByOwnSpread(shots: readonly number[], tolerance: number): boolean {
  const { mean, se, df } = estimate(shots);
  return Math.abs(mean) + studentQuantile(CONFIDENCE, df) * se <= tolerance + EDGE;
}
