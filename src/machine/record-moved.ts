// Whether a word of the record is about another setting than the one that the bow stands at.

import { knobEntries, type Axis, type Content, type KnobId } from '../content/types.ts';
import { lastWord } from './loop/results.ts';
import { isCableWork } from './standing.ts';
import type { State } from './state.ts';

/**
 * True where something on this axis, on cables or on arrows was changed after the last word that was said about it in this
 * chapter; of a word that it is tuned, where anything was, for any adjustment may move the tail both ways. What broadheads
 * showed is a word of their own.
 */
export function movedSince(content: Content, state: State, axis: Axis, chapter: 'paper' | 'broadheads' = 'paper'): boolean {
  const said = lastWord(state, axis, chapter);
  const tuned = said?.result === 'tuned';
  const sum: Partial<Record<KnobId, number>> = {};
  for (const { knob, delta, seq } of state.moves) if (seq > (said?.seq ?? 0)) sum[knob] = (sum[knob] ?? 0) + delta;
  return knobEntries(sum).some(([id, delta]) =>
    Math.abs(delta) > 1e-9 && (tuned || content.knobs[id].axis === axis || content.knobs[id].axis === 'none' || isCableWork(id)));
}
