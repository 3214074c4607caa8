// What was found by one answer is not undone by another: a dealer's word is taken back only with the answer that asked for it.

import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { correct, nextMinute, play } from '../tunes/play.ts';

const BOW: Bow = { start: { x: 0.3, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 3 };

/** A tune in its second sitting, so that "what happened to the bow" was answered twice. */
function inSecondSitting() {
  const first = play(BOW, { until: (view) => view.ask?.kind === 'tear' });
  const second = play(BOW, { store: first.store, startAt: Date.parse(first.store.facts.at(-1)!.time) + 3_600_000, until: (view) => view.ask?.kind === 'tear' });
  const told = second.store.facts.filter((fact): fact is Extract<Fact, { kind: 'answered' }> => fact.kind === 'answered' && fact.step === 'history').map(({ seq }) => seq);
  return { told, correct: (seq: number, answer: string) => correct(second, seq, answer), ...second };
}

describe('"what happened to the bow", answered in two sittings', () => {
  test('the older one is corrected to a dry fire: answering the newer one again does not lead out', () => {
    const { told: [older = 0, newer = 0], correct } = inSecondSitting();
    expect(newer).toBeGreaterThan(older);
    expect(correct(older, 'dry-fire')).toMatchObject({ type: 'stop', ask: { step: 'released' } });
    expect(correct(newer, 'nothing')).toMatchObject({ type: 'stop', ask: { step: 'released' } });
  });

  test('written by mistake: the same answer, corrected again, takes it back', () => {
    const { told: [older = 0], correct } = inSecondSitting();
    expect(correct(older, 'dry-fire').type).toBe('stop');
    expect(correct(older, 'nothing')).toMatchObject({ type: 'ask', ask: { kind: 'tear' } });
  });

  test('both were a dry fire: taking one back leaves the other', () => {
    const { told: [older = 0, newer = 0], correct } = inSecondSitting();
    correct(older, 'dry-fire');
    correct(newer, 'dry-fire');
    expect(correct(newer, 'nothing').type).toBe('stop');
    expect(correct(older, 'nothing').type).toBe('ask');
  });
});

test('a way that is not offered to somebody growing is not kept when that comes to light', () => {
  const { session, store } = play({ ...BOW, answers: { 'gate:backstop': 'no-paper', method: 'unfletched', 'shaft-ahead': 2.5 }, groups: { start: { x: 0, y: 0 }, gain: {}, sd: 1 } }, { until: (view) => view.ask?.kind === 'impact' });
  const growing = store.facts.find((fact) => fact.kind === 'answered' && fact.step === 'growing')!.seq;
  const now = nextMinute(store);
  correct({ session, store }, growing, 'growing');
  const asked = new Set<string>();
  for (let turn = 0; turn < 12 && !asked.has('method'); turn++) {
    const { ask } = session.view();
    asked.add(ask?.step ?? '');
    expect(ask?.kind).not.toBe('impact');
    if (ask?.step === 'method') {
      expect(ask.kind === 'choice' ? ask.options.map(({ value }) => value) : []).not.toContain('unfletched');
      expect(ask.suggestion).toBeUndefined();
    } else session.send({ kind: 'answer', answer: ask?.step === 'backstop' ? 'no-paper' : ask?.kind === 'number' ? 2.5 : ask?.kind === 'choice' ? (ask.options.find((o) => o.pass === true) ?? ask.options[0])?.value : true }, new Date(now.getTime() + turn * 60_000));
  }
  expect([...asked]).toContain('method');
});
