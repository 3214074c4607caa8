/// <reference types="vite/types/importMeta.d.ts" />
// Every example in the sources of maths and archery is run, and again with each of its numbers made wild: what is thrown then is a
// RangeError in the name of the function that was called, and what comes back is no NaN.

import { describe, expect, it } from 'vitest';
import { checks } from '../../src/maths/check.ts';
import * as units from '../../src/maths/units.ts';
import { differs, documented, evaluate, examplesIn, functionsIn, withNumbers, type Documented, type Example } from '../tools/examples.ts';

const ALL = documented();
const SOURCES = import.meta.glob<Record<string, unknown>>('../../src/{maths,archery}/**/*.ts');
const scopeOf = async ({ file }: Documented): Promise<Record<string, unknown>> => ({ checks, ...units, ...await SOURCES[`../../src/${file}`]?.() });

/** null where the example holds, otherwise what is wrong. */
function fault({ expression, relation, value }: Example, scope: Record<string, unknown>): string | null {
  try {
    const found = evaluate(expression, scope);
    return relation === 'throws' ? 'it throws nothing' : differs(found, value);
  } catch (cause) {
    if (!(cause instanceof Error) || relation === 'is') return String(cause);
    return cause instanceof RangeError ? differs(cause.message, value) : String(cause);
  }
}

const WILD = ['NaN', 'Infinity', '-Infinity', '0', '-1', '0.5', '1e-300', '1e-30', '1e30', '-1e30', '1e300'];

/** Why a number that cannot be meant is not stopped in the name of this function; null where it is. One without checks lets all through. */
function leaks({ name, checked }: Pick<Documented, 'name' | 'checked'>, expression: string, scope: Record<string, unknown>): string | null {
  try {
    const nan = hasNaN(evaluate(expression, scope));
    return checked && nan ? `${expression} gives a NaN` : null;
  } catch (cause) {
    // A blank, or next to nothing, behind the name: it does not say what is wrong.
    const named = checked && cause instanceof RangeError && cause.message.startsWith(`${name}: `) && /^\w+: \S.{9}/.test(cause.message);
    return named ? null : `${expression} throws ${String(cause)}`;
  }
}

const hasNaN = (value: unknown): boolean =>
  Number.isNaN(value) || (typeof value === 'object' && value !== null && Object.values(value).some(hasNaN));

describe.each(ALL)('$file: $name', (one) => {
  it('has an example that holds', async () => {
    expect(one.example, 'write below its doc comment: // Example: expression is value.').not.toBe('');
    const scope = await scopeOf(one);
    for (const example of examplesIn(one.example)) {
      expect(example.expression).toContain(`${one.name}(`);
      expect(fault(example, scope), `${example.expression} ${example.relation} ${example.value}`).toBeNull();
    }
  });
  it('says of what it throws, where it can', () => {
    expect(one.doc, 'say what it is for in a /** doc comment */').not.toBe('');
    expect(/Throws RangeError/.test(one.doc), one.checked ? 'it can throw; say when: "Throws RangeError ..."' : 'it throws nothing of its own').toBe(one.checked);
  });
});

it.each(ALL)('$file: $name stops wild numbers in its own name', async (one) => {
  const scope = await scopeOf(one);
  const wild = examplesIn(one.example).filter(({ relation }) => one.checked || relation === 'is').flatMap(({ expression }) => withNumbers(expression, WILD));
  expect(wild.map((expression) => leaks(one, expression, scope)).filter((why) => why !== null)).toEqual([]);
});

