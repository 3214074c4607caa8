// The rules that the compiler does not have, each held against a fault that is planted in a small source in memory.
// The sources of the repository themselves are checked by `node --import tsx tests/tools/types/types.ts`, with everything else about types.

import { describe, expect, it } from 'vitest';
import { overCeiling } from '../tools/types/casts.ts';
import { programOf } from '../tools/types/program.ts';
import { problemsIn, type Problem } from '../tools/types/rules.ts';

function found(text: string): readonly Problem[] {
  const { source, checker, errors } = programOf(`export {};\n${text}`);
  expect(errors).toEqual([]);
  return problemsIn(source, checker, 'planted.ts');
}
const rulesIn = (text: string): readonly Problem['rule'][] => found(text).map(({ rule }) => rule);

const FACE = "type Face = 'screen' | 'plain' | 'pipe'; declare const face: Face; declare function never(value: never): string;\n";

describe('values that nothing is known of', () => {
  it.each([
    ['any that is written', 'export const f = (value: any): number => Number(value);', 2],
    ['any in the depth of a type', 'export type T = readonly Readonly<Record<string, any>>[];', 1],
    ['a parsed text that is given a name', "export const x = JSON.parse('{}');", 1],
    ['a parsed text that is given back as if it were known', "export function f(): { readonly a: number } { return JSON.parse('{}'); }", 1],
    ['a parsed text that is handed on', "declare function take(a: number): void; take(JSON.parse('1'));", 1],
    ['a part of a parsed text', "export const x: unknown = JSON.parse('{}').a;", 1],
    ['an entry of what may be any list', 'export const f = (x: unknown): number => (Array.isArray(x) ? x[0] : 1);', 1],
    ['a cast of it', "export const x = JSON.parse('1') as number;", 1],
  ])('tells %s', (_name, text, times) => {
    const problems = found(text);
    expect(problems.filter(({ rule }) => rule === 'any')).toHaveLength(times);
    expect(problems[0]).toMatchObject({ file: 'planted.ts', line: 2 });
  });

  it.each([
    ['what is taken as unknown at once', "export const x: unknown = JSON.parse('{}');"],
    ['what is given back as unknown', "export function f(): unknown { return JSON.parse('{}'); }"],
    ['what is handed on as unknown', "declare function take(a: unknown): void; take(JSON.parse('1'));"],
    ['what is kept as unknown', "export let x: unknown; x = JSON.parse('1');"],
    ['what is dropped', "JSON.parse('1');"],
    ['the word in a text or a comment', "// any\nexport const any = 'any';"],
  ])('lets pass %s', (_name, text) => expect(rulesIn(text)).toEqual([]));
});

describe('assertions that something is there', () => {
  it.each([
    ['a value', 'declare const list: readonly number[]; export const x = list[0]!;'],
    ['a name', 'let x!: number; export const y = () => x;'],
    ['a field', 'export class C { x!: number }'],
  ])('are told of %s', (_name, text) => expect(rulesIn(text)).toEqual(['non-null']));

  it('are no comparisons', () => expect(rulesIn('declare const a: number; export const x = !a; export const y = a !== 1;')).toEqual([]));
});

describe('switches over closed unions', () => {
  it.each([
    ['a member without a case', "switch (face) { case 'screen': break; case 'plain': break; }", /no case for "pipe"/],
    ['a default that swallows members', "switch (face) { case 'screen': break; default: break; }", /swallows "plain", "pipe"/],
    ['a default for members to come', "switch (face) { case 'screen': case 'plain': case 'pipe': break; default: break; }", /added later/],
    ['a default that hands a member to never only in name', "declare const other: string; switch (face) { case 'screen': break; default: void (other satisfies string); }", /swallows/],
    ['members that may be missing', "declare const may: Face | undefined; switch (may) { case 'screen': case 'plain': case 'pipe': break; }", /no case for undefined/],
    ['true and false', 'declare const yes: boolean; switch (yes) { case true: break; }', /no case for false/],
    ['kinds of an object', "declare const shape: { kind: 'a' } | { kind: 'b' }; switch (shape.kind) { case 'a': break; default: break; }", /swallows "b"/],
  ])('are told of %s', (_name, text, says) => {
    const problems = found(FACE + text);
    expect(problems.map(({ rule }) => rule)).toEqual(['switch']);
    expect(problems[0]?.says).toMatch(says);
  });

  it.each([
    ['all have their case', "switch (face) { case 'screen': case 'plain': break; case 'pipe': break; }"],
    ['what is left is handed to never', "switch (face) { case 'screen': case 'plain': case 'pipe': break; default: face satisfies never; }"],
    ['what is left is a parameter of type never', "switch (face) { case 'screen': case 'plain': case 'pipe': break; default: never(face); }"],
    ['it was narrowed before', "if (face !== 'pipe') { switch (face) { case 'screen': case 'plain': break; } }"],
    ['the union is open', "declare const word: string; switch (word) { case 'a': break; default: break; }"],
  ])('are whole where %s', (_name, text) => expect(rulesIn(FACE + text)).toEqual([]));
});

describe('casts', () => {
  const planted = "declare const word: string; export const a = word as 'a'; export const b = <'b'>word; export const c = word as unknown; export const d = ['a'] as const;";

  it('are counted, but for those that claim nothing', () => {
    expect(rulesIn(planted)).toEqual(['cast', 'cast']);
  });

  it('are as many as each file may have: no more, and no fewer without saying so', () => {
    const problems = found(planted);
    expect(overCeiling(problems, { 'planted.ts': 2 })).toEqual([]);
    expect(overCeiling(problems, { 'planted.ts': 1 }).map(({ says }) => says)).toEqual([expect.stringMatching(/2 casts here, 1 allowed/), expect.stringMatching(/2 casts here, 1 allowed/)]);
    expect(overCeiling(problems, {})).toHaveLength(2);
    expect(overCeiling(problems, { 'planted.ts': 3 })[0]?.says).toMatch(/2 casts here, 3 allowed: write the lower number/);
    expect(overCeiling([], { 'gone.ts': 1 })).toHaveLength(1);
  });
});
