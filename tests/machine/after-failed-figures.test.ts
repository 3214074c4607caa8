// A figure that failed is taken again: nobody draws an arrow that was not looked at, nor a bow whose bolts were turned and not
// counted. What was only misread costs one question.

import { describe, expect, test } from 'vitest';
import { replay } from '../../src/machine/replay.ts';
import type { Intent, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.3, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 3 };
const inTurn = (...answers: unknown[]) => {
  let next = 0;
  return () => answers[Math.min(next++, answers.length - 1)];
};

/** Steps in the order in which they were answered, up to the first tear, from the answer that stopped the walk on. */
function afterTheStop(answers: Bow['answers']): readonly string[] {
  const { store, last } = play({ ...BOW, answers: { ...answers } }, { until: (view) => view.ask?.kind === 'tear' });
  expect(last.ask?.kind).toBe('tear');
  const from = store.facts.findIndex((fact) => fact.decided.events.some(({ type }) => type === 'stop'));
  expect(from).toBeGreaterThan(0);
  return store.facts.slice(from + 1).flatMap((fact) => (fact.kind === 'answered' ? [fact.step] : []));
}
const pauseOf = (step: string): string => content.steps[step.split('/')[0] ?? '']?.pause ?? '';
const firstDraw = (steps: readonly string[]): number => steps.findIndex((step) => ['draw', 'shoot'].includes(pauseOf(step)));
const ARROWS = ['arrow-count', 'arrows-flexed', 'arrows-looked-at', 'arrow-check'];

describe('a shaft too short', () => {
  test.each([['too short', 0.25], ['rather short', 0.75]])('%s, and other arrows now: they are looked at before one is drawn', (_how, ahead) => {
    const steps = afterTheStop({ 'shaft-ahead': inTurn(ahead, 1.25), 'what-was-changed': 'arrows' });
    expect(steps[0]).toBe('what-was-changed');
    for (const id of [...ARROWS, 'arrow-mass']) expect([id, steps.indexOf(id) > 0 && steps.indexOf(id) < firstDraw(steps)]).toEqual([id, true]);
    expect(steps[firstDraw(steps)]).toBe('shaft-ahead');
  });

  test('only misread: one question, then the figure', () => {
    expect(afterTheStop({ 'shaft-ahead': inTurn(0.25, 1.25) }).slice(0, 2)).toEqual(['what-was-changed', 'shaft-ahead']);
  });

  test('written by mistake and corrected: nothing of it is looked at anew', () => {
    const { session, store } = play({ ...BOW, answers: { 'shaft-ahead': 0.25 } }, { until: (view) => view.type === 'stop' });
    const now = nextMinute(store);
    session.send({ kind: 'back', to: store.facts.at(-1)!.seq }, now);
    expect(session.send({ kind: 'answer', answer: 1.25 }, now).view).toMatchObject({ type: 'ask', ask: { step: 'what-was-changed' } });
    expect(session.send({ kind: 'answer', answer: 'nothing' }, now).view.ask?.step).toBe('axle-to-axle');
  });

  test('something else on the bow: it is looked at before it is drawn', () => {
    const steps = afterTheStop({ 'shaft-ahead': inTurn(0.25, 1.25), 'what-was-changed': 'other' });
    for (const id of ['limbs', 'axle-clips', 'bow-at-rest']) expect([id, steps.indexOf(id) > 0 && steps.indexOf(id) < firstDraw(steps)]).toEqual([id, true]);
  });
});

describe('an arrow too light', () => {
  test('before anything was drawn, and heavier ones now: looked at before the first draw, and weighed once', () => {
    const steps = afterTheStop({ 'arrow-mass': inTurn(280, 400), 'what-was-changed': 'arrows' });
    expect(steps.slice(0, 3)).toEqual(['rated-weight', 'arrow-mass', 'what-was-changed']);
    for (const id of ARROWS) expect([id, steps.indexOf(id) > 0 && steps.indexOf(id) < firstDraw(steps)]).toEqual([id, true]);
    // The first draw is the slow one: what was not drawn for yet keeps its place after it.
    expect(steps[firstDraw(steps)]).toBe('first-draw');
    expect(steps.filter((id) => id === 'arrow-mass')).toHaveLength(1);
  });

  test('a scale that was misread: one question', () => {
    const steps = afterTheStop({ 'arrow-mass': inTurn(280, 400) });
    expect(steps.slice(0, 4)).toEqual(['rated-weight', 'arrow-mass', 'what-was-changed', 'first-draw']);
  });

  test('less draw weight, and told so: bolts are counted and locks looked at before the peak is drawn again', () => {
    const steps = afterTheStop({ 'arrow-mass': 312, 'peak-weight': inTurn(62, 59), 'scale-error': 1, 'what-was-changed': 'bolts' });
    for (const id of ['after-bolts', 'bolts-top', 'bolts-bottom']) expect([id, steps.indexOf(id) > 0 && steps.indexOf(id) < firstDraw(steps)]).toEqual([id, true]);
    expect(steps).toContain('slow-draw');
  });

  test('a lower peak, and nothing told: the bolts are counted all the same', () => {
    const light = { 'arrow-mass': 312, 'peak-weight': inTurn(62, 59), 'scale-error': 1 };
    const same = afterTheStop(light);
    const peak = same.indexOf('peak-weight');
    expect(same.slice(peak)).toEqual(['peak-weight', 'scale-error', 'bolts-top', 'bolts-bottom', 'shaft-ahead', ...same.slice(peak + 5)]);
    expect(same).not.toContain('after-bolts');
    // Counted otherwise than before: they were turned.
    const turned = afterTheStop({ ...light, 'peak-weight': inTurn(62, 59), 'bolts-top': inTurn(1, 2), 'bolts-bottom': inTurn(1, 2) });
    const counted = turned.lastIndexOf('bolts-bottom');
    for (const id of ['after-bolts', 'slow-draw', 'peak-weight', 'arrow-mass']) expect([id, turned.indexOf(id, counted) > counted]).toEqual([id, true]);
  });

  test('a peak that reads the same asks for no count', () => {
    const steps = afterTheStop({ 'arrow-mass': inTurn(312, 400), 'peak-weight': 62, 'scale-error': 1 });
    expect(steps).not.toContain('bolts-top');
  });
});

