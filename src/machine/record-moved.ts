// Whether a word of the record is about another setting than the one that the bow stands at.

import { knobEntries, type Axis, type Content, type KnobId } from '../content/types.ts';
import { isCableWork } from './standing.ts';
import type { State } from './state.ts';

/**
 * True where something on this axis, on cables or on arrows was changed after the last word that was said about it in this
 * chapter. What broadheads showed is a word of their own.
 */
export function movedSince(content: Content, state: State, axis: Axis, chapter: 'paper' | 'broadheads' = 'paper'): boolean {
  const said = state.facts.findLast((fact) => fact.decided.findings.some((f) => f.kind === 'axis' && f.axis === axis && f.chapter === chapter))?.seq ?? 0;
  const sum: Partial<Record<KnobId, number>> = {};
  for (const { knob, delta, seq } of state.moves) if (seq > said) sum[knob] = (sum[knob] ?? 0) + delta;
  return knobEntries(sum).some(([id, delta]) =>
    Math.abs(delta) > 1e-9 && (content.knobs[id].axis === axis || content.knobs[id].axis === 'none' || isCableWork(id)));
}
