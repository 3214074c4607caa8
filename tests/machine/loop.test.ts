// The measuring loop in parts: which knob, how far, what the shots say, and whether it came back.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Axis } from '../../src/content/types.ts';
import { differs, judgeResume, judgeReturn, judgeSecond } from '../../src/machine/loop/compare.ts';
import { evidenceOn } from '../../src/machine/loop/evidence.ts';
import { taken } from '../../src/machine/loop/gauge.ts';
import { judgeAsFound, judgeAxis } from '../../src/machine/loop/judge.ts';
import { judgeSet } from '../../src/machine/loop/judge-set.ts';
import { homeOf, ladderFor, offsetFromMaker, restOffset, rungNow } from '../../src/machine/loop/ladder.ts';
import { sizeMove, TRIAL_FROM, wrongWay } from '../../src/machine/loop/size.ts';
import { currentSet, settingKey, shotsHere } from '../../src/machine/loop/sets.ts';
import { content, stateOf, type Given } from './state-of.ts';

const FINE = { 'rest-scale': 'fine-screw' };
const triangle = (x: number, y: number, r = 0.03): [number, number][] => [[x + r, y], [x - r, y + r], [x, y - r]];
/** The sizing of the rung under work for a set with this middle. */
function sized(axis: Axis, given: Given) {
  const state = stateOf(given);
  const rung = rungNow(content, state, axis);
  return rung === null ? null : sizeMove(content, state, axis, rung);
}

describe('the ladder', () => {
  const rungs = (axis: Axis, cams: string, press: string, growing = 'grown'): string =>
    ladderFor(content, stateOf({ answers: { cams, press, growing } }), axis).rungs.map((r) => `${r.knob}${r.soft === undefined ? '' : ` ${r.soft}`}`).join(', ');

  test.each([
    ['yoke', 'trained', 'yoke, rest-side 0.03125'], ['single-cam', 'trained', 'yoke, rest-side 0.03125'], ['yoke', 'shop', 'rest-side 0.0625'], ['yoke', 'none', 'rest-side 0.0625'],
    ['two-track', 'trained', 'rest-side 0.0625, cam-spacers'], ['hybrid', 'trained', 'rest-side 0.0625, cam-spacers'], ['two-track', 'shop', 'rest-side 0.0625'], ['hybrid', 'none', 'rest-side 0.0625'],
    ['screw-adjust', 'none', 'cam-screw, rest-side 0.03125'], ['unknown', 'trained', 'rest-side 0.0625'],
  ])('sideways on %s, press %s: %s', (cams, press, want) => expect(rungs('side', cams, press)).toBe(want));

  test('up and down is the rest on any bow', () => {
    for (const cams of ['yoke', 'single-cam', 'hybrid', 'two-track', 'screw-adjust', 'unknown']) for (const press of ['trained', 'shop', 'none']) expect(rungs('height', cams, press)).toBe('rest-height');
  });
  test('nobody who still grows gets a rung that needs a press', () => {
    for (const cams of ['yoke', 'single-cam', 'hybrid', 'two-track', 'screw-adjust', 'unknown']) {
      const { rungs: all } = ladderFor(content, stateOf({ answers: { cams, press: 'trained', growing: 'growing' } }), 'side');
      expect(all.some((r) => content.knobs[r.knob].press)).toBe(false);
    }
  });
  test('a rung that is done with is passed by; none left is null', () => {
    const at = (ended: Given['notes']) => rungNow(content, stateOf({ answers: { cams: 'yoke', press: 'trained' }, notes: { ...ended } }), 'side')?.knob ?? null;
    expect(at({})).toBe('yoke');
    expect(at({ ended: { yoke: 'no response' } })).toBe('rest-side');
    expect(at({ ended: { yoke: 'limit', 'rest-side': 'limit' } })).toBeNull();
  });
  test('a rest without a fine screw has no step below 1/32', () => {
    const smallest = (scale: string) => rungNow(content, stateOf({ answers: { 'rest-scale': scale } }), 'height')?.smallest;
    expect([smallest('fine-screw'), smallest('coarse')]).toEqual([1 / 64, 1 / 32]);
  });
  test('sideways the rest\'s limits count from the maker\'s figure, on the side that the hand says', () => {
    // The riser is right of the arrow for a right-handed archer: a smaller centre shot stands further right.
    const at = (hand: string): Given => ({ answers: { hand, 'centre-shot': 25 / 32, 'centre-shot-figure': 26 / 32, cams: 'unknown' } });
    expect(offsetFromMaker(stateOf(at('right')))).toBeCloseTo(1 / 32, 12);
    expect(offsetFromMaker(stateOf(at('left')))).toBeCloseTo(-1 / 32, 12);
    expect(rungNow(content, stateOf(at('right')), 'side')).toMatchObject({ lo: -3 / 32, hi: 1 / 32 });
    expect(rungNow(content, stateOf(at('left')), 'side')).toMatchObject({ lo: -1 / 32, hi: 3 / 32 });
    expect(restOffset(stateOf({ ...at('right'), moves: [['rest-side', -1 / 32]] }))).toBeCloseTo(0, 12);
    expect(offsetFromMaker(stateOf({ answers: { hand: 'right', 'centre-shot': 25 / 32, 'centre-shot-figure': null } }))).toBe(0);
  });
  test('home is where it began, or the maker\'s figure where the rest was brought there first', () => {
    const at = (here: number) => homeOf(stateOf({ answers: { hand: 'right', 'centre-shot': here, 'centre-shot-figure': 13 / 16 } }), 'rest-side');
    expect(at(13 / 16 + 1 / 16)).toBe(0);
    expect(at(13 / 16 + 3 / 32)).toBe(3 / 32);
    expect(homeOf(stateOf({ answers: { hand: 'right', 'centre-shot': 1, 'centre-shot-figure': 13 / 16 } }), 'rest-height')).toBe(0);
  });
});

