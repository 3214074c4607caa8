// Every answer of the tune, oldest first, as it stands after corrections: may it be opened and changed, and if not, why not?

import { partsInWords, type AnsweredFact } from './answered-words.ts';
import { correctable, isWalkChoice } from './correctable.ts';
import type { Content } from '../content/types.ts';
import { effectiveFacts, type State } from './state.ts';
import type { AnswerEntry } from './types.ts';
import { phrase } from './words.ts';

export function answersOf(content: Content, state: State): readonly AnswerEntry[] {
  const open = new Set(state.notes.done ? [] : correctable(content, state).map((fact) => fact.seq));
  return effectiveFacts(state.facts)
    .filter((fact): fact is AnsweredFact => fact.kind === 'answered')
    .map((fact): AnswerEntry => {
      const { question, answer } = partsInWords(content, state, fact, fact.answer);
      return { seq: fact.seq, question: question ?? subjectOf(content, fact), answer, change: open.has(fact.seq) ? true : whyNot(content, state, fact) };
    });
}

/** What an answer is about that tells it by itself. */
function subjectOf(content: Content, { answer, step }: AnsweredFact): string {
  if (answer.kind === 'shots') return phrase(content, 'review-shot');
  if (answer.kind === 'moved') return phrase(content, 'review-move');
  return phrase(content, step === 'finishing-step' ? 'finishing-short' : step === 'leave-or-go-on' ? 'accept-short' : 'review-choice');
}

function whyNot(content: Content, state: State, fact: AnsweredFact): string {
  if (state.notes.done) return phrase(content, 'may-not-at-the-end');
  if (fact.step === 'released' || fact.step === 'what-happened') return phrase(content, 'review-led-out');
  if (fact.answer.kind === 'moved') return phrase(content, fact.decided.loop?.arrowTold === undefined ? 'review-nothing-moved' : 'review-arrow');
  return phrase(content, isWalkChoice(fact) ? 'review-gone-on' : 'review-not-asked');
}
