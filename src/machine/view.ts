// What is shown, from the state alone: the same for every face.

import { knobEntries, isInspection, type Content } from '../content/types.ts';
import { chapterOf } from './agenda.ts';
import { lookAsk, turnSetAgain } from './arrows/ask.ts';
import { askById, partOf, standingAsk } from './ask.ts';
import { anyCorrectable } from './correctable.ts';
import { lookUp } from './agenda.ts';
import { pictureOf } from './picture.ts';
import { dayOf } from './history.ts';
import { insideAdvice } from './loop/inside-advice.ts';
import { FIRST_DISTANCE } from './loop/sets.ts';
import { onceForBoth } from '../maths/once.ts';
import { distanceOf, isImpact, PLAIN } from './plan.ts';
import { recordOf } from './record.ts';
import { settingsOf, type State } from './state.ts';
import { lastMoveToUndo } from './undo.ts';
import type { Ask, Chapter, Fact, Ledger, View } from './types.ts';
import { phrase } from './words.ts';
import { canPutBackAt, placeOf } from './walk.ts';

/** The view of a state; `correcting` is the answered line that is open for correction, if any. */
export const viewOf = (content: Content, state: State, correcting: number | null = null): View =>
  (correcting === null ? plainView(content, state) : viewWith(content, state, correctingAsk(content, state, correcting)));

/** What was refused leaves the state as it is, and its view with it: of a finished tune that is the whole record. */
const plainView = onceForBoth((content: Content, state: State) => viewWith(content, state, standingAsk(content, state)));

function viewWith(content: Content, state: State, ask: Ask | null): View {
  const place = placeOf(state.walk);
  const last = state.facts.at(-1);
  const chapter = chapterOf(state);
  const picture = pictureOf(content, state);
  return {
    type: place === 'stopped' ? 'stop' : place === 'record' ? 'done' : 'ask',
    seq: last?.seq ?? 0,
    chapter: place === 'stopped' ? 'stopped' : chapter,
    step: ask?.step ?? 'record',
    where: {
      title: titleOf(content, state, chapter),
      part: partOf(content, state), day: dayOf(state), shots: state.shotCount,
    },
    say: last?.decided.say ?? [],
    ask,
    bow: ledgerOf(content, state),
    advice: adviceShown(content, state, ask, place),
    findings: last?.decided.findings ?? [],
    ...(picture === null ? {} : { picture }),
    ...(place === 'record' ? { record: recordOf(content, state) } : {}),
    may: {
      back: place === 'record' ? phrase(content, 'may-not-at-the-end') : anyCorrectable(content, state) ? true : phrase(content, 'may-not-back'),
      putBack: mayPutBack(content, state),
    },
  };
}

function titleOf(content: Content, state: State, chapter: Chapter): string {
  const { of } = state.notes;
  if (chapter === 'paper' && (of === 'unfletched' || of === 'plumb')) return phrase(content, `chapter-${of}`);
  return content.chapters.find((c) => c.id === chapter)?.title ?? phrase(content, 'chapter-record');
}

// An adjustment is shown only where it may be made now: never beside a gate that is to be answered first.
function adviceShown(content: Content, state: State, ask: Ask | null, place: string): View['advice'] {
  // What stands beyond its limit goes back inside, whatever else was to be moved.
  if ((place === 'asking' || place === 'stopped') && ask?.kind === 'amount' && ask.correcting === undefined) return insideAdvice(content, state);
  const { advice } = state;
  if (advice === null) return null;
  const onBow = advice.kind === 'adjust' || advice.kind === 'put-back';
  return !onBow || place.endsWith('.advising') || place.endsWith('.puttingBack') ? advice : null;
}

function mayPutBack(content: Content, state: State): true | string {
  return lastMoveToUndo(state) === null ? phrase(content, 'may-not-put-back-none') : mayBringBack(content, state);
}

/** To any earlier point, also from where the bow stands as it was found. */
export const mayBringBack = (content: Content, state: State): true | string =>
  (canPutBackAt(placeOf(state.walk)) ? true : phrase(content, 'may-not-put-back-now'));

export function ledgerOf(content: Content, state: State): Ledger {
  const settings = settingsOf(state.moves);
  return Object.fromEntries(
    knobEntries(settings).map(([knob, value]) => [knob, { value, unit: content.knobs[knob].unit }]),
  );
}

