// Broadheads thought better of while they are shot: no further one is asked for, and the heads come off before the next draw.

import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { nextMinute, NOON, play } from '../tunes/play.ts';
import { TestArcher } from '../tunes/archer.ts';
import { content } from './state-of.ts';

const BOW: Bow = {
  start: { x: 0.03, y: 0.06 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 13,
  answers: { 'broadheads-wanted': 'fixed' }, groups: { start: { x: 0, y: -3 }, gain: { 'rest-height': { x: 0, y: 24 } }, sd: 0.5 },
};

const answered = (facts: readonly Fact[], step: string): number => facts.find((fact) => fact.kind === 'answered' && fact.step === step)?.seq ?? 0;

describe.each([
  ['the first shot', (view: { step: string; advice: unknown }) => view.step === 'shoot-shooting'],
  ['an advice', (view: { step: string; advice: unknown }) => view.advice !== null],
] as const)('corrected while %s stands', (_name, here) => {
  test.each([
    ['broadheads are not wanted', 'broadheads-wanted', 'never'],
    ['the archer is still growing', 'growing', 'growing'],
  ])('%s: their chapter is left, that is said, and the heads come off before any draw', (_what, step, answer) => {
    const { session, store } = play(BOW, { until: (view) => view.chapter === 'broadheads' && view.ask?.kind !== 'choice' && here(view) });
    expect(session.view().ask?.kind).toMatch(/impact|amount/);
    session.send({ kind: 'back', to: answered(store.facts, step) }, new Date(NOON + 9e7));
    const { view, error } = session.send({ kind: 'answer', answer }, nextMinute(store));
    expect(error).toBeUndefined();
    expect(view.advice).toBeNull();
    const archer = new TestArcher({ ...BOW, answers: { ...BOW.answers, 'broadheads-wanted': 'never', 'shaft-ahead': 2.5 } });
    let now = Date.parse(store.facts.at(-1)!.time);
    const asked: string[] = [];
    for (let turn = 0; turn < 60 && session.view().type !== 'done'; turn++) {
      const { ask } = session.view();
      asked.push(ask?.step ?? '');
      expect(ask?.kind === 'impact' && ask.head === 'broadhead', ask?.step).toBe(false);
      if (ask?.kind === 'tear') break;
      session.send({ kind: 'answer', answer: archer.answer(session.view()) }, new Date(now += 60_000));
    }
    expect(asked).toContain('points-back');
    const said = store.facts.flatMap((fact) => fact.decided.say);
    expect(said).toContain(content.phrases['broadheads-left']);
  });
});