describe('the size of a move', () => {
  const high = (y: number): Given => ({ answers: FINE, sets: [{ shots: triangle(0, y) }] });

  test('the book\'s side: a high tail takes the rest up, a low one down', () => {
    expect(Math.sign(sized('height', high(0.5))?.to ?? 0)).toBe(1);
    expect(Math.sign(sized('height', high(-0.5))?.to ?? 0)).toBe(-1);
  });
  test('the first move is at most the first cap, and the larger one only beyond 3/4 in', () => {
    expect(sized('height', high(0.6))?.to).toBe(1 / 32);
    expect(sized('height', high(0.8 + 1 / 16))?.to).toBe(1 / 16);
    expect(sized('height', high(-0.65))?.to).toBe(-1 / 32);
  });
  test('a side that may be wrong with one chance in five is a trial, of its normal step exactly', () => {
    const trial = sized('side', { answers: { ...FINE, cams: 'unknown' }, sets: [{ shots: triangle(0.3, 0) }] });
    expect(trial).toMatchObject({ trial: true });
    expect(Math.abs(trial?.to ?? 0)).toBe(1 / 32);
    const small = sized('side', { answers: { ...FINE, cams: 'unknown' }, sets: [{ shots: triangle(-2, 0) }] });
    expect(Math.abs(small?.to ?? 0)).toBe(1 / 32);
  });
  test('once the bow has answered it is a trial no more, and the later cap holds', () => {
    const learned: Given = {
      answers: { ...FINE, cams: 'unknown' }, moves: [['rest-side', 1 / 32]],
      sets: [{ shots: [...triangle(0.7, 0), ...triangle(0.7, 0)] }, { at: { 'rest-side': 1 / 32 }, shots: [...triangle(0.3, 0), ...triangle(0.3, 0)] }],
    };
    const next = sized('side', learned);
    expect(next?.trial).toBe(false);
    expect(wrongWay(next?.line ?? { intercept: 0, slope: 0, varIntercept: 1, varSlope: 1, cov: 0 })).toBeLessThan(TRIAL_FROM);
    expect(next?.from).toBe(1 / 32);
    expect((next?.to ?? 0) - 1 / 32).toBeGreaterThan(0);
    expect((next?.to ?? 0) - 1 / 32).toBeLessThanOrEqual(1 / 32);
  });
  test('no step beyond the limit; a knob that stands beyond it may only come back', () => {
    const at = (setting: number, y: number): Given => ({ answers: FINE, moves: [['rest-height', setting]], sets: [{ shots: triangle(0, y + 6 * setting) }, { at: { 'rest-height': setting }, shots: triangle(0, y) }] });
    expect(sized('height', at(1 / 16, 0.6))).toBeNull();
    expect(sized('height', at(3 / 32, 0.6))).toBeNull();
    const back = sized('height', at(3 / 32, -0.6));
    expect(back?.to).toBeLessThan(3 / 32);
  });
  test('whatever was shot: inside the limits or towards them, within the caps, in whole steps', () => {
    const tear = fc.integer({ min: -24, max: 24 }).map((k) => k / 16);
    const hardware = fc.constantFrom({ cams: 'yoke', press: 'trained' }, { cams: 'screw-adjust', press: 'none' }, { cams: 'two-track', press: 'trained' }, { cams: 'unknown', press: 'none' });
    let met = 0;
    fc.assert(fc.property(fc.constantFrom<Axis>('height', 'side'), tear, tear, fc.integer({ min: -5, max: 5 }), hardware, fc.constantFrom('fine-screw', 'coarse'), (axis, before, now, steps, bow, scale) => {
      const base: Given = { answers: { ...bow, 'rest-scale': scale } };
      const rung = rungNow(content, stateOf(base), axis);
      if (rung === null) throw new Error('a fresh bow has a rung');
      const knob = content.knobs[rung.knob];
      const from = steps * rung.smallest;
      const tearAt = (v: number): [number, number][] => (axis === 'height' ? triangle(0, v) : triangle(v, 0));
      const move = sized(axis, { ...base, ...(steps === 0 ? {} : { moves: [[rung.knob, from]] as const }), sets: [{ shots: tearAt(before) }, ...(steps === 0 ? [] : [{ at: { [rung.knob]: from }, shots: tearAt(now) }])] });
      if (move === null) return;
      met++;
      const size = Math.abs(move.to - move.from);
      expect(size).toBeGreaterThan(0);
      expect(Math.abs(size / rung.smallest - Math.round(size / rung.smallest))).toBeLessThan(1e-6);
      expect(size).toBeLessThanOrEqual((steps === 0 ? Math.max(knob.first, knob.firstWhenFar?.step ?? 0) : Math.max(knob.later, knob.first)) + 1e-9);
      const outside = (v: number): number => Math.max(0, rung.lo - v, v - rung.hi);
      expect(outside(move.to) === 0 || outside(move.to) < outside(move.from), `${move.from} to ${move.to}`).toBe(true);
    }), { seed: 8, numRuns: 100 });
    expect(met).toBeGreaterThan(60);
  });
});

