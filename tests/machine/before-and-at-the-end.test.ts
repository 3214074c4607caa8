// What is tuned is what content says; a bow that may be in tune is shot on with before anything is moved; a first move is no longer than
// it may be; and at the end of its travel shots decide, which is said.

import { describe, expect, test } from 'vitest';
import type { Content } from '../../src/content/types.ts';
import { beliefOn, evidenceOn, toleranceOn } from '../../src/machine/loop/evidence.ts';
import { judgeAsFound, judgeAxis } from '../../src/machine/loop/judge.ts';
import { rungNow } from '../../src/machine/loop/ladder.ts';
import { sizeMove } from '../../src/machine/loop/size.ts';
import type { Bow } from '../tunes/archer.ts';
import { play } from '../tunes/play.ts';
import { content, stateOf, type Given } from './state-of.ts';

const FINE = { 'rest-scale': 'fine-screw', 'cams': 'yoke', 'press': 'none', 'rest': 'drop-away-cable' };
/** Three shots around a tear. */
const around = (x: number, y: number): [number, number][] => [[x, y - 0.03], [x - 0.03, y + 0.03], [x + 0.03, y + 0.03]];
const twice = (x: number, y: number): [number, number][] => [...around(x, y), ...around(x, y)];
/** Tuned is half as wide. */
const NARROW: Content = { ...content, tolerance: { height: { low: -1 / 16, high: 1 / 8 }, side: { low: -1 / 8, high: 1 / 8 } } };

