// Every change with what came of it, for the history list, the record and the way back.

import type { Content } from '../content/types.ts';
import { centreOf } from './loop/centre.ts';
import { paperSpreadOf } from './loop/evidence.ts';
import { FIRST_DISTANCE, goodShots } from './loop/sets.ts';
import type { State } from './state.ts';
import type { HistoryEntry } from './types.ts';
import { amountInWords, headlineOf, phrase, tearInWords } from './words.ts';

export function historyOf(content: Content, state: State): readonly HistoryEntry[] {
  const sd = paperSpreadOf(state).sd;
  const timeOf = (seq: number): string => state.facts.find((f) => f.seq === seq)?.time ?? '';
  return state.moves.map((move, i): HistoryEntry => {
    const knob = content.knobs[move.knob];
    const until = state.moves[i + 1]?.seq ?? Infinity;
    // What came of it is read where moves are decided: at the first distance.
    const shots = state.sets.filter((set) => set.distance === FIRST_DISTANCE).flatMap(goodShots).filter((s) => s.seq > move.seq && s.seq < until);
    const what = `${headlineOf(knob, move.delta)} ${amountInWords({ value: Math.abs(move.delta), unit: knob.unit })}`;
    const kind = move.why === 'put-back' ? ` (${phrase(content, 'history-put-back')})` : move.why === 'unadvised' ? ` (${phrase(content, 'history-unadvised')})` : '';
    return {
      seq: move.seq, time: timeOf(move.seq), what: `${what}${kind}`,
      ...(shots.length > 0 ? { came: `${tearInWords(centreOf(shots, sd).mean)} (${shots.length} ${shots.length === 1 ? 'shot' : 'shots'})` } : {}),
      bow: {}, back: { to: move.seq, steps: [] },
    };
  });
}

/** Which day of the tune this is: calendar days on which something was written. */
export const dayOf = (state: State): number => new Set(state.facts.map((f) => f.time.slice(0, 10))).size;
