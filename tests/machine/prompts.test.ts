// How many questions stand between an archer and the first sheet.

import { expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Carried, View } from '../../src/machine/types.ts';
import { carriedOf, openSession } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const bow: Bow = { start: { x: 0.2, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 } }, sd: 0.08, seed: 4, answers: { 'arrows-set-aside': 1 } };

/** Questions answered before the first tear is asked for. */
function promptsToPaper(known: readonly Carried[], answers: Readonly<Record<string, unknown>> = {}): { readonly asked: readonly string[]; readonly view: View } {
  const session = openSession({ content, store: memoryStore(), startAt: new Date(NOON), engine: 'test', tune: 'next', known });
  const archer = new TestArcher({ ...bow, answers: { ...bow.answers, ...answers } });
  const asked: string[] = [];
  while (session.view().ask?.kind !== 'tear') {
    asked.push(session.view().step);
    if (asked.length > 60) throw new Error(`no tear is asked: ${asked.join(' ')}`);
    const reply = session.send({ kind: 'answer', answer: archer.answer(session.view()) }, new Date(NOON + asked.length * 60_000));
    if (reply.error !== undefined) throw new Error(`${asked.at(-1)}: ${reply.error.message}`);
  }
  return { asked, view: session.view() };
}

test('a first-time novice, bolts turned out, meets at most 25 questions before the first tear', () => {
  const { asked } = promptsToPaper([]);
  expect(asked).toContain('bolt-limit');
  expect(asked.length, asked.join(' ')).toBeLessThanOrEqual(25);
});

test('arrows close to the least mass cost one question more, and bad ones another', () => {
  const usual = promptsToPaper([]).asked;
  const more = (answers: Readonly<Record<string, unknown>>): readonly string[] => promptsToPaper([], answers).asked.filter((id) => !usual.includes(id));
  expect(more({ 'arrow-mass': 312, 'peak-weight': 61 })).toEqual(['scale-error']);
  expect(more({ 'gate:arrows-flexed': 'some-bad' })).toEqual(['arrows-set-aside']);
});

test('who has no scale answers nine short questions more, and none of them in the next tune', () => {
  const usual = promptsToPaper([]).asked;
  const { asked } = promptsToPaper([], { 'arrow-mass': 'not known' });
  expect(asked.filter((id) => !usual.includes(id))).toEqual(['mass-way', 'shaft-grains', 'shaft-length', 'point-grains', 'insert-grains', 'nock-grains', 'vane-count', 'vane-grains', 'wrap-grains']);
  expect(asked).toHaveLength(usual.length + 9);
  const known = carriedOf(content, play({ ...bow, answers: { ...bow.answers, 'arrow-mass': 'not known' } }).store.facts)!;
  const next = promptsToPaper([known], { bow: known.from }).asked;
  expect(next.length, next.join(' ')).toBeLessThanOrEqual(8);
});

test('a bow that was tuned here before meets at most 8, and still the ones that can hurt', () => {
  const { store, last } = play(bow);
  expect(last.type).toBe('done');
  const known = carriedOf(content, store.facts);
  expect(known).not.toBeNull();
  const { asked, view } = promptsToPaper(known === null ? [] : [known], { bow: known?.from });
  expect(asked.length, asked.join(' ')).toBeLessThanOrEqual(8);
  expect(asked).toEqual(expect.arrayContaining(['backstop', 'history', 'limbs', 'axle-clips', 'arrows-flexed', 'as-recorded']));
  // What was carried over stands in the ledger's answers, and nothing of the old settings is taken for a move of this tune.
  expect(view.bow).toEqual({});
});

test('the same bow with a part replaced is no longer than a new one; in other hands it asks for what is theirs', () => {
  const known = carriedOf(content, play(bow).store.facts);
  const handed = known === null ? [] : [known];
  const replaced = promptsToPaper(handed, { bow: 'replaced' }).asked;
  expect(replaced.length, replaced.join(' ')).toBeLessThanOrEqual(25);
  expect(replaced).toEqual(expect.arrayContaining(['limbs', 'first-draw', 'peak-weight', 'arrow-mass', 'nock-height', 'centre-shot']));
  expect(replaced).not.toContain('hand');
  const same = promptsToPaper(handed, { bow: known?.from }).asked;
  const other = promptsToPaper(handed, { bow: 'other-archer' }).asked;
  expect(other.filter((step) => !same.includes(step)).toSorted()).toEqual(['growing', 'release', 'shaft-ahead', 'slow-draw']);
});

test('"another bow" among known ones is asked everything', () => {
  const known = carriedOf(content, play(bow).store.facts);
  const { asked } = promptsToPaper(known === null ? [] : [known], { bow: 'another' });
  expect(asked.length).toBeGreaterThan(promptsToPaper([]).asked.length);
  expect(asked).toContain('first-draw');
});
