// Every kind of mistake is told in these very words, at this place: a changed message is changed on purpose.

import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { describe, expect, test } from 'vitest';
import { SMALL_BOOK } from './small-book.ts';
import { sound, spoilt, told } from './sound.ts';

interface Case { name: string; file: string; from: string; to: string; told: string[] }
const cases: Case[] = parse(readFileSync(new URL('../fixtures/bad-content/cases.yaml', import.meta.url), 'utf8')) as Case[];

const harmful = parse(readFileSync(new URL('../fixtures/bad-content/cases-harm.yaml', import.meta.url), 'utf8')) as Case[];

describe('a mistake is told with its place and the way out', () => {
  test.each(cases)('$name', (one) => {
    expect(one.told.length).toBeGreaterThan(0);
    expect(told(spoilt(one.file, one.from, one.to))).toEqual(one.told);
  });
  test('the cases are many, and each has its own name', () => {
    expect(cases.length).toBeGreaterThan(125);
    expect(new Set(cases.map((one) => one.name)).size).toBe(cases.length);
  });
});

describe('what could hurt is told with its place and the way out', () => {
  test.each(harmful)('$name', (one) => {
    expect(one.told.length).toBeGreaterThan(0);
    expect(told(spoilt(one.file, one.from, one.to), SMALL_BOOK)).toEqual(one.told);
  });
  test('the cases are many, and each has its own name', () => {
    expect(harmful.length).toBeGreaterThan(45);
    expect(new Set(harmful.map((one) => one.name)).size).toBe(harmful.length);
  });
});

test('what can hurt most is never one check of many', () => {
  const files = spoilt('chapters/safety.yaml', '  strings:', '  limbs:');
  files.set('content/procedure.yaml', (files.get('content/procedure.yaml') ?? '').replace('[backstop, strings]', '[backstop, limbs]'));
  expect(told(files)).toEqual([
    'content/chapters/safety.yaml:16:3: "limbs" is a chunk; what can hurt most is asked by itself: write kind: choice or number',
  ]);
});

describe('files', () => {
  test('a missing file and a stranger are both told', () => {
    const files = sound();
    files.set('content/knob.yaml', files.get('content/knobs.yaml') ?? '');
    files.delete('content/knobs.yaml');
    files.set('content/extra.yaml', 'a: b\n');
    expect(told(files)).toEqual([
      'content/extra.yaml:1:1: this file is no part of the content; steps belong in content/chapters/NAME.yaml',
      'content/knob.yaml:1:1: this file is no part of the content; did you mean content/knobs.yaml?',
      'content/knobs.yaml:1:1: this file is missing; the content cannot do without it',
    ]);
  });
  test('an empty file is told', () => {
    expect(told(sound().set('content/cautions.yaml', ''))).toEqual([
      'content/cautions.yaml:1:1: the file is left empty; write keys and values, one a line',
    ]);
  });
  test('a step in two files is told with both places', () => {
    const twice = 'steps:\n  peak: { kind: text, pause: talk, effect: chosen, short: Again }\n';
    expect(told(sound().set('content/chapters/zz.yaml', twice))).toEqual([
      'content/chapters/zz.yaml:2:3: the step "peak" is also in content/chapters/safety.yaml:41; keep one of them',
    ]);
  });
  test('mistakes in several files are told together, in reading order', () => {
    const files = spoilt('knobs.yaml', 'axis: height', 'axis: hight');
    files.set('content/cautions.yaml', 'finger: 3\npress: !b x\n');
    expect(told(files)).toEqual([
      'content/cautions.yaml:2:8: tags (!name) are not used in content; put the text in quotes',
      'content/knobs.yaml:3:9: "hight" is no "axis"; did you mean "height"?',
    ]);
  });
  test('windows line ends change nothing', () => {
    expect(told(new Map([...sound()].map(([file, text]) => [file, text.replaceAll('\n', '\r\n')])))).toEqual([]);
  });
});
