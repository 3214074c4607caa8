// Two close distances: what they show of how the arrow leaves, or that they are too near one another to show it; and what a clean tear still
// leaves open at a target. A sentence each, never a move.

import { describe, expect, test } from 'vitest';
import { tearFrom } from '../../src/archery/launch.ts';
import type { Axis } from '../../src/content/types.ts';
import { leavingInWords, stillApart } from '../../src/machine/loop/leaving.ts';
import type { State } from '../../src/machine/state.ts';
import type { Fact, Tear } from '../../src/machine/types.ts';
import { seededRandom } from '../../src/maths/random.ts';
import { degrees, feet, radiansPerSecond } from '../../src/maths/units.ts';
import type { Bow } from '../tunes/archer.ts';
import { play } from '../tunes/play.ts';
import { content, stateOf } from './state-of.ts';

const TUNED = { result: 'tuned', chance: 0.97 } as const;

/** A bow that is tuned on these axes by the shots at 7 ft, and was shot at 9 ft after. */
function shotAt(near: Tear, far: Tear | null, axes: readonly Axis[] = ['height', 'side'], spread = 0.02, n = 6): State {
  const around = ({ x, y }: Tear): [number, number][] => Array.from({ length: n }, (_, i) => [x + spread * Math.cos(i * 2.4), y + spread * Math.sin(i * 2.4)]);
  const said: Fact = {
    kind: 'noted', note: '', seq: 105, time: '2026-03-02T12:00:00.000Z',
    decided: { events: [], say: [], findings: axes.map((axis) => ({ kind: 'axis', axis, chapter: 'paper', result: 'tuned' })) },
  };
  const state = stateOf({ sets: [{ shots: around(near) }, ...(far === null ? [] : [{ shots: around(far), distance: 9 }])], notes: { axis: Object.fromEntries(axes.map((axis) => [axis, TUNED])), distance: feet(far === null ? 7 : 9) } });
  return { ...state, facts: [said] };
}

/** The tears of an arrow that leaves so sideways, and perfectly up and down. */
const leaves = (angle: number, rate: number) => (distance: number): Tear => ({
  x: tearFrom({ angle: degrees(angle), rate: radiansPerSecond(rate) }, feet(distance), 'side'), y: tearFrom({ angle: degrees(0), rate: radiansPerSecond(0) }, feet(distance), 'height'),
});
const toldOf = (angle: number, rate: number): string => leavingInWords(content, shotAt(leaves(angle, rate)(7), leaves(angle, rate)(9))).join(' ');

describe('two close distances', () => {
  test('tell nothing of an angle or a turning where the tears are alike, and say that they are too near', () => {
    expect(toldOf(0, 0)).toBe('9 ft is too near to 7 ft to tell from these shots whether the arrow leaves at an angle or turning.');
    expect(toldOf(0.3, 0.1)).toContain('too near');
  });

  test('show an arrow that stands off and turns the other way, which one distance hides', () => {
    // At 7 ft nothing is seen: 3.5 degrees to the right, and turning to the left.
    const [angle, rate] = [3.5, -2.3];
    expect(Math.abs(leaves(angle, rate)(7).x)).toBeLessThan(0.05);
    expect(toldOf(angle, rate)).toBe('Both distances together: the arrow leaves with its nose to the right and turning to the left. At 7 ft the one hides the other.');
    expect(toldOf(-angle, -rate)).toBe('Both distances together: the arrow leaves with its nose to the left and turning to the right. At 7 ft the one hides the other.');
  });

  test('say nothing of an axis that is not tuned, nor where one distance was not shot', () => {
    expect(leavingInWords(content, shotAt(leaves(3.5, -2.3)(7), leaves(3.5, -2.3)(9), ['height'])).join()).toContain('too near');
    expect(leavingInWords(content, shotAt(leaves(3.5, -2.3)(7), null))).toEqual([]);
    expect(leavingInWords(content, shotAt(leaves(3.5, -2.3)(7), leaves(3.5, -2.3)(9), []))).toEqual([]);
  });

  test('the side that is told is the true one in nineteen of twenty', () => {
    const chance = seededRandom(31);
    let [told, right, tunes] = [0, 0, 0];
    while (tunes < 400) {
      const [angle, rate] = [1.4 * chance.normal(), 1.2 * chance.normal()];
      const sd = 0.12;
      const seen = (distance: number, n: number): [number, number][] => Array.from({ length: n }, () => [leaves(angle, rate)(distance).x + sd * chance.normal(), sd * chance.normal()]);
      const near = seen(7, 6);
      if (Math.abs(near.reduce((sum, [x]) => sum + x, 0) / near.length) > 0.2) continue;
      tunes++;
      const base = shotAt({ x: 0, y: 0 }, { x: 0, y: 0 }, ['side']);
      const sets = base.sets.map((set, i) => ({ ...set, shots: (i === 0 ? near : seen(9, 4)).map(([x, y], j) => ({ x, y, good: true, seq: 100 + 10 * i + Math.min(j, 5) })) }));
      const [line = ''] = leavingInWords(content, { ...base, sets });
      const turning = /turning(?: as it leaves, its nose)? to the (left|right)/.exec(line)?.[1];
      if (turning === undefined) continue;
      told++;
      if ((turning === 'right') === rate > 0) right++;
    }
    expect(told).toBeGreaterThan(20);
    expect(told).toBeLessThan(170);
    expect(right / told).toBeGreaterThan(0.95);
  });
});

