// The bow record as data: what was measured, what was moved, what came of it, what was not checked.
// It says "tuned" only where the shots did, and "left as it is" where the archer decided so.

import { carriedPrior } from '../archery/spread.ts';
import type { Axis, Content, KnobId } from '../content/types.ts';
import { lookUp } from './agenda.ts';
import { answerInWords } from './answer-words.ts';
import { chosen } from './guards.ts';
import { dayOf, historyOf } from './history.ts';
import { centreOf, spreadOf } from './loop/evidence.ts';
import { FIRST_DISTANCE, SECOND_DISTANCE, shotsHere } from './loop/sets.ts';
import { settingsOf, type State } from './state.ts';
import type { BowRecord, Carried } from './types.ts';
import { amountInWords, directionOf, phrase, tearInWords } from './words.ts';

interface Row { readonly name: string; readonly value: string }

export function recordOf(content: Content, state: State): BowRecord {
  const begun = state.facts[0];
  const date = state.facts.at(-1)?.time.slice(0, 10) ?? '';
  const sections = [
    { title: phrase(content, 'record-result'), rows: resultRows(content, state) },
    { title: phrase(content, 'record-settings'), rows: settingRows(content, state) },
    { title: phrase(content, 'record-learned'), rows: learnedRows(content, state) },
    { title: phrase(content, 'record-baseline'), rows: baselineRows(content, state) },
    { title: phrase(content, 'record-changes'), rows: historyOf(content, state).map((h) => ({ name: `line ${h.seq}`, value: h.came === undefined ? h.what : `${h.what}: ${h.came}` })) },
    { title: phrase(content, 'record-shop'), rows: state.notes.shop.map((value, i) => ({ name: `${i + 1}`, value })) },
    { title: phrase(content, 'record-noticed'), rows: noticedRows(state) },
    { title: phrase(content, 'record-not-checked'), rows: notCheckedRows(content, state) },
    { title: phrase(content, 'record-next'), rows: [{ name: phrase(content, 'record-look-again'), value: phrase(content, 'look-again-when') }] },
  ].filter((section) => section.rows.length > 0);
  const tune = begun?.kind === 'begun' ? begun.tune : '';
  return { title: phrase(content, 'record-title', { tune, date }), sections };
}

function resultRows(content: Content, state: State): readonly Row[] {
  if (chosen(state, 'release') === 'fingers') return [{ name: phrase(content, 'record-result'), value: phrase(content, 'record-fingers') }];
  const rows = (['height', 'side'] as const).map((axis): Row => ({ name: phrase(content, `axis-${axis}`), value: axisInWords(content, state, axis) }));
  const shots = shotsHere(state);
  const tear = shots.length === 0 ? [] : [{ name: phrase(content, 'record-last-tear', { distance: state.notes.distance }), value: `${tearInWords(centreOf(shots, spreadOf(state).sd).mean)} (${shots.length} shots)` }];
  const second = state.notes.secondDistance;
  return [
    ...rows, ...tear,
    ...(second === null ? [] : [{ name: phrase(content, 'record-second', { distance: SECOND_DISTANCE }), value: phrase(content, second === 'confirmed' ? 'record-confirmed' : 'record-not-confirmed') }]),
    { name: phrase(content, 'record-shots'), value: `${state.shotCount}, over ${dayOf(state)} ${dayOf(state) === 1 ? 'day' : 'days'}` },
    { name: phrase(content, 'record-spread'), value: `${spreadOf(state).sd.toFixed(2)} in` },
  ];
}

function axisInWords(content: Content, state: State, axis: Axis): string {
  const result = state.notes.axis[axis];
  if (result === undefined) return phrase(content, 'result-none');
  const id = { 'tuned': 'result-tuned', 'cannot': 'result-cannot', 'accepted': 'result-accepted', 'inconsistent': 'result-inconsistent' }[result.result];
  return phrase(content, id, { chance: `${Math.min(99, Math.round(result.chance * 100))} %`, distance: FIRST_DISTANCE });
}

