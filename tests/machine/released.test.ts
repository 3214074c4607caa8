// A bow that was at the dealer's is another bow as far as its shots go: nobody here knows what was done to it.

import { describe, expect, test } from 'vitest';
import { replay } from '../../src/machine/replay.ts';
import type { Intent, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = {
  start: { x: -0.5, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -14 }, 'rest-side': { x: 8, y: 0 }, 'nock-height': { x: 0, y: 14 } }, sd: 0.04, seed: 7,
  answers: { 'cams': 'two-track', 'press': 'none', 'broadheads-wanted': 'fixed', 'group-at-20': 1.5, 'what-happened': 'bow' }, groups: { start: { x: 0, y: -0.5 }, gain: {}, sd: 0.2 },
};
const YOKE: Bow = { start: { x: -0.9, y: 0.05 }, gain: { yoke: { x: 0.15, y: 0.05 } }, sd: 0.06, seed: 5, answers: { cams: 'yoke', press: 'trained', 'what-happened': 'bow' } };

function at(bow: Bow, until: (view: View) => boolean) {
  const { session, store } = play(bow, { until });
  expect(until(session.view())).toBe(true);
  const archer = new TestArcher({ ...bow, seed: 99 });
  const send = (intent: Intent): View => session.send(intent, nextMinute(store)).view;
  const asked: string[] = [];
  const go = (stop: (view: View) => boolean): View => {
    for (let i = 0; i < 250 && !stop(session.view()) && session.view().type !== 'done'; i++) {
      asked.push(session.view().step);
      send({ kind: 'answer', answer: archer.answer(session.view()) });
    }
    return session.view();
  };
  const release = (found: string): View => {
    send({ kind: 'stop', words: 'a creak' });
    send({ kind: 'answer', answer: 'bow' });
    return send({ kind: 'answer', answer: found });
  };
  return { session, store, send, go, asked, release, state: () => replay(content, store.facts).state };
}
const shot = (view: View): boolean => view.ask?.kind === 'tear' || view.ask?.kind === 'impact';
const LIMBS = 'The dealer in town, today: replaced both limbs';
const NOTHING = 'The dealer in town, today: nothing was found at all';

describe.each([LIMBS, NOTHING])('released: %s', (found) => {
  test.each([
    ['between broadheads at 20 yd', BOW, (v: View) => v.ask?.kind === 'impact' && v.ask.head === 'broadhead'],
    ['at the sight', BOW, (v: View) => v.step === 'sight-last'],
    ['in the first sheet', BOW, (v: View) => v.ask?.kind === 'tear' && v.ask.shots.taken === 2],
    ['with a yoke told', YOKE, (v: View) => v.ask?.kind === 'amount' && v.advice?.knob === 'yoke'],
    ['while a cause is looked for', { ...BOW, sd: 0.5 }, (v: View) => v.step === 'inspect-scatter'],
    ['with a put-back told', { ...BOW, gain: { 'rest-height': { x: 0, y: 9 } } }, (v: View) => v.advice?.kind === 'put-back'],
  ] satisfies [string, Bow, (view: View) => boolean][])('%s: its shots, results and advice no longer count, and paper comes first', (_place, bow, until) => {
    const here = at(bow, until);
    const before = here.state();
    expect(here.release(found).say.join(' ')).toContain('it is another bow');
    const { notes, advice } = here.state();
    expect([notes.epoch, notes.forgetBefore, notes.forgetCarried]).toEqual([before.notes.epoch + 1, before.notes.epoch, true]);
    expect([advice, notes.axis, notes.broadAxis, notes.learned, notes.ended, notes.undo, notes.inspection, notes.secondDistance]).toEqual([null, {}, {}, {}, {}, [], null, null]);
    const next = here.go(shot);
    expect(next.ask).toMatchObject({ kind: 'tear', distance: { value: 7 }, shots: { taken: 0 } });
    expect(next.advice).toBeNull();
    // Nothing is adjusted on the way there, and nothing that was to be put back is.
    expect(here.asked).not.toContain('make-the-move');
    expect(here.state().moves).toEqual(before.moves);
  });
});

test('at the end: tightened and proved again, and "tuned" rests on shots of the bow as it came back', () => {
  const here = at(BOW, (v) => v.step === 'sight-last');
  here.release(LIMBS);
  const from = here.store.facts.length;
  expect(here.go((v) => v.type === 'done').type).toBe('done');
  for (const step of ['tightened', 'shoot-proof', 'sight-last']) expect(here.asked).toContain(step);
  const found = here.store.facts.slice(from).flatMap((fact) => fact.decided.findings.flatMap((f) => (f.kind === 'axis' && f.chapter === 'paper' ? [f.result] : [])));
  expect(found.length).toBeGreaterThan(0);
});

test('what was to be put back is dropped, and that is said', () => {
  const here = at({ ...BOW, gain: { 'rest-height': { x: 0, y: 9 } } }, (v) => v.advice?.kind === 'put-back');
  expect(here.release(LIMBS).say.join(' ')).toContain('What was to be put back stays as it stands now');
});

test('powder is shot again where it was shot before', () => {
  const here = at(BOW, (v) => v.step === 'sight-last');
  expect(here.state().answers['contact']).toBeDefined();
  here.release(LIMBS);
  here.go((v) => v.ask?.kind === 'tear');
  expect(here.asked).toContain('contact');
});

test('cams whose range the manual does not tell stay off the ladder', () => {
  const here = at({ ...BOW, start: { x: 0.9, y: 0.05 }, gain: {}, answers: { ...BOW.answers, 'cams': 'screw-adjust', 'cam-range': 'not-known' } }, (v) => v.chapter === 'finish');
  expect(here.state().answers['cam-range']).toBeDefined();
  here.release(LIMBS);
  expect(here.state().notes.ended).toEqual({ 'cam-screw': 'limit', 'cam-spacers': 'limit' });
});

test('before the first shot the tune simply goes on, and nothing is said of shots', () => {
  const here = at(BOW, (v) => v.step === 'brace-height');
  expect(here.release(NOTHING).say.join(' ')).not.toContain('another bow');
  expect(here.go(shot).ask).toMatchObject({ kind: 'tear', shots: { taken: 0 } });
  expect(here.asked.filter((step) => step === 'brace-height')).toHaveLength(1);
});
