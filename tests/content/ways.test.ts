// What lint believes of the machine, held to the machine: which conditions exclude each other, and which steps it calls by name.

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CALLED_BY_THE_MACHINE, CALLED_WHERE_THERE } from '../../src/content/lint/calling.ts';
import { NEVER_TOGETHER } from '../../src/content/lint/ways.ts';
import { GUARDS_BY_NAME } from '../../src/machine/guards.ts';
import { stateOf } from '../machine/state-of.ts';

/** Answers that conditions are read from; each step alone, then with each answer of one other. */
const ANSWERS: Readonly<Record<string, readonly (string | null)[]>> = {
  release: ['release-aid', 'fingers', null], growing: ['grown', 'growing', null], hand: ['right', 'left', null], bow: ['tune-1', 'another', 'replaced', 'other-archer', null],
  rest: ['drop-away-cable', 'drop-away-limb', 'blade', 'containment', 'prong', 'unknown', null], cams: ['yoke', 'single-cam', 'hybrid', 'two-track', 'screw-adjust', 'unknown', null],
  press: ['trained', 'shop', 'none', null], backstop: ['sound', 'no-paper', null], method: ['unfletched', 'plumb-line', 'none', null],
};
const pairs = Object.entries(ANSWERS);
const states = pairs.flatMap(([one, values], index) => values.flatMap((value) => pairs.slice(index + 1).flatMap(([other, others]) =>
  others.map((second) => stateOf({ answers: { [one]: value, [other]: second } })))));

test('conditions that lint calls never together never hold together, whatever is answered, and each holds somewhere', () => {
  const held = new Set<string>();
  for (const state of states) {
    for (const group of NEVER_TOGETHER) {
      const now = group.filter((name) => GUARDS_BY_NAME[name](state));
      now.forEach((name) => held.add(name));
      expect(now.length, `${now.join(' and ')} of ${group.join(', ')}`).toBeLessThanOrEqual(1);
    }
  }
  expect([...new Set(NEVER_TOGETHER.flat())].filter((name) => !held.has(name))).toEqual([]);
});

test('every step that lint says the machine calls by name stands as a name in the machine', () => {
  const folder = new URL('../../src/machine/', import.meta.url).pathname;
  const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts')).map((file) => readFileSync(`${folder}${file}`, 'utf8')).join('\n');
  expect([...CALLED_BY_THE_MACHINE, ...CALLED_WHERE_THERE].filter((id) => !sources.includes(`'${id}'`))).toEqual([]);
});
