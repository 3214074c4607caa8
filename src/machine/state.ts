// State is the fold of facts. `evolve` adopts what a fact says and what was decided about it; it never decides.

import type { Content, KnobId } from '../content/types.ts';
import type { Feet } from '../maths/units.ts';
import { carriedAnswers, pickedBow } from './known-bow.ts';
import { initialWalk, step, type WalkSnapshot } from './walk.ts';
import { NO_NOTES, patchNotes, type LoopNotes, type LoopPatch, type Purpose, type SetKind, type ShotTag, type Stop } from './notes.ts';
import { afterQuestion } from './stops.ts';
import { isNotMoved, type Advice, type Answer, type Answered, type Fact, type Finding, type ShotAnswer } from './types.ts';

export type { Answered } from './types.ts';
export interface GateState { readonly result: 'passed' | 'failed' | 'unknown' | 'noted'; readonly seq: number }
export interface Move { readonly seq: number; readonly knob: KnobId; readonly delta: number; readonly why: 'advice' | 'put-back' | 'unadvised' }
export interface Shot {
  readonly x: number; readonly y: number; readonly good: boolean; readonly seq: number;
  /** What it was shot with; absent where that makes no difference (paper, any tuning arrow). */
  readonly tag?: ShotTag;
}

/** Shots taken in a row at one setting, one distance, for one purpose. */
export interface ShotSet {
  readonly id: number;
  /** What was shot, and so how its shots are read. */
  readonly of: SetKind;
  /** Sets of an older epoch do not count: contact was found, or something had moved. */
  readonly epoch: number;
  readonly distance: Feet;
  readonly settings: Readonly<Partial<Record<KnobId, number>>>;
  readonly purpose: Purpose;
  readonly shots: readonly Shot[];
  readonly missed: number;
}

export type { Stop } from './notes.ts';

export interface State {
  readonly facts: readonly Fact[];
  readonly walk: WalkSnapshot;
  /** False after a fact whose event the machine could not take (newer content): replay stops there. */
  readonly fits: boolean;
  readonly answers: Readonly<Record<string, Answered>>;
  readonly suggestions: Readonly<Record<string, Answer>>;
  readonly gates: Readonly<Record<string, GateState>>;
  /** Steps to ask (again) before the walk goes on, in this order. `chunk/check` is one check of a chunk. */
  readonly due: readonly string[];
  readonly moves: readonly Move[];
  readonly sets: readonly ShotSet[];
  readonly notes: LoopNotes;
  readonly advice: Advice | null;
  readonly findings: readonly Finding[];
  readonly stop: Stop | null;
  readonly shotCount: number;
}

export const emptyState = (): State => ({
  facts: [], walk: initialWalk(), fits: true, answers: {}, suggestions: {}, gates: {}, due: [], moves: [], sets: [],
  notes: NO_NOTES, advice: null, findings: [], stop: null, shotCount: 0,
});

/** Adopts one fact. Pure. */
export const evolve = (content: Content, state: State, fact: Fact): State => adoptDecision(record(content, state, fact), fact);

/**
 * What a fact itself says, without what was decided about it; `adoptDecision` makes the rest of it. Of the decision only
 * RECORDED_WITH goes in.
 */
export function record(content: Content, state: State, fact: Fact): State {
  return fact.kind === 'corrected' ? recordCorrection(content, state, fact) : recordData(content, state, fact);
}

/** Parts of a decision without which a fact cannot be recorded: what was moved, what was shot with, how far is taken back. */
export const RECORDED_WITH = ['told', 'tags', 'rewindTo'] as const satisfies readonly (keyof LoopPatch)[];

/** The fold of a whole journal. */
export const fold = (content: Content, facts: readonly Fact[]): State =>
  facts.reduce<State>((state, fact) => evolve(content, state, fact), emptyState());

// A correction replaces the old answer in every figure that used it; where the walk stands is kept as it was, and
// only the correction's own decisions move it. (A walk choice with nothing after it is taken back whole: rewindTo.)
function recordCorrection(content: Content, state: State, fact: Extract<Fact, { kind: 'corrected' }>): State {
  const { facts } = state;
  const rewindTo = fact.decided.loop?.rewindTo;
  if (rewindTo !== undefined) {
    const before = fold(content, facts.filter((f) => f.seq < rewindTo));
    return { ...before, facts, shotCount: state.shotCount };
  }
  const data = booksOf(content, effectiveFacts([...facts, fact]).slice(0, -1));
  const inForce = Object.fromEntries(Object.entries(data.answers).filter(([id]) => state.answers[id] !== undefined));
  const { walk, due, stop, findings, advice, suggestions, gates } = state;
  return { ...data, answers: inForce, facts, walk, due, stop, findings, advice, suggestions, gates };
}

