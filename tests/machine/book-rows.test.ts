// What is believed of an adjustment before this bow has answered: the first row of the book that fits its cams and its rest, with the
// chance in it that it does nothing at all; what was learned, in this tune or an earlier one, comes before any book.

import { describe, expect, test } from 'vitest';
import { bookOf, priorOf } from '../../src/machine/loop/evidence.ts';
import { rungNow } from '../../src/machine/loop/ladder.ts';
import { sizeMove } from '../../src/machine/loop/size.ts';
import { content, stateOf, type Given, type Plain } from './state-of.ts';

const book = (knob: 'rest-height' | 'rest-side' | 'nock-height' | 'yoke', answers: Record<string, Plain>) => bookOf(content.knobs[knob], stateOf({ answers }));
const perStep = (knob: Parameters<typeof book>[0], answers: Record<string, Plain>): number => {
  const { book: row } = book(knob, answers);
  return row === null ? NaN : row.change / row.per / 32;
};

describe('the row of the book', () => {
  test('up and down by the rest: less for an arm that drops early, more for what holds the shaft long', () => {
    expect(perStep('rest-height', { rest: 'drop-away-cable' })).toBe(-5 / 32);
    expect(perStep('rest-height', { rest: 'drop-away-limb' })).toBe(-5 / 32);
    for (const rest of ['blade', 'containment', 'prong']) expect(perStep('rest-height', { rest })).toBe(-1 / 4);
    for (const answers of [{}, { rest: 'unknown' }]) expect(perStep('rest-height', answers)).toBe(-3 / 16);
    // Of the nock nothing of the kind is known.
    for (const rest of ['drop-away-cable', 'blade', 'unknown']) expect(perStep('nock-height', { rest })).toBe(3 / 16);
  });

  test('sideways by the cams first, then by the rest; nothing is known of those that are not told', () => {
    expect(book('rest-side', { cams: 'two-track', rest: 'blade' })).toMatchObject({ dead: 0.3, wrongSign: 0.35 });
    expect(book('rest-side', { cams: 'screw-adjust', rest: 'drop-away-cable' })).toMatchObject({ dead: 0.3 });
    expect(book('rest-side', { cams: 'yoke', rest: 'drop-away-cable' })).toMatchObject({ dead: 0.2 });
    expect([perStep('rest-side', { cams: 'yoke', rest: 'drop-away-cable' }), perStep('rest-side', { cams: 'yoke', rest: 'blade' }), perStep('rest-side', {})]).toEqual([-3 / 32, -1 / 8, -1 / 8]);
    expect(book('rest-side', { cams: 'unknown', rest: 'unknown' })).toMatchObject({ dead: 0.2 });
  });

  test('no row turns a side round, and each is as unsure of it as the book', () => {
    for (const knob of Object.values(content.knobs)) {
      for (const row of knob.books) {
        expect(Math.sign(row.change)).toBe(Math.sign(knob.book?.change ?? NaN));
        expect([row.wrongSign >= knob.wrongSign, row.dead >= knob.dead]).toEqual([true, true]);
      }
    }
  });
});

describe('what is believed beforehand', () => {
  const at = (answers: Record<string, Plain>, more: Given = {}) => stateOf({ answers: { 'rest-scale': 'fine-screw', ...answers }, ...more });

  test('counts that it may do nothing: nearer to nothing, and less sure', () => {
    // -6 in for an inch of rest, 3 in 100 to the other side, one bow in ten that does not answer.
    const { mean, sd } = priorOf(content, at({ rest: 'unknown' }), 'rest-height');
    expect(mean).toBeCloseTo(-5.4, 9);
    expect(sd).toBeGreaterThan(6 / 1.8808);
    const [sure, unsure] = [priorOf(content, at({ cams: 'yoke', rest: 'blade' }), 'rest-side'), priorOf(content, at({ cams: 'two-track', rest: 'blade' }), 'rest-side')];
    expect(Math.abs(unsure.mean)).toBeLessThan(Math.abs(sure.mean));
  });

  test('a rest that answers more is moved less for the same tear', () => {
    const triangle = (y: number): [number, number][] => [[0.02, y], [-0.02, y + 0.02], [0, y - 0.02]];
    const move = (rest: string): number => {
      const state = at({ rest }, { sets: [{ shots: [...triangle(0.25), ...triangle(0.25)] }] });
      const rung = rungNow(content, state, 'height');
      return rung === null ? NaN : (sizeMove(content, state, 'height', rung)?.to ?? NaN);
    };
    expect(move('blade')).toBeLessThan(move('drop-away-cable'));
  });

  test('what this bow, or an earlier tune of it, answered comes before any row', () => {
    const learned = { 'rest-height': { mean: -9, sd: 0.5 } };
    const broadheads = at({ 'rest': 'blade', 'broadheads-wanted': 'fixed' }, { notes: { learned, of: 'broadheads' } });
    expect(priorOf(content, broadheads, 'rest-height').mean).toBeCloseTo(-9 * -3.9 * (broadheads.notes.distance / 60), 6);
    const known = {
      ...at({ rest: 'blade', bow: 'one' }),
      facts: [{ kind: 'begun', v: 1, seq: 1, time: '2026-03-02T12:00:00.000Z', tune: 'two', engine: 't', content: '1', known: [{ from: 'one', bow: 'x', answers: {}, spread: null, gains: learned }], decided: { events: [], say: [], findings: [] } }],
    } as const;
    expect(priorOf(content, known, 'rest-height')).toEqual(learned['rest-height']);
  });
});
