// The page for authors: its example is compiled with the content that is shipped, and its table names every file.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { checkContent } from '../../src/content/lint.ts';
import { sayProblem } from '../../src/content/problem.ts';
import { FILES } from '../../src/content/schema.ts';
import { contentFiles } from '../tools/compile-content.mjs';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const page = readFileSync(`${ROOT}content/README.md`, 'utf8');
const example = /```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? '';

/** The shipped content with the example as one more file, and its steps at the end of the first block of the baseline. */
function withExample(text: string): Map<string, string> {
  const files = new Map(contentFiles(ROOT));
  const procedure = files.get('content/procedure.yaml') ?? '';
  const placed = procedure.replace('nock-height, centre-shot]', 'nock-height, centre-shot, peep-height, quiver-tight]');
  expect(placed).not.toBe(procedure);
  return files.set('content/procedure.yaml', placed).set('content/chapters/example.yaml', text);
}

test('the example is taken as it stands, without an error or a warning', () => {
  const { content, problems } = checkContent(withExample(example));
  expect(problems.map(sayProblem)).toEqual([]);
  expect(content?.steps['peep-height']).toMatchObject({ kind: 'number', about: 'peep-height', unit: 'in', unknown: true });
  expect(content?.steps['quiver-tight']).toMatchObject({ kind: 'chunk', about: 'gate:quiver-tight', everyTune: true, checks: [{ id: 'quiver-mount', source: ['practice-bow'] }] });
});

test('a slip in it would be told at its line', () => {
  const { problems } = checkContent(withExample(example.replace('unit: in', 'unit: inches')));
  expect(problems.map(sayProblem)[0]).toMatch(/^content\/chapters\/example\.yaml:8:11: /);
});

test('the table names every file of the content', () => {
  const missing = Object.keys(FILES).map((file) => file.replace('content/', '')).filter((name) => !page.includes(`\`${name}\``));
  expect(missing).toEqual([]);
});
