// The same tune seen in a mirror: left is right, whatever is told to the side has the other sign, and up and down stays.

import { bowKnobOf, type Advice, type View } from '../../src/machine/types.ts';
import { TestArcher } from '../tunes/archer.ts';
import { shippedContent } from '../tunes/play.ts';

const content = shippedContent();
const SIDEWAYS = Object.entries(content.knobs).flatMap(([id, { axis }]) => (axis === 'side' ? [id] : []));

const SWAPPED: Readonly<Record<string, string>> = {
  'right': 'left', 'left': 'right', 'RIGHT': 'LEFT', 'LEFT': 'RIGHT', 'leans-left': 'leans-right', 'leans-right': 'leans-left',
};
/** The same of a word that names no side. */
export const otherSide = (word: string): string => SWAPPED[word] ?? word;
export const mirroredWords = (text: string): string => text.replace(/\b(left|right|LEFT|RIGHT)\b/g, otherSide);
/** "between a and b" names the end that lies farther left first: in a mirror that is the other one. */
export const bothEnds = (text: string): string =>
  text.replace(/between (.+?) and (.+?)(?=[;.](?: |$))/g, (_all, a: string, b: string) => `between ${[a, b].toSorted().join(' and ')}`);
const maybe = (text: string | undefined): string | undefined => (text === undefined ? undefined : mirroredWords(text));
const flip = (value: number): number => 0 - value;

/** The answer of a mirrored archer to the same question. */
export function mirroredAnswer(about: string, answer: unknown): unknown {
  if (typeof answer === 'object' && answer !== null && 'x' in answer) return { ...answer, x: flip(Number(answer.x)) };
  return (about === 'hand' || about === 'lean') && typeof answer === 'string' ? otherSide(answer) : answer;
}

export function mirroredAdvice(advice: Advice | null): unknown {
  if (advice === null) return null;
  const knob = bowKnobOf(advice);
  const sideways = knob !== null && content.knobs[knob].axis === 'side';
  return {
    ...advice,
    ...(sideways ? { direction: SWAPPED[advice.direction ?? ''], to: { ...advice.to, value: flip(advice.to?.value ?? NaN) } } : {}),
    ...(advice.expect === undefined ? {} : { expect: { ...advice.expect, x: flip(advice.expect.x) } }),
    what: mirroredWords(advice.what), why: mirroredWords(advice.why), undo: maybe(advice.undo), wrongIf: maybe(advice.wrongIf),
  };
}

/** The same fields as a mirrored one has, also those that are not there. */
export const plainAdvice = (advice: Advice | null): unknown => (advice === null ? null : { ...advice, undo: advice.undo, wrongIf: advice.wrongIf });

export const mirroredLedger = (bow: View['bow']): View['bow'] =>
  Object.fromEntries(Object.entries(bow).map(([knob, at]) => [knob, SIDEWAYS.includes(knob) ? { ...at, value: flip(at.value) } : at]));

/** Shoots the mirrored bow with the same luck, and stands on the other side of it. */
export class MirroredArcher extends TestArcher {
  override answer(view: Parameters<TestArcher['answer']>[0]): unknown {
    return mirroredAnswer(view.ask?.about ?? '', super.answer({ ...view, bow: mirroredLedger(view.bow) }));
  }
}
