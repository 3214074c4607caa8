// Every step is asked by someone, once: a block, an adjustment's needs, a re-check, or the machine by name.

import { error } from '../problem.ts';
import type { Path, Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';

/** Steps that the machine calls by id: they must be in the content, and may stand outside every block. */
export const CALLED_BY_THE_MACHINE = [
  'bow', 'what-happened', 'released', 'use', 'cams', 'rest', 'press', 'rest-scale', 'centre-shot-figure',
  'contact', 'grip', 'face', 'lean', 'place', 'someone-hurt', 'what-was-changed', 'arrow-check', 'rest-check',
  'heads-swapped', 'broadheads-farther', 'method', 'unfletched-ready', 'first-unfletched', 'plumb-ready', 'group-at-20',
] as const;

/** Steps that the machine calls by id too, where content has them: which of the known bows, the arrow added up, the arrows one by one. */
export const CALLED_WHERE_THERE = [
  'which-bow', 'mass-way', 'shaft-grains', 'shaft-length', 'point-grains', 'insert-grains', 'nock-grains', 'vane-count', 'vane-grains', 'wrap-grains',
  'arrows-in-set', 'arrow-out', 'vanes', 'nock-turns', 'turned-clears', 'nock-stays', 'paper-again',
] as const;

export function calling(content: Content, where: Where): Problem[] {
  return [...inTwoBlocks(content, where), ...unreached(content, where), ...neverCalled(content, where), ...machineCalls(content, where)];
}

function inTwoBlocks(content: Content, where: Where): Problem[] {
  const first = new Map<string, string>();
  const found: Problem[] = [];
  eachPlaced(content, (id, block, path) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, block);
    else found.push(error(where(path), `the step "${id}" is also in the block "${before}"; keep it in one, and ask it again through content/rechecks.yaml`));
  });
  return found;
}

function unreached(content: Content, where: Where): Problem[] {
  const reached = new Set<string>();
  eachPlaced(content, (id) => reached.add(id));
  for (const knob of Object.values(content.knobs)) for (const id of knob.needs) reached.add(id);
  for (const ids of Object.values(content.rechecks)) for (const id of ids) reached.add(id);
  const called: ReadonlySet<string> = new Set(CALLED_BY_THE_MACHINE);
  return Object.values(content.steps).flatMap((step) => {
    if (reached.has(step.id) || (step.onDemand && called.has(step.id))) return [];
    const instead = called.has(step.id)
      ? 'the machine calls it by name: write onDemand: true, or put it in a block'
      : 'put it in a block of content/procedure.yaml, in the needs of an adjustment or in content/rechecks.yaml, or take it out';
    return [error(where(['steps', step.id]), `nothing asks the step "${step.id}"; ${instead}`)];
  });
}

/** In a block, a step on demand only keeps its place in the order: something must call it. */
function neverCalled(content: Content, where: Where): Problem[] {
  const called = new Set<string>([...CALLED_BY_THE_MACHINE, ...CALLED_WHERE_THERE, ...Object.values(content.rechecks).flat(), ...Object.values(content.knobs).flatMap((knob) => knob.needs)]);
  const found: Problem[] = [];
  eachPlaced(content, (id) => {
    if (content.steps[id]?.onDemand !== true || called.has(id)) return;
    found.push(error(where(['steps', id, 'onDemand']), `"${id}" is asked on demand and nothing calls it; take onDemand out, or name it in content/rechecks.yaml or in the needs of an adjustment`));
  });
  return found;
}

function machineCalls(content: Content, where: Where): Problem[] {
  return CALLED_BY_THE_MACHINE.filter((id) => content.steps[id] === undefined).map((id) =>
    error(where(['chapters']), `the machine calls the step "${id}" by name and no chapter has it; write it`));
}

function eachPlaced(content: Content, tell: (id: string, block: string, path: Path) => void): void {
  content.chapters.forEach((chapter, c) => chapter.blocks.forEach((block, b) =>
    block.steps.forEach((id, s) => tell(id, block.id, ['chapters', c, 'blocks', b, 'steps', s]))));
}