describe('judging a set', () => {
  const verdict = (given: Given) => judgeAsFound(content, stateOf(given)).verdict;

  test('a bow in tune is left alone; one that is out is out, on either axis', () => {
    expect(verdict({ sets: [{ shots: [...triangle(0, 0.05, 0.02), ...triangle(0, 0.05, 0.02)] }] })).toBe('in tolerance');
    for (const [x, y] of [[0.8, 0.05], [-0.8, 0.05], [0, 0.9], [0, -0.8]] as const) expect(verdict({ sets: [{ shots: triangle(x, y) }] })).toBe('out');
  });
  test('near the limit it asks for one more shot, of which it says how many are wanted', () => {
    const near = judgeAsFound(content, stateOf({ sets: [{ shots: triangle(0.2, 0.05) }] }));
    expect(near).toMatchObject({ verdict: null, notes: { wanted: 4 } });
  });
  test('"tuned" only with the chance that is promised, and never without the finding', () => {
    const tear = fc.integer({ min: -8, max: 8 }).map((k) => k / 16);
    let tuned = 0;
    fc.assert(fc.property(fc.constantFrom<Axis>('height', 'side'), fc.array(fc.tuple(tear, tear), { minLength: 3, maxLength: 9 }), (axis, shots) => {
      const state = stateOf({ sets: [{ shots }] });
      const judged = judgeAxis(content, state, axis);
      const e = evidenceOn(content, state, axis, null);
      if (e === null) throw new Error('there were shots');
      const sure = e.within >= 0.97 - 0.003 * Math.max(0, shots.length - 4) && e.withinHere >= 0.8;
      expect(judged.verdict === 'in tolerance').toBe(sure);
      expect(judged.findings.some((f) => f.kind === 'axis' && f.result === 'tuned')).toBe(judged.verdict === 'in tolerance');
      if (judged.verdict === 'in tolerance') tuned++;
    }), { seed: 12, numRuns: 200 });
    expect(tuned).toBeGreaterThan(5);
  });
  test('shots that point three ways are scatter, whatever their middle says', () => {
    const judged = judgeSet(content, stateOf({ sets: [{ shots: [[0.9, 0.1], [-0.9, 0], [0, 0.95]] }] }));
    expect(judged).toMatchObject({ verdict: 'inconsistent', notes: { inspection: 'scatter' } });
    expect(judgeSet(content, stateOf({ sets: [{ shots: triangle(0.3, 0.3) }] }))).toBeNull();
  });
  test('two shots too far apart are not read yet: at least a third is asked for', () => {
    const apart = judgeSet(content, stateOf({ sets: [{ shots: [[0, 0], [0, 1.5]] }] }));
    expect(apart?.verdict).toBeNull();
    expect(apart?.notes.wanted).toBeGreaterThanOrEqual(3);
    expect(judgeSet(content, stateOf({ sets: [{ shots: [[0, 0], [0, 0.3]] }] }))).toBeNull();
  });
  test('a mean beyond 1 in is inspected before any knob, beyond 2 in otherwise; once only', () => {
    const at = (y: number, notes = {}) => judgeSet(content, stateOf({ sets: [{ shots: triangle(0, y) }], notes }));
    expect(at(1)).toBeNull();
    expect(at(1.1)).toMatchObject({ verdict: 'gross', notes: { inspection: 'gross', grossSeen: true } });
    expect(at(-2.1)).toMatchObject({ verdict: 'gross', notes: { inspection: 'very-gross' } });
    expect(at(1.1, { grossSeen: true })).toBeNull();
  });
  test('a move that made it worse is put back', () => {
    const judged = judgeAxis(content, stateOf({
      answers: FINE, moves: [['rest-height', 1 / 32]],
      sets: [{ shots: [...triangle(0, 0.4), ...triangle(0, 0.4)] }, { at: { 'rest-height': 1 / 32 }, shots: [...triangle(0, 0.75), ...triangle(0, 0.75)] }],
    }), 'height');
    expect(judged).toMatchObject({ verdict: 'worse', notes: { undo: [1000], worse: { 'rest-height': 1 } } });
  });
  test('a knob that does nothing goes back to its start', () => {
    const flat = (at: number) => ({ at: { 'rest-height': at }, shots: [...triangle(0, 0.8, 0.02), ...triangle(0, 0.8, 0.02)] });
    const judged = judgeAxis(content, stateOf({ answers: FINE, moves: [['rest-height', 1 / 32], ['rest-height', 1 / 32]], sets: [flat(0), flat(1 / 32), flat(1 / 16)] }), 'height');
    expect(judged).toMatchObject({ verdict: 'cannot', notes: { ended: { 'rest-height': 'no response' }, undo: [1001, 1000] } });
  });
});