// Answers, moves, sets and notes of such facts: all that a corrected figure goes into. A choice of the walk that was taken back
// whole went into nothing, and what was decided on a correction stays decided.
function booksOf(content: Content, effective: readonly Fact[]): State {
  const rewound = effective.flatMap(({ seq, decided: { loop } }) => (loop?.rewindTo === undefined ? [] : [{ from: loop.rewindTo, to: seq }]));
  return effective
    .filter(({ seq }) => !rewound.some(({ from, to }) => from <= seq && seq < to))
    .reduce<State>((state, each) => adoptNotes(recordData(content, state, each), each), { ...emptyState(), facts: effective });
}

/** The books when line `seq` was decided, with every answer up to it as it reads now: what was decided then can be worked out again. */
export function booksAt(content: Content, facts: readonly Fact[], seq: number): State {
  const upTo = effectiveFacts(facts).filter((fact) => fact.seq <= seq);
  const before = booksOf(content, upTo.slice(0, -1));
  return upTo.slice(-1).reduce((state, line) => recordData(content, state, line), before);
}

/** The facts with each corrected answer in the place of the one it corrects. */
export function effectiveFacts(facts: readonly Fact[]): readonly Fact[] {
  const latest = new Map<number, Answer>();
  for (const fact of facts) if (fact.kind === 'corrected') latest.set(fact.of, fact.answer);
  return facts.map((fact) => {
    const answer = latest.get(fact.seq);
    return answer !== undefined && fact.kind === 'answered' ? { ...fact, answer } : fact;
  });
}

function recordData(content: Content, state: State, fact: Fact): State {
  const cleared = state.advice !== null && (state.advice.kind === 'shop' || state.advice.kind === 'inspect') ? null : state.advice;
  const base = { ...state, advice: cleared };
  switch (fact.kind) {
    case 'answered':
      return recordAnswer(content, base, fact);
    case 'moved':
      return recordMove(base, { seq: fact.seq, knob: fact.knob, delta: fact.delta, why: 'unadvised' });
    case 'begun':
    case 'corrected':
    case 'wanted-back':
    case 'stopped':
    case 'noted':
    case 'changed':
    case 'resumed':
      return base;
  }
}

function recordAnswer(content: Content, state: State, fact: Extract<Fact, { kind: 'answered' }>): State {
  const { answer } = fact;
  if (answer.kind === 'shots') return recordShots(state, answer.shots, fact.seq, fact.decided.loop?.tags ?? []);
  if (answer.kind === 'moved') {
    const told = fact.decided.loop?.told;
    if (told === undefined || isNotMoved(answer.moved)) return state;
    // The amount as answered (or as corrected later) counts; the sign is the advice's.
    const other = answer.moved === 'as told' ? told.delta : Math.sign(told.delta) * answer.moved.value;
    // 0.8 mm, told of 1/32 in, is as told: nobody sets it closer, and the ledger keeps to its marks.
    const delta = Math.abs(other - told.delta) < UNSEEN ? told.delta : other;
    return recordMove(state, { seq: fact.seq, knob: told.knob, delta, why: told.kind === 'put-back' ? 'put-back' : 'advice' });
  }
  const { [fact.step]: _taken, ...suggestions } = state.suggestions;
  const known = content.steps[fact.step] !== undefined || fact.step.includes('/');
  const own = { answer, seq: fact.seq, time: fact.time };
  const answers = known ? { ...state.answers, [fact.step]: own } : state.answers;
  const picked = fact.step === 'bow' || fact.step === 'which-bow' ? pickedBow({ ...state, answers }) : null;
  return {
    ...state,
    answers: picked === null ? answers : { ...answers, ...carriedAnswers(content, picked, own), [fact.step]: own },
    suggestions,
    due: state.due.filter((id) => id !== fact.step),
    stop: afterQuestion(state.stop, fact.step),
  };
}

function recordMove(state: State, move: Move): State {
  if (move.delta === 0) return state;
  return openSet({ ...state, moves: [...state.moves, move] }, state.notes.purpose);
}

