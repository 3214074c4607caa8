// What the tape would read now, reckoned from the last measure and what was moved after it.

import { knobEntries, type KnobId } from '../content/types.ts';
import { chosen, measured } from './guards.ts';
import { tidy, type State } from './state.ts';
import type { Answer } from './types.ts';

/** The measure that shows a knob's setting on the tape. */
const MEASURE_OF: Partial<Record<KnobId, 'centre-shot' | 'nock-height'>> = { 'rest-side': 'centre-shot', 'nock-height': 'nock-height' };

/** What the tape should read now, inches, from the last measure and the moves after it; null where that is not known. */
export function readingNow(state: State, knob: KnobId): number | null {
  const step = MEASURE_OF[knob] ?? null;
  const read = step === null ? undefined : measured(state, step);
  if (step === null || read === undefined) return null;
  const since = state.answers[step]?.seq ?? 0;
  const moved = state.moves.filter((m) => m.knob === knob && m.seq > since).reduce((sum, m) => sum + m.delta, 0);
  // Centre shot is measured from the riser, which stands right of the arrow for a right-handed archer.
  return tidy(knob === 'rest-side' && chosen(state, 'hand') !== 'left' ? read - moved : read + moved);
}

/** The measures as the bow stands: one that was taken before a move has the move in it. */
export function measuresNow(state: State): Readonly<Record<string, Answer>> {
  return Object.fromEntries(knobEntries(MEASURE_OF).flatMap(([knob, step]) => {
    const value = readingNow(state, knob);
    return value === null ? [] : [[step, { kind: 'number', value }]];
  }));
}
