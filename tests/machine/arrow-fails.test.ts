// An arrow that failed a look, a feel or a flex is set aside: those kept and those set aside add up, and three are left.

import { describe, expect, test } from 'vitest';
import { failsAnArrow } from '../../src/machine/arrow-fails.ts';
import type { Answer, Intent, View } from '../../src/machine/types.ts';
import { recordOf } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play, type PlayOptions } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.06, seed: 3, answers: { 'arrow-count': 3, 'cams': 'screw-adjust' } };
const tear = (view: View): boolean => view.ask?.kind === 'tear';
const choice = (...values: readonly string[]): Answer => ({ kind: 'choice', values });

function at(bow: Bow, options: PlayOptions) {
  const played = play(bow, options);
  const { session, store } = played;
  const archer = new TestArcher(bow);
  const send = (intent: Intent): View => {
    const { error, view } = session.send(intent, nextMinute(store));
    if (error !== undefined) throw new Error(error.message);
    return view;
  };
  const answer = (value: unknown): View => send({ kind: 'answer', answer: value });
  const usual = (until: (view: View) => boolean): View => {
    for (let i = 0; i < 200 && !until(session.view()) && session.view().type !== 'done'; i++) answer(archer.answer(session.view()));
    return session.view();
  };
  return { ...played, send, answer, usual };
}
const row = (tune: ReturnType<typeof at>, name: string): string =>
  recordOf(content, tune.store.facts)!.sections.flatMap(({ rows }) => rows).find((one) => one.name === name)?.value ?? '';

/** Three arrows; one of them is looked at after a word, and ticks. "True now" is said of what is shot on. */
function oneTicks() {
  const tune = at(BOW, { until: tear });
  tune.send({ kind: 'stop', words: 'stop' });
  tune.answer('arrow');
  tune.answer(['arrow-flexed']);
  expect(tune.session.view().step).toBe('arrow-check/arrow-flexed');
  return { ...tune, after: tune.answer('true') };
}

describe('three tuning arrows, and one ticks', () => {
  test('two are not shot as three: they are counted, and the walk stands still until there are three', () => {
    const tune = oneTicks();
    expect(tune.after.step).toBe('arrow-count');
    expect(tune.answer(3).step).toBe('arrows-flexed');
    expect(tune.answer('some-bad').step).toBe('arrows-set-aside');
    const stopped = tune.answer(1);
    expect([stopped.type, stopped.say.join(' ')]).toEqual(['stop', expect.stringContaining('At least 3 sound arrows')]);
    tune.answer(4);
    tune.answer('some-bad');
    expect(tune.answer(1)).toMatchObject({ type: 'ask', ask: { kind: 'tear' } });
  });

  test('the record does not call the set silent', () => {
    const tune = oneTicks();
    tune.answer(3);
    expect(tune.answer('all').ask?.kind).toBe('tear');
    expect(row(tune, 'Flexed')).toMatch(/^of those kept: All sound: silent.*one or more failed/);
  });

  test('a nock that is mended takes no arrow out', () => {
    const tune = at(BOW, { until: tear });
    tune.send({ kind: 'stop', words: 'stop' });
    tune.answer('arrow');
    tune.answer(['arrow-nock']);
    expect(tune.answer('true').ask?.kind).toBe('tear');
    expect(row(tune, 'Flexed')).toMatch(/^All sound: silent/);
  });
});

test('what takes an arrow out: a list with it picked, its single check that is not true or not known', () => {
  expect(failsAnArrow('arrow-check', choice('arrow-flexed'))).toBe(true);
  expect(failsAnArrow('as-recorded', choice('recorded-marks', 'recorded-arrows'))).toBe(true);
  expect(failsAnArrow('arrow-check/arrow-feel', choice('false'))).toBe(true);
  expect(failsAnArrow('arrow-check/arrow-feel', { kind: 'not known' })).toBe(true);
  expect(failsAnArrow('arrow-check/arrow-feel', choice('true'))).toBe(false);
  expect(failsAnArrow('arrow-check', choice('all true'))).toBe(false);
  expect(failsAnArrow('arrow-check', choice('arrow-vanes'))).toBe(false);
});

test('every such check is one of the content, and each that says "set it aside" of a whole arrow is among them', () => {
  const checks = Object.values(content.steps).flatMap((step) => (step.kind === 'chunk' ? step.checks : []));
  const takesOut = checks.filter(({ id }) => failsAnArrow('x', choice(id))).map(({ id }) => id);
  expect(takesOut).toHaveLength(11);
  const told = checks.filter(({ thenDo }) => /set (it|that arrow) aside|set aside any/i.test(thenDo)).map(({ id }) => id);
  // Shafts without vanes are three of their own, and none of those that were counted.
  expect(told.filter((id) => !takesOut.includes(id) && !id.startsWith('bare-'))).toEqual([]);
});

describe('a tuning arrow that cracks while the arrows are told apart', () => {
  const cracked = (count: number) => at({ ...BOW, arrows: { 2: { error: { x: -0.9, y: 0.2 }, look: 'crack' } }, answers: { ...BOW.answers, 'arrow-count': count, 'arrows-wanted': 'all' } }, {
    until: ({ findings }) => findings.some((one) => one.kind === 'arrow' && one.class === 'never again'), most: 300,
  });

  test('is told with the arrow that takes its place in the shots that follow', () => {
    const tune = cracked(6);
    expect(tune.findings).toContainEqual(expect.objectContaining({ kind: 'arrow', arrow: '2', class: 'never again' }));
    expect(tune.session.view().step).not.toBe('arrow-count');
    tune.usual((view) => view.step === 'tightened');
    const said = tune.session.transcript().map(({ text }) => text).join(' ');
    expect(said).toMatch(/Arrow 2 is one of the three .* arrow 4\s+takes its place/);
    expect(row(tune, 'Flexed')).toMatch(/^of those kept/);
  });

  test('where fewer than three are left, they are counted before another shot', () => {
    expect(cracked(3).session.view().step).toBe('arrow-count');
  });
});
