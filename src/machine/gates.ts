// What an answer to a gate means: passed, noted, failed or not known. Not known never passes.

import type { Content, GateFail, Step } from '../content/types.ts';
import { namesOf, oneOf } from '../maths/closed.ts';
import type { Grains, Measured, Pounds } from '../maths/units.ts';
import { WHAT_WAS_CHANGED } from './after-figure.ts';
import { arrowMass, isPart, openForMass, type Part } from './figures/arrow-mass.ts';
import type { Figure } from './figures/list.ts';
import { chosen, measured } from './guards.ts';
import { lookUp, type Pending } from './agenda.ts';
import { AHEAD, MASS_FLOOR, MASS_WARN, PEAK_ALLOWANCE, TUNING_ARROWS, massRatio, massRatioInWords, worstMassRatio } from './limits.ts';
import { asMeasured, type Measure, type MeasureOf } from './measures.ts';
import type { GateState, State, Stop } from './state.ts';
import type { Answer, Finding } from './types.ts';
import { phrase } from './words.ts';

export interface GateOutcome {
  readonly findings: readonly Finding[];
  readonly stop: Stop | null;
  readonly due: readonly string[];
  readonly say: readonly string[];
}

const PASSED: GateOutcome = { findings: [], stop: null, due: [], say: [] };

interface Ruled {
  /** The gate that is ruled on, where the answer is only one part of what it rests on: the part itself is in order. */
  readonly gate?: string;
  /** What the figures come to, said before the ruling. */
  readonly comesTo?: string;
}
interface Passing extends Ruled { readonly result: 'passed' | 'noted'; readonly say?: string }
interface Failing extends Ruled { readonly result: 'failed' | 'unknown'; readonly fail: GateFail; readonly say: string; readonly ask?: readonly string[]; readonly due?: readonly string[] }
type Ruling = Passing | Failing;

/** Rules on the answer just recorded for `id`; `state` already holds it. Null where `id` is no gate. */
export function judgeGate(content: Content, state: State, id: string, answer: Answer): GateOutcome | null {
  const pending = lookUp(content, id);
  if (pending === null || pending.step.effect !== 'gate') return null;
  if (pending.step.kind === 'chunk' && pending.check === undefined) return judgeChunk(pending, answer);
  const ruling = rule(content, state, pending, answer);
  return ruling === null ? PASSED : outcome(id, ruling);
}

/** The gate's name in findings and in `ask.about`: the check's own id for a check of a chunk. */
export const gateName = (id: string): string => id.split('/')[1] ?? id;

function judgeChunk(pending: Pending, answer: Answer): GateOutcome {
  const { step, id } = pending;
  if (step.kind !== 'chunk') return PASSED;
  const picked = answer.kind === 'choice' ? answer.values.filter((v) => v !== 'all true') : step.checks.map((c) => c.id);
  const passed = step.checks.filter((c) => !picked.includes(c.id));
  // What only a dealer may release is told first: nobody mends the smaller fault and draws again.
  const shopFirst = [...step.checks].sort((a, b) => Number(b.fail === 'shop') - Number(a.fail === 'shop')).filter((c) => picked.includes(c.id));
  return {
    ...PASSED,
    findings: [
      ...passed.map((c): Finding => ({ kind: 'gate', gate: c.id, result: 'passed' })),
      ...(picked.length === 0 ? [{ kind: 'gate', gate: id, result: 'passed' } as const] : []),
    ],
    due: shopFirst.map((check) => `${id}/${check.id}`),
  };
}

function outcome(id: string, ruling: Ruling): GateOutcome {
  const gate = ruling.gate ?? gateName(id);
  const found = (result: GateState['result']): readonly Finding[] =>
    [...(ruling.gate === undefined ? [] : [{ kind: 'gate', gate: gateName(id), result: 'passed' } as const]), { kind: 'gate', gate, result }];
  const say = [ruling.comesTo, ruling.say].flatMap((words) => (words === undefined || words === '' ? [] : [words]));
  if (!('fail' in ruling)) return { ...PASSED, findings: found(ruling.result), say };
  if (ruling.fail === 'note') return { ...PASSED, findings: found('noted'), say };
  const ask = ruling.ask ?? [ruling.fail === 'shop' ? 'released' : id];
  return { ...PASSED, findings: found(ruling.result), stop: { cause: 'gate', ask, from: id }, due: ruling.due ?? [], say };
}

function rule(content: Content, state: State, { id, step, check }: Pending, answer: Answer): Ruling | null {
  if (check !== undefined) {
    const value = answer.kind === 'choice' ? answer.values[0] : undefined;
    if (value === 'true') return { result: 'passed' };
    return { result: value === 'false' ? 'failed' : 'unknown', fail: check.fail, say: check.thenDo };
  }
  if (answer.kind === 'not known') {
    const fail = step.kind === 'choice' ? step.unknownFail : step.kind === 'number' ? step.fail : 'look-up';
    return { result: 'unknown', fail: fail === 'shop' || fail === 'fix' || fail === 'note' ? 'look-up' : fail, say: thenDo(step), ...waysToMass(state, id) };
  }
  if (step.kind === 'choice') return ruleChoice(step, answer);
  if (step.kind === 'number' && answer.kind === 'number') return ruleNumber(content, state, id, step, answer.value);
  if (step.kind === 'confirm' && answer.kind === 'confirm') {
    return answer.value ? { result: 'passed' } : { result: 'failed', fail: 'fix', say: '' };
  }
  return { result: 'passed' };
}