describe('the reader of examples', () => {
  const source = (comment: string, rest = 'export function f(n: number): number { return n; }'): readonly Documented[] => functionsIn('a.ts', `import x from 'x';\n\n${comment}\n${rest}\n`);
  it('finds comment and example of functions, and whether they have checks', () => {
    expect(source('/** Does a thing. Throws\n * RangeError. */\n// Example: f(1) is\n// 1.', 'export function f(n: number): number { must.f.finite(n); return n; }'))
      .toEqual([{ file: 'a.ts', name: 'f', doc: 'Does a thing. Throws RangeError.', example: 'f(1) is 1.', checked: true }]);
    expect(source('// f is nothing to read\n', 'export const f = (n: number): number => must.g(n);')).toEqual([{ file: 'a.ts', name: 'f', doc: '', example: '', checked: false }]);
    for (const other of ['function f() {}', 'export const f = 1;', 'export type F = 1;', "export const f = (n: number): F => inUnit(n, 'f');", "export { f } from './f.ts';"]) expect(source('', other)).toEqual([]);
  });
  it('splits outside of brackets and quotes', () => {
    expect(examplesIn("f({ a: 'x is y; z' }) is 'a is b'; f(-1) throws \"f: 1; 2\".")).toEqual([
      { expression: "f({ a: 'x is y; z' })", relation: 'is', value: "'a is b'" }, { expression: 'f(-1)', relation: 'throws', value: '"f: 1; 2"' },
    ]);
    expect(() => examplesIn('f(1) gives 1.')).toThrow('"f(1) gives 1" has not the form');
  });
  it.each<[unknown, string, boolean]>([
    [0.12345, '0.123', true], [0.1236, '0.123', false], [2, '2', true], [2.1, '2', false], [-0.5, '-0.50', true], [1.26e-7, '1.3e-7', true], [1.36e-7, '1.3e-7', false],
    [NaN, '0.1', false], ['0.1', '0.1', false], [Infinity, 'Infinity', true], [null, 'null', true], [undefined, 'null', false], ['a', "'a'", true], ['b', "'a'", false],
    [true, 'true', true], [[1, 2.04], '[1, 2.0]', true], [[1, 2, 3], '[1, 2]', false], [{ a: 1, b: { c: 'x' } }, "{ a: 1, b: { c: 'x' } }", true],
    [{ a: 1, f: () => 1 }, '{ a: 1 }', true], [{ a: 1, b: 2 }, '{ a: 1 }', false], [{ a: 1 }, '{ b: 1 }', false], [3, '{ a: 1 }', false], [{ 'a-b': 1 }, "{ 'a-b': 1 }", true],
  ])('%j against %s: %s', (found, written, right) => expect(differs(found, written) === null).toBe(right));
  it('tells examples that do not hold', () => {
    const scope = { f: (n: number): number => { if (n < 0) throw new RangeError('f: no, not that'); return n; } };
    const told = (text: string): readonly (string | null)[] => examplesIn(text).map((example) => fault(example, scope));
    expect(told("f(1) is 1; f(-1) throws 'f: no, not that'")).toEqual([null, null]);
    expect(told("f(1) is 2; f(1) throws 'f: no, not that'; f(-1) throws 'f: yes'; g(1) throws 'no'; f(-1) is 1")).not.toContain(null);
  });
  it('makes numbers wild, one at a time, and tells what comes through', () => {
    expect(withNumbers('f(1, { a: -2 })', ['0'])).toEqual(['f((0), { a: -2 })', 'f(1, { a: -(0) })']);
    const scope = { f: (n: number): object => { if (n < 0) throw new RangeError('g: no'); if (n > 9) throw new Error('f: no, not that'); if (n === 5) throw new RangeError('f: no, not that'); if (n === 6) throw new RangeError('f:  is 6'); return { deep: [n] }; } };
    expect(['f(1)', 'f(5)'].map((text) => leaks({ name: 'f', checked: true }, text, scope))).toEqual([null, null]);
    for (const text of ['f(NaN)', 'f(-1)', 'f(10)', 'f(6)']) expect(leaks({ name: 'f', checked: true }, text, scope)).toContain(text);
    expect(leaks({ name: 'f', checked: false }, 'f(5)', scope)).toContain('f(5)');
    expect(leaks({ name: 'f', checked: false }, 'f(NaN)', scope)).toBeNull();
  });
});
