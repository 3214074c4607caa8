// What must be undone to bring the bow back to an earlier point, and in which order: newest first, all moves of one
// adjustment at once.

import { knobEntries, type KnobId } from '../content/types.ts';
import { settingsOf, tidy, UNSEEN, type Move, type State } from './state.ts';

/**
 * The moves to be undone, newest first, as runs of one adjustment each. Moves that come to nothing together (put back
 * already, or moved there and back) ask for no work and make no run.
 */
export function undoRuns(moves: readonly Move[]): readonly (readonly Move[])[] {
  const newestFirst = [...moves].sort((a, b) => b.seq - a.seq);
  const knobs = [...new Set(newestFirst.map((move) => move.knob))];
  return knobs.map((knob) => newestFirst.filter((move) => move.knob === knob)).filter((run) => Math.abs(amountOf(run)) >= UNSEEN);
}

/** What a run of moves has changed together, in the adjustment's unit. */
export const amountOf = (run: readonly Move[]): number => tidy(run.reduce((sum, move) => sum + move.delta, 0));

/** Everything that was moved at this line of the journal or after it. */
export const movesFrom = (state: State, to: number): readonly Move[] => state.moves.filter((move) => move.seq >= to);

/** The bow's settings as they were before this line. */
export const settingsBefore = (state: State, to: number): Partial<Record<KnobId, number>> => settingsOf(state.moves.filter((move) => move.seq < to));

export function sameSettings(a: Readonly<Partial<Record<KnobId, number>>>, b: Readonly<Partial<Record<KnobId, number>>>): boolean {
  return [...knobEntries(a), ...knobEntries(b)].every(([knob]) => Math.abs((a[knob] ?? 0) - (b[knob] ?? 0)) < UNSEEN);
}

/**
 * The line from which on to undo, for "put the last change back"; null where the bow stands as it was found. A put-back
 * (or a move by hand) that came to an earlier point leads on from that point: it is not itself put back.
 */
export function lastMoveToUndo(state: State): number | null {
  const found = {};
  const points: { readonly to: number; readonly settings: Readonly<Partial<Record<KnobId, number>>> }[] = [];
  const made: Move[] = [];
  for (const move of state.moves) {
    made.push(move);
    const settings = settingsOf(made);
    const before = move.why === 'advice' ? -1 : points.findIndex((point) => sameSettings(point.settings, settings));
    if (before >= 0) points.splice(before + 1);
    else if (move.why !== 'advice' && sameSettings(found, settings)) points.splice(0);
    else points.push({ to: move.seq, settings });
  }
  return sameSettings(found, settingsOf(state.moves)) ? null : (points.at(-1)?.to ?? null);
}
