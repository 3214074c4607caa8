// The words of the practice bow: whatever is asked, there is something to be seen, and what is seen never names the answer.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPracticeWords } from '../../src/content/practice-words.ts';
import { aboutOf } from '../../src/machine/ask.ts';
import type { Ask } from '../../src/machine/types.ts';
import type { Step } from '../../src/content/types.ts';
import { HONEST } from '../../src/practice/archer.ts';
import { byModel } from '../../src/practice/by-model.ts';
import { FOR_THE_ARCHER, FOR_THE_DEALER } from '../../src/practice/danger.ts';
import { LESSONS } from '../../src/practice/lesson-names.ts';
import { FRESH } from '../../src/practice/memory.ts';
import { seenAt } from '../../src/practice/seen.ts';
import { bowByNumber, soundWorld, type World } from '../../src/practice/world.ts';
import { lookWords } from '../../src/training/look-words.ts';
import { CONTENT, KNOBS } from '../practice/play.ts';
import { WORDS } from './learner.ts';

const FLIGHT = byModel();
const base = { step: 'x', short: 'Arrow 2: what do you see?', text: [], why: [], caution: [] };
const options = (values: readonly string[], pass?: string) => values.map((value) => ({ value, label: value, ...(value === pass ? { pass: true as const } : {}) }));
const askOf = (step: Step): Ask => {
  const common = { ...base, step: step.id, about: aboutOf(step), ...(step.unknown ? { unknown: true as const } : {}) };
  switch (step.kind) {
    case 'choice': return { ...common, kind: 'choice', options: options(step.options.map(({ value }) => value), step.options.find(({ gate }) => gate === 'pass')?.value) };
    case 'chunk': return { ...common, kind: 'choice', many: true, options: options(['all true', ...step.checks.map(({ id }) => id)], 'all true') };
    case 'number': return { ...common, kind: 'number', unit: step.unit, min: step.min, max: step.max };
    case 'confirm': return { ...common, kind: 'confirm' };
    case 'text': return { ...common, kind: 'text' };
  }
};
const steps = Object.values(CONTENT.steps);
const loop: readonly Ask[] = [
  ...Object.values(CONTENT.inspections).map((one): Ask => ({ ...base, about: 'inspected', kind: 'choice', options: options(one.options.map(({ value }) => value)) })),
  { ...base, about: 'accept', kind: 'choice', options: options(['accept', 'go on']) }, { ...base, about: 'finishing', kind: 'choice', options: options(['leave', 'one more step']) },
  { ...base, about: 'turn-the-set', kind: 'choice', options: options(['done', 'one stays', 'leave']) }, { ...base, about: 'arrow-look', kind: 'choice', options: options(['crack', 'wobble', 'vane', 'nothing']) },
  ...steps.flatMap((step) => (step.kind === 'chunk' ? step.checks : [])).map(({ id }): Ask => ({ ...base, about: `gate:${id}`, kind: 'choice', options: options(['true', 'false'], 'true') })),
];
const seen = (world: World, ask: Ask): string => lookWords(WORDS, CONTENT, ask, seenAt(world, FRESH, ask, FLIGHT)).join(' ');

describe('what is seen', () => {
  const asks = [...steps.map(askOf), ...loop];
  const worlds = [soundWorld(4, KNOBS, HONEST), ...[2, 3, 9, 12, 16, 21].map((number) => bowByNumber(number, KNOBS))];
  it('is there for every question of the walk, on whatever bow', () => {
    expect(asks.length).toBeGreaterThan(200);
    const silent = worlds.flatMap((world) => asks.filter((ask) => seen(world, ask) === '').map(({ about }) => about));
    expect([...new Set(silent)]).toEqual([]);
  });

  it.each([...FOR_THE_DEALER, ...FOR_THE_ARCHER])('$at is seen where it is wrong, and otherwise not', (danger) => {
    const sound = soundWorld(4, KNOBS, HONEST);
    const wrong: World = { ...sound, bow: { ...sound.bow, danger } };
    const differ = asks.filter((ask) => seen(sound, ask) !== seen(wrong, ask)).map(({ about }) => about);
    const at: string = 'check' in danger.at ? danger.at.check : danger.at.about;
    expect(differ.length).toBeGreaterThan(0);
    for (const about of differ) expect([at, `gate:${at}`, 'gate:bow-at-rest', 'gate:arrows-looked-at']).toContain(about);
  });

  it('is no copy of an option: the answer is the learner\'s', () => {
    const labels = new Set(steps.flatMap((step) => (step.kind === 'choice' ? step.options.map(({ label }) => label.toLowerCase()) : step.kind === 'chunk' ? step.checks.map(({ label }) => label.toLowerCase()) : [])));
    const all = [...Object.values(WORDS.looks).flatMap((one) => Object.values(one)), ...Object.values(WORDS.checks).flatMap(({ fine, not }) => [fine, not ?? ''])];
    expect(all.filter((text) => labels.has(text.toLowerCase().replace(/\.$/, '')))).toEqual([]);
  });
});

describe('content/practice.yaml', () => {
  const source = readFileSync(new URL('../../content/practice.yaml', import.meta.url), 'utf8');
  it('is what was built, and has a sentence for every lesson', () => {
    expect(readPracticeWords('content/practice.yaml', source)).toEqual({ words: WORDS, problems: [] });
    expect(Object.keys(WORDS.lessons)).toEqual([...LESSONS]);
  });

  it('names nothing that is not asked', () => {
    const asked = new Set([...steps.map((step) => aboutOf(step).replace(/^gate:/, '')), ...loop.map(({ about }) => about)]);
    const named = [...Object.keys(WORDS.looks), ...Object.keys(WORDS.numbers), ...Object.keys(WORDS['not-known']), ...Object.keys(WORDS.texts), ...Object.keys(WORDS.chunks)];
    expect(named.filter((about) => !asked.has(about))).toEqual([]);
    const checks = new Set(steps.flatMap((step) => (step.kind === 'chunk' ? step.checks.map(({ id }) => id) : [])));
    expect(Object.keys(WORDS.checks).filter((id) => !checks.has(id))).toEqual([]);
  });

  it.each([
    ['a word too many', (text: string) => text.replace('\nsays:', '\nshouts: {}\nsays:'), /shouts/],
    ['a sentence that is missing', (text: string) => text.replace(/\n {2}real: .*/, ''), /real/],
    ['an exclamation mark', (text: string) => text.replace('slept well,', 'slept well!'), /exclamation/],
  ])('is refused with %s, by file and line', (_name, spoil, says) => {
    const { words, problems } = readPracticeWords('content/practice.yaml', spoil(source));
    expect(words).toBeNull();
    expect(problems.some(({ file, line, text }) => file === 'content/practice.yaml' && line > 0 && says.test(text))).toBe(true);
  });
});
