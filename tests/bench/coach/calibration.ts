// When the coach said "so many percent", how often was it so? Every chance that was said after a shot counts, of all bows.

import type { Stated } from './coach.ts';
import { shareOf } from './tally.ts';

export interface Bin {
  /** Chances from here on, and below there; the highest that is ever said is 0.99. */
  readonly from: number; readonly to: number;
  /** What was said in the middle of them, and how often it was so. */
  readonly said: number; readonly right: number; readonly error: number; readonly count: number;
}

const EDGES = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];
/** Chances are told rounded down to a whole percent. */
const ROUNDED = 0.005;

export const calibration = (stated: readonly Stated[]): readonly Bin[] => EDGES.slice(0, -1).flatMap((from, i) => {
  const to = EDGES[i + 1] ?? 1;
  const inBin = stated.filter(({ chance }) => chance >= from && chance < to);
  if (inBin.length === 0) return [];
  const { value, error } = shareOf(inBin, ({ inside }) => inside);
  return [{ from, to, said: inBin.reduce((total, { chance }) => total + chance, 0) / inBin.length + ROUNDED, right: value, error, count: inBin.length }];
});
