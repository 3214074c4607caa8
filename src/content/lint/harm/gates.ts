// Every step of the book is there, asks what it must, and lets nobody pass whom it must not.

import { error } from '../../problem.ts';
import type { Path, Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import type { Content, GateFail, GuardName, Step } from '../../types.ts';
import type { Book, StepRow } from '../book/shape.ts';
import { oneOf } from '../../../maths/closed.ts';
import { ASKED_ALONE } from '../safety.ts';
import { entries, meanings, words } from './book-words.ts';
import type { Meaning } from './book-words.ts';

const isAskedAlone = oneOf(ASKED_ALONE);

/** How hard an answer holds: to look up and to mend both keep the bow from being shot. */
const HOLDS: Readonly<Record<Meaning, number>> = { 'route': 0, 'pass': 0, 'note': 1, 'look-up': 2, 'fix': 2, 'shop': 3 };

type Tell = (path: Path, text: string) => void;

export function gates(content: Content, where: Where, book: Book): Problem[] {
  const found: Problem[] = [];
  for (const [chapter, id, row] of entries(book)) {
    const step = content.steps[id];
    if (step === undefined) {
      found.push(error(where(['chapters']), `common practice asks "${id}" (a ${row.as}, in the chapter "${chapter}") and no chapter has it; write it`));
      continue;
    }
    const tell: Tell = (path, text) => { found.push(error(where(['steps', id, ...path]), text)); };
    frame(step, row, tell);
    if (step.kind !== row.as) tell(['kind'], `"${id}" is a ${step.kind}; common practice asks it as a ${row.as}: write kind: ${row.as}`);
    else if (step.kind === 'choice') options(step, row, tell);
    else if (step.kind === 'chunk') checks(step, row, tell);
    else if (step.kind === 'number') figures(step, row, tell);
  }
  return [...found, ...onlyNoted(content, where, book)];
}

function frame(step: Step, row: StepRow, tell: Tell): void {
  const { id } = step;
  const flags = words(row.flags);
  const alone = isAskedAlone(id);
  const effect = row.effect ?? 'gate';
  // Of the five, safety.ts tells these two.
  if (step.effect !== effect && !alone) tell(['effect'], `"${id}" is ${step.effect}; common practice has it ${effect}: write effect: ${effect}`);
  if (flags.includes('noDefault') && !step.noDefault && !alone) tell([], `"${id}" can be answered without a pick; write noDefault: true`);
  if (flags.includes('unknown') && !step.unknown) tell([], `"${id}" does not offer "not known", and who does not know would guess; write unknown: true`);
  if (flags.includes('everyTune') && !step.everyTune) tell([], `"${id}" is not asked of a bow that was tuned before; write everyTune: true`);
  if (!flags.includes('onDemand') && step.onDemand) tell(['onDemand'], `"${id}" is asked on demand only, and must be asked of everybody; take onDemand out`);
  if (effect === 'gate' && step.kind !== 'chunk' && step.text.length === 0) tell([], `"${id}" does not say how to look; write text`);
  if (step.pause !== row.pause) tell(['pause'], `"${id}" is asked at the pause "${step.pause}"; write pause: ${row.pause}`);
  const about = row.about ?? (effect === 'gate' ? `gate:${id}` : id);
  if (step.about !== about) tell(['about'], `"${id}" asks about "${step.about}", and its limits are held under "${about}"; write about: ${about}`);
  leftOut(id, step.when, words(row.when), (text) => { tell(['when'], text); });
  for (const guard of words(row.only)) {
    if (!step.when.some((one) => one === guard)) tell([], `"${id}" is asked of everybody; it is only for some: write when: [${guard}]`);
  }
  for (const caution of words(row.cautions)) {
    if (!step.cautions.includes(caution)) tell([], `"${id}" lacks the caution "${caution}"; write it into cautions: it is shown at the step`);
  }
}

function leftOut(what: string, given: readonly GuardName[], allowed: readonly string[], tell: (text: string) => void): void {
  if (given.length === 0) return;
  const stray = given.filter((guard) => !allowed.includes(guard));
  if (stray.length > 0) tell(`"${what}" is asked only when ${stray.join(', ')}; that leaves somebody out: take ${stray.length > 1 ? 'them' : 'it'} out of when`);
}

function options(step: Extract<Step, { kind: 'choice' }>, row: StepRow, tell: Tell): void {
  const known = meanings(row);
  for (const { name, means, when } of known) {
    const index = step.options.findIndex((one) => one.value === name);
    const option = step.options[index];
    if (option === undefined) {
      if (means !== 'pass') tell(['options'], `"${step.id}" has no option "${name}"; who must say that has no answer: write it${means === 'route' ? '' : ` with gate: ${means}`}`);
      continue;
    }
    if (means !== 'route' && HOLDS[option.gate ?? 'pass'] < HOLDS[means]) {
      tell(['options', index, 'gate'], `the option "${name}" of "${step.id}" is looser than common practice; write gate: ${means}`);
    }
    const given = option.when ?? [];
    const missing = when.filter((guard) => !given.some((one) => one === guard));
    if (missing.length > 0) tell(['options', index], `the option "${name}" of "${step.id}" is offered to everybody; it is only for some: write when: [${missing.join(', ')}]`);
    if (means !== 'route') leftOut(name, given, when, (text) => { tell(['options', index, 'when'], text); });
  }
  if (step.effect !== 'gate') return;
  step.options.forEach((option, index) => {
    if (HOLDS[option.gate ?? 'pass'] < HOLDS.fix && !known.some((one) => one.name === option.value)) {
      tell(['options', index], `the option "${option.value}" lets a bow through "${step.id}", and common practice knows no such answer; write gate: fix, look-up or shop`);
    }
  });
  if (row.fails !== undefined && HOLDS[step.unknownFail] < HOLDS[row.fails]) {
    tell(['unknownFail'], `not known is ${step.unknownFail} for "${step.id}"; common practice has it ${row.fails}: write unknownFail: ${row.fails}`);
  }
}

function checks(step: Extract<Step, { kind: 'chunk' }>, row: StepRow, tell: Tell): void {
  for (const { name, means, when } of meanings(row)) {
    const index = step.checks.findIndex((one) => one.id === name);
    const check = step.checks[index];
    if (check === undefined) {
      tell(['checks'], `"${step.id}" does not look at "${name}"; write the check, with fail: ${means}`);
      continue;
    }
    if (HOLDS[check.fail] < HOLDS[means]) tell(['checks', index, 'fail'], `the check "${name}" is ${check.fail} where it fails or is not known; write fail: ${means}`);
    leftOut(name, check.when, when, (text) => { tell(['checks', index, 'when'], text); });
  }
}

function figures(step: Extract<Step, { kind: 'number' }>, row: StepRow, tell: Tell): void {
  if (row.range === undefined) return;
  const [unit, min, max] = row.range;
  if (step.unit !== unit) tell(['unit'], `"${step.id}" is asked in ${step.unit}, and its limit is known in ${unit}; write unit: ${unit}`);
  // What cannot be entered cannot fail; what is far out is a slip of the pen.
  for (const [key, figure] of [['min', min], ['max', max]] as const) {
    if (step[key] !== figure) tell([key], `${key} ${step[key]} of "${step.id}" is not ${figure}: what can be entered decides what can fail; write ${key}: ${figure}`);
  }
  const { least, most } = row;
  if (least !== undefined && (step.pass?.min ?? -Infinity) < least) tell(['pass'], `"${step.id}" passes below ${least}; write pass: { min: ${least} }`);
  if (most !== undefined && (step.pass?.max ?? Infinity) > most) tell(['pass'], `"${step.id}" passes above ${most}; write pass: { max: ${most} }`);
  const fails: GateFail = row.fails ?? 'fix';
  if (HOLDS[step.fail] < HOLDS[fails]) tell(['fail'], `"${step.id}" is ${step.fail} where it fails or is not known; common practice has it ${fails}: write fail: ${fails}`);
}

/** A check that is only noted is passed by "not known" too: the book names the few that may be. */
function onlyNoted(content: Content, where: Where, book: Book): Problem[] {
  const noted = (id: string): readonly string[] => entries(book).flatMap(([, step, row]) => (step === id ? meanings(row).map((one) => one.name) : []));
  return Object.values(content.steps).flatMap((step) => (step.kind !== 'chunk' ? [] : step.checks.flatMap((check, index) => {
    if (check.fail !== 'note' || noted(step.id).includes(check.id)) return [];
    return [error(where(['steps', step.id, 'checks', index, 'fail']), `the check "${check.id}" is only noted, and "not known" passes it; write fail: fix, look-up or shop`)];
  })));
}
