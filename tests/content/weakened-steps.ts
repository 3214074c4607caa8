// Steps made less careful: a caution, a default, an outcome, a bound, a condition.

import type { Content, GateFail, GuardName, Step } from '../../src/content/types.ts';
import { ASKED_ALONE } from '../../src/content/lint/safety.ts';
import { put, without } from './weakening.ts';
import type { Path, Weakening } from './weakening.ts';

const SOFTER: Readonly<Record<GateFail, readonly (GateFail | 'pass')[]>> = {
  'shop': ['fix', 'look-up', 'note', 'pass'], 'fix': ['note', 'pass'], 'look-up': ['note', 'pass'], 'note': ['pass'],
};
const softerFail = (fail: GateFail): GateFail[] => SOFTER[fail].flatMap((one) => (one === 'pass' ? [] : [one]));

/** What would leave a question off somebody's route. */
const LEAVES_OFF: readonly GuardName[] = ['adult', 'known-bow', 'hunts'];
/** Conditions that keep somebody away from what could hurt. */
const KEEPS_AWAY: readonly GuardName[] = ['adult', 'shoots-broadheads', 'unfletched'];

export function ofSteps(content: Content): Weakening[] {
  return Object.values(content.steps).flatMap((step) => one(content, step));
}

function one(content: Content, step: Step): Weakening[] {
  const found: Weakening[] = [];
  const at = ['steps', step.id];
  const add = (group: string, name: string, path: Path, value: unknown): void => {
    found.push({ group, name: `${step.id}: ${name}`, content: put(content, [...at, ...path], value) });
  };
  const gate = step.effect === 'gate';
  step.cautions.forEach((id, index) => add('caution taken off a step', id, ['cautions'], without(step.cautions, index)));
  if (step.noDefault) add('a pick no longer asked for', 'noDefault off', ['noDefault'], false);
  if (gate && step.unknown) add('not known no longer offered', 'unknown off', ['unknown'], false);
  if (gate && step.everyTune) add('not asked in every tune', 'everyTune off', ['everyTune'], false);
  if (gate && !step.onDemand) add('asked only on demand', 'onDemand on', ['onDemand'], true);
  if (gate) for (const effect of ['measured', 'chosen']) add('no gate any more', effect, ['effect'], effect);
  if (gate && step.kind !== 'chunk') add('how to look taken away', 'no text', ['text'], []);
  if (gate) add('asked about another thing', 'about', ['about'], 'gate:another');
  for (const guard of LEAVES_OFF) {
    if (gate && !step.when.includes(guard)) add('left off a route', `when ${guard}`, ['when'], [...step.when, guard]);
  }
  step.when.forEach((guard, index) => {
    if (KEEPS_AWAY.includes(guard)) add('no longer kept away', `when without ${guard}`, ['when'], without(step.when, index));
  });
  if (step.kind === 'choice') found.push(...choice(step, add, content));
  if (step.kind === 'number' && gate) number(step, add);
  if (step.kind === 'chunk') chunk(step, add);
  return found;
}

type Add = (group: string, name: string, path: Path, value: unknown) => void;

function choice(step: Extract<Step, { kind: 'choice' }>, add: Add, content: Content): Weakening[] {
  step.options.forEach((option, index) => {
    const { gate } = option;
    if (gate !== undefined && gate !== 'pass') {
      for (const softer of SOFTER[gate]) add('an option goes easier', `${option.value} ${gate} to ${softer}`, ['options', index, 'gate'], softer);
      for (const guard of LEAVES_OFF) add('a failing option hidden', `${option.value} when ${guard}`, ['options', index, 'when'], [guard]);
    }
    if (gate !== 'pass') add('an option taken away', option.value, ['options'], without(step.options, index));
    option.when?.forEach((guard, at) => {
      if (KEEPS_AWAY.includes(guard)) add('no longer kept away', `${option.value} without ${guard}`, ['options', index, 'when'], without(option.when ?? [], at));
    });
  });
  if (step.effect === 'gate') {
    add('an option that passes put in', 'at my own risk', ['options'], [...step.options, { value: 'risk', label: 'I go on all the same', gate: 'pass' }]);
    if (step.unknown) for (const softer of softerFail(step.unknownFail)) add('not known goes easier', `${step.unknownFail} to ${softer}`, ['unknownFail'], softer);
  }
  return (ASKED_ALONE as readonly string[]).includes(step.id) ? intoChunk(content, step) : [];
}

function number(step: Extract<Step, { kind: 'number' }>, add: Add): void {
  const tick = step.unit === 'count' || step.unit === 'lb' || step.unit === 'gr' ? 1 : 1 / 16;
  for (const softer of softerFail(step.fail)) add('a number goes easier', `${step.fail} to ${softer}`, ['fail'], softer);
  if (step.pass?.min !== undefined) add('a pass widened', 'min', ['pass', 'min'], step.pass.min - tick);
  if (step.pass?.max !== undefined) add('a pass widened', 'max', ['pass', 'max'], step.pass.max + tick);
  if (step.pass !== undefined) add('a pass widened', 'none at all', ['pass'], undefined);
  add('other answers can be entered', 'min lower', ['min'], step.min - tick);
  add('other answers can be entered', 'min higher', ['min'], step.min + tick);
  add('other answers can be entered', 'max lower', ['max'], step.max - tick);
  add('other answers can be entered', 'max higher', ['max'], step.max + tick);
  add('another unit', 'unit', ['unit'], step.unit === 'in' ? 'cm' : 'in');
}

function chunk(step: Extract<Step, { kind: 'chunk' }>, add: Add): void {
  step.checks.forEach((check, index) => {
    for (const softer of softerFail(check.fail)) add('a check goes easier', `${check.id} ${check.fail} to ${softer}`, ['checks', index, 'fail'], softer);
    add('a check taken away', check.id, ['checks'], without(step.checks, index));
    for (const guard of LEAVES_OFF) {
      if (!check.when.includes(guard)) add('a check left off a route', `${check.id} when ${guard}`, ['checks', index, 'when'], [...check.when, guard]);
    }
  });
}

/** The step becomes one check of a chunk that it stood beside. */
function intoChunk(content: Content, step: Step): Weakening[] {
  return ['range', 'bow-at-rest', 'arrows-looked-at'].map((host): Weakening => {
    const into = content.steps[host];
    const checks = into?.kind === 'chunk' ? into.checks : [];
    const check = { id: step.id, label: step.short, how: step.text[0] ?? '', fail: 'fix', thenDo: 'Mend it.', when: [], source: step.source };
    const moved = put(put(content, ['steps', host, 'checks'], [...checks, check]), ['steps', step.id], undefined);
    const drop = (ids: readonly string[]): string[] => ids.filter((id) => id !== step.id);
    return {
      group: 'one of the five in a chunk', name: `${step.id}: in ${host}`,
      content: {
        ...moved,
        chapters: moved.chapters.map((one) => ({ ...one, blocks: one.blocks.map((block) => ({ ...block, steps: drop(block.steps) })) })),
        rechecks: Object.fromEntries(Object.entries(moved.rechecks).map(([trigger, ids]) => [trigger, drop(ids)])) as unknown as Content['rechecks'],
      },
    };
  });
}
