// Something stands beyond its hard limit: that is told at once, holds everything that draws, shoots or moves something else, and
// ends when the adjustment was really brought back inside. Its shots, where there are any, are shot anew.

import { judgeAnew } from './after-happening.ts';
import { putBackDone } from './bring-back.ts';
import type { Deciding } from './deciding.ts';
import { enterMove } from './enter-move.ts';
import { gaugeOf } from './loop/gauge.ts';
import { beyondInWords, insideAdvice } from './loop/inside-advice.ts';
import { standsOver } from './loop/inside.ts';
import { voided } from './standing.ts';
import { bowKnobOf, isNotMoved, type KnobId, type MovedAnswer } from './types.ts';
import { placeOf } from './walk.ts';

/** Said once, when an adjustment comes to stand there: by an advice answered with another amount, by hand, or by a correction. */
export function tellOver(d: Deciding): void {
  const over = standsOver(d.content, d.state);
  const was = standsOver(d.content, d.before);
  if (over === null || (was?.knob === over.knob && was.from === over.from)) return;
  d.add({ say: [beyondInWords(d.content, over.knob)] });
}

/** True where the answered move is that put-back: nothing else is moved while the walk is interrupted. */
export function broughtInside(d: Deciding, moved: MovedAnswer): boolean {
  const place = placeOf(d.before.walk);
  if (place !== 'asking' && place !== 'stopped') return false;
  const advice = insideAdvice(d.content, d.before);
  const id = bowKnobOf(advice);
  if (advice === null || id === null) return false;
  if (isNotMoved(moved)) { d.say('bring-inside-stands'); return true; }
  const amount = advice.amount?.value ?? 0;
  const knob = d.content.knobs[id];
  enterMove(d, id, advice.direction === knob.plus ? amount : -amount, 'put-back', moved);
  setAnew(d, id);
  return true;
}

function setAnew(d: Deciding, knob: KnobId): void {
  const { undo } = d.state.notes;
  if (undo.length === 0) return judgeAnew(d, voided(d.content, d.state, knob), false);
  // It was to go back to where it may not stand: it stays at its limit, and the others go back as they were to.
  const left = undo.filter((seq) => d.state.moves.some((move) => move.seq === seq && move.knob !== knob));
  d.add({ advice: null, loop: { undo: left, undoing: [], newSet: true, purpose: 'prove', wanted: gaugeOf(d.state).first, ...voided(d.content, d.state, knob) } });
  if (left.length === 0) putBackDone(d);
}
