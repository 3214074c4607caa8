// A part was changed that nobody has a name for: it may be limbs, cams or modules, so it is treated like the worst.

import { expect, test } from 'vitest';
import { replay } from '../../src/machine/replay.ts';
import type { View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.6, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -14 }, 'rest-side': { x: -8, y: 0 } }, sd: 0.04, seed: 3 };
const moved = (view: View): boolean => view.ask?.kind === 'tear' && view.ask.axis === 'side';

test('it asks for all that a replaced string asks for, and for what the limbs are made for', () => {
  const { 'part-replaced': unknown, 'string-replaced': string } = content.rechecks;
  expect(unknown).toEqual(expect.arrayContaining([...string, 'rated-weight', 'cams', 'rest-scale']));
});

test('"new draw length modules": limbs, clips, weight and the shaft at full draw come before the next shot', () => {
  const { session, store } = play(BOW, { until: moved });
  const archer = new TestArcher(BOW);
  const send = (intent: Parameters<typeof session.send>[0]) => session.send(intent, nextMinute(store)).view;
  expect(replay(content, store.facts).state.notes.axis.height?.result).toBe('tuned');
  const view = send({ kind: 'changed', what: 'other', note: 'new draw length modules' });
  expect(view.say.join(' ')).toContain('looked at and measured anew');
  const asked: string[] = [];
  for (; session.view().ask?.kind !== 'tear'; send({ kind: 'answer', answer: archer.answer(session.view()) })) {
    asked.push(session.view().step);
    expect(asked.length, asked.join(' ')).toBeLessThan(40);
  }
  expect(asked).toEqual(expect.arrayContaining(['history', 'limbs', 'axle-clips', 'rated-weight', 'bolts-top', 'slow-draw', 'peak-weight', 'shaft-ahead', 'warm-up']));
  const draws = asked.findIndex((id) => ['draw', 'shoot'].includes(content.steps[id]!.pause));
  expect(draws).toBeGreaterThan(asked.indexOf('rated-weight'));
  expect(asked.slice(draws).every((id) => ['draw', 'shoot'].includes(content.steps[id]!.pause))).toBe(true);
  // What it showed before was another bow.
  const { notes } = replay(content, store.facts).state;
  expect([notes.axis, notes.learned, notes.forgetCarried, notes.forgetBefore]).toEqual([{}, {}, true, notes.epoch - 1]);
  expect(session.view().ask).toMatchObject({ kind: 'tear', shots: { taken: 0, wanted: 3 } });
});
