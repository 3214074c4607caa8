// What is looked at on a rest hangs on its kind: that is told first, and told otherwise it is looked at again.

import { describe, expect, test } from 'vitest';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { correct, nextMinute, play, type PlayOptions } from '../tunes/play.ts';
import type { Intent, View } from '../../src/machine/types.ts';

const BOW: Bow = { start: { x: 0, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.05, seed: 3 };
const ARM = 'rest-arm-cable';
const optionsOf = ({ ask }: View): readonly string[] => (ask?.kind === 'choice' ? ask.options.map(({ value }) => value) : []);
const restCheck = (view: View): boolean => view.step === 'rest-check';
const tear = (view: View): boolean => view.ask?.kind === 'tear';

function at(bow: Bow, options: PlayOptions) {
  const { session, store, views } = play(bow, options);
  const archer = new TestArcher(bow);
  const send = (intent: Intent): View => session.send(intent, nextMinute(store)).view;
  const steps = (until: (view: View) => boolean, most = 12): readonly string[] => {
    const asked: string[] = [];
    for (; asked.length < most && !until(session.view()); send({ kind: 'answer', answer: archer.answer(session.view()) })) asked.push(session.view().step);
    return asked;
  };
  const other = (step: string, answer: string): View =>
    correct({ session, store }, store.facts.findLast((fact) => fact.kind === 'answered' && fact.step === step)!.seq, answer);
  return { session, store, views, send, steps, correct: other };
}

describe('the kind of rest is told before the rest is looked at', () => {
  test('a rest that was moved by hand before anything was asked about it', () => {
    const { send, steps, session } = at(BOW, { until: tear });
    send({ kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/32' });
    const asked = steps(restCheck);
    expect(asked).toContain('rest');
    expect(optionsOf(session.view())).toEqual(expect.arrayContaining(['rest-cord', ARM]));
  });

  test('a first set that is far off, and vanes that touch', () => {
    const { session, views } = at({ ...BOW, start: { x: 0, y: 1.6 }, answers: { inspected: 'contact' } }, { until: restCheck });
    expect(views.filter((view) => view.step === 'rest')).toHaveLength(1);
    expect(optionsOf(session.view())).toContain(ARM);
  });

  test('told already, it is not asked again', () => {
    const { views } = at(BOW, { until: restCheck });
    expect(views.filter((view) => view.step === 'rest')).toHaveLength(1);
  });
});

describe('another kind of rest', () => {
  const blade = { ...BOW, answers: { rest: 'blade' } };

  test('is looked at where the answer is corrected', () => {
    const { correct, steps, session } = at(blade, { until: (view) => tear(view) && view.bow['rest-height'] !== undefined });
    expect(correct('rest', 'drop-away-cable').step).toBe('rest-check');
    expect(optionsOf(session.view())).toEqual(expect.arrayContaining(['rest-cord', ARM]));
    expect(steps(tear)).toEqual(['rest-check']);
  });

  test('is looked at where it was replaced, and told anew', () => {
    const { send, steps } = at(blade, { until: (view) => tear(view) && view.bow['rest-height'] !== undefined });
    send({ kind: 'changed', what: 'rest' });
    expect(steps(tear, 30).filter((step) => step === 'rest-check')).toHaveLength(1);
  });

  test('the same kind, said once more, asks for nothing', () => {
    const { correct } = at(blade, { until: (view) => tear(view) && view.bow['rest-height'] !== undefined });
    expect(correct('rest', 'blade').ask?.kind).toBe('tear');
  });
});
