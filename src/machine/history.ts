// Every point that the bow was at, with what came of it and the way back to it: for the history list and the record.

import { knobEntries, type Content } from '../content/types.ts';
import { centreOf } from './loop/centre.ts';
import { paperSpreadOf } from './loop/evidence.ts';
import { undoAdvice } from './loop/advise.ts';
import { FIRST_DISTANCE, goodShots } from './loop/sets.ts';
import { readingsOf } from './record-impacts.ts';
import { settingsOf, type Move, type ShotSet, type State } from './state.ts';
import type { HistoryEntry, Ledger } from './types.ts';
import { movesFrom, sameSettings, undoRuns } from './undo.ts';
import { amountInWords, headlineOf, phrase, tearInWords } from './words.ts';

/** As found first (seq 0), then one entry for each change. */
export function historyOf(content: Content, state: State): readonly HistoryEntry[] {
  const timeOf = (seq: number): string => state.facts.find((f) => f.seq === seq)?.time ?? '';
  const points = [{ seq: 0, time: state.facts[0]?.time ?? '', what: phrase(content, 'history-as-found') }, ...state.moves.map((move) => ({ seq: move.seq, time: timeOf(move.seq), what: moveInWords(content, move) }))];
  return points.map(({ seq, time, what }, i): HistoryEntry => {
    const until = points[i + 1]?.seq ?? Infinity;
    const came = readingBetween(content, state, seq, until);
    return { seq, time, what, ...(came === null ? {} : { came }), bow: ledgerAt(content, state.moves.slice(0, i)), back: wayBack(content, state, i) };
  });
}

/** The point that the bow was at before this line, in words. */
export function pointBefore(content: Content, state: State, to: number): string {
  const last = state.moves.findLast((move) => move.seq < to);
  return last === undefined ? phrase(content, 'history-as-found').toLowerCase() : phrase(content, 'point-after', { what: moveInWords(content, last) });
}

export function moveInWords(content: Content, move: Move): string {
  const knob = content.knobs[move.knob];
  const what = `${headlineOf(knob, move.delta)} ${amountInWords({ value: Math.abs(move.delta), unit: knob.unit })}`;
  if (move.why === 'advice') return what;
  return `${what} (${phrase(content, move.why === 'put-back' ? 'history-put-back' : 'history-unadvised')})`;
}

const ledgerAt = (content: Content, moves: readonly Move[]): Ledger =>
  Object.fromEntries(knobEntries(settingsOf(moves)).map(([knob, value]) => [knob, { value, unit: content.knobs[knob].unit }]));

/** From the point after the first `count` moves; null where the bow stands there. */
function wayBack(content: Content, state: State, count: number): HistoryEntry['back'] {
  const next = state.moves[count];
  if (next === undefined || sameSettings(settingsOf(state.moves.slice(0, count)), settingsOf(state.moves))) return null;
  return { to: next.seq, steps: undoRuns(movesFrom(state, next.seq)).flatMap((run) => undoAdvice(content, state, run)?.what ?? []) };
}

// What the shots of each kind showed between two lines of the journal.
function readingBetween(content: Content, state: State, from: number, until: number): string | null {
  const sets = state.sets.map((set): ShotSet => ({ ...set, shots: set.shots.filter((shot) => shot.seq > from && shot.seq < until) }));
  const kinds = [...new Set(sets.filter((set) => goodShots(set).length > 0).map((set) => set.of))];
  const readings = kinds.flatMap((of) => readingAt(content, state, sets.filter((set) => set.of === of)) ?? []);
  return readings.length === 0 ? null : readings.join('; ');
}

/** What sets of one kind show together, in words; null where they show nothing that moves are decided by. */
export function readingAt(content: Content, state: State, sets: readonly ShotSet[]): string | null {
  const of = sets[0]?.of;
  switch (of) {
    case 'paper': {
      // What came of a change is read where moves are decided: at the first distance.
      const shots = sets.filter((set) => set.distance === FIRST_DISTANCE).flatMap(goodShots);
      return shots.length === 0 ? null : phrase(content, 'history-came', { reading: tearInWords(centreOf(shots, paperSpreadOf(state).sd).mean), shots: shotsInWords(shots.length) });
    }
    case 'broadheads':
    case 'unfletched':
    case 'plumb':
      return impactsAt(content, state, of, sets);
    // Arrows are told from one another: that is nothing of the bow's setting.
    case 'arrows':
    case undefined:
      return null;
  }
}

function impactsAt(content: Content, state: State, of: 'broadheads' | 'unfletched' | 'plumb', sets: readonly ShotSet[]): string | null {
  const readings = readingsOf(state, of, sets).map(({ distance, diff, shots }) =>
    phrase(content, of === 'plumb' ? 'history-drift' : `history-${of}`, { reading: diff, shots: shotsInWords(shots), distance }));
  return readings.length === 0 ? null : readings.join('; ');
}

const shotsInWords = (n: number): string => `${n} ${n === 1 ? 'shot' : 'shots'}`;

/** Which day of the tune this is: calendar days on which something was written. */
export const dayOf = (state: State): number => new Set(state.facts.map((f) => f.time.slice(0, 10))).size;