function settingRows(content: Content, state: State): readonly Row[] {
  const settings = Object.entries(settingsOf(state.moves)) as [KnobId, number][];
  const rows = settings.map(([id, value]): Row => {
    const knob = content.knobs[id];
    return { name: knob.name, value: value === 0 ? phrase(content, 'record-as-found') : `${amountInWords({ value: Math.abs(value), unit: knob.unit })} ${directionOf(knob, value)} of where it began` };
  });
  return rows.length > 0 ? rows : [{ name: phrase(content, 'record-settings'), value: phrase(content, 'record-nothing-moved') }];
}

function learnedRows(content: Content, state: State): readonly Row[] {
  const learned = Object.entries(state.notes.learned) as [KnobId, { mean: number; sd: number }][];
  const ended = Object.entries(state.notes.ended) as [KnobId, 'no response' | 'limit'][];
  return [
    ...learned.map(([id, { mean, sd }]): Row => {
      const knob = content.knobs[id];
      const [plus, minus] = knob.axis === 'height' ? ['higher', 'lower'] : ['further right', 'further left'];
      const step = amountInWords({ value: knob.first, unit: knob.unit });
      return { name: knob.name, value: `${step} ${knob.plus} moves the tail ${Math.abs(mean * knob.first).toFixed(2)} in ${mean > 0 ? plus : minus} (give or take ${(2 * sd * knob.first).toFixed(2)})` };
    }),
    ...ended.map(([id, how]): Row => ({ name: content.knobs[id].name, value: phrase(content, how === 'limit' ? 'record-limit' : 'record-no-response') })),
  ];
}

function baselineRows(content: Content, state: State): readonly Row[] {
  return Object.entries(state.answers).flatMap(([id, { answer }]) => {
    const pending = lookUp(content, id);
    if (pending === null || pending.check !== undefined) return [];
    const { step } = pending;
    const wanted = step.kind === 'number' || (step.kind === 'choice' && step.effect === 'chosen');
    if (!wanted || id === 'place' || id === 'what-happened') return [];
    return [{ name: step.short, value: answerInWords(step, answer) }];
  });
}

function noticedRows(state: State): readonly Row[] {
  return state.facts.flatMap((fact) => {
    if (fact.kind === 'noted') return [{ name: fact.time.slice(0, 10), value: fact.note }];
    if (fact.kind === 'stopped') return [{ name: `${fact.time.slice(0, 10)}, stop`, value: fact.words }];
    if (fact.kind === 'answered' && fact.step === 'released' && fact.answer.kind === 'text') return [{ name: `${fact.time.slice(0, 10)}, released`, value: fact.answer.value }];
    return fact.decided.findings.flatMap((f) => (f.kind === 'cause' ? [{ name: `${fact.time.slice(0, 10)}, cause`, value: f.cause }] : []));
  });
}

function notCheckedRows(content: Content, state: State): readonly Row[] {
  const unknown = Object.entries(state.answers).filter(([, { answer }]) => answer.kind === 'not known').map(([id]) => content.steps[id]?.short ?? id);
  const never = ['broadheads', 'each-arrow'].map((id) => phrase(content, `not-checked-${id}`));
  return [...unknown.map((short) => phrase(content, 'not-checked-unknown', { what: short })), ...never].map((value, i) => ({ name: `${i + 1}`, value }));
}

/** What a later tune of the same bow may start from. Null for a tune that never got to shoot. */
export function carriedOf(content: Content, state: State): Carried | null {
  const begun = state.facts[0];
  if (begun?.kind !== 'begun' || state.shotCount === 0) return null;
  const spread = spreadOf(state);
  const answers = Object.fromEntries(
    Object.entries(state.answers).filter(([id, { answer }]) => content.steps[id]?.everyTune === false && answer.kind !== 'not known').map(([id, { answer }]) => [id, answer]),
  );
  const cams = chosen(state, 'cams') ?? 'unknown';
  return {
    from: begun.tune, bow: phrase(content, 'known-bow-label', { date: begun.time.slice(0, 10), cams, hand: chosen(state, 'hand') ?? '' }),
    answers, spread: carriedPrior(spread), gains: state.notes.learned,
  };
}
