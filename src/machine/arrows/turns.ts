// Which way round a nock is tried next, when trying more of them would help nothing, and which was the best so far.

import { bestTurn, judgeTurn, nextTurn, predictTurns } from '../../archery/nock-turn.ts';
import type { State } from '../state.ts';
import type { Advice, Tear } from '../types.ts';
import { judgeRounds, standingOf, tearsAt, type RoundsJudged, type Standing } from './judge.ts';
import { AFTER_CHANGE, nearEnough } from './plan.ts';
import { asTurn, waysCount, type Ways } from './ways.ts';

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
  const told = foretold(state, arrow, ways);
  if (told === null) return null;
  const { tried, before, predicted, first } = told;
  const index = nextTurn(predicted, tried.map((turn) => asTurn(ways, turn - first) / ways.step), NO_TEAR);
  const tear = index === null ? undefined : predicted[index];
  if (index === null || tear === undefined) return null;
  const sd = told.judged.usual * Math.sqrt(1 / AFTER_CHANGE + 1 / before.shots);
  return { turn: asTurn(ways, first + index * ways.step), expect: tried.length > 1 ? null : { x: hundredth(tear.x), y: hundredth(tear.y), sdX: hundredth(sd), sdY: hundredth(sd) } };
}

interface Foretold {
  readonly judged: RoundsJudged;
  readonly tried: readonly number[];
  readonly first: number;
  readonly before: Standing;
  /** One tear for each way round, from where the nock stood first. */
  readonly predicted: readonly Tear[];
}

/** The tears to be expected at each way round from where the nock stood first, and what that rests on; null before there is a shot of it. */
function foretold(state: State, arrow: string, ways: Ways): Foretold | null {
  const judged = judgeRounds(state);
  const tried = state.notes.arrows.cases[arrow]?.tried ?? [0];
  const [first = 0] = tried;
  const before = standingOf(state, arrow, first, judged);
  return judged === null || before === null ? null : { judged, tried, first, before, predicted: predictTurns(judged.typical, before.off, waysCount(ways)) };
}

/**
 * Whether the arrow's error went round with its nock as was foretold: then it only points another way, no other turn brings the arrow nearer
 * the typical one, and none is tried. False where the shots miss the foretelling, or are no better: then the other turns are tried.
 */
export function turnsWithIt(state: State, arrow: string, ways: Ways): boolean {
  const told = foretold(state, arrow, ways);
  const [, second, ...more] = told?.tried ?? [];
  if (told === null || second === undefined || more.length > 0) return false;
  const { before, first, judged } = told;
  const shots = tearsAt(state, arrow, second);
  const predicted = told.predicted[asTurn(ways, second - first) / ways.step];
  if (shots.length === 0 || predicted === undefined) return false;
  return judgeTurn({ predicted, shots, before: before.mean, countBefore: before.shots, target: NO_TEAR, spread: judged.spread, limit: nearEnough(state) }) !== 'missed';
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
