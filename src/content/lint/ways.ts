// Ways that lead nowhere: what no archer comes to, and where an archer would stand without an answer.

import { error, warning } from '../problem.ts';
import type { Path, Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content, GuardName, LadderRule, Step } from '../types.ts';
import { MOST_CHECKS } from './safety.ts';

/** Conditions of which no two hold at once, as the machine reads them: one bow has one rest, one archer one hand. */
export const NEVER_TOGETHER: readonly (readonly GuardName[])[] = [
  ['release-aid', 'fingers'], ['growing', 'adult'], ['new-bow', 'known-bow'], ['right-handed', 'left-handed'],
  ['cable-driven', 'limb-driven', 'blade', 'containment', 'prong'], ['drop-away', 'blade', 'containment', 'prong'],
  ['yoke-bow', 'spacer-bow', 'screw-bow'], ['press-trained', 'press-at-shop', 'no-press'], ['growing', 'press-trained'],
  ['paper', 'no-paper'], ['paper', 'unfletched', 'plumb-line'], ['arrows-by-paper', 'fingers'], ['arrows-by-paper', 'no-paper'],
];

export const ways = (content: Content, where: Where): Problem[] => [
  ...Object.values(content.steps).flatMap((step) => [...conditions(step, where), ...noAnswer(step, where)]),
  ...inspections(content, where),
  ...ladders(content, where),
];

function conditions(step: Step, where: Where): Problem[] {
  const found: Problem[] = [];
  const look = (what: string, guards: readonly GuardName[], path: Path): void => {
    const pair = NEVER_TOGETHER.map((group) => group.filter((one) => guards.includes(one))).find((both) => both.length > 1);
    if (pair !== undefined) found.push(error(where(['steps', step.id, ...path]), `${what} is for nobody: ${pair.join(' and ')} never hold together; take one out`));
  };
  look(`the step "${step.id}"`, step.when, ['when']);
  // Where the step itself is for nobody, that is told once.
  if (found.length > 0) return found;
  if (step.kind === 'chunk') step.checks.forEach((one, index) => { look(`the check "${one.id}"`, [...step.when, ...one.when], ['checks', index, 'when']); });
  if (step.kind === 'choice') step.options.forEach((one, index) => { look(`the option "${one.value}" of "${step.id}"`, [...step.when, ...one.when ?? []], ['options', index, 'when']); });
  return found;
}

function noAnswer(step: Step, where: Where): Problem[] {
  if (step.kind !== 'choice' || step.unknown || step.options.length === 0 || step.options.some(({ when = [] }) => when.length === 0)) return [];
  return [error(where(['steps', step.id, 'options']), `every option of "${step.id}" has a condition, and whoever meets none has no answer; take "when" off one, or write unknown: true`)];
}

function inspections(content: Content, where: Where): Problem[] {
  return Object.values(content.inspections).flatMap(({ id, options }) => {
    const values = options.map((one) => one.value);
    const twice = values.flatMap((value, index) => (values.indexOf(value) === index ? []
      : [error(where(['inspections', id, 'options', index]), `"${value}" is there twice in "${id}"; each needs its own name`)]));
    return values.length <= MOST_CHECKS ? twice
      : [...twice, error(where(['inspections', id, 'options']), `"${id}" has ${values.length} options; nine are the most that are read: take some together`)];
  });
}

/** What the machine looks a ladder up by: the archer's answer on the cams, and whose hands may press. */
const HANDS = ['trained', 'shop', 'none'];
const UNTOLD = 'unknown';

function ladders(content: Content, where: Where): Problem[] {
  const asked = content.steps['cams'];
  const cams = [...new Set([...(asked?.kind === 'choice' ? asked.options.map((one) => one.value) : []), UNTOLD])];
  const known = (given: readonly string[] | 'any', all: readonly string[]): boolean => given === 'any' || given.every((one) => all.includes(one));
  const fits = (rule: LadderRule, cam: string, hands: string): boolean => (rule.cams === 'any' || rule.cams.includes(cam)) && (rule.press === 'any' || rule.press.includes(hands));
  return content.ladders.flatMap((rule, r) => {
    const found: Problem[] = [];
    const earlier = content.ladders.slice(0, r).filter((one) => one.axis === rule.axis);
    const bows = cams.flatMap((cam) => HANDS.filter((hands) => fits(rule, cam, hands)).map((hands) => [cam, hands] as const));
    const comes = bows.some(([cam, hands]) => !earlier.some((one) => fits(one, cam, hands)));
    // Of an answer that there is not references.ts tells.
    if (!comes && known(rule.cams, cams) && known(rule.press, HANDS)) {
      const why = bows.length === 0 ? 'a list of it is empty; write any, or take it out' : 'those before it take them all; put it before them, or take it out';
      found.push(error(where(['ladders', r]), `no bow comes to this ladder for ${rule.axis}: ${why}`));
    }
    if (rule.rungs.length === 0) found.push(warning(where(['ladders', r, 'rungs']), 'this ladder has no rung: the shop is asked before anything was tried; write one, if there is one'));
    const ids = rule.rungs.map((one) => one.knob);
    ids.forEach((id, index) => {
      if (ids.indexOf(id) !== index) found.push(error(where(['ladders', r, 'rungs', index]), `"${id}" is there twice on this ladder, and the second is never come to; take it out`));
    });
    return found;
  });
}
