// Bolts, points and cuts change how stiff a shaft acts. Which way and roughly how much against now is said where it happens, in one
// sentence; which shaft fits is for the shaft maker's chart, and nothing is recommended.

import { boltShift, cutShift, pointShift, POUNDS_A_TURN, type Stiffness } from '../../archery/stiffness.ts';
import type { KnobId } from '../../content/types.ts';
import { formatQuantity } from '../../maths/fractions.ts';
import { grains, inches, turns } from '../../maths/units.ts';
import type { Deciding } from '../deciding.ts';
import { effectiveFacts } from '../state.ts';
import { measured } from '../told.ts';
import type { Answer } from '../types.ts';
import { phrase } from '../words.ts';
import { asRead } from './words.ts';

/** An adjustment that was moved by so much, as told or by hand. */
export function sayShift(d: Deciding, knob: KnobId, delta: number): void {
  if (knob === 'limb-bolts') sayBolts(d, delta);
  else if (knob === 'point-weight') sayPoint(d, 'stiffness-point', delta);
}

/** A part of the arrow that reads otherwise than when it was told before. */
export function sayOtherPart(d: Deciding, step: string, answer: Answer): void {
  const before = d.before.suggestions[step];
  if (before?.kind !== 'number' || answer.kind !== 'number') return;
  const longer = answer.value - before.value;
  if (step === 'point-grains') sayPoint(d, 'stiffness-point', longer);
  else if (step === 'insert-grains') sayPoint(d, 'stiffness-insert', longer);
  else if (step === 'shaft-length' && longer !== 0) sayLength(d, before.value, answer.value);
}

/** Bolts that were counted anew: both by the same, or it is told when they are set alike. */
export function sayCounted(d: Deciding): void {
  const [top, bottom] = (['bolts-top', 'bolts-bottom'] as const).map((step) => turnedOut(d, step));
  if (top !== undefined && top === bottom) sayBolts(d, -top);
}

/** Other arrows, points or lengths, and nobody says by how much. */
export const sayOtherArrows = (d: Deciding): void => d.say('stiffness-arrows');

function sayBolts(d: Deciding, inward: number): void {
  const shift = boltShift(turns(inward));
  if (shift === null) return;
  const size = Math.abs(inward);
  d.say('stiffness-bolts', {
    turns: formatQuantity({ value: size, unit: 'turn' }), way: phrase(d.content, inward > 0 ? 'way-in' : 'way-out'),
    low: asRead(size * POUNDS_A_TURN.low), high: asRead(size * POUNDS_A_TURN.high), less: phrase(d.content, inward > 0 ? 'more-weight' : 'less-weight'),
    ...acts(d, shift),
  });
}

function sayPoint(d: Deciding, id: 'stiffness-point' | 'stiffness-insert', heavier: number): void {
  const shift = pointShift(grains(heavier));
  if (shift === null) return;
  d.say(id, { by: asRead(Math.abs(heavier)), heavier: phrase(d.content, heavier > 0 ? 'way-heavier' : 'way-lighter'), ...acts(d, shift) });
}

function sayLength(d: Deciding, was: number, is: number): void {
  const { steps } = cutShift(inches(Math.max(was, is)), inches(Math.abs(was - is)));
  const shift: Stiffness = { acts: is < was ? 'stiffer' : 'weaker', steps };
  d.say('stiffness-length', { by: formatQuantity({ value: Math.abs(was - is), unit: 'in' }), shorter: phrase(d.content, is < was ? 'way-shorter' : 'way-longer'), ...acts(d, shift) });
}

const acts = (d: Deciding, { acts: way, steps: { high } }: Stiffness): { readonly acts: string; readonly size: string } => ({
  acts: phrase(d.content, `acts-${way}`),
  size: high < 0.5 ? phrase(d.content, 'size-under-half') : high <= 1 ? phrase(d.content, 'size-up-to-one') : phrase(d.content, 'size-up-to-more', { steps: Math.ceil(high) }),
});

// How much farther out than at the count before; undefined where it was not counted twice.
function turnedOut(d: Deciding, step: 'bolts-top' | 'bolts-bottom'): number | undefined {
  const counts = effectiveFacts(d.state.facts).flatMap((fact) => (fact.kind === 'answered' && fact.step === step && fact.answer.kind === 'number' && fact.seq !== d.draft.seq ? [fact.answer.value] : []));
  const now = measured(d.state, step);
  // The other bolt's newest count stands among the lines already; this one's is the line that is being decided.
  const earlier = d.state.answers[step]?.seq === d.draft.seq ? counts.at(-1) : counts.at(-2);
  return now === undefined || earlier === undefined || now === earlier ? undefined : now - earlier;
}