describe('what paper leaves open', () => {
  test('is less with two distances than with one, and more where the tear is larger', () => {
    const one = stillApart(shotAt({ x: 0, y: 0 }, null)) ?? NaN;
    const two = stillApart(shotAt({ x: 0, y: 0 }, { x: 0, y: 0 })) ?? NaN;
    expect(two).toBeLessThan(one);
    expect(two).toBeGreaterThan(1);
    expect(one).toBeLessThan(4);
    expect(stillApart(shotAt({ x: 0.2, y: 0 }, { x: 0.2, y: 0 })) ?? NaN).toBeGreaterThan(two);
    expect(stillApart(shotAt({ x: 0, y: 0 }, null, []))).toBeNull();
  });
});

describe('in a tune', () => {
  const bow = (use: string, more: Bow['answers'] = {}): Bow => ({ seed: 4, sd: 0.06, start: { x: 0.05, y: 0.06 }, gain: {}, answers: { use, 'broadheads-wanted': 'later', ...more } });
  const said = (played: ReturnType<typeof play>): readonly string[] => played.views.flatMap(({ say }) => say);

  test('one sentence at the second distance, and the same in short in the record; nothing is moved', () => {
    const played = play(bow('hunting'), { content });
    const lines = said(played);
    const at = lines.findIndex((line) => line.startsWith('What was called tuned is in tolerance at the second'));
    expect(lines[at + 1]).toMatch(/^9 ft is too near to 7 ft/);
    expect(lines.filter((line) => line.startsWith('9 ft is too near'))).toHaveLength(1);
    expect(played.last.record?.sections[0]?.rows.find(({ name }) => name === 'Second distance, 9 ft')?.value)
      .toBe('in tolerance there too: up and down, sideways; 9 ft is too near to 7 ft to tell an angle from a turning');
    expect(played.last.bow).toEqual({});
  });

  test('who hunts hears in inches why broadheads have the last word, before being asked for them; others hear of their groups', () => {
    const hunter = play(bow('hunting'), { content, until: ({ step }) => step === 'broadheads-wanted' });
    expect(hunter.last.say.at(-1)).toMatch(/^A clean tear still leaves room: by a flight model, fixed blades may land up to some [1-3](?: 1\/2)? in from field points at 20 yd\. That is why broadheads have the last word\.$/);
    const target = said(play(bow('target'), { content, until: ({ chapter }) => chapter === 'arrows' }));
    expect(target.filter((line) => line.includes('Your groups at your distance have the last word.'))).toHaveLength(1);
    expect(target.join(' ')).not.toContain('fixed blades may land');
    // Nothing was tuned at paper, so nothing is said of what that leaves.
    const off = said(play({ ...bow('target', { cams: 'two-track', press: 'none' }), start: { x: 0.8, y: 0.9 } }, { content, until: ({ chapter }) => chapter === 'arrows' }));
    expect(off.join(' ')).not.toContain('have the last word');
  });

  test('a second distance that does not confirm says what it shows besides, and no more than that', () => {
    const far = (ask: { readonly distance?: { readonly value: number } }, shot: () => Tear): Tear => {
      const { x, y } = shot();
      return ask.distance?.value === 9 ? { x: x + 0.5, y } : { x, y };
    };
    const lines = said(play(bow('target', { tear: far }), { content, until: ({ chapter }) => chapter === 'arrows' }));
    const at = lines.findIndex((line) => line.startsWith('The second distance does not confirm it'));
    expect(lines[at]).not.toContain('may be turning');
    expect(lines[at + 1]).toMatch(/^Both distances together: the arrow leaves with its nose to the right and turning to the left\./);
  });
});
