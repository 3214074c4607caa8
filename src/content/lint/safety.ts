// What keeps people whole: nobody draws a bow that was not looked at, not known never passes, and the press has its caution.

import { error } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content, Step } from '../types.ts';

/** A chunk longer than this is ticked without being read (Degani and Wiener's chunks; five to nine is the usual rule). */
export const MOST_CHECKS = 9;

/** What can hurt most is asked by itself and answered by a deliberate pick: never in a chunk, never by Enter alone. */
export const ASKED_ALONE = ['history', 'limbs', 'axle-clips', 'arrows-flexed', 'backstop'] as const;

const WORK_IN_A_PRESS = /\b(in|into|with|on|using|needs?) (a|the|your|its) (bow )?press\b|(?<!\b(not|never|nobody may) )\bpress (the|your|this) bow\b|\bbow (is |being )?pressed\b/i;

export function safety(content: Content, where: Where): Problem[] {
  return [
    ...drawnBeforeLookedAt(content, where),
    ...Object.values(content.steps).flatMap((step) => [...gate(step, where), ...counts(step, where), ...pressOfStep(step, where)]),
    ...ASKED_ALONE.flatMap((id) => alone(content.steps[id], where)),
    ...gatesNamedTwice(content, where),
    ...pressOfKnobs(content, where),
  ];
}

/** A check is a gate under its own id: findings and `gate:ID` must not mean two things. */
function gatesNamedTwice(content: Content, where: Where): Problem[] {
  const owner = new Map(Object.values(content.steps).filter((step) => step.effect === 'gate').map((step) => [step.id, `the step "${step.id}"`]));
  return Object.values(content.steps).flatMap((step) => (step.kind !== 'chunk' ? [] : step.checks.flatMap((check, index) => {
    const before = owner.get(check.id);
    owner.set(check.id, `a check of "${step.id}"`);
    if (before === undefined || before === `a check of "${step.id}"`) return [];
    return [error(where(['steps', step.id, 'checks', index, 'id']), `the check "${check.id}" has the name of ${before}; each gate needs its own`)];
  })));
}

function drawnBeforeLookedAt(content: Content, where: Where): Problem[] {
  const chapter = content.chapters.findIndex((one) => one.id === 'safety');
  const order = (content.chapters[chapter]?.blocks ?? []).flatMap((block, b) =>
    block.steps.map((id, s) => ({ step: content.steps[id], path: ['chapters', chapter, 'blocks', b, 'steps', s] })));
  const lastUndrawn = order.findLastIndex(({ step }) => step?.pause === 'undrawn');
  return order.slice(0, Math.max(0, lastUndrawn)).flatMap(({ step, path }) => {
    if (step?.pause !== 'draw' && step?.pause !== 'shoot') return [];
    const after = order[lastUndrawn]?.step?.id ?? '';
    return [error(where(path), `the step "${step.id}" (${step.pause}) stands before "${after}", which looks at the bow undrawn; nobody draws a bow that was not looked at: put it after`)];
  });
}

function alone(step: Step | undefined, where: Where): Problem[] {
  if (step === undefined) return [];
  if (step.kind === 'chunk') return [error(where(['steps', step.id]), `"${step.id}" is a chunk; what can hurt most is asked by itself: write kind: choice or number`)];
  const found: Problem[] = [];
  if (!step.noDefault) found.push(error(where(['steps', step.id]), `"${step.id}" can be answered without a pick; write noDefault: true`));
  if (step.effect !== 'gate') found.push(error(where(['steps', step.id, 'effect']), `"${step.id}" is ${step.effect}; write effect: gate`));
  return found;
}

