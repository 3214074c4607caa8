// Where bolts, points or lengths change, one sentence says which way a shaft then acts, and roughly how much; never what to buy.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Deciding } from '../../../src/machine/deciding.ts';
import { enterMove } from '../../../src/machine/enter-move.ts';
import { sayOtherPart, sayShift } from '../../../src/machine/figures/stiffness-said.ts';
import type { Answer, Intent, MovedAnswer } from '../../../src/machine/types.ts';
import type { Bow } from '../../tunes/archer.ts';
import { nextMinute, play } from '../../tunes/play.ts';
import { content, stateOf } from '../state-of.ts';

const BOW: Bow = { start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.06, seed: 3 };
const deciding = (state = stateOf()): Deciding => new Deciding(content, state, { kind: 'noted', seq: 99, time: '2026-03-02T12:00:00.000Z', note: 'x' });
const said = (say: (d: Deciding) => void, state = stateOf()): readonly string[] => {
  const d = deciding(state);
  say(d);
  return d.fact().decided.say;
};
const chart = (lines: readonly string[]): readonly string[] => lines.filter((line) => line.includes("shaft maker's chart"));

describe('an adjustment that was moved', () => {
  test('bolts out: so much less weight, stiffer, and the chart decides', () => {
    expect(said((d) => sayShift(d, 'limb-bolts', -0.5))).toEqual([
      "1/2 turn of both bolts out is about 1 to 2 lb less: the shafts act stiffer, by less than half a step of the shaft maker's chart. The chart decides."]);
  });

  test('bolts in, and points: the other way', () => {
    expect(said((d) => sayShift(d, 'limb-bolts', 1))[0]).toMatch(/^1 turn of both bolts in is about 2 to 4 lb more: the shafts act weaker, by at most a step/);
    expect(said((d) => sayShift(d, 'point-weight', 25))[0]).toMatch(/^Points 25 gr heavier: the shafts act weaker, by at most a step/);
    expect(said((d) => sayShift(d, 'point-weight', -25))[0]).toMatch(/^Points 25 gr lighter: the shafts act stiffer/);
  });

  test('any other says nothing of it', () => {
    for (const knob of ['rest-height', 'rest-side', 'nock-height', 'yoke', 'drop-cord'] as const) expect(said((d) => sayShift(d, knob, 1))).toEqual([]);
  });

  test('whatever the amount: more weight and heavier points weaken, less and lighter stiffen, and every sentence defers to the chart', () => {
    fc.assert(fc.property(fc.constantFrom('limb-bolts', 'point-weight'), fc.double({ min: -50, max: 50, noNaN: true }), (knob, delta) => {
      const lines = said((d) => sayShift(d, knob, delta));
      expect(lines).toHaveLength(delta === 0 ? 0 : 1);
      if (delta === 0) return;
      expect(lines[0]).toMatch(delta > 0 ? /act weaker/ : /act stiffer/);
      expect(lines[0]).toMatch(/The chart decides\.$/);
      expect(lines[0]).not.toMatch(/buy|should|better|recommend|choose/i);
    }));
  });

  test.each([['as told', 'out is about 0.5 to 1 lb less'], [{ value: 0.5, unit: 'turn' }, 'out is about 1 to 2 lb less']] as [MovedAnswer, string][])('advised, and moved %j: by what was really moved', (moved, words) => {
    expect(chart(said((d) => enterMove(d, 'limb-bolts', -0.25, 'adjust', moved))).join()).toContain(words);
  });

  test('not moved, nothing is said', () => {
    expect(chart(said((d) => enterMove(d, 'limb-bolts', -0.25, 'adjust', 'not now')))).toEqual([]);
  });
});

