// The content that is shipped.

import { expect, test } from 'vitest';
import { contentFiles } from '../tools/compile-content.mjs';
import { checkContent } from '../../src/content/lint.ts';
import { ASKED_ALONE } from '../../src/content/lint/safety.ts';
import { sayProblem } from '../../src/content/problem.ts';

const root = new URL('../..', import.meta.url).pathname;
const { content, problems } = checkContent(contentFiles(root));

test('the shipped content has no problem, not even a warning', () => {
  expect(problems.map(sayProblem)).toEqual([]);
  expect(Object.keys(content?.steps ?? {}).length).toBeGreaterThan(40);
});

test('the five things that can hurt most are all asked, undrawn, before anything is drawn', () => {
  const order = content?.chapters.find((one) => one.id === 'safety')?.blocks.flatMap((one) => one.steps) ?? [];
  const firstDraw = order.findIndex((id) => content?.steps[id]?.pause === 'draw');
  expect(firstDraw).toBeGreaterThan(0);
  for (const id of ASKED_ALONE) {
    expect([id, content?.steps[id]?.pause]).toEqual([id, 'undrawn']);
    expect([id, order.indexOf(id) >= 0 && order.indexOf(id) < firstDraw]).toEqual([id, true]);
  }
});
