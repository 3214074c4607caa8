// The walk's rows of the bench: one object, the same each time, that counts what was played. A bench that miscounts would hide a fault.

import { afterEach, expect, it, vi } from 'vitest';
import { coachBench, coachOptions } from '../bench/coach/bench.ts';
import { meanWithin, shareWithin, type Interval } from '../bench/coach/interval.ts';
import { piecesHere, type PlayPieces } from '../bench/coach/walk.ts';
import { CAP_NAMES, withoutCap } from '../bench/coach/walk-caps.ts';
import type { WalkReport } from '../bench/coach/walk-rows.ts';
import { anyBow, contactBow, numberOf, unfixableBow } from '../bench/coach/walk-world.ts';
import { meanTear, onAxis } from '../bench/coach/walk-truth.ts';
import type { Played } from '../bench/coach/walk-work.ts';
import { AS_FOUND } from '../../src/practice/condition.ts';
import { shippedContent } from '../tunes/play.ts';

/** A bow that takes few shots. */
const SEED = 51;
const content = shippedContent();
const { knobs } = content;

afterEach(() => { vi.restoreAllMocks(); });

it('prints one object with --json and nothing else, the same each time', async () => {
  const lines: string[] = [];
  vi.spyOn(console, 'log').mockImplementation((line: string) => { lines.push(line); });
  const options = coachOptions({ seed: `${SEED}`, bows: '1', world: 'nominal', only: 'walk', workers: '' });
  if (typeof options === 'string') throw new Error(options);
  // The caps' rows and that of vanes that touch are whole tunes like the first row's: not played here, to be quick. The others are played once.
  const played = new Map<string, readonly Played[]>();
  const by: PlayPieces = (pieces) => Promise.all(pieces.map(async (piece) => {
    if (['contact', ...CAP_NAMES].includes(piece.row)) return [];
    const before = piece.row === 'any' ? undefined : played.get(piece.row);
    const [now = []] = before === undefined ? await piecesHere([piece]) : [before];
    played.set(piece.row, now);
    return now;
  }));
  for (let i = 0; i < 2; i++) await coachBench(options, true, undefined, by);
  expect(lines).toHaveLength(2);
  expect(lines[1]).toBe(lines[0]);
  const report = JSON.parse(lines[0] ?? '') as { readonly walk: WalkReport };
  expect(Object.keys(report)).toEqual(['walk']);
  const { any, caps, danger, neverEnds } = report.walk;
  expect(any.counts.shots.value).toBe(played.get('any')?.[0]?.tune.shots);
  expect(any.axes.tuned.of).toBe(2);
  expect(any.axes.tuned.value + any.axes.cannot.value + any.axes.accepted.value + any.axes.inconsistent.value).toBe(1);
  expect(caps.map(({ name }) => name)).toEqual(['shipped', ...CAP_NAMES]);
  expect([danger.value, neverEnds.value]).toEqual([1, 0]);
  for (const one of intervalsIn(report)) expect(one.low <= one.value && one.value <= one.high).toBe(true);
});

function intervalsIn(value: unknown): readonly Interval[] {
  if (typeof value !== 'object' || value === null) return [];
  return 'low' in value ? [value as Interval] : Object.values(value).flatMap(intervalsIn);
}

it('bows are what they are said to be', () => {
  for (let i = 0; i < 20; i++) {
    const number = numberOf(SEED, i);
    const any = anyBow(number, knobs);
    expect([any.set.arrows.length, new Set(any.set.arrows.map((arrow) => arrow.number)).size, any.bow.hardware.rest]).toEqual([12, 12, 'blade']);
    // Moved as far as anybody likes, the axis is as far off; the other is not.
    const { world, axis } = unfixableBow(number, knobs);
    const moved = { ...AS_FOUND, settings: { 'rest-height': 0.1, 'rest-side': 0.1, 'yoke': 3 } };
    expect(onAxis(axis, meanTear(world, moved))).toBeCloseTo(onAxis(axis, meanTear(world, AS_FOUND)), 9);
    expect(Math.abs(onAxis(axis, meanTear(world, AS_FOUND)))).toBeGreaterThan(1 / 4);
    // Six standard deviations of 0.18 in at the usual noise, on four shots of ten.
    const { bow: { contact }, archer } = contactBow(number, knobs);
    expect(contact?.often).toBe(0.4);
    expect(6 * Math.hypot(contact?.push.x ?? 0, contact?.push.y ?? 0)).toBeGreaterThanOrEqual(6 * 0.18 * archer.noise - 1e-9);
  }
});

it('a cap that is lifted is another content, and nothing else of it changes', () => {
  for (const name of CAP_NAMES) {
    const changed = Object.entries(withoutCap(content, name).knobs).filter(([id, knob]) => JSON.stringify(knob) !== JSON.stringify(content.knobs[id as keyof typeof knobs]));
    expect(changed).toHaveLength(1);
  }
});

it('intervals are those of Wilson 1927, and two standard errors', () => {
  // By hand, from (p + z2/2n +- z sqrt(pq/n + z2/4n2)) / (1 + z2/n) with p = 0.5, n = 4, z = 1.96.
  const { low, high } = shareWithin([1, 2, 3, 4], (n) => n > 2);
  expect([low, high]).toEqual([expect.closeTo(0.15, 2), expect.closeTo(0.85, 2)]);
  expect(shareWithin([], () => true)).toEqual({ value: 0, low: 0, high: 1, of: 0 });
  expect(meanWithin([3, 3, 3], (n) => n)).toEqual({ value: 3, low: 3, high: 3, of: 3 });
});
