// Which answers can be opened again, newest first.

import { lookUp } from './agenda.ts';
import type { Content } from '../content/types.ts';
import type { State } from './state.ts';
import { isNotMoved, type Fact } from './types.ts';

type AnsweredFact = Extract<Fact, { kind: 'answered' }>;

const WALK_CHOICES = ['finishing-step', 'leave-or-go-on', 'look-arrow', 'turn-the-set'];

/** An answer that chose the way of the walk itself; it is taken back whole, or not at all. */
export const isWalkChoice = (fact: AnsweredFact): boolean => WALK_CHOICES.includes(fact.step) || fact.step.startsWith('inspect-');

/**
 * Answers that can be corrected, newest first. A choice of the walk only while nothing but notes came after it, for all
 * that follows from it is taken back with it; what led out of a stop never: that happened.
 */
export function correctable(content: Content, state: State): readonly AnsweredFact[] {
  const may = mayBeCorrected(content, state);
  return state.facts.filter(may).reverse();
}

/** Whether there is any, without looking through all of them. */
export const anyCorrectable = (content: Content, state: State): boolean => state.facts.findLast(mayBeCorrected(content, state)) !== undefined;

function mayBeCorrected(content: Content, state: State): (fact: Fact) => fact is AnsweredFact {
  const newest = state.facts.findLast((f) => f.kind !== 'noted');
  const last = newest?.kind === 'corrected' ? newest.of : newest?.seq;
  return (f): f is AnsweredFact => {
    if (f.kind !== 'answered' || f.step === 'released' || f.step === 'what-happened') return false;
    // A nock that was turned otherwise than told is turned as told: what was done to an arrow is no setting of the bow.
    if (f.answer.kind === 'moved') return f.decided.loop?.told !== undefined && !isNotMoved(f.answer.moved);
    if (isWalkChoice(f)) return f.seq === last;
    return f.answer.kind === 'shots' || lookUp(content, f.step) !== null;
  };
}
