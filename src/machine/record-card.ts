// The card of the bow record: archer, bow, arrows and measures, as told and as measured, each with what it was before.

import type { Content } from '../content/types.ts';
import { answerInWords } from './answer-words.ts';
import { oneFailed } from './arrow-fails.ts';
import { arrowMass } from './figures/arrow-mass.ts';
import { isFigure } from './figures/list.ts';
import { addedUpMass, arrowFigureRows, bowFigureRows, massRows, notByNumber } from './figures/rows.ts';
import { chosen, holds } from './guards.ts';
import { pickedBow } from './known-bow.ts';
import { once } from '../maths/once.ts';
import { effectiveFacts, type State } from './state.ts';
import type { Answer, Fact, RecordRow } from './types.ts';
import { phrase } from './words.ts';

const ARCHER = ['archer-name', 'hand', 'release', 'growing', 'use'];
const BOW = [
  'bow-name', 'cams', 'rest', 'rest-scale', 'press', 'rated-weight', 'peak-weight', 'scale-error', 'bolts-top', 'bolts-bottom', 'bolt-limit',
  'axle-to-axle', 'brace-height', 'nock-height', 'centre-shot', 'centre-shot-figure',
];
const ARROWS = ['arrow-count', 'arrows-flexed', 'arrows-set-aside', 'arrow-mass', 'shaft-ahead'];
const LOOKED_AT = ['history', 'limbs', 'axle-clips', 'contact', 'grip', 'face', 'lean', 'cam-range'];

export const archerRows = (content: Content, state: State): readonly RecordRow[] => rowsOf(content, state, ARCHER);
export const bowRows = (content: Content, state: State): readonly RecordRow[] => [...rowsOf(content, state, BOW), ...bowFigureRows(content, state)];
export const lookedAtRows = (content: Content, state: State): readonly RecordRow[] => rowsOf(content, state, LOOKED_AT);

export function arrowRows(content: Content, state: State): readonly RecordRow[] {
  return [...rowsOf(content, state, ARROWS), ...massRows(content, state), ...arrowFigureRows(content, state)];
}

function rowsOf(content: Content, state: State, ids: readonly string[]): readonly RecordRow[] {
  return ids.flatMap((id) => {
    const value = inForce(content, state, id);
    return value === null ? [] : [{ name: phrase(content, `card-${id}`), value }];
  });
}

/** The answer in force in words, with its first one where that was another, and where it was told if not in this tune. */
function inForce(content: Content, state: State, id: string): string | null {
  const step = content.steps[id];
  const answered = state.answers[id];
  if (step === undefined || answered === undefined) return null;
  if (id === 'arrow-mass' && arrowMass(state)?.by === 'parts') return addedUpMass(content, state);
  const words = (answer: Answer): string => {
    const said = answerInWords(step, answer);
    // Of the set as it was nobody may read "all silent" where one failed.
    const all = id === 'arrows-flexed' && answer.kind === 'choice' && answer.values[0] === 'all';
    return all && oneFailed(state) ? phrase(content, 'record-flexed-kept', { value: said }) : said;
  };
  const now = words(answered.answer);
  const from = pickedBow(state)?.carried ?? null;
  const first = firstAnswers(state.facts).get(id);
  if (step.kind === 'text') return answered.answer.kind === 'text' ? now : null;
  if (first === undefined && from !== null) return phrase(content, 'record-carried', { value: now, tune: from.from });
  if (first === undefined || words(first) === now || step.effect === 'chosen') return now;
  return phrase(content, 'record-was', { value: now, date: answered.time.slice(0, 10), was: words(first) });
}

/** What was answered first at each step in this very tune, corrections in their place. */
const firstAnswers = once((facts: readonly Fact[]): ReadonlyMap<string, Answer> =>
  new Map(effectiveFacts(facts).flatMap((fact): readonly [string, Answer][] => (fact.kind === 'answered' ? [[fact.step, fact.answer]] : [])).reverse()));

/** Things asked for and not known, or never looked at: they are listed, so that nobody takes them for checked. */
export function notCheckedRows(content: Content, state: State): readonly RecordRow[] {
  const unknown = Object.entries(state.answers)
    // A figure for the card that nobody knows is named among what was not told by number.
    .filter(([id, { answer }]) => answer.kind === 'not known' && !isFigure(id))
    .flatMap(([id]) => (content.steps[id] === undefined ? [] : [unknownInWords(content, state, id)]));
  const told: readonly (readonly [string, string, string])[] = [
    ['contact', 'unknown', 'contact'], ['lean', 'not-seen', 'lean'], ['cams', 'unknown', 'cams'], ['rest', 'unknown', 'rest'],
  ];
  const fingers = chosen(state, 'release') === 'fingers';
  const sight = state.answers['sight-last']?.answer;
  const never = [
    ...(!fingers && holds(state, ['no-paper']) ? ['paper'] : []),
    ...(holds(state, ['unfletched']) && chosen(state, 'contact') === undefined ? ['vanes'] : []),
    ...(holds(state, ['plumb-line']) ? ['up-and-down'] : []),
    ...(!fingers && holds(state, ['paper']) && state.notes.secondDistance === null ? ['second'] : []),
    ...(!fingers && !state.sets.some((set) => set.purpose === 'tightened' && set.shots.length > 0) ? ['after-tightening'] : []),
    ...(sight === undefined || (sight.kind === 'confirm' && !sight.value) ? ['sight'] : []),
    ...(Object.keys(state.notes.broadAxis).length === 0 && !['target', 'three-d'].includes(chosen(state, 'use') ?? '') ? ['broadheads'] : []),
    ...(Object.keys(state.notes.arrows.classes).length === 0 ? ['each-arrow'] : []),
  ];
  const ids = [...told.filter(([step, value]) => chosen(state, step) === value).map(([, , id]) => id), ...never];
  const byNumber = phrase(content, 'not-checked-by-number', { what: notByNumber(content, state) });
  return [...unknown, ...ids.map((id) => phrase(content, `not-checked-${id}`)), byNumber].map((value, i) => ({ name: `${i + 1}`, value }));
}

const unknownInWords = (content: Content, state: State, id: string): string =>
  (id === 'arrow-mass' && arrowMass(state) !== null ? phrase(content, 'not-checked-scale') : phrase(content, 'not-checked-unknown', { what: label(content, id) }));

const label = (content: Content, id: string): string =>
  (content.phrases[`card-${id}`] !== undefined ? phrase(content, `card-${id}`) : (content.steps[id]?.short ?? id));
