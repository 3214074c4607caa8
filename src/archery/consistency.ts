// Do these tears belong together? The two furthest apart are held against what the archer's usual spread allows:
// first all shots, then without the odd one. Limits come from a table of simulated honest sets (consistency-limits.ts),
// which counts the spread of both axes together.

import { checks, type Checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { checkPoints, checkSpread, type Point, type Spread } from './shots.ts';
import { DFS, LIMITS } from './consistency-limits.ts';
import { widest } from './widest.ts';

export { widest } from './widest.ts';

const must = checks('pairLimits', 'judgeConsistency', 'changesDirection');

/** In units of the spread: honest sets stay below with a chance of 95 or 99 %. `oddOut` leaves the odd shot out; null for 3 shots. */
export interface PairLimits {
  readonly pair95: number; readonly pair99: number;
  readonly oddOut95: number | null; readonly oddOut99: number | null;
}

/**
 * Limits for n = 3 to 12 shots with a spread on `df` degrees of freedom (both axes), 2 or more, Infinity included.
 * Between the columns of the table the logarithm of the limit is taken as straight in 1/df (error below 0.5 %).
 * Throws RangeError outside.
 */
// Example: pairLimits(3, 16) is { pair95: 4.477, pair99: 5.664, oddOut95: null, oddOut99: null }.
export function pairLimits(n: number, df: number): PairLimits {
  return limitsFor(must.pairLimits, n, df);
}

function limitsFor(by: Checks, n: number, df: number): PairLimits {
  const row = LIMITS.find((r) => r.n === n);
  if (row === undefined) throw by.error(`there is no limit for ${n} shots; 3 to 12 can be judged`);
  const at = (column: readonly number[]): number => interpolate(by, column, df);
  return {
    pair95: at(row.pair95),
    pair99: at(row.pair99),
    oddOut95: row.oddOut95 && at(row.oddOut95),
    oddOut99: row.oddOut99 && at(row.oddOut99),
  };
}

function interpolate(by: Checks, column: readonly number[], df: number): number {
  const table = DFS.flatMap((at, i) => column.slice(i, i + 1).map((limit) => ({ at, limit })));
  const left = table.findLast(({ at }) => at <= df);
  if (left === undefined) throw by.error(`the df of the spread is ${df}; limits need 2 or more`);
  const right = table.find(({ at }) => at >= df) ?? left;
  const share = left === right ? 0 : (1 / left.at - 1 / df) / (1 / left.at - 1 / right.at);
  return Math.exp((1 - share) * Math.log(left.limit) + share * Math.log(right.limit));
}

export interface Consistency {
  /**
   * - `suspect`: too few shots to tell; shoot on to 7.
   * - `odd shot`: one shot does not belong to the others (`odd` is its index).
   * - `inconsistent`: even without the odd one they do not belong together; no adjustment can mend that.
   */
  readonly kind: 'fine' | 'odd shot' | 'suspect' | 'inconsistent';
  /** The distance that was judged and its limit, inches: without the odd shot where the verdict rests on that. */
  readonly pair: number;
  readonly limit: number;
  readonly odd: number | null;
}

const ENOUGH = 7;
const MOST = 12;

/**
 * The two-stage rule. Two shots are held against the limit for three (too far apart: shoot a third); one is always fine;
 * beyond 12 shots the limit for 12 stands, which is a little strict. `earliest` is the fewest shots that may be called
 * inconsistent. At three the odd shot cannot be told from the others: one shot thrown 6 spreads off among three then
 * ends as inconsistent about 8 times in 10; with `earliest` 4, which costs such a set three shots more, 1 or 2 in 10 (by simulation).
 * Throws RangeError on a shot or a spread that cannot be meant, or df below 2.
 */
// Example: judgeConsistency([{ x: 0, y: 0 }, { x: 0.5, y: 0 }], { sd: 0.2, df: 16 }) is { kind: 'fine', pair: 0.5, limit: 0.895, odd: null }.
export function judgeConsistency(shots: readonly Point[], spread: Spread, earliest: 3 | 4 = 3): Consistency {
  checkSpread(must.judgeConsistency, spread);
  checkPoints(must.judgeConsistency, shots, 'a tear');
  const n = Math.max(3, Math.min(MOST, shots.length));
  const limits = limitsFor(must.judgeConsistency, n, spread.df);
  const { pair, oddOut, odd } = widest(shots);
  const pair95 = limits.pair95 * spread.sd;
  const pair99 = limits.pair99 * spread.sd;
  const all = { pair, limit: pair99, odd };

  // Of fewer than four none is left out, and nothing is beyond a limit that is not there.
  const without = { pair: oddOut ?? 0, limit: (limits.oddOut99 ?? Infinity) * spread.sd, odd };
  // Before the seventh shot both must be broken: one look more must not mean one false alarm more.
  if (without.pair > without.limit && (shots.length >= ENOUGH || pair > pair99)) return { ...without, kind: 'inconsistent' };
  if (shots.length === 3 && earliest === 3 && pair > pair99) return { ...all, kind: 'inconsistent' };
  if (shots.length >= ENOUGH) return { ...all, kind: pair > pair99 ? 'odd shot' : 'fine' };
  return { pair, limit: pair95, odd, kind: pair > pair95 ? 'suspect' : 'fine' };
}

/** The trade's plain rule calls a spread wide from here, inches; and what three honest shots stay below 19 times in 20 on an axis, in usual
 *  spreads (studentized range, from memory). */
export const [WIDE_FROM, FAR_APART] = [0.5, 3.3];

/**
 * The trade's plain rule: tears that point now one way, now the other. On some axis the shots spread over more than 1/2 in,
 * over more than twice their mean, and over more than 3.3 usual spreads.
 * Throws RangeError on a shot or a spread that cannot be meant.
 */
// Example: changesDirection([{ x: -0.4, y: 0 }, { x: 0.4, y: 0 }], { sd: 0.2, df: 16 }) is true.
export function changesDirection(shots: readonly Point[], spread: Spread): boolean {
  checkSpread(must.changesDirection, spread);
  checkPoints(must.changesDirection, shots, 'a tear');
  if (shots.length < 2) return false;
  return [shots.map((s) => s.x), shots.map((s) => s.y)].some((values) => {
    const range = Math.max(...values) - Math.min(...values);
    const mean = sum(values) / values.length;
    return range > WIDE_FROM && range > 2 * Math.abs(mean) && range > FAR_APART * spread.sd;
  });
}
