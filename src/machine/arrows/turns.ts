// Which way round a nock is tried next, and which was the best so far.

import { bestTurn, nextTurn, predictTurns } from '../../archery/nock-turn.ts';
import type { State } from '../state.ts';
import type { Advice, Tear } from '../types.ts';
import { judgeRounds, standingOf, tearsAt } from './judge.ts';
import { AFTER_CHANGE } from './plan.ts';
import { waysCount, type Ways } from './ways.ts';

export interface NextTurn {
  readonly turn: number;
  /** The tear to be expected there if the arrow's own error turns with its nock; null once a turn showed that it does not. */
  readonly expect: NonNullable<Advice['expect']> | null;
}

const NO_TEAR: Tear = { x: 0, y: 0 };

/**
 * The turn to try next; null where all were tried. By the picture of an error that turns with the shaft, all turns lie as
 * far from the typical arrow, so the one with the least tear of its own comes first.
 */
export function nextTurnOf(state: State, arrow: string, ways: Ways): NextTurn | null {
  const judged = judgeRounds(state);
  const tried = state.notes.arrows.cases[arrow]?.tried ?? [0];
  const before = standingOf(state, arrow, tried[0], judged);
  if (judged === null || before === null) return null;
  const predicted = predictTurns(judged.typical, before.off, waysCount(ways));
  const index = nextTurn(predicted, tried.map((turn) => turn / ways.step), NO_TEAR);
  const tear = index === null ? undefined : predicted[index];
  if (index === null || tear === undefined) return null;
  const sd = judged.usual * Math.sqrt(1 / AFTER_CHANGE + 1 / before.shots);
  return { turn: index * ways.step, expect: tried.length > 1 ? null : { x: hundredth(tear.x), y: hundredth(tear.y), sdX: hundredth(sd), sdY: hundredth(sd) } };
}

const hundredth = (value: number): number => Math.round(value * 100) / 100 + 0;

/** The tried turn to stay at; as found where luck explains all differences. */
export function bestTurnOf(state: State, arrow: string): number {
  const judged = judgeRounds(state);
  const tried = (state.notes.arrows.cases[arrow]?.tried ?? [0]).flatMap((turn) => {
    const shots = tearsAt(state, arrow, turn);
    return shots.length === 0 ? [] : [{ turn, shots }];
  });
  return judged === null || tried.length === 0 ? 0 : bestTurn(tried, judged.typical, judged.spread);
}
