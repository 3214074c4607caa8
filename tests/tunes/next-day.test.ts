// A tune left and taken up a day later: the bow is looked at again, the archer warms up, the set that stood is shot again,
// and only then the walk goes on, to the same settings. Days pass by the clock in the test's hand.

import { describe, expect, it } from 'vitest';
import { inTune, mended, ownPress, scatters, twoTrackLeft, wrongSide } from './bows.ts';
import { leaveWhen } from './sittings.ts';
import { adviceInShort, advicesOf, findingInShort, findingsOf, otherThanGates, type Walked, type WalkLine } from './walk-through.ts';

const stepIs = (step: string, taken?: number) => ({ ask }: WalkLine): boolean =>
  ask !== null && ask.step === step && (taken === undefined || (ask.kind === 'tear' && ask.shots.taken === taken));
const nth = (when: (line: WalkLine) => boolean, n: number) => {
  let seen = 0;
  return (line: WalkLine): boolean => when(line) && (seen += 1) === n;
};

const LOOKED_AT = ['place', 'backstop', 'range', 'history', 'limbs', 'axle-clips', 'bow-at-rest', 'arrows-flexed', 'marks'];
const secondDay = (walk: Walked): readonly string[] => walk.turns.slice(walk.sittings[0]).map(({ ask }) => ask.step);
const advised = (walk: Walked): readonly string[] => advicesOf(walk.lines).map(adviceInShort);
const found = (walk: Walked): readonly string[] => otherThanGates(findingsOf(walk.lines)).map(findingInShort);

/** The bow is looked at in full before it is drawn, the warm-up comes before the first tear, then three shots of the last set. */
function holdsSecondDay(walk: Walked, shotAgain: 'shoot-resume' | 'shoot-proving' | 'shoot-proof'): void {
  expect(walk.sittings).toHaveLength(1);
  const steps = secondDay(walk);
  expect(steps.slice(0, LOOKED_AT.length)).toEqual(LOOKED_AT);
  const tears = steps.filter((step) => step.startsWith('shoot-'));
  expect(tears.slice(0, 3)).toEqual([shotAgain, shotAgain, shotAgain]);
  expect(steps.indexOf('warm-up')).toBeGreaterThan(0);
  expect(steps.indexOf('warm-up')).toBeLessThan(steps.indexOf(shotAgain));
  // Once is enough: the set of the last day is not proved twice.
  expect(tears.filter((step) => step === 'shoot-resume').length).toBe(shotAgain === 'shoot-resume' ? 3 : 0);
  expect(walk.last.type).toBe('done');
}

const SEEDS = [1];

describe('a yoke bow whose rest answers the other way, left', () => {
  const MOMENTS = [
    ['in the middle of the first set', () => stepIs('shoot-shooting', 2), 'shoot-resume'],
    ['before the first change is made', () => stepIs('make-the-move'), 'shoot-resume'],
    ['after the change, before a shot', () => stepIs('rest-check'), 'shoot-resume'],
    ['before it is put back', () => stepIs('put-it-back'), 'shoot-proving'],
    ['while the return is proved', () => stepIs('shoot-proving', 1), 'shoot-proving'],
    ['before the other side is tried', () => nth(stepIs('make-the-move'), 2), 'shoot-resume'],
    ['before the second distance', () => ({ advice }: WalkLine) => advice?.kind === 'shop', 'shoot-resume'],
    ['before tightening', () => stepIs('tightened'), 'shoot-proof'],
    ['while tightening is proved', () => stepIs('shoot-proof', 2), 'shoot-proof'],
  ] as const satisfies readonly (readonly [string, () => (line: WalkLine) => boolean, string])[];

  it.each(MOMENTS)('%s', async (_name, when, again) => {
    const walk = await leaveWhen(wrongSide(1), when());
    holdsSecondDay(walk, again);
    expect(walk.last.bow).toEqual({ 'rest-side': { value: 1 / 16, unit: 'in' } });
    expect(found(walk)).toEqual(expect.arrayContaining(['height tuned', 'rest-side limit', 'side cannot']));
    expect(advised(walk).filter((text) => text.startsWith('put-back'))).toEqual(['put-back rest-side right 1/32 in']);
    expect(advised(walk).at(-1)).toBe('shop');
  });

  it('claims no comparison where the setting was not yet shot', async () => {
    const walk = await leaveWhen(wrongSide(1), stepIs('rest-check'));
    expect(walk.lines.flatMap(({ say }) => say).join(' ')).not.toContain('No clear difference from last time');
  });
});

