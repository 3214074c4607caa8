// The machine names steps, answers and sentences of the content in its source. Each of them must be there: this reads the
// source, so that a name that is reached only on a rare way is held too.

import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { contentFiles } from '../tools/compile-content.mjs';
import { checkContent } from '../../src/content/lint.ts';
import { holesOf } from '../../src/content/fill.ts';

const root = new URL('../..', import.meta.url).pathname;
const { content } = checkContent(contentFiles(root));

interface Call {
  readonly place: string;
  /** `phrase` for `phrase(…)`, `.say` for `anything.say(…)`. */
  readonly name: string;
  readonly args: readonly ts.Expression[];
  readonly parent: ts.Node;
}

const calls: readonly Call[] = readdirSync(`${root}src/machine`, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => {
    const path = `${root}src/machine/${file}`;
    const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2022, true);
    const found: Call[] = [];
    const look = (node: ts.Node): void => {
      if (ts.isCallExpression(node)) {
        const called = node.expression;
        const name = ts.isIdentifier(called) ? called.text : ts.isPropertyAccessExpression(called) ? `.${called.name.text}` : '';
        const { line } = source.getLineAndCharacterOfPosition(node.getStart());
        found.push({ place: `src/machine/${file}:${line + 1}`, name, args: [...node.arguments], parent: node.parent });
      }
      ts.forEachChild(node, look);
    };
    look(source);
    return found;
  });

const text = (one: ts.Expression | undefined): string | null =>
  (one !== undefined && (ts.isStringLiteral(one) || ts.isNoSubstitutionTemplateLiteral(one)) ? one.text : null);

test('every sentence that the machine says is in content/phrases.yaml, with no hole but those that it fills', () => {
  const wrong: string[] = [];
  let looked = 0;
  for (const { place, name, args } of calls) {
    const [id, holes] = name === 'phrase' ? args.slice(1) : name === '.say' ? args : [];
    if (id === undefined) continue;
    if (ts.isTemplateExpression(id)) {
      const begins = id.head.text;
      const some = Object.keys(content?.phrases ?? {}).some((key) => key.startsWith(begins));
      if (!some) wrong.push(`${place}: no phrase begins with "${begins}"`);
    }
    const known = text(id);
    if (known === null) continue;
    looked += 1;
    const sentence = content?.phrases[known];
    if (sentence === undefined) {
      wrong.push(`${place}: no phrase "${known}"`);
      continue;
    }
    // Holes that are handed on in a variable, or spread, are held where they are made.
    if (holes !== undefined && (!ts.isObjectLiteralExpression(holes) || holes.properties.some((one) => ts.isSpreadAssignment(one)))) continue;
    const filled = holes?.properties.map((one) => one.name?.getText() ?? '') ?? [];
    const open = holesOf(sentence).filter((hole) => !filled.includes(hole));
    if (open.length > 0) wrong.push(`${place}: "${known}" has holes that are not filled: ${open.join(', ')}`);
  }
  expect(wrong).toEqual([]);
  expect(looked).toBeGreaterThan(20);
});

test('every step whose answer the machine reads by name is there, and answers in that kind', () => {
  const wrong: string[] = [];
  const read = calls.filter((call) => (call.name === 'chosen' || call.name === 'measured') && text(call.args[1]) !== null);
  for (const { place, name, args, parent } of read) {
    const id = text(args[1]) ?? '';
    const step = content?.steps[id];
    const kind = name === 'chosen' ? 'choice' : 'number';
    // Which bow it is, is asked with the bows that are on file: its options are no content.
    if (id === 'bow') continue;
    if (step === undefined) wrong.push(`${place}: no step "${id}"`);
    else if (step.kind !== kind) wrong.push(`${place}: "${id}" is a ${step.kind}, and is read as a ${kind}`);
    else if (step.kind === 'choice' && ts.isBinaryExpression(parent)) {
      const value = text(parent.right);
      if (value !== null && value !== '' && !step.options.some((one) => one.value === value)) wrong.push(`${place}: "${id}" has no option "${value}"`);
    }
  }
  expect(wrong).toEqual([]);
  expect(read.length).toBeGreaterThan(10);
});

test('every guard that asks for a kind of cam or rest asks for one that can be answered', () => {
  const asked = calls.filter((call) => call.place.startsWith('src/machine/guards.ts') && ['cams', 'rest', 'press'].includes(call.name));
  const wrong = asked.flatMap(({ place, name, args }) => {
    const step = content?.steps[name];
    const values = step?.kind === 'choice' ? step.options.map((one) => one.value) : [];
    return args.flatMap((arg) => (values.includes(text(arg) ?? '') ? [] : [`${place}: "${name}" has no option "${text(arg)}"`]));
  });
  expect(wrong).toEqual([]);
  expect(asked.length).toBeGreaterThan(5);
});