/** The question of an earlier line, opened again; the standing one where that line cannot be opened. */
export function correctingAsk(content: Content, state: State, seq: number): Ask | null {
  const fact = state.facts.find((f): f is Extract<Fact, { kind: 'answered' }> => f.seq === seq && f.kind === 'answered');
  if (fact === undefined) return standingAsk(content, state);
  const asked = askOfFact(content, state, fact);
  return asked === null ? standingAsk(content, state) : { ...asked, correcting: seq, suggestion: latestAnswer(state, fact) };
}

const latestAnswer = (state: State, fact: Extract<Fact, { kind: 'answered' }>): Extract<Fact, { kind: 'answered' }>['answer'] =>
  state.facts.reduce((answer, f) => (f.kind === 'corrected' && f.of === fact.seq ? f.answer : answer), fact.answer);

type AnsweredFact = Extract<Fact, { kind: 'answered' }>;
interface AskOfFact { readonly step: string; readonly about: string; readonly why: readonly string[]; readonly caution: readonly string[] }

function askOfFact(content: Content, state: State, fact: AnsweredFact): Ask | null {
  // That it is a correction is said by every face in its own place: `ask.correcting`.
  const text: readonly string[] = [];
  const base = { step: fact.step, about: fact.about, why: [phrase(content, 'why-correcting')], caution: [] };
  if (fact.answer.kind === 'shots') return shotAskOfFact(content, state, fact, base);
  if (fact.answer.kind === 'moved') {
    const told = fact.decided.loop?.told;
    if (told === undefined) return null;
    const knob = content.knobs[told.knob];
    return { ...base, kind: 'amount', short: phrase(content, 'correct-move', { knob: knob.name }), text, unit: knob.unit, max: knob.hard * 4 };
  }
  if (lookUp(content, fact.step) !== null) {
    return askById(content, state, fact.step);
  }
  return walkChoiceAsk(content, fact, base);
}

function shotAskOfFact(content: Content, state: State, fact: AnsweredFact, base: AskOfFact): Ask {
  const set = state.sets.find((one) => one.shots.some((shot) => shot.seq === fact.seq));
  const tag = fact.decided.loop?.tags?.[0] ?? PLAIN;
  const of = set?.of ?? 'paper';
  const { shaft, head, arrow, nockTurn } = tag;
  return {
    ...base, kind: isImpact(of) ? 'impact' : 'tear', short: phrase(content, isImpact(of) ? 'correct-impact' : 'correct-shot'), text: [],
    distance: distanceOf(of, tag.distance ?? set?.distance ?? FIRST_DISTANCE), shaft, head, arrow, nockTurn,
    shots: { taken: 0, wanted: fact.answer.kind === 'shots' ? fact.answer.shots.length : 1 },
  };
}

function walkChoiceAsk(content: Content, fact: AnsweredFact, base: AskOfFact): Ask | null {
  const inspected = fact.step.startsWith('inspect-') ? fact.step.slice('inspect-'.length) : '';
  if (isInspection(inspected)) {
    const inspection = content.inspections[inspected];
    return { ...base, kind: 'choice', short: phrase(content, 'inspect-short'), text: inspection.say, options: inspection.options.map((o) => ({ value: o.value, label: o.label })) };
  }
  if (fact.step === 'turn-the-set') return turnSetAgain(content, fact.decided.loop?.arrows?.together?.how);
  if (fact.step === 'look-arrow') {
    const looked = fact.decided.findings.find((one) => one.kind === 'arrow');
    return lookAsk(content, looked?.kind === 'arrow' ? looked.arrow : '');
  }
  const name = fact.step === 'finishing-step' ? 'finishing' : 'accept';
  const options = name === 'finishing'
    ? [{ value: 'leave', label: phrase(content, 'finishing-leave') }, { value: 'one more step', label: phrase(content, 'finishing-step') }]
    : [{ value: 'accept', label: phrase(content, 'accept-leave') }, { value: 'go on', label: phrase(content, 'accept-go-on') }];
  return { ...base, kind: 'choice', short: phrase(content, `${name}-short`), text: [phrase(content, `${name}-text`)], options };
}

