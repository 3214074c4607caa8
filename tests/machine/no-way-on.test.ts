// Two ways in which an adjustment may go wrong for good: it takes the tear too far at its first move, or no setting of it is near
// enough. Both were found by playing invented bows by the thousand.

import { describe, expect, it } from 'vitest';
import { play } from '../tunes/play.ts';
import type { Bow } from '../tunes/archer.ts';

const SEEDS = [1, 2, 3, 4, 5];
const tune = (bow: Omit<Bow, 'seed'>, seed: number) => {
  const { views, findings, last } = play({ ...bow, seed }, { most: 300 });
  const changes = views.flatMap(({ ask, advice }) => (ask?.about === 'moved' && advice !== null ? [`${advice.kind} ${advice.what}`] : []));
  const ends = findings.flatMap((f) => (f.kind === 'axis' && f.axis === 'height' ? [f.result] : []));
  return { changes: changes.filter((change, i) => change !== changes[i - 1]), ends, last, said: views.flatMap(({ say }) => say).join('\n'), findings };
};

describe('a change after which the tear is more than two inches', () => {
  // As found nearly two inches high, with a rest that works to the other side than most.
  const worse: Omit<Bow, 'seed'> = { start: { x: 0, y: 1.75 }, gain: { 'rest-height': { x: 0, y: 8 } }, sd: 0.1 };

  it.each(SEEDS)('goes back before anything else is done, and is proved (seed %i)', (seed) => {
    const { changes, last, said, ends } = tune(worse, seed);
    expect(changes.slice(0, 2)).toEqual(['adjust REST UP 1/16 in', 'put-back REST DOWN 1/16 in']);
    expect(said).toContain('More than two inches after that change. It goes back before anything else.');
    expect(last.bow['rest-height']?.value ?? 0).toBeLessThanOrEqual(0);
    expect(ends).not.toContain('tuned');
  });
});

describe('an adjustment of which one step is too much', () => {
  // 1/32 in at a time, half an inch of tear each, and the tolerance in between.
  const coarse: Omit<Bow, 'seed'> = { start: { x: 0, y: 0.37 }, gain: { 'rest-height': { x: 0, y: -19 } }, sd: 0.08, answers: { 'rest-scale': 'coarse', 'rest': 'blade' } };

  it.each(SEEDS)('is not turned to and fro: it stays at the nearer end, and that is said (seed %i)', (seed) => {
    const { changes, findings, last, said } = tune(coarse, seed);
    expect(changes.length).toBeLessThanOrEqual(4);
    expect(findings).toContainEqual({ kind: 'knob', knob: 'rest-height', result: 'limit' });
    expect(said).toContain('at either end of it the tail is off');
    expect(last.type).toBe('done');
  });
});
