// What is on record of a bow that is to be compared with its record: nobody should have to look it up.

import type { Content } from '../content/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { measuresNow } from './reading-now.ts';
import type { State } from './state.ts';
import { phrase } from './words.ts';

/** The question that asks for the comparison. */
export const AS_RECORDED = 'as-recorded';
const FIGURES = ['axle-to-axle', 'brace-height', 'nock-height', 'centre-shot', 'bolts-top', 'bolts-bottom'] as const;

/** One sentence with each figure by its name, as the bow stands after what was moved since; none where nothing was measured. */
export function recordedFigures(content: Content, state: State): readonly string[] {
  const now = measuresNow(state);
  const known = FIGURES.flatMap((id) => {
    const [step, answer] = [content.steps[id], now[id] ?? state.answers[id]?.answer];
    return step?.kind !== 'number' || answer?.kind !== 'number' ? [] : [`${step.short}: ${formatQuantity({ value: answer.value, unit: step.unit })}`];
  });
  return known.length === 0 ? [] : [phrase(content, 'recorded-figures', { figures: known.join('; ') })];
}