const thenDo = (step: Step): string => (step.kind === 'choice' || step.kind === 'number' ? step.thenDo : '');

function ruleChoice(step: Extract<Step, { kind: 'choice' }>, answer: Answer): Ruling {
  const value = answer.kind === 'choice' ? answer.values[0] : undefined;
  const option = step.options.find((o) => o.value === value);
  if (option?.gate === 'pass') return { result: 'passed', say: option.say ?? '' };
  if (option?.gate === 'note') return { result: 'noted', say: option.say ?? '' };
  return { result: 'failed', fail: option?.gate ?? 'look-up', say: option?.say ?? step.thenDo };
}

function ruleNumber(content: Content, state: State, id: string, step: Extract<Step, { kind: 'number' }>, value: number): Ruling | null {
  const low = step.pass?.min;
  const high = step.pass?.max;
  if ((low !== undefined && value < low) || (high !== undefined && value > high)) return { result: 'failed', fail: step.fail, say: step.thenDo };
  if (isPart(id)) return rulePart(content, state);
  return isRuled(id) ? ruleMeasure(id, content, state, value) : { result: 'passed' };
}

/** Measures whose limits hang on other answers. */
type Limited = Exclude<Measure, Figure | Part | 'brace-height' | 'nock-height' | 'centre-shot' | 'centre-shot-figure' | 'group-at-20' | 'arrows-in-set' | 'arrow-out' | 'nock-stays'>;
type Rules = { readonly [M in Limited]: (content: Content, state: State, value: MeasureOf<M>) => Ruling | null };

const ruleMeasure = <M extends Limited>(step: M, content: Content, state: State, value: number): Ruling | null => RULES[step](content, state, asMeasured(step, value));

const RULES: Rules = {
  'bolts-bottom': (content, state) => ruleBolts(content, state),
  'bolts-top': (content, state) => (measured(state, 'bolts-bottom') === undefined ? { result: 'passed' } : ruleBolts(content, state)),
  'bolt-limit': (content, state) => ruleBolts(content, state),
  'arrow-count': (content, state, value) => {
    if (value < TUNING_ARROWS) return { result: 'failed', fail: 'look-up', say: phrase(content, 'too-few-arrows', { need: TUNING_ARROWS }) };
    const aside = measured(state, 'arrows-set-aside');
    const open = ['arrows-flexed', 'arrows-set-aside'].some((id) => state.due.includes(id) || askedWhileStopped(state, id));
    return aside === undefined || open || chosen(state, 'arrows-flexed') !== 'some-bad' ? { result: 'passed' } : ruleArrows(content, value, aside);
  },
  // After a long break those set aside may be counted before the arrows were: then the count is held against them.
  'arrows-set-aside': (content, state, value) => {
    const count = measured(state, 'arrow-count');
    return count === undefined ? { result: 'passed' } : ruleArrows(content, count, value);
  },
  'arrow-mass': (content, state) => ruleMass(content, state),
  'rated-weight': (content, state, rated) => {
    const peak = measured(state, 'peak-weight');
    if (peak !== undefined && peak > rated + PEAK_ALLOWANCE && !state.due.includes('peak-weight')) return overRating(content, peak, rated);
    return arrowMass(state) === null ? { result: 'passed' } : ruleMass(content, state);
  },
  'scale-error': (content, state) => ruleMass(content, state),
  'peak-weight': (content, state, peak) => {
    const rated = measured(state, 'rated-weight');
    if (rated !== undefined && peak > rated + PEAK_ALLOWANCE) return overRating(content, peak, rated);
    return ruleMass(content, state);
  },
  'shaft-ahead': (content, state, ahead) => {
    const want = chosen(state, 'growing') === 'growing' ? AHEAD.growing : AHEAD.want;
    // With another arrow nobody draws for the next figure before it was looked at.
    const due = [WHAT_WAS_CHANGED];
    if (ahead < AHEAD.stop) return { result: 'failed', fail: 'fix', say: phrase(content, 'shaft-too-short', { ahead, want }), due };
    if (ahead < want) return { result: 'unknown', fail: 'look-up', say: phrase(content, 'shaft-rather-short', { ahead, want }), due };
    return { result: 'passed' };
  },
};

const isRuled = oneOf(namesOf(RULES));

const overRating = (content: Content, peak: Pounds, rated: Pounds): Ruling =>
  ({ result: 'failed', fail: 'shop', say: phrase(content, 'peak-over-rating', { peak, rated }) });

