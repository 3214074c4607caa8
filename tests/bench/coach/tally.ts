// What came of many bows, as shares. Tuned, worse, excursion, shots and moves are of the bows that the adjustment can bring into tolerance at all; wrong is of
// the bows that were declared tuned, whichever they were.

import { moments } from '../methods/cell.ts';
import type { Outcome } from './hands.ts';

/** What is found within so many shots of an axis is found soon. */
export const SOON = 25;

/** A figure with one standard error. */
export interface Figure { readonly value: number; readonly error: number }

export interface Row {
  readonly bows: number; readonly fixable: number;
  readonly tuned: Figure; readonly wrong: Figure; readonly worse: Figure; readonly excursion: Figure;
  readonly shots: Figure; readonly moves: Figure;
  /** Of the bows that it cannot tune. */
  readonly unfixable: { readonly declared: Figure; readonly shots: Figure };
}

export const FIGURES = ['tuned', 'wrong', 'worse', 'excursion', 'shots', 'moves'] as const;
export type FigureName = (typeof FIGURES)[number];

export function rowOf(outcomes: readonly Outcome[]): Row {
  const fixable = outcomes.filter((o) => o.fixable);
  const others = outcomes.filter((o) => !o.fixable);
  return {
    bows: outcomes.length, fixable: fixable.length,
    tuned: shareOf(fixable, (o) => o.declared && o.inside),
    wrong: shareOf(outcomes.filter((o) => o.declared), (o) => !o.inside),
    worse: shareOf(fixable, (o) => o.worse),
    excursion: shareOf(fixable, (o) => o.excursion),
    shots: meanOf(fixable, (o) => o.shots),
    moves: meanOf(fixable, (o) => o.moves),
    unfixable: { declared: shareOf(others, (o) => o.declared), shots: meanOf(others, (o) => o.shots) },
  };
}

export function shareOf<T>(all: readonly T[], is: (one: T) => boolean): Figure {
  if (all.length === 0) return NONE;
  const value = all.filter(is).length / all.length;
  return { value, error: Math.sqrt((value * (1 - value)) / all.length) };
}

function meanOf(all: readonly Outcome[], count: (one: Outcome) => number): Figure {
  if (all.length < 2) return NONE;
  const { mean, sd } = moments(all.map(count));
  return { value: mean, error: sd / Math.sqrt(all.length) };
}

/** Of nothing there is no share. */
const NONE: Figure = { value: 0, error: 0 };
