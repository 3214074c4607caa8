// What the linter and the compiler behind it must tell: faults planted in one small source, looked at by the very rules of the house.
// The sources of the repository are looked at by `npx oxlint`, a part of `npm test`.

import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { z } from 'zod';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const FACE = "type Face = 'screen' | 'plain' | 'pipe'; declare const face: Face; declare function f(): void; ";
/** One source a case: what is wrong in it, and the rule that must say so; null for what must pass. */
const CASES: readonly (readonly [name: string, rule: string | null, text: string])[] = [
  ['a type that does not fit', 'TS2322', "export const x: number = 'a';"],
  ['a list whose entry may not be there', 'TS2322', 'export const first = (list: readonly number[]): number => list[0];'],
  ['any that is written', 'no-explicit-any', 'export const f = (value: any): number => Number(value);'],
  ['a parsed text that is given a name', 'no-unsafe-assignment', "export const x = JSON.parse('{}');"],
  ['a parsed text that is given back as if it were known', 'no-unsafe-return', "export function g(): { readonly a: number } { return JSON.parse('{}'); }"],
  ['a parsed text that is handed on', 'no-unsafe-argument', "declare function take(a: number): void; take(JSON.parse('1')); export {};"],
  ['a part of a parsed text', 'no-unsafe-member-access', "export const x: unknown = JSON.parse('{}').a;"],
  ['what is taken as unknown at once', null, "export const x: unknown = JSON.parse('{}');"],
  ['an assertion that a value is there', 'no-non-null-assertion', 'declare const list: readonly number[]; export const x = list[0]!;'],
  ['a member without a case', 'switch-exhaustiveness-check', `${FACE}switch (face) { case 'screen': f(); break; case 'plain': f(); break; } export const done = 1;`],
  ['a default that swallows members', 'switch-exhaustiveness-check', `${FACE}switch (face) { case 'screen': f(); break; default: f(); } export const done = 1;`],
  ['a default for members to come', 'switch-exhaustiveness-check', `${FACE}switch (face) { case 'screen': case 'plain': case 'pipe': f(); break; default: f(); } export const done = 1;`],
  ['a switch with a case for each', null, `${FACE}switch (face) { case 'screen': case 'plain': f(); break; case 'pipe': f(); break; } export const done = 1;`],
  ['a cast', 'consistent-type-assertions', "declare const word: string; export const a = word as 'a';"],
  ['a list that is kept as it stands', null, "export const d = ['a'] as const;"],
  ['a permission that nothing needs', 'Unused oxlint-disable', '// oxlint-disable-next-line typescript/consistent-type-assertions -- not needed\nexport const a = 1;'],
];

const told = z.object({ diagnostics: z.array(z.object({ code: z.string().optional(), message: z.string(), filename: z.string() })) });

const folder = mkdtempSync(join(tmpdir(), 'quarterturn-planted-'));
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

function linted(): z.infer<typeof told>['diagnostics'] {
  mkdirSync(join(folder, 'src'));
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ extends: join(ROOT, 'tsconfig.json'), compilerOptions: { types: [] }, include: ['src'] }));
  for (const [index, [, , text]] of CASES.entries()) writeFileSync(join(folder, 'src', `case-${index}.ts`), `${text}\n`);
  const args = [join(ROOT, 'node_modules/oxlint/bin/oxlint'), '--config', join(ROOT, '.oxlintrc.json'), '--format=json', '--no-ignore', folder];
  try {
    execFileSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8', stdio: 'pipe' });
  } catch (error) {
    const { stdout } = z.object({ stdout: z.string() }).parse(error);
    return told.parse(JSON.parse(stdout)).diagnostics;
  }
  return [];
}

describe('types are held to more than the compiler asks', () => {
  const all = linted();
  it.each(CASES.map(([name, rule], index) => ({ name, rule, index })))('$name: $rule', ({ rule, index }) => {
    const own = all.filter(({ filename }) => filename.endsWith(`case-${index}.ts`)).map(({ code, message }) => `${code ?? ''} ${message}`);
    if (rule === null) expect(own).toEqual([]);
    else expect(own).toContainEqual(expect.stringContaining(rule));
  });
});
