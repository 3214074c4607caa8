// What a table of the bench is: its name, what stands behind its figures, and a run that gives its cells.

import type { Cell } from './cell.ts';

/** A figure that our own rule reaches where the published table has another rule: told beside it, held against nothing. */
export interface Told { readonly cell: string; readonly got: number; readonly error: number; readonly unit: string }

export interface Outcome {
  readonly cells: readonly Cell[];
  /** Printed as "the walk's own". */
  readonly own: readonly Told[];
}

export interface Table {
  /** What `--only` asks for. */
  readonly id: string;
  readonly name: string;
  /** Trials on both sides, and which reading of the table's words this is. */
  readonly about: string;
  readonly run: (seed: number) => Outcome;
}

/** The rows of a table that was written down as text, `|` between the columns. */
export const rowsOf = (text: string): readonly (readonly string[])[] =>
  text.trim().split('\n').map((line) => line.split('|').map((entry) => entry.trim()));

/** The figures of one entry, `/` between them; what is printed as a dash is none. */
export const figuresOf = (entry: string): readonly string[] => entry.split('/').map((figure) => figure.trim()).filter((figure) => /^[\d.]+$/.test(figure));

/** A share of `trials` as a told figure: percent, with one standard error. */
export function toldShare(cell: string, hits: number, trials: number): Told {
  const p = hits / trials;
  return { cell, got: 100 * p, error: 100 * Math.sqrt((p * (1 - p)) / trials), unit: '%' };
}
