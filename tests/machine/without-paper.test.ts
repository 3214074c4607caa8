// No paper: the checks that are about it are not asked, who should not shoot unfletched is not offered it, and "I make a
// frame first" leads back to the backstop. And what broadheads ask again: clearance after the shaft, place and heads after a day.

import { describe, expect, test } from 'vitest';
import type { SessionLike, Store, View } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.05, y: 0.05 }, gain: {}, sd: 0.05, seed: 21 };
const NO_PAPER = { 'gate:backstop': 'no-paper', 'method': 'none' };
const HOUR = 3_600_000;

const valuesOf = (view: View): readonly string[] => (view.ask?.kind === 'choice' ? view.ask.options.map((option) => option.value) : []);

function sender({ session, store }: { session: SessionLike; store: Store }): (answer: unknown, later?: number) => View {
  return (answer, later = 60_000) => {
    const now = new Date(Date.parse(store.facts.at(-1)?.time ?? '') + later);
    const reply = session.send({ kind: 'answer', answer }, now);
    if (reply.error !== undefined) throw new Error(reply.error.message);
    return reply.view;
  };
}

describe('without paper', () => {
  test('range and warm-up ask nothing about paper; with it they do', () => {
    const at = (step: string, answers: Record<string, unknown>): readonly string[] =>
      valuesOf(play({ ...BOW, answers }, { until: (v) => v.step === step }).session.view());
    for (const [step, checks] of [['range', ['range-gap', 'range-frame']], ['warm-up', ['warm-sheet']]] as const) {
      expect(at(step, {})).toEqual(expect.arrayContaining([...checks]));
      for (const check of checks) expect(at(step, NO_PAPER)).not.toContain(check);
      expect(at(step, NO_PAPER).length).toBe(at(step, {}).length - checks.length);
    }
  });

  test('a growing archer is not offered unfletched shafts, and cannot choose them', () => {
    const until = (v: View): boolean => v.step === 'method';
    expect(valuesOf(play({ ...BOW, answers: NO_PAPER }, { until }).session.view())).toEqual(['unfletched', 'plumb-line', 'none']);
    const growing = play({ ...BOW, answers: { ...NO_PAPER, 'growing': 'growing', 'shaft-ahead': 2.5 } }, { until });
    expect(valuesOf(growing.session.view())).toEqual(['plumb-line', 'none']);
    expect(() => sender(growing)('unfletched')).toThrow('not among the answers');
  });

  test('"I make a frame first" waits at the backstop: without paper the ways are asked again, with it the tears', () => {
    const send = sender(play({ ...BOW, answers: NO_PAPER }, { until: (v) => v.step === 'method' }));
    const waits = send('none');
    expect([waits.step, waits.say]).toEqual(['backstop', [content.phrases['method-none']]]);
    send('no-paper');
    expect(send('all true').step).toBe('method');
    send('none');
    send('solid');
    expect(send('all true').ask?.kind).toBe('tear');
  });
});

describe('broadheads', () => {
  const hunting: Bow = { ...BOW, answers: { 'broadheads-wanted': 'fixed' }, groups: { start: { x: 0, y: -0.5 }, gain: {}, sd: 0.5 } };

  test('a growing archer is never asked for them', () => {
    const { session, store } = play({ ...hunting, answers: { ...hunting.answers, 'growing': 'growing', 'shaft-ahead': 2.5 } });
    expect(session.view().type).toBe('done');
    expect(store.facts.flatMap((f) => (f.kind === 'answered' ? [f.step] : [])).filter((step) => /broadhead|blades/.test(step))).toEqual([]);
  });

  test.each([0.4375, 'not known'])('blades %s ahead stop the walk; from 1/2 in they pass', (ahead) => {
    const send = sender(play(hunting, { until: (v) => v.step === 'blades-ahead' }));
    expect([send(ahead).type, send('1/2').type]).toEqual(['stop', 'ask']);
  });

  test('another arrow asks for mass and shaft again, and after the shaft for the blades', () => {
    const { session, store } = play(hunting, { until: (v) => v.ask?.kind === 'impact' });
    session.send({ kind: 'changed', what: 'arrow' }, nextMinute(store));
    const asked: string[] = [];
    const send = sender({ session, store });
    const answers: Record<string, unknown> = { 'backstop': 'solid', 'arrow-count': 12, 'arrows-flexed': 'all', 'arrow-mass': 400, 'shaft-ahead': 1.5, 'blades-ahead': 1 };
    // Another arrow is another tune: back to paper with it, then broadheads once more.
    while (session.view().ask?.kind !== 'tear' && asked.length < 20) {
      asked.push(session.view().step);
      send(answers[session.view().step] ?? 'all true');
    }
    expect(asked.filter((step) => ['broadhead-arrows', 'shaft-ahead', 'blades-ahead'].includes(step))).toEqual(['broadhead-arrows', 'shaft-ahead', 'blades-ahead']);
    expect(session.view().ask?.kind).toBe('tear');
  });

  test('another day begins with the place and the heads, before a shot', () => {
    const { session, store } = play(hunting, { until: (v) => v.ask?.kind === 'impact' });
    sender({ session, store })({ x: 0, y: 0 }, 20 * HOUR);
    expect(store.facts.at(-1)?.decided.due).toEqual(expect.arrayContaining(['backstop', 'limbs', 'broadhead-place', 'broadhead-arrows']));
    expect(session.view().ask?.kind).not.toBe('impact');
  });
});
