// What was answered at a step and is in force, as a value of its own kind.

import { asMeasured, type Measure, type MeasureOf } from './measures.ts';
import type { Answered } from './types.ts';

/** The part of the state that answers stand in. */
export interface Told { readonly answers: Readonly<Record<string, Answered>> }

/** The single value of a choice answered at this step; undefined where it was not answered or not known. */
export function chosen(state: Told, step: string): string | undefined {
  const answer = state.answers[step]?.answer;
  return answer?.kind === 'choice' ? answer.values[0] : undefined;
}

/** What was measured at this step, in the step's unit; undefined where it was not answered or not known. */
export function measured<M extends Measure>(state: Told, step: M): MeasureOf<M> | undefined {
  const answer = state.answers[step]?.answer;
  return answer?.kind === 'number' ? asMeasured(step, answer.value) : undefined;
}

/** Whether "not known" is what was answered there. */
export const notKnown = (state: Told, step: string): boolean => state.answers[step]?.answer.kind === 'not known';
