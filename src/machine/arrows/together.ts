// Whether the nocks of the whole set are worth turning together, and what came of it. Worked out from the shots, so that a correction
// changes the list, or takes the offer back, by itself.

import { predictTurns } from '../../archery/nock-turn.ts';
import { staysTurned, worthTurning } from '../../archery/set-index.ts';
import { indexRead, trulyDiffer } from '../../archery/set-read.ts';
import { once } from '../../maths/once.ts';
import type { State } from '../state.ts';
import type { Tear } from '../types.ts';
import { byArrow, judgeRounds, readGroups } from './judge.ts';
import { turnNow } from './plan.ts';
import { arrowsInPlay, roundsBefore, roundShots } from './shots.ts';
import { asTurn, waysCount, waysOf } from './ways.ts';

export interface NockToTurn {
  readonly arrow: string;
  /** Vanes by which the shaft is turned clockwise, and how its nock stands then from as found. */
  readonly by: number;
  readonly to: number;
}

/** All nocks that are to be turned, in the order of their numbers. */
export interface TurnList {
  readonly back: boolean;
  readonly turns: readonly NockToTurn[];
  /** Vanes once round. */
  readonly vanes: number;
  /** The share of the arrows' scatter that is expected to go. */
  readonly share: number;
}

/** Before it is known how the nocks may stand: a question is worth asking where the best of vanes would be worth turning. */
const BEST_WAYS = 4;

/** What is offered after the rounds: a list, or the question that decides whether there is one; null where it is not worth it, or decided. */
export const offerOf: (state: State) => TurnList | { readonly ask: string } | null = once((state: State) => {
  const { odd, together } = state.notes.arrows;
  const judged = judgeRounds(state);
  if (judged === null || !judged.complete || odd.length > 0 || (together !== undefined && together.how !== 'offered')) return null;
  const play = arrowsInPlay(state);
  const shots = byArrow(roundShots(state).filter((shot) => shot.good && play.includes(shot.arrow)));
  // Single odd ones are a matter of their own; where too many are, that is how the set differs.
  if (!trulyDiffer(judged.tooMany ? shots : shots.filter(({ arrow }) => !judged.standOut.includes(arrow)))) return null;
  const ways = waysOf(state);
  const count = 'ask' in ways ? BEST_WAYS : waysCount(ways);
  const index = count === 1 ? null : indexRead({ ...judged.set, arrows: judged.set.arrows.filter(({ arrow }) => play.includes(arrow)) }, count);
  if (index === null || !worthTurning(index)) return null;
  if ('ask' in ways) return ways;
  const turns = index.turns
    .map(({ arrow, turn }): NockToTurn => ({ arrow, by: turn * ways.step, to: asTurn(ways, turnNow(state, arrow) + turn * ways.step) }))
    .filter(({ arrow, by }) => by > 0 && together?.stay.includes(arrow) !== true);
  return turns.length === 0 ? null : { back: false, turns, vanes: ways.vanes, share: 1 - index.after / index.before };
});

export interface TurnedSeen {
  readonly stays: boolean;
  /** How much the arrows truly differ on one axis, before and now, inches. */
  readonly was: number;
  readonly is: number;
}

/** What the rounds show of a set that was turned; null while they are not whole, or where nothing from before can be held against them. */
export const turnedSeen: (state: State) => TurnedSeen | null = once((state: State) => {
  const { together } = state.notes.arrows;
  const judged = judgeRounds(state);
  const shots = byArrow(roundsBefore(state).filter((shot) => shot.good));
  if (together === undefined || judged === null || !judged.complete || shots.length < 2) return null;
  const { from, vanes } = together;
  const old = readGroups(state, shots);
  const both = old.arrows.flatMap(({ arrow, effect }) => {
    const now = judged.set.arrows.find((one) => one.arrow === arrow);
    const foretold = predictTurns(NOWHERE, effect, vanes)[round(turnNow(state, arrow) - (from[arrow] ?? turnNow(state, arrow)), vanes)];
    return now === undefined || foretold === undefined ? [] : [{ stood: effect, foretold, seen: now.mean }];
  });
  if (both.length < 2) return null;
  const [was, is] = [old.betweenSd, judged.set.betweenSd];
  return { stays: staysTurned(both, { before: was, after: is }), was, is };
});

const NOWHERE: Tear = { x: 0, y: 0 };
const round = (turn: number, vanes: number): number => ((turn % vanes) + vanes) % vanes;

/** The nocks that are to be turned now: as offered, or back because it did not help; null where neither stands. */
export function listNow(state: State): TurnList | null {
  const { together } = state.notes.arrows;
  if (together?.how !== 'turned') {
    const offer = offerOf(state);
    return offer === null || 'ask' in offer ? null : offer;
  }
  if (turnedSeen(state)?.stays !== false) return null;
  const { from, vanes } = together;
  const turns = arrowsInPlay(state).flatMap((arrow): readonly NockToTurn[] => {
    const to = from[arrow];
    return to === undefined ? [] : [{ arrow, by: round(to - turnNow(state, arrow), vanes), to }];
  });
  return { back: true, turns, vanes, share: 0 };
}
