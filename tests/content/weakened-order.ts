// The order and the re-checks made less careful: a step left out, put elsewhere, or called something else.

import type { ChapterPlan, Content, Pause, Trigger } from '../../src/content/types.ts';
import { moved, put, without } from './weakening.ts';
import type { Weakening } from './weakening.ts';

export const ofOrder = (content: Content): Weakening[] => [...pauses(content), ...places(content), ...chapters(content), ...rechecks(content)];

function pauses(content: Content): Weakening[] {
  return Object.values(content.steps).flatMap((step): Weakening[] => {
    const drawn = step.pause === 'draw' || step.pause === 'shoot';
    const others: Pause[] = drawn ? ['talk', 'undrawn'] : step.effect === 'gate' && step.pause === 'undrawn' ? ['draw', 'shoot'] : [];
    const group = drawn ? 'a draw that is called none' : 'a look that waits for a draw';
    return others.map((pause) => ({ group, name: `${step.id}: ${step.pause} to ${pause}`, content: put(content, ['steps', step.id, 'pause'], pause) }));
  });
}

function places(content: Content): Weakening[] {
  const found: Weakening[] = [];
  content.chapters.forEach((chapter, c) => chapter.blocks.forEach((block, b) => block.steps.forEach((id, s) => {
    const step = content.steps[id];
    if (step === undefined) return;
    const drawn = step.pause === 'draw' || step.pause === 'shoot';
    const out = put(content, ['chapters', c, 'blocks', b, 'steps'], without(block.steps, s));
    const add = (group: string, where: string, to: Content): void => { found.push({ group, name: `${id}: ${where}`, content: to }); };
    if (step.effect === 'gate' || step.onDemand) add('a step left out of its block', chapter.id, out);
    if (drawn && !step.onDemand && b + s > 0) add('a draw put first', `first of ${chapter.id}`, placed(out, c, 0, (ids) => [id, ...ids]));
    if (drawn && !step.onDemand && c > 0) add('a draw put first', 'first of all', placed(out, 0, 0, (ids) => [id, ...ids]));
    if (!step.onDemand && step.effect === 'gate' && !drawn) {
      const last = content.chapters.length - 1;
      const end = chapter.blocks.length - 1;
      add('a look put last', `last of ${chapter.id}`, placed(out, c, end, (ids) => [...ids, id]));
      if (c < last) add('a look put last', 'in the last chapter', placed(out, last, 0, (ids) => [...ids, id]));
    }
  })));
  return found;
}

const placed = (content: Content, c: number, b: number, change: (ids: readonly string[]) => string[]): Content =>
  put(content, ['chapters', c, 'blocks', b, 'steps'], change(content.chapters[c]?.blocks[b]?.steps ?? []));

function chapters(content: Content): Weakening[] {
  const put1 = (name: string, all: readonly ChapterPlan[]): Weakening => ({ group: 'chapters in another order', name, content: { ...content, chapters: all } });
  return content.chapters.flatMap((chapter, c) => [
    ...(c > 0 ? [put1(`${chapter.id} first`, moved(content.chapters, c, 0))] : []),
    put1(`${chapter.id} left out`, without(content.chapters, c)),
  ]);
}

function rechecks(content: Content): Weakening[] {
  return (Object.entries(content.rechecks) as [Trigger, readonly string[]][]).flatMap(([trigger, ids]) => [
    ...ids.map((id, index): Weakening => ({
      group: 'one thing not asked again', name: `${trigger}: ${id}`, content: put(content, ['rechecks', trigger], without(ids, index)),
    })),
    ...(ids.length === 0 ? [] : [{ group: 'nothing asked again', name: trigger, content: put(content, ['rechecks', trigger], []) }]),
  ]);
}
