// Who still grows draws farther from month to month: how far the shaft reaches ahead of the rest is measured anew, and an
// adult is asked for wherever it comes to light.

import { describe, expect, test } from 'vitest';
import { carriedAnswers } from '../../src/machine/known-bow.ts';
import type { memoryStore } from '../../src/journal/memory-store.ts';
import type { Carried, View } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const DAY = 86_400_000;
const tear = (view: View): boolean => view.ask?.kind === 'tear';
const bowOf = (growing: 'growing' | 'grown'): Bow =>
  ({ start: { x: 0, y: 0 }, gain: {}, sd: 0.04, seed: 4, answers: { growing, 'shaft-ahead': 2.5, 'use': 'target' } });

/** Answers every question until the first tear, and what was asked on the way. */
function toPaper(bow: Bow, options: { readonly known?: readonly Carried[]; readonly store?: ReturnType<typeof memoryStore>; readonly startAt?: number }): readonly string[] {
  return play(bow, { ...options, until: tear }).views.slice(0, -1).map((view) => view.step);
}

describe('a bow that was tuned here before', () => {
  const known = (growing: 'growing' | 'grown'): Carried => carriedOf(content, play(bowOf(growing)).store.facts)!;

  test.each([['growing', 9], ['grown', 8]] as const)('an archer who is %s', (growing, most) => {
    const carried = known(growing);
    const bow = { ...bowOf(growing), answers: { ...bowOf(growing).answers, bow: carried.from } };
    const asked = toPaper(bow, { known: [carried], startAt: NOON + 90 * DAY });
    expect(asked.includes('shaft-ahead')).toBe(growing === 'growing');
    expect(asked.length, asked.join(' ')).toBeLessThanOrEqual(most);
  });

  test('nothing else of a growing archer is asked anew', () => {
    const stamp = { answer: { kind: 'choice', values: ['x'] }, seq: 2, time: '' } as const;
    const brought = (growing: 'growing' | 'grown') => Object.keys(carriedAnswers(content, { carried: known(growing), as: 'same' }, stamp));
    expect(brought('grown')).toContain('shaft-ahead');
    expect(brought('growing')).not.toContain('shaft-ahead');
    expect(brought('growing')).toEqual(expect.arrayContaining(['growing', 'arrow-mass', 'rated-weight']));
  });
});

test.each([['growing', true], ['grown', false]] as const)('a tune that is taken up again after 90 days, %s', (growing, again) => {
  const { store } = play(bowOf(growing), { until: tear });
  const asked = toPaper(bowOf(growing), { store, startAt: Date.parse(store.facts.at(-1)!.time) + 90 * DAY });
  expect(asked.includes('shaft-ahead')).toBe(again);
  // Looked at first, then drawn; drawn before it is shot.
  if (again) expect(asked.indexOf('limbs')).toBeLessThan(asked.indexOf('shaft-ahead'));
  if (again) expect(asked.indexOf('shaft-ahead')).toBeLessThan(asked.indexOf('warm-up'));
});

test('a short break asks for no draw', () => {
  const { store } = play(bowOf('growing'), { until: tear });
  expect(toPaper(bowOf('growing'), { store, startAt: Date.parse(store.facts.at(-1)!.time) + DAY / 8 })).not.toContain('shaft-ahead');
});

test('corrected to "still growing": the backstop asks for the adult before the shaft is drawn', () => {
  const { session, store } = play(bowOf('grown'), { until: tear });
  const archer = new TestArcher(bowOf('growing'));
  let now = Date.parse(store.facts.at(-1)!.time);
  const send = (intent: Parameters<typeof session.send>[0]) => session.send(intent, new Date((now += 60_000)));
  send({ kind: 'back', to: store.facts.find((fact) => fact.kind === 'answered' && fact.step === 'growing')!.seq });
  send({ kind: 'answer', answer: 'growing' });
  const first = session.view().ask;
  expect(first?.step).toBe('backstop');
  expect(first?.text.join(' ')).toContain('an adult is there now');
  const asked: string[] = [];
  for (let turn = 0; turn < 6 && !tear(session.view()); turn++) {
    asked.push(session.view().step);
    send({ kind: 'answer', answer: archer.answer(session.view()) });
  }
  expect(asked).toEqual(['backstop', 'shaft-ahead']);
});

test('told in its place, it asks for nothing twice', () => {
  const asked = toPaper(bowOf('growing'), {});
  for (const id of ['backstop', 'shaft-ahead']) expect(asked.filter((step) => step === id)).toEqual([id]);
});