describe('the others, left', () => {
  it.each(SEEDS)('own press, in the middle of the work on the cables (%i)', async (seed) => {
    const walk = await leaveWhen(ownPress(seed), stepIs('after-press'));
    holdsSecondDay(walk, 'shoot-resume');
    const steps = secondDay(walk);
    // What the work on the cables asks is not forgotten, and comes before the first shot.
    for (const step of ['after-press', 'axle-to-axle', 'brace-height', 'nock-height', 'slow-draw', 'peak-weight', 'shaft-ahead', 'first-shot']) {
      expect([step, steps.indexOf(step) >= 0 && steps.indexOf(step) < steps.indexOf('shoot-resume')]).toEqual([step, true]);
    }
    expect(walk.last.bow['rest-side']).toEqual({ value: 3 / 32, unit: 'in' });
    expect(found(walk)).toEqual(expect.arrayContaining(['yoke learned', 'side tuned']));
    expect(found(walk).at(-1)).toBe('height tuned');
  });

  it.each(SEEDS)('left-handed, between two changes (%i)', async (seed) => {
    const walk = await leaveWhen(twoTrackLeft(seed), nth(stepIs('make-the-move'), 2));
    holdsSecondDay(walk, 'shoot-resume');
    expect(walk.last.bow).toEqual({ 'rest-side': { value: 1 / 16, unit: 'in' } });
    expect(advised(walk).at(-1)).toBe('shop');
  });

  it.each(SEEDS)('in tune, in the middle of the first set: still left alone (%i)', async (seed) => {
    const walk = await leaveWhen(inTune(seed), stepIs('shoot-shooting', 2));
    holdsSecondDay(walk, 'shoot-resume');
    expect(advised(walk)).toEqual([]);
    expect(found(walk)).toEqual(['height tuned', 'side tuned']);
  });

  it.each(SEEDS)('scattering, while the cause is looked for: still no adjustment (%i)', async (seed) => {
    const walk = await leaveWhen(scatters(seed), stepIs('inspect-scatter'));
    expect(secondDay(walk).slice(0, LOOKED_AT.length)).toEqual(LOOKED_AT);
    expect(advised(walk).filter((text) => text !== 'inspect')).toEqual([]);
    expect(found(walk)).toEqual(['height inconsistent', 'side inconsistent']);
    expect(walk.last.type).toBe('done');
  });

  it('before anything was shot: the walk keeps its order, and no set is held against another', async () => {
    const walk = await leaveWhen(mended(1), stepIs('peak-weight'));
    const steps = secondDay(walk);
    expect(steps.slice(0, LOOKED_AT.length)).toEqual(LOOKED_AT);
    // The baseline is measured before the warm-up's shots.
    expect(steps.indexOf('centre-shot')).toBeLessThan(steps.indexOf('warm-up'));
    expect(steps).not.toContain('shoot-resume');
    expect(walk.last.type).toBe('done');
  });

  it('stopped: the stop still stands, and nothing else is asked', async () => {
    const walk = await leaveWhen(mended(1), ({ type }) => type === 'stop');
    const [first] = walk.sittings;
    expect(walk.turns[first!]?.line.type).toBe('stop');
    expect(secondDay(walk)[0]).toBe('released');
    expect(walk.last.type).toBe('done');
  });
});

describe('three hours away', () => {
  it('is a short break: four questions, then the one that stood', async () => {
    const walk = await leaveWhen(wrongSide(1), stepIs('make-the-move'), 3);
    expect(secondDay(walk).slice(0, 5)).toEqual(['place', 'backstop', 'range', 'history', 'make-the-move']);
    expect(secondDay(walk)).not.toContain('shoot-resume');
  });
});
