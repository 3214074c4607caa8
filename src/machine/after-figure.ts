// What follows from a figure that is taken again: other arrows are looked at before one is drawn, and bolts that were turned
// are counted and their locks looked at. A figure that was only misread asks for none of it.

import type { Step, Trigger } from '../content/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { judgeAsAnother } from './after-happening.ts';
import { asAnotherBow } from './after-release.ts';
import type { Deciding } from './deciding.ts';
import { sayCounted, sayOtherArrows } from './figures/stiffness-said.ts';
import type { State } from './state.ts';
import { asksFor } from './stops.ts';
import type { Answer } from './types.ts';

/** Asked before the next draw once shaft or arrow mass have failed: what makes the next figure another one? */
export const WHAT_WAS_CHANGED = 'what-was-changed';

const COUNTS: readonly string[] = ['bolts-top', 'bolts-bottom'];

export function otherwiseNow(d: Deciding, what: string): void {
  if (what === 'arrows') otherArrows(d);
  else if (what === 'bolts') boltsTurned(d, []);
  else if (what === 'other') {
    d.trigger('part-replaced', notYet(d, 'part-replaced'));
    asAnotherBow(d);
  }
}

/** Bolts that read otherwise than when they were last counted were turned; so, it seems, was a bow that has become lighter. */
export function takenAgain(d: Deciding, step: string, answer: Answer): void {
  const last = d.before.answers[step];
  if (last === undefined) return;
  if (COUNTS.includes(step) && figureOf(last.answer) !== figureOf(answer)) {
    if (!lookedAtSince(d.state, 'after-bolts', last.seq)) boltsTurned(d, COUNTS);
    // Where they were told to be moved, it was said then.
    if (!movedSince(d.state, last.seq)) sayCounted(d);
  }
  const lighter = step === 'peak-weight' && (figureOf(answer) ?? Infinity) < (figureOf(last.answer) ?? 0);
  if (lighter && asksFor(d.before.stop, step) && !lookedAtSince(d.state, 'bolts-top', last.seq)) d.add({ due: COUNTS });
}

/** Further apart than this (in) two readings of a length are no slip of the tape (common practice). */
const LENGTH_OFF = 1 / 8;

/** A length of the bow that came out otherwise, though no bolt was turned and no part is another one: counted twists say why. */
export function lengthTakenAgain(d: Deciding, step: string, answer: Answer): void {
  const last = d.before.answers[step];
  const [was, is] = [last === undefined ? null : figureOf(last.answer), figureOf(answer)];
  if ((step !== 'axle-to-axle' && step !== 'brace-height') || last === undefined || was === null || is === null || Math.abs(is - was) <= LENGTH_OFF + 1e-9) return;
  const since = d.before.facts.filter(({ seq }) => seq > last.seq);
  if (movedSince(d.state, last.seq) || since.some((fact) => fact.kind === 'changed' || (fact.kind === 'answered' && COUNTS.includes(fact.step)))) return;
  d.say('length-otherwise', { length: d.content.steps[step]?.short ?? step, was: formatQuantity({ value: was, unit: 'in' }), is: formatQuantity({ value: is, unit: 'in' }) });
}

// A count that nobody knew was taken by turning them.
const figureOf = (answer: Answer): number | null => (answer.kind === 'number' ? answer.value : null);

const movedSince = ({ moves }: State, seq: number): boolean => moves.some((move) => move.knob === 'limb-bolts' && move.seq > seq);

const lookedAtSince = ({ due, answers }: State, id: string, seq: number): boolean => due.includes(id) || (answers[id]?.seq ?? 0) > seq;

// As for arrows that were told to be others. One that was just weighed is not weighed again.
function otherArrows(d: Deciding): void {
  const failedAt = d.before.facts.findLast((fact) => fact.decided.due?.includes(WHAT_WAS_CHANGED))?.seq ?? 0;
  const weighed = (d.state.answers['arrow-mass']?.seq ?? 0) > failedAt;
  d.trigger('arrow-changed', weighed ? ['arrow-mass'] : []);
  if (d.state.shotCount > 0) d.say('changed', { what: 'arrow' });
  sayOtherArrows(d);
  asAnotherBow(d);
}

function boltsTurned(d: Deciding, without: readonly string[]): void {
  d.trigger('limb-bolts', [...without, ...notYet(d, 'limb-bolts')]);
  shotOtherwise(d);
}

// What was never measured on this bow is measured in its own place, and a bow that was not drawn yet has its first draw before it.
function notYet({ content: { steps, rechecks }, state: { answers } }: Deciding, trigger: Trigger): readonly string[] {
  const drawn = answers['first-draw'] !== undefined || answers['peak-weight'] !== undefined;
  const early = (step: Step): boolean => (step.onDemand && step.effect === 'gate' ? step.pause !== 'undrawn' && !drawn : answers[step.id] === undefined);
  return rechecks[trigger].filter((id) => steps[id] !== undefined && early(steps[id]));
}

// Old shots were of another draw weight, or of a bow set otherwise: they are not compared with new ones.
function shotOtherwise(d: Deciding): void {
  if (d.state.shotCount === 0) return;
  d.say('set-otherwise');
  judgeAsAnother(d, { inspection: null, offered: null });
}
