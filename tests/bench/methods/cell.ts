// One figure of a published table against ours, and how far the two may lie apart by luck alone.
//
// Both sides are simulated, so both have an error: the tolerance is three standard errors of the difference, from the numbers of
// trials on both sides, and half of the last digit that the table prints. It is worked out here and nowhere else; no cell has its own.
// Three standard errors are beaten by luck once in 370 figures; what lies beyond is told as failing all the same.

/** What `--json` prints. Shares are in percent. */
export interface Cell {
  readonly table: string; readonly cell: string;
  readonly expected: number; readonly got: number; readonly tolerance: number;
  readonly ok: boolean;
}

export type Held = Pick<Cell, 'expected' | 'got' | 'tolerance'>;

/** So many standard errors of the difference are luck. */
export const ERRORS = 3;

/** Beyond the tolerance, or no number at all, is not ok. A hair more than the tolerance, since the printed figure is itself rounded. */
export const cellOf = (table: string, cell: string, held: Held): Cell =>
  ({ table, cell, ...held, ok: Math.abs(held.got - held.expected) <= held.tolerance + 1e-9 });

/** Half of the last digit of a printed figure: 0.05 for "4.5", 0.5 for "83". */
export function halfDigit(printed: string): number {
  const digits = printed.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -digits;
}

/** Worked out on both sides, nothing simulated: only the last printed digit is free. */
export const exact = (printed: string, got: number): Held => ({ expected: Number(printed), got, tolerance: halfDigit(printed) });

/** Two shares are held by the usual test of their difference: one share, pooled over both sides, gives the error of both. */
export function share(printed: string, hits: number, trials: number, theirs: number): Held {
  const [expected, got] = [Number(printed), (100 * hits) / trials];
  const pooled = (hits + (theirs * expected) / 100) / (trials + theirs);
  return { expected, got, tolerance: 100 * ERRORS * Math.sqrt(pooled * (1 - pooled) * bothSides(trials, theirs)) + halfDigit(printed) };
}

/** A mean; the spread of one trial is taken from ours. */
export const average = (printed: string, { mean, sd, count }: Moments, theirs: number): Held =>
  ({ expected: Number(printed), got: mean, tolerance: ERRORS * sd * Math.sqrt(bothSides(count, theirs)) + halfDigit(printed) });

/** Root of a mean square; `squares` has one mean square a trial. The error of a root is that of the mean over twice the root. */
export function rootMeanSquare(printed: string, squares: Moments, theirs: number): Held {
  const got = Math.sqrt(squares.mean);
  const error = (squares.sd / (2 * got)) * Math.sqrt(bothSides(squares.count, theirs));
  return { expected: Number(printed), got, tolerance: ERRORS * error + halfDigit(printed) };
}

/**
 * A quantile of figures that are sorted. How many of them lie below the true one has the error of a share; the figures themselves,
 * on the side where the printed one lies, say how far that is. Needs no density, and holds where many figures are alike.
 */
export function quantile(printed: string, sorted: readonly number[], p: number, theirs: number): Held {
  const [expected, got] = [Number(printed), at(sorted, p)];
  const off = ERRORS * Math.sqrt(p * (1 - p) * bothSides(sorted.length, theirs));
  const reach = Math.abs(at(sorted, expected < got ? p - off : p + off) - got);
  return { expected, got, tolerance: reach + halfDigit(printed) };
}

/** The value below which a share p of the sorted figures lies. */
export const at = (sorted: readonly number[], p: number): number =>
  sorted[Math.max(0, Math.min(sorted.length - 1, Math.floor(p * sorted.length)))] ?? NaN;

/** A figure that is stated as "lowest to highest" by whoever simulated it long ago, number of trials unknown: only our error counts. */
export function statedShare(lowest: string, highest: string, hits: number, trials: number): Held {
  const [low, high] = [Number(lowest), Number(highest)];
  const pooled = Math.max(hits / trials, 1 / trials);
  const error = 100 * ERRORS * Math.sqrt((pooled * (1 - pooled)) / trials);
  return { expected: (low + high) / 2, got: (100 * hits) / trials, tolerance: (high - low) / 2 + halfDigit(lowest) + error };
}

const bothSides = (ours: number, theirs: number): number => 1 / ours + 1 / theirs;

/** Mean and standard deviation of what was counted so far. */
export interface Moments { readonly count: number; readonly mean: number; readonly sd: number }

export function moments(values: readonly number[]): Moments {
  const count = values.length;
  const mean = values.reduce((total, v) => total + v, 0) / count;
  return { count, mean, sd: Math.sqrt(values.reduce((total, v) => total + (v - mean) ** 2, 0) / (count - 1)) };
}
