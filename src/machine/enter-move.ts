// A move that was told and made goes into the ledger, and what it asks for again is asked.

import type { KnobId } from '../content/types.ts';
import type { Deciding } from './deciding.ts';
import { sayShift } from './figures/stiffness-said.ts';
import { isCableWork } from './standing.ts';
import type { MovedAnswer } from './types.ts';

/** `delta` is what was told, signed, in the adjustment's unit; by how much it was really moved stands in the answer. */
export function enterMove(d: Deciding, knob: KnobId, delta: number, kind: 'adjust' | 'put-back', moved: MovedAnswer): void {
  d.add({ loop: { told: { knob, delta, kind }, ...(isCableWork(knob) ? { cablesAt: d.draft.seq } : {}) } });
  d.trigger(d.content.knobs[knob].trigger);
  if (moved !== 'as told') d.say('moved-other');
  if (typeof moved !== 'string') sayShift(d, knob, Math.sign(delta) * moved.value);
  else if (moved === 'as told') sayShift(d, knob, delta);
}
