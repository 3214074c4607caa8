// Hotelling's T-squared: are centres in several directions at once where they are expected, or two of them in the same place?
// It learns a spread for each direction and how they go together, which costs shots: with 3 + 3 it finds a shift of 3 spreads in 49 of 100
// cases where one pooled spread finds it in 77 (two-groups.ts). So the walk does not use it; the bench shows the price.
// Source: H. Hotelling (1931); formulas as in R. A. Johnson and D. W. Wichern, "Applied Multivariate Statistical Analysis".

import { fAbove } from '../../../src/maths/fisher.ts';

/** What a group comes down to: how many, their mean in each direction, and their covariance (sums over n - 1). */
export interface Group { readonly n: number; readonly mean: readonly number[]; readonly covariance: Matrix }
export type Matrix = readonly (readonly number[])[];

export interface Hotelling { readonly tSquared: number; /** Chance of one as large where the centres are as expected. */ readonly p: number }

/** Rows are shots, columns directions; two shots at least. Example: summarise([[6, 9], [10, 6], [8, 3]]).mean is [8, 6]. */
export function summarise(rows: Matrix): Group {
  const n = rows.length;
  const directions = (rows[0] ?? []).map((_, j) => j);
  const mean = directions.map((j) => rows.reduce((total, row) => total + (row[j] ?? NaN), 0) / n);
  const off = rows.map((row) => row.map((value, j) => value - (mean[j] ?? NaN)));
  return { n, mean, covariance: directions.map((i) => directions.map((j) => off.reduce((total, row) => total + (row[i] ?? NaN) * (row[j] ?? NaN), 0) / (n - 1))) };
}

/** One group against a centre that is expected; null where its shots are too few or lie on a line. */
export function oneSample({ n, mean, covariance }: Group, expected: readonly number[]): Hotelling | null {
  const off = mean.map((value, i) => value - (expected[i] ?? NaN));
  return judged(n, off, covariance, n - 1);
}

/** Two groups with the same covariance, which is pooled; null where their shots are too few or lie on a line. */
export function twoSample(a: Group, b: Group): Hotelling | null {
  const off = a.mean.map((value, i) => value - (b.mean[i] ?? NaN));
  return judged(1 / (1 / a.n + 1 / b.n), off, pooledCovariance(a, b), a.n + b.n - 2);
}

export function pooledCovariance(a: Group, b: Group): Matrix {
  const [da, db] = [a.n - 1, b.n - 1];
  return a.covariance.map((row, i) => row.map((value, j) => (da * value + db * (b.covariance[i]?.[j] ?? NaN)) / (da + db)));
}

/** T-squared on p directions and df degrees of freedom is F on p and df - p + 1, times df p / (df - p + 1). */
function judged(count: number, off: readonly number[], covariance: Matrix, df: number): Hotelling | null {
  const p = off.length;
  const left = df - p + 1;
  const solved = left > 0 ? solve(covariance, off) : null;
  if (solved === null) return null;
  const tSquared = count * off.reduce((total, value, i) => total + value * (solved[i] ?? NaN), 0);
  return { tSquared, p: fAbove((tSquared * left) / (df * p), p, left) };
}

/** The T-squared that is passed with chance `p` where nothing differs, on `directions` and `df` degrees of freedom. */
export function criticalTSquared(p: number, directions: number, df: number): number {
  const left = df - directions + 1;
  let [low, high] = [0, 1e6];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (fAbove(middle, directions, left) > p) low = middle;
    else high = middle;
  }
  return (low * df * directions) / left;
}

/** x with matrix * x = right; null where the matrix has no inverse. Gauss with the largest pivot. */
function solve(matrix: Matrix, right: readonly number[]): readonly number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i] ?? NaN]);
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    const below = rows.slice(column).sort((a, b) => Math.abs(b[column] ?? 0) - Math.abs(a[column] ?? 0));
    rows.splice(column, size - column, ...below);
    const pivot = rows[column] ?? [];
    const by = pivot[column] ?? 0;
    if (!(Math.abs(by) > 0)) return null;
    for (const [i, row] of rows.entries()) {
      if (i === column) continue;
      const share = (row[column] ?? 0) / by;
      rows[i] = row.map((value, j) => value - share * (pivot[j] ?? 0));
    }
  }
  return rows.map((row, i) => (row[size] ?? NaN) / (row[i] ?? NaN));
}
