// The ledger: where every knob stands against the baseline. Put back means exactly put back.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KNOBS, type KnobId } from '../../src/content/types.ts';
import { undoTo } from '../../src/machine/loop/judge.ts';
import { settingsOf, tidy, type Move } from '../../src/machine/state.ts';
import { lastMoveToUndo } from '../../src/machine/undo.ts';
import { content, stateOf } from './state-of.ts';

/** Moves as archers make them: 64ths of an inch, quarter turns, whole half twists, millimetres turned into inches. */
const delta = (knob: KnobId): fc.Arbitrary<number> => {
  const per = { in: 64, turn: 4, 'half-twist': 1, 'half-twist-pair': 1, size: 1, gr: 1 }[content.knobs[knob].unit as string] ?? 64;
  const marks = fc.integer({ min: -24, max: 24 }).filter((n) => n !== 0).map((n) => n / per);
  return content.knobs[knob].unit === 'in' ? fc.oneof(marks, fc.integer({ min: 1, max: 40 }).map((n) => n / 10 / 25.4)) : marks;
};
const moves: fc.Arbitrary<readonly Move[]> = fc.array(fc.constantFrom(...KNOBS).chain((knob) => delta(knob).map((d) => ({ knob, d }))), { maxLength: 60 })
  .map((list) => list.map(({ knob, d }, i): Move => ({ seq: i + 1, knob, delta: d, why: 'advice' })));

describe('the ledger', () => {
  test('every move undone, newest first, comes back to exactly 0', () => {
    fc.assert(fc.property(moves, (made) => {
      const undone = [...made].reverse().map((move, i): Move => ({ seq: made.length + i + 1, knob: move.knob, delta: -move.delta, why: 'put-back' }));
      for (const value of Object.values(settingsOf([...made, ...undone]))) expect(Object.is(value, 0)).toBe(true);
    }), { seed: 3, numRuns: 400 });
  });

  test('in any order of undoing', () => {
    fc.assert(fc.property(moves.chain((made) => fc.tuple(fc.constant(made), fc.shuffledSubarray([...made], { minLength: made.length }))), ([made, order]) => {
      const undone = order.map((move): Move => ({ ...move, delta: -move.delta, why: 'put-back' }));
      for (const value of Object.values(settingsOf([...made, ...undone]))) expect(Object.is(value, 0)).toBe(true);
    }), { seed: 4, numRuns: 400 });
  });

  test('undone at once, by what the ledger shows, comes back to exactly 0 too', () => {
    fc.assert(fc.property(moves, (made) => {
      const at = settingsOf(made);
      const back = (Object.entries(at) as [KnobId, number][]).map(([knob, value], i): Move => ({ seq: 900 + i, knob, delta: tidy(0 - value), why: 'put-back' }));
      for (const value of Object.values(settingsOf([...made, ...back]))) expect(Object.is(value, 0)).toBe(true);
    }), { seed: 5, numRuns: 400 });
  });

  test('one knob never moves another', () => {
    fc.assert(fc.property(moves, fc.constantFrom(...KNOBS), (made, knob) => {
      const alone = settingsOf(made.filter((m) => m.knob === knob))[knob];
      expect(settingsOf(made)[knob]).toBe(alone);
    }), { seed: 6, numRuns: 200 });
  });

  test('64ths, quarter turns and half twists add up without dust', () => {
    expect(settingsOf(Array.from({ length: 64 }, (_, i): Move => ({ seq: i, knob: 'rest-side', delta: 1 / 64, why: 'advice' })))).toEqual({ 'rest-side': 1 });
    expect(settingsOf(Array.from({ length: 10 }, (_, i): Move => ({ seq: i, knob: 'rest-side', delta: 0.1, why: 'advice' })))).toEqual({ 'rest-side': 1 });
    expect(tidy(0.1 + 0.2)).toBe(0.3);
    expect(Object.is(tidy(-1e-12), 0)).toBe(true);
    fc.assert(fc.property(fc.double({ noNaN: true, min: -100, max: 100 }), (x) => { expect(tidy(-x)).toBe(0 - tidy(x)); }), { seed: 9 });
  });
});

describe('what is to be undone', () => {
  test('the newest move that no put-back has undone, as long as anything stands off its mark', () => {
    const at = (list: Parameters<typeof stateOf>[0]) => lastMoveToUndo(stateOf(list));
    expect(at({})).toBeNull();
    expect(at({ moves: [['rest-height', 1 / 32], ['rest-side', 1 / 64]] })).toBe(1001);
    expect(at({ moves: [['rest-height', 1 / 32], ['rest-side', 1 / 64], ['rest-side', -1 / 64, 'put-back']] })).toBe(1000);
    expect(at({ moves: [['rest-height', 1 / 32], ['rest-height', -1 / 32, 'put-back']] })).toBeNull();
    expect(at({ moves: [['rest-height', 1 / 32], ['rest-height', -1 / 32, 'unadvised']] })).toBeNull();
  });

  test('back to a setting: the moves of that knob, newest first, and no further than needed', () => {
    const state = stateOf({ moves: [['rest-side', 1 / 32], ['rest-height', 1 / 32], ['rest-side', 1 / 32], ['rest-side', 1 / 64]] });
    expect(undoTo(state, 'rest-side', 1 / 16)).toEqual([1003]);
    expect(undoTo(state, 'rest-side', 1 / 32)).toEqual([1003, 1002]);
    expect(undoTo(state, 'rest-side', 0)).toEqual([1003, 1002, 1000]);
    expect(undoTo(state, 'rest-height', 1 / 32)).toEqual([]);
    expect(undoTo(state, 'yoke', 0)).toEqual([]);
  });
});