function ruleArrows(content: Content, count: Measured<'count'>, aside: Measured<'count'>): Ruling {
  if (aside > count) return { result: 'unknown', fail: 'look-up', say: phrase(content, 'arrows-do-not-add-up', { count, aside }) };
  if (count - aside < TUNING_ARROWS) return { result: 'failed', fail: 'look-up', say: phrase(content, 'too-few-arrows', { need: TUNING_ARROWS }), ask: ['arrow-count', 'arrows-flexed'] };
  return { result: 'passed', say: phrase(content, 'arrows-kept', { kept: count - aside, aside }) };
}

// Two figures that are both asked again are held together once the second is in: against the old one, bolts that were just
// brought level would read unequal for ever.
function ruleBolts(content: Content, state: State): Ruling | null {
  const waiting = ['bolts-top', 'bolts-bottom'].some((id) => state.due.includes(id) || askedWhileStopped(state, id));
  if (waiting) return null;
  const top = measured(state, 'bolts-top');
  const bottom = measured(state, 'bolts-bottom');
  if (top === undefined || bottom === undefined) return { result: 'passed' };
  const again = ['bolts-top', 'bolts-bottom'];
  if (top !== bottom) return { result: 'failed', fail: 'fix', say: phrase(content, 'bolts-unequal', { top, bottom }), ask: again };
  // A limit that is to be read again in the manual holds nothing until it is.
  const limit = state.due.includes('bolt-limit') ? undefined : measured(state, 'bolt-limit');
  if (limit !== undefined && top > limit) return { result: 'failed', fail: 'fix', say: phrase(content, 'bolts-over-limit', { top, limit }), ask: again };
  return { result: 'passed' };
}

// Who does not know the mass is asked how to find it; who does not know a part of it, for the mass itself.
function waysToMass(state: State, id: string): Pick<Failing, 'ask'> {
  if (id !== 'arrow-mass' && !isPart(id)) return {};
  const open = openForMass(state);
  return { ask: open.length === 0 ? ['arrow-mass'] : open };
}

// The last part that was missing makes a mass of them; until then nothing rests on them.
function rulePart(content: Content, state: State): Ruling | null {
  const open = openForMass(state);
  if (open.length > 0) {
    if (open.every((id) => askedWhileStopped(state, id))) return { result: 'passed' };
    return { result: 'unknown', gate: 'arrow-mass', fail: 'look-up', say: phrase(content, 'mass-part-missing'), ask: open };
  }
  const mass = arrowMass(state);
  if (mass?.by !== 'parts') return { result: 'passed' };
  const comesTo = phrase(content, 'mass-added-up', { sum: round1(mass.likely), least: inGrains(mass.least) });
  const ruling = ruleMass(content, state);
  return ruling === null ? { result: 'passed', comesTo } : { ...ruling, gate: 'arrow-mass', comesTo };
}

// Worst case counts: until the peak is measured, the limbs' rating plus the allowance; then the peak plus what the scale may hide;
// of an arrow that nobody weighed the least that its parts may come to. While the walk stands still for them, the last of the
// figures that were asked again decides.
function ruleMass(content: Content, state: State): Ruling | null {
  if (['rated-weight', 'arrow-mass', 'peak-weight', 'scale-error'].some((id) => askedWhileStopped(state, id))) return null;
  const mass = arrowMass(state);
  if (mass === null) return { result: 'passed' };
  const { least } = mass;
  const peak = measured(state, 'peak-weight');
  const rated = measured(state, 'rated-weight');
  const error = measured(state, 'scale-error');
  const weight = peak ?? rated;
  if (weight === undefined) return { result: 'passed' };
  const allowance = peak === undefined ? PEAK_ALLOWANCE : (error ?? PEAK_ALLOWANCE);
  const pull = weight + allowance;
  const ratio = worstMassRatio(least, weight, allowance);
  const holes = { mass: inGrains(least), pull: round1(pull), need: Math.ceil(MASS_FLOOR * pull), ratio: massRatioInWords(ratio) };
  if (ratio < MASS_FLOOR) {
    // Close calls are settled by asking for the scale's own error, once.
    if (peak !== undefined && error === undefined && massRatio(least, peak) >= MASS_FLOOR) return { result: 'noted', say: phrase(content, 'mass-close', holes) };
    // A better scale is a way out as well, where the scale's error was told.
    const ask = peak === undefined ? ['rated-weight', 'arrow-mass'] : ['arrow-mass', 'peak-weight', ...(error === undefined ? [] : ['scale-error'])];
    const perhaps = mass.by === 'parts' && worstMassRatio(mass.likely, weight, allowance) >= MASS_FLOOR ? ` ${phrase(content, 'mass-perhaps-enough')}` : '';
    return { result: 'failed', fail: 'fix', say: `${phrase(content, 'mass-too-low', holes)}${perhaps}`, ask, due: [WHAT_WAS_CHANGED] };
  }
  if (ratio < MASS_WARN) return { result: 'noted', say: phrase(content, 'mass-low', holes) };
  return { result: 'passed' };
}

const askedWhileStopped = (state: State, id: string): boolean => state.stop?.ask.includes(id) === true;

const round1 = (value: number): number => Math.round(value * 10) / 10;

/** Cut off to tenths: what a limit is held against is never told as more than it is. */
const inGrains = (mass: Grains): number => Math.floor(mass * 10 + 1e-9) / 10;
