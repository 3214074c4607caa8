// Which way round a nock is tried next, and which was the best so far.

import type { State } from '../state.ts';
import type { Advice, Tear } from '../types.ts';
import { judgeRounds, standingOf } from './judge.ts';
import { waysCount, type Ways } from './ways.ts';

export interface NextTurn { readonly turn: number; readonly expect: NonNullable<Advice['expect']> | null }

/** The turn to try next; null where all were tried. */
export function nextTurnOf(state: State, arrow: string, ways: Ways): NextTurn | null {
  const tried = state.notes.arrows.cases[arrow]?.tried ?? [];
  const left = Array.from({ length: waysCount(ways) }, (_, i) => i * ways.step).filter((turn) => !tried.includes(turn));
  const [first] = left;
  return first === undefined || judgeRounds(state) === null ? null : { turn: first, expect: null };
}

/** The turn whose shots lay nearest to the typical arrow. */
export function bestTurnOf(state: State, arrow: string): number {
  const size = (off: Tear | undefined): number => (off === undefined ? Infinity : Math.hypot(off.x, off.y));
  const tried = state.notes.arrows.cases[arrow]?.tried ?? [0];
  return tried.toSorted((a, b) => size(standingOf(state, arrow, a)?.off) - size(standingOf(state, arrow, b)?.off))[0] ?? 0;
}