function recordShots(state: State, answers: readonly ShotAnswer[], seq: number, tags: readonly ShotTag[]): State {
  const open = state.sets.at(-1) === undefined ? openSet(state, 'judge') : state;
  const set = open.sets.at(-1);
  if (set === undefined) return state;
  const shots = answers.flatMap((shot, i): Shot[] => {
    if ('missed' in shot) return [];
    const tag = tags[i];
    return [{ x: shot.x, y: shot.y, good: shot.called !== 'bad', seq, ...(tag === undefined ? {} : { tag }) }];
  });
  const missed = answers.length - shots.length;
  const grown: ShotSet = { ...set, shots: [...set.shots, ...shots], missed: set.missed + missed };
  return { ...open, sets: [...open.sets.slice(0, -1), grown], shotCount: open.shotCount + answers.length };
}

/** Begins a new set at the present settings. An untouched empty set is replaced, so ids stay dense. */
function openSet(state: State, purpose: Purpose): State {
  const last = state.sets.at(-1);
  const kept = last !== undefined && last.shots.length === 0 && last.missed === 0 ? state.sets.slice(0, -1) : state.sets;
  const set: ShotSet = {
    id: kept.length + 1, of: state.notes.of, epoch: state.notes.epoch, distance: state.notes.distance, settings: settingsOf(state.moves),
    purpose, shots: [], missed: 0,
  };
  return { ...state, sets: [...kept, set] };
}

/** Every knob's setting against the baseline, in the knob's unit: the ledger. */
export function settingsOf(moves: readonly Move[]): Partial<Record<KnobId, number>> {
  const settings: Partial<Record<KnobId, number>> = {};
  for (const move of moves) settings[move.knob] = tidy((settings[move.knob] ?? 0) + move.delta);
  return settings;
}

/** Finer than any of these is set or read: inches, turns, twists. */
export const UNSEEN = 1 / 512;

/** Takes binary dust off a sum of 64ths and quarter turns, so that "put back" is exactly zero. */
export const tidy = (value: number): number => (Math.sign(value) * Math.round(Math.abs(value) * 1e9)) / 1e9 + 0;

function adoptNotes(state: State, fact: Fact): State {
  const patch = fact.decided.loop;
  const notes = patchNotes(state.notes, patch);
  const next = { ...state, notes };
  return patch?.newSet === true ? openSet(next, notes.purpose) : next;
}

/** Adopts a fact that was recorded, with its decision. */
export function adoptDecision(recorded: State, fact: Fact): State {
  const { decided } = fact;
  let next = adoptNotes(recorded, fact);
  next = {
    ...next,
    facts: [...next.facts, fact],
    findings: [...next.findings, ...decided.findings],
    advice: decided.advice === undefined ? next.advice : decided.advice,
    due: dueAfter(next.due, fact),
    gates: gatesAfter(next.gates, decided.findings, fact.seq),
  };
  const { stop, suggest } = decided.loop ?? {};
  if (stop !== undefined) next = { ...next, stop };
  if (suggest !== undefined) next = suggestInstead(next, suggest);
  for (const event of decided.events) {
    const moved = step(next.walk, event);
    if (moved === null) return { ...next, fits: false };
    next = { ...next, walk: moved };
  }
  return next;
}

// Who comes back looks at range and bow first, whatever else was open; a check that does not hold comes before what was open.
function dueAfter(open: readonly string[], { kind, decided: { due = [] } }: Fact): readonly string[] {
  if (kind === 'resumed') return [...due, ...open.filter((id) => !due.includes(id))];
  const fresh = due.filter((id) => !open.includes(id));
  return [...fresh.filter((id) => id.includes('/')), ...open, ...fresh.filter((id) => !id.includes('/'))];
}

function gatesAfter(gates: State['gates'], findings: readonly Finding[], seq: number): State['gates'] {
  const ruled = findings.flatMap((finding) => (finding.kind === 'gate' ? [[finding.gate, { result: finding.result, seq }] as const] : []));
  return ruled.length === 0 ? gates : { ...gates, ...Object.fromEntries(ruled) };
}

// Answers that a later choice took off the route are kept, but only as suggestions: never silently in force.
function suggestInstead(state: State, steps: readonly string[]): State {
  const answers = { ...state.answers };
  const suggestions = { ...state.suggestions };
  for (const id of steps) {
    const answered = answers[id];
    if (answered !== undefined) suggestions[id] = answered.answer;
    delete answers[id];
  }
  return { ...state, answers, suggestions };
}