describe('limb bolts', () => {
  test.each([
    ['unequal, then set alike', { 'bolts-bottom': inTurn(1.5, 1) }],
    ['over the limit, then turned in', { 'bolts-top': inTurn(5, 3), 'bolts-bottom': inTurn(5, 3) }],
    ['not known, then counted', { 'bolts-top': inTurn('not known', 1) }],
  ] as [string, Record<string, unknown>][])('%s: locks and pockets are looked at before the first draw', (_how, answers) => {
    const steps = afterTheStop(answers);
    const looked = steps.indexOf('after-bolts');
    expect(looked >= 0 && looked < firstDraw(steps)).toBe(true);
    expect(steps[firstDraw(steps)]).toBe('first-draw');
    // Nothing is measured before its time, and nothing twice.
    expect(steps.filter((id) => id === 'axle-to-axle')).toHaveLength(1);
    expect(steps.indexOf('axle-to-axle')).toBeGreaterThan(firstDraw(steps));
  });

  test('counted alike again, only miscounted or not, the look comes once', () => {
    expect(afterTheStop({ 'bolts-bottom': inTurn(1.5, 1) }).filter((id) => id === 'after-bolts')).toHaveLength(1);
  });
});

describe('in the middle of a tune', () => {
  function at(answers: Bow['answers']) {
    const bow = { ...BOW, start: { x: 0.02, y: 0.05 }, answers: { ...answers, 'what-happened': 'bow' } };
    const { session, store } = play(bow, { until: (view) => view.step === 'sight-last' });
    const archer = new TestArcher({ ...bow, seed: 99 });
    const send = (intent: Intent): View => session.send(intent, nextMinute(store)).view;
    const go = (stop: (view: View) => boolean): View => {
      for (let i = 0; i < 120 && !stop(session.view()); i++) send({ kind: 'answer', answer: archer.answer(session.view()) });
      return session.view();
    };
    return { send, go, state: () => replay(content, store.facts).state };
  }

  test('other arrows because the shaft was too short: what was shot no longer counts', () => {
    const here = at({ 'what-was-changed': 'arrows' });
    expect(Object.keys(here.state().notes.axis)).toHaveLength(2);
    here.send({ kind: 'moved', knob: 'yoke', direction: 'left', amount: 1 });
    here.go((v) => v.step === 'shaft-ahead');
    expect(here.send({ kind: 'answer', answer: 0.25 })).toMatchObject({ type: 'stop', ask: { step: 'what-was-changed' } });
    const { epoch } = here.state().notes;
    here.send({ kind: 'answer', answer: 'arrows' });
    const { notes } = here.state();
    expect([notes.epoch, notes.forgetBefore, notes.forgetCarried, notes.axis, notes.learned]).toEqual([epoch + 1, epoch, true, {}, {}]);
    expect(here.go((v) => v.ask?.kind === 'tear').ask).toMatchObject({ shots: { taken: 0 }, distance: { value: 7 } });
  });

  test('bolts that were turned to be alike: another draw weight is another tear', () => {
    const here = at({ 'bolts-bottom': inTurn(1, 1.5, 1) });
    here.send({ kind: 'moved', knob: 'limb-bolts', direction: 'in', amount: '1/4' });
    const stopped = here.go((v) => v.type === 'stop');
    expect(stopped.step).toBe('bolts-top');
    const { epoch } = here.state().notes;
    here.send({ kind: 'answer', answer: 1 });
    expect(here.send({ kind: 'answer', answer: 1 }).say.join(' ')).toContain('earlier shots are no longer compared');
    const { notes, due } = here.state();
    expect([notes.epoch, notes.axis]).toEqual([epoch + 1, {}]);
    expect(due).toEqual(expect.arrayContaining(['after-bolts', 'slow-draw', 'peak-weight', 'arrow-mass']));
    expect(here.go((v) => v.ask?.kind === 'tear').ask).toMatchObject({ shots: { taken: 0 } });
  });
});

test('a cam moved before it was told which bow it is: the shaft is measured anew, whatever that bow brings along', () => {
  const known = [{ from: 'old', bow: 'Old Blue', answers: { 'shaft-ahead': { kind: 'number', value: 1.25 }, 'peak-weight': { kind: 'number', value: 59 } }, spread: null, gains: {} }] as const;
  const { store } = play({ ...BOW, answers: { bow: 'old' } }, {
    known, until: (view) => view.ask?.kind === 'tear',
    instead: (_view, turn) => (turn === 0 ? { kind: 'moved', knob: 'cam-screw', direction: 'right', amount: '1/4' } : null),
  });
  expect(store.facts.flatMap((fact) => (fact.kind === 'answered' ? [fact.step] : []))).toContain('shaft-ahead');
});