describe('what is called tuned', () => {
  test('is the tolerance of content, and its middle is aimed at', () => {
    for (const axis of ['height', 'side'] as const) {
      const { low, high } = NARROW.tolerance[axis];
      expect(toleranceOn(NARROW, stateOf(), axis)).toEqual({ low, high, aim: (low + high) / 2 });
    }
    const between: Given = { sets: [{ shots: twice(0.1, 0.13) }] };
    expect([judgeAsFound(content, stateOf(between)).verdict, judgeAsFound(NARROW, stateOf(between)).verdict]).toEqual(['in tolerance', null]);
    for (const axis of ['height', 'side'] as const) {
      const chance = (one: Content): number => evidenceOn(one, stateOf(between), axis, null)?.within ?? NaN;
      expect(chance(NARROW)).toBeLessThan(0.8);
      expect(chance(content)).toBeGreaterThan(0.96);
    }
  });

  test('says nothing of impacts, which have margins of their own', () => {
    const state = stateOf({ answers: { 'broadheads-wanted': 'fixed', 'group-at-20': 2 }, notes: { of: 'broadheads' } });
    for (const axis of ['height', 'side'] as const) expect(toleranceOn(NARROW, state, axis)).toEqual(toleranceOn(content, state, axis));
  });

  test('a whole tune stops where that content is content: the same bow is left alone by one and moved by the other', () => {
    const bow: Bow = { start: { x: 0, y: 0.17 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.03, seed: 4, answers: { 'rest-scale': 'fine-screw' } };
    const moved = (one: Content): boolean => play(bow, { content: one, until: ({ chapter, advice }) => chapter === 'finish' || advice?.kind === 'adjust' }).last.advice?.kind === 'adjust';
    expect([moved(content), moved(NARROW)]).toEqual([false, true]);
  });
});

describe('before the first move', () => {
  /** The tear here, with nothing moved yet; and the same after a move. */
  const fresh = (y: number, shots = around(0, y)): Given => ({ answers: FINE, sets: [{ shots }] });
  const moved = (y: number): Given => ({ answers: FINE, moves: [['rest-height', 1 / 32]], sets: [{ shots: around(0, y + 0.3) }, { at: { 'rest-height': 1 / 32 }, shots: around(0, y) }] });

  test('it is shot on while it may well be in tune, up to nine shots; after a move a chance like that is worth another one', () => {
    for (const y of [0.28, 0.32]) {
      const within = evidenceOn(content, stateOf(fresh(y)), 'height', null)?.within ?? NaN;
      expect([within > 0.1, within < 0.45]).toEqual([true, true]);
      expect([judgeAsFound(content, stateOf(fresh(y))).verdict, judgeAxis(content, stateOf(fresh(y)), 'height').verdict]).toEqual([null, null]);
      expect(judgeAxis(content, stateOf(moved(y)), 'height').verdict).toBe('out');
    }
    const nine = [...twice(0, 0.26), ...around(0, 0.26)];
    const within = evidenceOn(content, stateOf(fresh(0, nine)), 'height', null)?.within ?? NaN;
    expect([within > 0.1, within < 0.45]).toEqual([true, true]);
    expect([judgeAsFound(content, stateOf(fresh(0, nine))).verdict, judgeAxis(content, stateOf(fresh(0, nine)), 'height').verdict]).toEqual(['out', 'out']);
    expect(judgeAxis(content, stateOf(fresh(0, nine.slice(1))), 'height').verdict).toBeNull();
  });

  test('where it is hardly in tune it is out after three shots', () => {
    expect(evidenceOn(content, stateOf(fresh(0.4)), 'height', null)?.within).toBeLessThan(0.1);
    expect([judgeAsFound(content, stateOf(fresh(0.4))).verdict, judgeAxis(content, stateOf(fresh(0.4)), 'height').verdict]).toEqual(['out', 'out']);
  });

  /** An adjustment whose normal step is four of its smallest. */
  const LONG: Content = { ...content, knobs: { ...content.knobs, 'rest-height': { ...content.knobs['rest-height'], first: 1 / 16, firstWhenFar: null } } };
  test('the move is shortened where it may make it worse, by so much that a step more would; never below one step, and not later', () => {
    const cut = new Set<boolean>();
    for (const y of [0.3, 0.35, 0.4, 0.5, 0.9]) {
      const state = stateOf(fresh(y));
      const rung = rungNow(LONG, state, 'height');
      const sized = rung === null ? null : sizeMove(LONG, state, 'height', rung);
      if (rung === null || sized === null) throw new Error('there is a first move');
      const belief = beliefOn(LONG, state, 'height', 'rest-height');
      const { aim } = toleranceOn(LONG, state, 'height');
      const mayBeWorse = (to: number): boolean => belief.further(to, 0, aim, 1 / 8) > belief.otherSide + 0.035;
      expect([y, sized.to === rung.smallest || !mayBeWorse(sized.to)]).toEqual([y, true]);
      const shortened = sized.to < 1 / 16 && mayBeWorse(sized.to + rung.smallest);
      cut.add(shortened);
      if (y === 0.9) expect(sized.to).toBe(1 / 16);
    }
    expect([...cut].toSorted()).toEqual([false, true]);
    // Moved already, it goes where the shots say.
    const later = stateOf({ answers: FINE, moves: [['rest-height', 1 / 64]], sets: [{ shots: around(0, 0.5) }, { at: { 'rest-height': 1 / 64 }, shots: around(0, 0.4) }] });
    const rung = rungNow(LONG, later, 'height');
    expect((rung === null ? 0 : sizeMove(LONG, later, 'height', rung)?.to ?? 0) - 1 / 64).toBeGreaterThanOrEqual(3 / 64 - 1e-9);
  });
});

describe('at the end of its travel', () => {
  const NEAR = 'These shots do not settle it yet. One more is cheaper than a wrong move.';
  const end = (y: number): Given => ({
    answers: FINE, moves: [['rest-height', 1 / 32], ['rest-height', 1 / 32]],
    sets: [{ shots: around(0, y + 0.38) }, { at: { 'rest-height': 1 / 32 }, shots: around(0, y + 0.19) }, { at: { 'rest-height': 1 / 16 }, shots: around(0, y) }],
  });
  const judged = (y: number) => judgeAxis(content, stateOf(end(y)), 'height');

  test('shots decide where there is a chance; where there is hardly any, it is used up', () => {
    const found = new Map<string, number>();
    for (const y of [0.22, 0.26, 0.3, 0.32, 0.34]) {
      const one = judged(y);
      const within = evidenceOn(content, stateOf(end(y)), 'height', 'rest-height')?.within ?? NaN;
      const last = one.verdict === null ? one.say.at(-1) ?? '' : one.verdict;
      found.set(last, within);
      if (last === NEAR) expect(within).toBeGreaterThanOrEqual(0.12);
      if (one.verdict !== null) expect([one.verdict, within < 0.12]).toEqual(['cannot', true]);
    }
    expect([...found.keys()].toSorted()).toEqual([NEAR, 'cannot'].toSorted());
  });

  test('in a tune: it ends at its limit, after twelve shots there at the most', () => {
    for (const seed of [1, 2, 3]) {
      const { views, findings } = play({ start: { x: 0, y: 0.65 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.12, seed }, { until: (view) => view.findings.some(({ kind }) => kind === 'axis') });
      const there = views.filter(({ bow, ask, chapter }) => chapter === 'paper' && ask?.kind === 'tear' && bow['rest-height']?.value === 1 / 16);
      expect(there).not.toEqual([]);
      expect(there.length).toBeLessThanOrEqual(12);
      expect(findings).toContainEqual({ kind: 'knob', knob: 'rest-height', result: 'limit' });
    }
  });
});