describe('did it come back?', () => {
  const sets = (before: number, now: number, n = 1, purpose: 'prove' | 'resume' = 'prove') =>
    stateOf({ sets: [{ shots: [...triangle(0, before), ...triangle(0, before)] }, { shots: Array.from({ length: n }, () => triangle(0, now)).flat(), purpose }] });

  test('the same is returned, another tear is not', () => {
    expect(judgeReturn(content, sets(0.5, 0.5))).toMatchObject({ verdict: 'returned' });
    expect(judgeReturn(content, sets(0.5, 1.3))).toMatchObject({ verdict: 'not returned', notes: { inspection: 'not-returned' } });
    expect(judgeReturn(content, sets(0.5, -0.4))).toMatchObject({ verdict: 'not returned' });
  });
  test('with nothing before it there is nothing that it could contradict', () => {
    const state = stateOf({ sets: [{ shots: triangle(0, 2) }] });
    expect(differs(state)).toBeNull();
    expect(judgeReturn(content, state).verdict).toBe('returned');
  });
  test('only shots at this very setting, distance and epoch count as before', () => {
    const other = (set: object) => differs(stateOf({ sets: [{ shots: triangle(0, 2), ...set }, { shots: triangle(0, 0) }] }));
    expect(other({})).toMatchObject({ proven: true });
    expect(other({ at: { 'rest-side': 1 / 32 } })).toBeNull();
    expect(other({ distance: 9 })).toBeNull();
    expect(other({ epoch: 0 })).toBeNull();
  });
  test('another day: a doubtful difference takes three more shots, a proven one begins anew', () => {
    expect(judgeResume(content, sets(0.5, 0.5, 1, 'resume'))).toMatchObject({ verdict: 'returned' });
    expect(judgeResume(content, sets(0.5, 1.2, 1, 'resume'))).toMatchObject({ verdict: null, notes: { wanted: 6 } });
    expect(judgeResume(content, sets(0.5, 1.2, 2, 'resume'))).toMatchObject({ verdict: 'returned', notes: { epoch: 2 } });
  });
  test('the second distance confirms, asks for more, or does not confirm; it never moves anything', () => {
    const at = (within: number, shots: number) => judgeSecond(content, [{ within: 0.99, shots }, { within, shots }], stateOf());
    expect(at(0.95, 3)).toMatchObject({ verdict: 'in tolerance', notes: { secondDistance: 'confirmed' } });
    expect(at(0.94, 3).verdict).toBeNull();
    expect(at(0.45, 8).verdict).toBeNull();
    expect(at(0.94, 9)).toMatchObject({ verdict: 'out', notes: { secondDistance: 'not confirmed' } });
    expect(at(0.44, 3)).toMatchObject({ verdict: 'out' });
  });
});

describe('which shots belong together', () => {
  test('a setting of zero is the same as none', () => {
    expect(settingKey({ 'rest-side': 0, yoke: 1 })).toBe(settingKey({ yoke: 1 }));
    expect(settingKey({ 'rest-side': 1, yoke: 1 }, 'rest-side')).toBe(settingKey({ yoke: 1 }));
    expect(settingKey({ 'rest-side': 1, yoke: 2 })).toBe(settingKey({ yoke: 2, 'rest-side': 1 }));
  });
  test('shots at this setting count from all its sets; the present set is the newest of this epoch and distance', () => {
    const state = stateOf({ moves: [['yoke', 1]], sets: [{ shots: triangle(0, 0) }, { at: { yoke: 1 }, shots: triangle(1, 1) }, { at: { yoke: 1 }, shots: [[1, 1]] }] });
    expect(shotsHere(state)).toHaveLength(4);
    expect(shotsHere(state, 3)).toHaveLength(3);
    expect([currentSet(state)?.id, taken(state)]).toEqual([3, 1]);
    expect(currentSet(stateOf({ sets: [{ shots: [], distance: 9 }] }))).toBeNull();
    expect(taken(stateOf())).toBe(0);
  });
});
