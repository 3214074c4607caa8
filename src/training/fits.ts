// Whether an answer fits what is to be seen at the practice bow.

import type { Answer, Ask } from '../machine/types.ts';
import type { Said } from '../practice/answers.ts';

/** Questions whose answer is the learner's own choice, whatever there is to be seen. */
const OWN_CHOICE: readonly string[] = [
  'use', 'broadheads-wanted', 'broadheads-farther', 'arrows-wanted', 'figures-wanted', 'finishing', 'accept', 'method', 'paper-again', 'turn-the-set',
  'mass-way', 'bow', 'which-bow', 'place', 'look-again', 'sight-last', 'proving-shot', 'bow-name', 'archer-name', 'released', 'what-happened', 'what-was-changed',
];
/** A rule is read to this (in); other figures to a hundredth of what they are. */
const RULE = 1 / 32;
const SHARE = 0.01;

export function fitsWhatIsSeen(ask: Ask, answer: Answer, seen: Said): boolean {
  if (OWN_CHOICE.includes(ask.about)) return true;
  switch (answer.kind) {
    case 'not known': return seen === 'not known';
    case 'choice': return [seen].flat().map(String).toSorted().join() === answer.values.toSorted().join();
    case 'number': return typeof seen === 'number' && Math.abs(answer.value - seen) <= (ask.kind === 'number' && ask.unit === 'in' ? RULE + 1e-9 : Math.abs(seen) * SHARE);
    case 'confirm': return answer.value === (seen === true || seen === 'true');
    case 'text': case 'shots': case 'moved': return true;
  }
}
