// Moved to another place without leaving the program: told as something that changed. And no shot without a warm-up.

import { expect, test } from 'vitest';
import { replay } from '../../src/machine/replay.ts';
import type { Intent, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -14 } }, sd: 0.04, seed: 3 };
const moved = (view: View): boolean => view.ask?.kind === 'tear' && view.bow['rest-height'] !== undefined;

test('another place, told within minutes: range, bow, arrows, warm-up, and the set that stood; what is known of the bow stays', () => {
  const { session, store } = play(BOW, { until: moved });
  const archer = new TestArcher(BOW);
  const send = (intent: Intent) => session.send(intent, nextMinute(store));
  const { learned, epoch } = replay(content, store.facts).state.notes;
  const { error, view } = send({ kind: 'changed', what: 'place', note: '' });
  expect([error, view.say.join(' ')]).toEqual([undefined, expect.stringContaining('another place')]);
  const asked: string[] = [];
  for (; session.view().ask?.kind !== 'tear'; send({ kind: 'answer', answer: archer.answer(session.view()) })) {
    asked.push(session.view().step);
    expect(asked.length, asked.join(' ')).toBeLessThan(20);
  }
  expect(asked).toEqual(content.rechecks['long-break'].filter((id) => id !== 'as-recorded'));
  expect(session.view().step).toBe('shoot-resume');
  const { notes } = replay(content, store.facts).state;
  expect([notes.learned, notes.epoch, session.view().bow]).toEqual([learned, epoch, view.bow]);
});

test('with fingers no shot is asked for, and the record says that the sight was not set', () => {
  const { asked, views, last } = play({ ...BOW, answers: { release: 'fingers' } });
  expect(last.type).toBe('done');
  const shot = views.flatMap(({ ask }) => (ask !== null && content.steps[ask.step]?.pause === 'shoot' ? [ask.step] : []));
  expect([shot, asked.includes('tear')]).toEqual([[], false]);
  expect(last.record?.sections.flatMap(({ rows }) => rows.map(({ value }) => value)).join()).toContain(content.phrases['not-checked-sight']);
});
