// An answer with its question, both in plain words: for the conversation and for the review of answers.

import { namesOf, oneOf } from '../maths/closed.ts';
import { yardsIn } from '../maths/units.ts';
import type { Content } from '../content/types.ts';
import { answerInWords, impactInWords, plainAnswer, shotInWords } from './answer-words.ts';
import { lookUp } from './agenda.ts';
import { vanesInWords } from './arrows/words.ts';
import { labelOfBow } from './known-bow.ts';
import type { State } from './state.ts';
import { isNotMoved, type Answer, type Fact } from './types.ts';
import { amountInWords, headlineOf, phrase } from './words.ts';

export type AnsweredFact = Extract<Fact, { kind: 'answered' }>;

interface InWords {
  /** Null where the answer tells by itself what it is about: a shot, a move, a choice of the walk. */
  readonly question: string | null;
  readonly answer: string;
}

/** `question: answer`, or the answer alone where it needs no question. */
export function answeredInWords(content: Content, state: State, fact: AnsweredFact, answer: Answer): string {
  const said = partsInWords(content, state, fact, answer);
  return said.question === null ? said.answer : `${said.question}: ${said.answer}`;
}

export function partsInWords(content: Content, state: State, fact: AnsweredFact, answer: Answer): InWords {
  if (answer.kind === 'moved') return { question: null, answer: moveInWords(content, fact, answer) };
  if (answer.kind === 'shots') return { question: null, answer: shotsInWords(content, fact, answer) };
  const pending = lookUp(content, fact.step);
  if (pending === null) return choiceOfWalk(content, fact.step, answer) ?? { question: null, answer: plainAnswer(answer) };
  const { step, check } = pending;
  if (check !== undefined) return { question: check.label, answer: checkInWords(content, answer) };
  if (step.kind === 'chunk' && answer.kind === 'choice') return { question: step.short, answer: picksInWords(content, step.checks, answer.values) };
  const bow = (fact.step === 'bow' || fact.step === 'which-bow') && answer.kind === 'choice' ? labelOfBow(state, answer.values[0]) : null;
  return { question: step.short, answer: bow ?? answerInWords(step, answer) };
}

// What each shot was shot with, where that is what tells it from the others.
function shotsInWords(content: Content, fact: AnsweredFact, { shots }: Extract<Answer, { kind: 'shots' }>): string {
  return shots.map((shot, i) => {
    const tag = fact.decided.loop?.tags?.[i];
    if (tag !== undefined && tag.arrow !== null) return `${phrase(content, 'arrow-one', { arrow: tag.arrow })}: ${shotInWords(shot)}`;
    if (tag === undefined || fact.about !== 'impact') return shotInWords(shot);
    if (tag.distance !== undefined) return `${phrase(content, 'from-yards', { distance: yardsIn(tag.distance) })}: ${impactInWords(shot)}`;
    const kind = tag.head === 'broadhead' ? 'broadhead' : tag.shaft === 'unfletched' ? 'unfletched' : null;
    return kind === null ? impactInWords(shot) : `${phrase(content, `what-${kind}`)}: ${impactInWords(shot)}`;
  }).join('; ');
}

// What was moved, not only that it was done "as told": the advice itself is not in this line.
function moveInWords(content: Content, fact: AnsweredFact, answer: Extract<Answer, { kind: 'moved' }>): string {
  const nock = fact.decided.loop?.arrowTold;
  if (nock !== undefined) return phrase(content, nock.knob === 'nock-swap' ? 'arrow-told-swap' : 'arrow-told-turn', { arrow: nock.arrow, vanes: vanesInWords(nock.by) });
  const told = fact.decided.loop?.told;
  const { moved } = answer;
  if (told === undefined || isNotMoved(moved)) return plainAnswer(answer);
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
function choiceOfWalk(content: Content, step: string, answer: Answer): InWords | null {
  if (answer.kind !== 'choice') return null;
  const value = answer.values[0] ?? '';
  if (step.startsWith('inspect-')) {
    const inspection = Object.values(content.inspections).find(({ id }) => `inspect-${id}` === step);
    const label = inspection?.options.find((option) => option.value === value)?.label;
    return label === undefined ? null : { question: phrase(content, 'inspect-short'), answer: label };
  }
  if (step === 'turn-the-set') return { question: phrase(content, 'set-turn-again-short'), answer: phrase(content, `set-turn-${value.replace(' ', '-')}`) };
  if (step === 'look-arrow') return { question: null, answer: phrase(content, `arrow-look-${value}`) };
  return isWalkChoice(value) ? { question: null, answer: phrase(content, WALK_CHOICES[value]) } : null;
}

const WALK_CHOICES = {
  'leave': 'finishing-leave', 'one more step': 'finishing-step', 'accept': 'accept-leave', 'go on': 'accept-go-on',
} as const;
const isWalkChoice = oneOf(namesOf(WALK_CHOICES));