describe('a part of the arrow that reads otherwise than before', () => {
  const before = (step: string, value: number) => ({ ...stateOf(), suggestions: { [step]: { kind: 'number', value } satisfies Answer } });
  const told = (step: string, was: number, is: number): string => said((d) => sayOtherPart(d, step, { kind: 'number', value: is }), before(step, was)).join();
  test.each([
    ['shaft-length', 29, 28, /^Shafts 1 in shorter: they act stiffer/], ['shaft-length', 28, 29, /^Shafts 1 in longer: they act weaker/],
    ['point-grains', 100, 125, /^Points 25 gr heavier: the shafts act weaker/], ['insert-grains', 50, 20, /^Inserts 30 gr lighter: the shafts act stiffer/],
  ] as [string, number, number, RegExp][])('%s from %d to %d', (step, was, is, words) => { expect(told(step, was, is)).toMatch(words); });
  test('the same, or another part: nothing', () => {
    expect([told('shaft-length', 28, 28), told('point-grains', 100, 100), told('vane-grains', 5, 9), told('shaft-grains', 8, 9)]).toEqual(['', '', '', '']);
    expect(said((d) => sayOtherPart(d, 'point-grains', { kind: 'number', value: 125 }))).toEqual([]);
  });
  test('to shorter and back is the same amount', () => {
    const size = (line: string): string => /by (.*) of the/.exec(line)?.[1] ?? '?';
    expect(size(told('shaft-length', 29, 28))).toBe(size(told('shaft-length', 28, 29)));
  });
});

describe('in a tune', () => {
  const sent = (intent: Intent): readonly string[] => {
    const { session, store } = play(BOW, { until: (view) => view.ask?.kind === 'tear' });
    return session.send(intent, nextMinute(store)).view.say;
  };
  test('bolts moved by hand, other points, other arrows', () => {
    expect(chart(sent({ kind: 'moved', knob: 'limb-bolts', direction: 'in', amount: '1/4' }))[0]).toContain('1/4 turn of both bolts in is about 0.5 to 1 lb more');
    expect(chart(sent({ kind: 'moved', knob: 'point-weight', direction: 'remove', amount: 15 }))[0]).toContain('Points 15 gr lighter: the shafts act stiffer');
    expect(chart(sent({ kind: 'changed', what: 'arrow' }))).toEqual(["A shorter shaft or a lighter point acts stiffer, a longer shaft or a heavier point weaker. Whether it fits, the shaft maker's chart says."]);
    expect(chart(sent({ kind: 'changed', what: 'string' }))).toEqual([]);
  });

  test('bolts that were turned because the arrow was too light: told once both are counted, and only where both went alike', () => {
    const inTurn = (...answers: readonly unknown[]) => { let n = 0; return () => answers[Math.min(n++, answers.length - 1)]; };
    const light = { 'arrow-mass': 312, 'peak-weight': inTurn(62, 59), 'scale-error': 1, 'what-was-changed': 'bolts' };
    const counted = (top: unknown, bottom: unknown): readonly string[] =>
      chart(play({ ...BOW, answers: { ...light, 'bolts-top': top, 'bolts-bottom': bottom } }, { until: (view) => view.ask?.kind === 'tear' }).views.flatMap(({ say }) => say));
    expect(counted(inTurn(1, 2), inTurn(1, 2))).toEqual(["1 turn of both bolts out is about 2 to 4 lb less: the shafts act stiffer, by at most a step of the shaft maker's chart. The chart decides."]);
    // Set alike again: one of them stayed where it was.
    expect(counted(inTurn(1, 1), inTurn(1.5, 1))).toEqual([]);
  });

  test('other arrows after one that was too light', () => {
    const inTurn = (...answers: readonly unknown[]) => { let n = 0; return () => answers[Math.min(n++, answers.length - 1)]; };
    const { views } = play({ ...BOW, answers: { 'arrow-mass': inTurn(280, 400), 'what-was-changed': 'arrows' } }, { until: (view) => view.ask?.kind === 'tear' });
    expect(chart(views.flatMap(({ say }) => say))).toHaveLength(1);
  });
});

describe('where shafts are looked at', () => {
  test('the inspection says which way a cut, a point and both bolts act, and recommends nothing', () => {
    const say = content.inspections['very-gross'].options.find(({ value }) => value === 'shafts')?.say ?? '';
    expect(say).toMatch(/Only which way it goes, and no advice: cut, with a lighter point, or with both bolts out, a shaft acts stiffer; longer, with a heavier point, or with both bolts in, weaker\. The shaft maker's chart decides\./);
    expect(say).not.toMatch(/\d/);
  });
  test('so does the note for the shop', () => {
    expect(content.phrases['shop-very-gross']).toMatch(/acts stiffer when it is cut, with a lighter point or with less draw weight/);
  });
});
