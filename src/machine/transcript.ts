// The conversation so far, in lines: what was answered and what the coach said, as decided at the time.
// Answers are told in the words of their question, never by the names that programs use.

import type { Content } from '../content/types.ts';
import { plainAnswer } from './answer-words.ts';
import { answeredInWords, type AnsweredFact } from './answered-words.ts';
import { pointBefore } from './history.ts';
import type { State } from './state.ts';
import type { Fact, TranscriptEntry } from './types.ts';
import { amountInWords, headlineOf } from './words.ts';

export function transcriptOf(content: Content, state: State): readonly TranscriptEntry[] {
  return state.facts.flatMap((fact) => [...archerSaid(content, state, fact), ...fact.decided.say.map((text): TranscriptEntry => ({ seq: fact.seq, who: 'coach', text }))]);
}

function archerSaid(content: Content, state: State, fact: Fact): readonly TranscriptEntry[] {
  const line = (text: string): readonly TranscriptEntry[] => [{ seq: fact.seq, who: 'archer', text }];
  switch (fact.kind) {
    case 'answered':
      return line(answeredInWords(content, state, fact, fact.answer));
    case 'corrected': {
      const of = state.facts.find((f): f is AnsweredFact => f.seq === fact.of && f.kind === 'answered');
      return line(`corrected: ${of === undefined ? plainAnswer(fact.answer) : answeredInWords(content, state, of, fact.answer)}`);
    }
    case 'stopped':
      return line(fact.words.toLowerCase() === 'stop' ? 'stop' : `stop: ${fact.words}`);
    case 'noted':
      return line(`note: ${fact.note}`);
    case 'moved': {
      const knob = content.knobs[fact.knob];
      return line(`moved: ${headlineOf(knob, fact.delta)} ${amountInWords({ value: Math.abs(fact.delta), unit: knob.unit })}`);
    }
    case 'changed':
      return line(`replaced or changed: ${fact.what}${fact.note === '' ? '' : ` (${fact.note})`}`);
    case 'wanted-back':
      return line(`bring the bow back: ${pointBefore(content, state, fact.to)}`);
    case 'begun':
    case 'resumed':
      return [];
  }
}
