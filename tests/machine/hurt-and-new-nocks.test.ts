// What may have hurt somebody, and arrows with new nocks, are looked at before anybody draws.

import { describe, expect, test } from 'vitest';
import type { Intent, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.3, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 3 };
const pauseOf = (step: string): string => content.steps[step.split('/')[0] ?? '']?.pause ?? '';

/** Steps in order from here to the next shot, and the first of them that draws. */
function onFrom(bow: Bow, until: (view: View) => boolean, ...intents: readonly Intent[]) {
  const { session, store } = play(bow, { until });
  expect(until(session.view())).toBe(true);
  const archer = new TestArcher({ ...bow, seed: 99 });
  const send = (intent: Intent): View => session.send(intent, nextMinute(store)).view;
  for (const intent of intents) send(intent);
  const steps: string[] = [];
  for (let i = 0; i < 60 && session.view().ask?.kind !== 'tear' && session.view().ask?.kind !== 'amount'; i++) {
    steps.push(session.view().step);
    send({ kind: 'answer', answer: archer.answer(session.view()) });
  }
  return { steps, session, send, undrawn: steps.slice(0, steps.findIndex((step) => ['draw', 'shoot'].includes(pauseOf(step))) >>> 0) };
}

describe('somebody was hurt', () => {
  const hurt = [{ kind: 'stop', words: 'a splinter in my face' }, { kind: 'answer', answer: 'person' }] as const;
  const LOOKED_AT = ['history', 'limbs', 'axle-clips', 'bow-at-rest', 'arrow-check', 'backstop', 'range'];

  test.each([
    ['at the first sheet', (v: View) => v.ask?.kind === 'tear'],
    ['at an advice', (v: View) => v.advice?.kind === 'adjust'],
    ['before a first draw', (v: View) => v.step === 'first-draw'],
  ] satisfies [string, (view: View) => boolean][])('%s: people first; then range, bow and arrow, undrawn', (_place, until) => {
    const { steps, undrawn } = onFrom(BOW, until, ...hurt);
    expect(steps[0]).toBe('someone-hurt');
    expect(undrawn).toEqual(expect.arrayContaining(LOOKED_AT));
  });

  test('it came from the bow after all: the history leads to a dealer', () => {
    const { session, send } = onFrom({ ...BOW, answers: { 'gate:someone-hurt': 'well' } }, (v) => v.ask?.kind === 'tear');
    for (const intent of hurt) send(intent);
    send({ kind: 'answer', answer: 'well' });
    for (let i = 0; i < 10 && session.view().step !== 'history'; i++) send({ kind: 'answer', answer: new TestArcher(BOW).answer(session.view()) });
    expect(send({ kind: 'answer', answer: 'arrow-broke' })).toMatchObject({ type: 'stop', ask: { step: 'released' } });
  });

  test('the words say that bow and arrow are looked at', () => {
    const { session, send } = onFrom(BOW, (v) => v.ask?.kind === 'tear');
    for (const intent of hurt) send(intent);
    expect(session.view().say.join(' ')).toContain('both are looked at before anybody draws');
  });
});

test.each(['nock-fit'])('a tear beyond an inch, and %s found: loop and arrows before the slow draw and the first shot', (found) => {
  const bow: Bow = { ...BOW, start: { x: 0, y: 1.3 } };
  const { undrawn, steps } = onFrom(bow, (v) => v.step === 'inspect-gross', { kind: 'answer', answer: found });
  expect(undrawn).toEqual(expect.arrayContaining(['arrow-check', 'loop-check']));
  expect(steps).toEqual(expect.arrayContaining(['slow-draw', 'first-shot']));
});
