// The conversation so far, in lines: what was answered and what the coach said, as decided at the time.

import type { Content } from '../content/types.ts';
import { answerInWords, shotInWords } from './answer-words.ts';
import { lookUp } from './agenda.ts';
import type { State } from './state.ts';
import type { Answer, Fact, TranscriptEntry } from './types.ts';
import { headlineOf, amountInWords } from './words.ts';

export function transcriptOf(content: Content, state: State): readonly TranscriptEntry[] {
  return state.facts.flatMap((fact) => [...archerSaid(content, fact), ...fact.decided.say.map((text): TranscriptEntry => ({ seq: fact.seq, who: 'coach', text }))]);
}

function archerSaid(content: Content, fact: Fact): readonly TranscriptEntry[] {
  const line = (text: string): readonly TranscriptEntry[] => [{ seq: fact.seq, who: 'archer', text }];
  switch (fact.kind) {
    case 'answered': {
      const pending = lookUp(content, fact.step);
      const words = pending === null ? wordsOf(fact.answer) : `${pending.check?.label ?? pending.step.short}: ${pending.check === undefined ? answerInWords(pending.step, fact.answer) : wordsOf(fact.answer)}`;
      return line(words);
    }
    case 'corrected':
      return line(`corrected line ${fact.of}: ${wordsOf(fact.answer)}`);
    case 'stopped':
      return line(`stop: ${fact.words}`);
    case 'noted':
      return line(`note: ${fact.note}`);
    case 'moved': {
      const knob = content.knobs[fact.knob];
      return line(`moved: ${headlineOf(knob, fact.delta)} ${amountInWords({ value: Math.abs(fact.delta), unit: knob.unit })}`);
    }
    case 'changed':
      return line(`replaced or changed: ${fact.what}${fact.note === '' ? '' : ` (${fact.note})`}`);
    case 'wanted-back':
      return line('put it back');
    case 'begun':
    case 'resumed':
      return [];
  }
}

function wordsOf(answer: Answer): string {
  if (answer.kind === 'shots') return answer.shots.map(shotInWords).join('; ');
  if (answer.kind === 'choice') return answer.values.join(', ');
  if (answer.kind === 'moved') return typeof answer.moved === 'string' ? answer.moved : `moved ${amountInWords(answer.moved)}`;
  return answer.kind === 'not known' ? 'not known' : String(answer.value);
}
