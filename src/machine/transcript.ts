// The conversation so far, in lines: what was answered and what the coach said, as decided at the time.
// Answers are told in the words of their question, never by the names that programs use.

import type { Content } from '../content/types.ts';
import { answerInWords, plainAnswer } from './answer-words.ts';
import { lookUp } from './agenda.ts';
import { vanesInWords } from './arrows/words.ts';
import type { State } from './state.ts';
import type { Answer, Fact, TranscriptEntry } from './types.ts';
import { amountInWords, headlineOf, phrase } from './words.ts';

type AnsweredFact = Extract<Fact, { kind: 'answered' }>;

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
      return line('put it back');
    case 'begun':
    case 'resumed':
      return [];
  }
}

/** `question: answer`, or the answer alone where the question is a shot or a move. */
function answeredInWords(content: Content, state: State, fact: AnsweredFact, answer: Answer): string {
  if (answer.kind === 'moved') return moveInWords(content, fact, answer);
  const pending = lookUp(content, fact.step);
  if (pending === null) return choiceOfWalk(content, fact.step, answer) ?? plainAnswer(answer);
  const { step, check } = pending;
  if (check !== undefined) return `${check.label}: ${checkInWords(content, answer)}`;
  if (step.kind === 'chunk' && answer.kind === 'choice') return `${step.short}: ${picksInWords(content, step.checks, answer.values)}`;
  if (fact.step === 'bow' && answer.kind === 'choice') {
    const begun = state.facts[0];
    const known = begun?.kind === 'begun' ? begun.known.find((bow) => bow.from === answer.values[0]) : undefined;
    if (known !== undefined) return `${step.short}: ${known.bow}`;
  }
  return `${step.short}: ${answerInWords(step, answer)}`;
}

// What was moved, not only that it was done "as told": the advice itself is not in this line.
function moveInWords(content: Content, fact: AnsweredFact, answer: Extract<Answer, { kind: 'moved' }>): string {
  const nock = fact.decided.loop?.arrowTold;
  if (nock !== undefined) return phrase(content, nock.knob === 'nock-swap' ? 'arrow-told-swap' : 'arrow-told-turn', { arrow: nock.arrow, vanes: vanesInWords(nock.by) });
  const told = fact.decided.loop?.told;
  const { moved } = answer;
  if (told === undefined || moved === 'not now' || moved === 'another') return plainAnswer(answer);
  const knob = content.knobs[told.knob];
  const delta = moved === 'as told' ? told.delta : Math.sign(told.delta) * moved.value;
  const words = `${headlineOf(knob, delta)} ${amountInWords({ value: Math.abs(delta), unit: knob.unit })}`;
  return moved === 'as told' ? `moved as told: ${words}` : `moved: ${words}`;
}

function checkInWords(content: Content, answer: Answer): string {
  if (answer.kind !== 'choice') return plainAnswer(answer);
  return phrase(content, answer.values[0] === 'true' ? 'check-true' : 'check-false');
}

// What is picked of a list of checks is what does not hold: a label alone would say the opposite.
function picksInWords(content: Content, checks: readonly { readonly id: string; readonly label: string }[], values: readonly string[]): string {
  const picked = checks.filter((check) => values.includes(check.id)).map((check) => check.label);
  return picked.length === 0 ? phrase(content, 'all-true') : phrase(content, 'picked-untrue', { picked: picked.join('; ') });
}

/** The options of the walk's own choices, by the step that asks. */
function choiceOfWalk(content: Content, step: string, answer: Answer): string | null {
  if (answer.kind !== 'choice') return null;
  const value = answer.values[0] ?? '';
  if (step.startsWith('inspect-')) {
    const inspection = Object.values(content.inspections).find(({ id }) => `inspect-${id}` === step);
    const label = inspection?.options.find((option) => option.value === value)?.label;
    return label === undefined ? null : `${phrase(content, 'inspect-short')}: ${label}`;
  }
  if (step === 'look-arrow') return phrase(content, `arrow-look-${value}`);
  const id = WALK_CHOICES[value];
  return id === undefined ? null : phrase(content, id);
}

const WALK_CHOICES: Readonly<Record<string, string>> = {
  'leave': 'finishing-leave', 'one more step': 'finishing-step', 'accept': 'accept-leave', 'go on': 'accept-go-on',
};
