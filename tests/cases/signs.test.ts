// Which way a fault shows, and which way it is mended. Common practice: an arrow that leaves with its tail high goes where its point looks, low; one whose tail
// leaves left steers right. Vanes hide most of that, broadheads and shafts without vanes show it. So a tear, broadheads against field points,
// unfletched against fletched, and the drift down a plumb line tell of one fault with opposite signs, and are mended the same way.

import { describe, expect, it } from 'vitest';
import { broadheadsApart, tearFrom } from '../../src/archery/launch.ts';
import { judgePlumb } from '../../src/archery/plumb-line.ts';
import { gaugeAt } from '../../src/machine/loop/gauge.ts';
import { groupsGauge } from '../../src/machine/loop/gauge-groups.ts';
import { PLUMB_YARDS } from '../../src/machine/loop/gauge-plumb.ts';
import { degrees, feet, mrad, radiansPerSecond, yards } from '../../src/maths/units.ts';
import { stateOf } from '../machine/state-of.ts';
import type { Case, Seen } from './case.ts';
import { Played } from './play-case.ts';

type Pair = [number, number];
const BESIDE: Case['bow'] = { 'broadheads-wanted': 'fixed', 'group-at-20': '1.2' };
/** Where broadheads land by drag alone, 20 yd. */
const DRAG = -0.056;

/** How the fault is told, and the answers that lead there. `tail` is in inches of tear; at the target a shot goes the other way, some four times as far. */
const TOLD: Readonly<Record<string, { readonly bow: Case['bow']; readonly seen: (tail: Pair) => Seen }>> = {
  'a tear in paper': { bow: {}, seen: ([x, y]) => ({ tear: [x, y + 0.06] }) },
  'broadheads against field points': { bow: BESIDE, seen: ([x, y]) => ({ impacts: { usual: [0.5, -1], other: [0.5 - 4 * x, -1 - 4 * y + DRAG], spread: 0.3 } }) },
  'unfletched against fletched': {
    bow: { 'gate:backstop': 'no-paper', 'method': 'unfletched', 'group-at-20': '1.2' },
    seen: ([x, y]) => ({ impacts: { usual: [-1, 0.5], other: [-1 - 4 * x, 0.5 - 4 * y], spread: 0.3 } }),
  },
};
/** A plumb line shows no heights, and its slant is known as a first guess only. */
const PLUMB = { bow: { 'gate:backstop': 'no-paper', 'method': 'plumb-line', 'group-at-20': '1.2' }, seen: ([x]: Pair): Seen => ({ line: { drift: -0.4 * x, spread: 0.3 } }) };

function advised({ bow, seen }: { readonly bow: Case['bow']; readonly seen: (tail: Pair) => Seen }, tail: Pair, hand: string): readonly unknown[] {
  const played = new Played({ situation: '', bow: { ...bow, hand }, once: {}, checks: {}, known: false, seen: [seen(tail)], next: { kind: 'leave', words: '' }, why: '', source: '' });
  played.run();
  const { advice } = played.view;
  return [advice?.kind, advice?.knob, advice?.direction];
}

describe.each(['right', 'left'])('%s-handed', (hand) => {
  it.each([
    ['tail high', [0, 0.7], 'rest-height', 'up'], ['tail low', [0, -0.7], 'rest-height', 'down'],
    ['tail left', [-0.7, 0], 'rest-side', 'left'], ['tail right', [0.7, 0], 'rest-side', 'right'],
  ] as const)('%s: the rest follows it, however the fault was seen', (_fault, [x, y], knob, direction) => {
    for (const [how, told] of Object.entries(TOLD)) expect([how, ...advised(told, [x, y], hand)]).toEqual([how, 'adjust', knob, direction]);
    if (x !== 0) expect(advised(PLUMB, [x, y], hand)).toEqual(['adjust', knob, direction]);
  });
});

describe('the signs that this rests on', () => {
  it('what an inch of tear is worth at a target is below 0, for every kind', () => {
    const mechanical = stateOf({ answers: { 'broadheads-wanted': 'mechanical' } });
    const ratios = [
      groupsGauge(stateOf(), 'broadheads', feet(60)), groupsGauge(mechanical, 'broadheads', feet(60)), groupsGauge(stateOf(), 'unfletched', feet(60)), gaugeAt(stateOf(), 'plumb', feet(120)),
    ].map(({ perTear }) => perTear.ratio);
    expect(ratios).toHaveLength(4);
    for (const ratio of ratios) expect(ratio).toBeLessThan(0);
    expect(gaugeAt(stateOf(), 'paper', feet(7)).perTear.ratio).toBe(1);
  });
  it('the flight model agrees: a nose that leaves high, and rises, tears low and lands broadheads high; and so to either side', () => {
    for (const axis of ['height', 'side'] as const) {
      for (const nose of [-1.5, -0.5, 0.5, 1.5]) {
        const leaving = { angle: degrees(nose), rate: radiansPerSecond(nose) };
        const tear = tearFrom(leaving, feet(7), axis) - tearFrom({ angle: degrees(0), rate: radiansPerSecond(0) }, feet(7), axis);
        const { apart } = broadheadsApart({ ...leaving, errors: { angle: degrees(0.1), rate: radiansPerSecond(0.1) }, correlation: 0 });
        expect([Math.sign(tear), Math.sign(apart)]).toEqual([-Math.sign(nose), Math.sign(nose)]);
      }
    }
  });
});

describe('a plumb line (common practice: shot from 5 to 50 yd, one dot and one sight mark)', () => {
  const from5To50 = Array.from({ length: 10 }, (_, i) => yards(5 * (i + 1)));
  const shot = (slant: number, sag: number): ReturnType<typeof judgePlumb> =>
    judgePlumb(from5To50.map((distance) => ({ distance, mean: slant * (distance - 20) + sag, count: 3 })), { sd: mrad(1), df: 12 });
  it('shows a slant from 5 to 50 yd, whichever side, and none where arrows fall along it', () => {
    expect([shot(0, 0), shot(0.2, 0), shot(-0.2, 0)].map(({ verdict }) => verdict)).toEqual(['straight', 'slant', 'slant']);
    expect(shot(0.2, 0).drift).toBeCloseTo(0.2 * 45, 9);
    // Beside it all the way is the sight's affair.
    expect(shot(0, 3).verdict).toBe('straight');
  });
  it('is asked for at distances within those', () => {
    for (const distance of PLUMB_YARDS) expect(distance >= 5 && distance <= 50).toBe(true);
  });
});