function gate(step: Step, where: Where): Problem[] {
  if (step.effect !== 'gate') return [];
  const found: Problem[] = [];
  const lax = (key: 'unknownFail' | 'fail'): void => {
    found.push(error(where(['steps', step.id, key]), `the gate "${step.id}" takes "not known" and ${key} is note; not known never passes: write look-up, fix or shop`));
  };
  if (step.unknown && step.kind === 'choice' && step.unknownFail === 'note') lax('unknownFail');
  if (step.unknown && step.kind === 'number' && step.fail === 'note') lax('fail');
  if (step.kind === 'choice') {
    step.options.forEach((option, index) => {
      if (option.gate === undefined) found.push(error(where(['steps', step.id, 'options', index]), `the option "${option.value}" of the gate "${step.id}" does not say what it means for it; write gate: pass, shop, fix, look-up or note`));
    });
    if (!step.options.some((option) => option.gate === 'pass')) found.push(error(where(['steps', step.id, 'options']), `no option passes the gate "${step.id}"; write gate: pass at one`));
  }
  if ((step.kind === 'choice' || step.kind === 'number') && step.thenDo === '') {
    found.push(error(where(['steps', step.id]), `the gate "${step.id}" does not say what to do when it fails; write thenDo`));
  }
  return found;
}

function counts(step: Step, where: Where): Problem[] {
  const found: Problem[] = [];
  const tooMany = (key: 'checks' | 'options', count: number, least: number): void => {
    if (count > MOST_CHECKS) found.push(error(where(['steps', step.id, key]), `"${step.id}" has ${count} ${key}; nine are the most that are read: split it`));
    if (count < least) found.push(error(where(['steps', step.id, key]), `"${step.id}" needs at least ${least} ${key}; write ${least - count} more`));
  };
  if (step.kind === 'chunk') tooMany('checks', step.checks.length, 1);
  // The bows on file are further options, known only when it is asked.
  if (step.kind === 'choice') tooMany('options', step.options.length, step.id === 'bow' || step.id === 'which-bow' ? 1 : 2);
  if (step.kind === 'chunk' || step.kind === 'choice') found.push(...repeated(step, where));
  if (step.kind === 'number') {
    if (step.min >= step.max) found.push(error(where(['steps', step.id, 'min']), `min ${step.min} is not below max ${step.max}; write the smaller one as min`));
    const { min = step.min, max = step.max } = step.pass ?? {};
    if (min > max || min < step.min || max > step.max) found.push(error(where(['steps', step.id, 'pass']), `pass (${min} to ${max}) is not inside min ${step.min} and max ${step.max}; mend one of them`));
  }
  if (step.kind === 'chunk') {
    step.checks.forEach((check, index) => {
      if (check.source.length === 0) found.push(error(where(['steps', step.id, 'checks', index]), `the check "${check.id}" has no source; write source here or for all of "${step.id}"`));
    });
  } else if (step.source.length === 0 && (step.kind === 'number' || step.kind === 'choice')) {
    found.push(error(where(['steps', step.id, 'source']), `the ${step.kind} "${step.id}" has no source; name one of content/sources.yaml`));
  }
  return found;
}

function repeated(step: Extract<Step, { kind: 'chunk' | 'choice' }>, where: Where): Problem[] {
  const [key, ids] = step.kind === 'chunk'
    ? ['checks', step.checks.map((one) => one.id)] as const
    : ['options', step.options.map((one) => one.value)] as const;
  return ids.flatMap((id, index) => (ids.indexOf(id) === index ? []
    : [error(where(['steps', step.id, key, index]), `"${id}" is there twice in "${step.id}"; each needs its own name`)]));
}

function pressOfStep(step: Step, where: Where): Problem[] {
  // The step that asks whether there is a press at all is no work in one.
  if (step.cautions.includes('press') || step.about === 'press') return [];
  const said = [step.short, ...step.text, ...(step.kind === 'chunk' ? step.checks.flatMap((one) => [one.label, one.how]) : [])];
  if (!said.some((one) => WORK_IN_A_PRESS.test(one))) return [];
  return [error(where(['steps', step.id]), `the step "${step.id}" speaks of work in a press and lacks its caution; write cautions: [press]`)];
}

function pressOfKnobs(content: Content, where: Where): Problem[] {
  return Object.values(content.knobs).flatMap((knob) => {
    if (!knob.press || knob.cautions.includes('press')) return [];
    return [error(where(['knobs', knob.id, 'cautions']), `the adjustment "${knob.id}" needs a press and lacks its caution; write cautions: [press]`)];
  });
}
