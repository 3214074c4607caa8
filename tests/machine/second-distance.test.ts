// The second close distance: what lies far apart there, or more than an inch off, is looked into; and nobody goes on to broadheads with it.

import { describe, expect, it } from 'vitest';
import type { Ask, Tear } from '../../src/machine/types.ts';
import { play } from '../tunes/play.ts';

/** In tune at the first distance; at the second one as told, shot by shot. */
const bow = (second: (nth: number) => Tear, answers: Readonly<Record<string, unknown>> = {}) => {
  let nth = 0;
  const tear = (ask: Ask): Tear => (ask.kind === 'tear' && ask.distance.value === 9 ? second(nth++) : { x: 0, y: 0.0625 });
  const groups = { start: { x: 0, y: 0 }, gain: {}, sd: 0.5 };
  return { start: { x: 0, y: 0 }, gain: {}, sd: 0.1, seed: 1, groups, answers: { 'broadheads-wanted': 'fixed', 'use': 'hunting', tear, ...answers } };
};
const ends = ({ findings }: ReturnType<typeof play>): readonly string[] =>
  findings.flatMap((f) => (f.kind === 'axis' && f.chapter === 'paper' ? [`${f.axis} ${f.result}`] : []));
const asked = ({ views }: ReturnType<typeof play>, about: string): number => views.filter((view) => view.ask?.about === about).length;

describe('at the second close distance', () => {
  it('more than an inch is looked into, and where no cause is found and it stays, nothing is called tuned and no broadhead is shot', () => {
    const tune = play(bow(() => ({ x: 0.1, y: 1.4 })), { most: 300 });
    expect(asked(tune, 'inspected')).toBe(2);
    expect(ends(tune).slice(-2)).toEqual(['height inconsistent', 'side inconsistent']);
    expect(asked(tune, 'impact')).toBe(0);
    expect(tune.views.some(({ advice }) => advice?.kind === 'shop')).toBe(true);
    expect(tune.views.some(({ advice }) => advice?.kind === 'adjust')).toBe(false);
    expect(tune.last.type).toBe('done');
  });

  it('scatter is looked into; nothing found, it is shot again from there, and what is small then is confirmed', () => {
    const apart = [{ x: -0.6, y: 0.9 }, { x: 0.7, y: -0.3 }, { x: 0.1, y: -1 }];
    const tune = play(bow((nth) => apart[nth] ?? { x: 0, y: 0.0625 }), { most: 300 });
    expect(asked(tune, 'inspected')).toBe(1);
    expect(ends(tune)).toEqual(['height tuned', 'side tuned']);
    const shots = tune.views.flatMap(({ ask }) => (ask?.kind === 'tear' ? [ask.distance.value] : []));
    expect(shots.lastIndexOf(7)).toBeLessThan(shots.indexOf(9));
    expect(tune.views.some(({ say }) => say.some((line) => line.startsWith('What was called tuned is in tolerance at the second')))).toBe(true);
    expect(asked(tune, 'impact')).toBeGreaterThan(0);
  });

  it('contact that is found there takes back what was called tuned: the bow is shot anew from the first distance', () => {
    const tune = play(bow((nth) => (nth < 3 ? { x: 0.1, y: 1.4 } : { x: 0, y: 0.0625 }), { inspected: 'contact' }), { most: 300 });
    expect(tune.findings.some((f) => f.kind === 'cause' && f.cause === 'contact')).toBe(true);
    expect(ends(tune)).toEqual(['height tuned', 'side tuned', 'height tuned', 'side tuned']);
  });

  it('an inch that was looked into at the first distance already is looked into here once more', () => {
    let here = 0;
    const tear = (ask: Ask, shot: () => Tear): Tear => (ask.kind === 'tear' && ask.distance.value === 9 && here++ < 3 ? { x: 0, y: 1.3 } : shot());
    const tune = play({ start: { x: 0, y: 1.2 }, gain: { 'rest-height': { x: 0, y: -20 } }, sd: 0.05, seed: 3, answers: { tear } }, { most: 300 });
    expect(asked(tune, 'inspected')).toBe(2);
  });

  it('what no adjustment could mend at the first distance stays said, whatever the second one shows', () => {
    const dead = { start: { x: 0.6, y: 0.0625 }, gain: {}, sd: 0.05, seed: 2 };
    const tear = (ask: Ask, shot: () => Tear): Tear => (ask.kind === 'tear' && ask.distance.value === 9 ? { x: 0.6, y: 1.5 } : shot());
    const tune = play({ ...dead, answers: { tear } }, { most: 300 });
    expect(ends(tune)).toContain('side cannot');
    expect(ends(tune)).not.toContain('side inconsistent');
    expect(ends(tune).at(-1)).toBe('height inconsistent');
  });
});
