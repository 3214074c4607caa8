// The walk's rows of the bench: one object, the same each time, that counts what was played. A bench that miscounts would hide a fault.

import { afterEach, expect, it, vi } from 'vitest';
import { coachBench, coachOptions } from '../bench/coach/bench.ts';
import { meanWithin, shareWithin, type Interval } from '../bench/coach/interval.ts';
import { piecesHere, walk, type PlayPieces } from '../bench/coach/walk.ts';
import { capRows } from '../bench/coach/walk-cap-rows.ts';
import { CAP_NAMES, CAPS, KIND_NAMES, withoutCap } from '../bench/coach/walk-caps.ts';
import { walkLines } from '../bench/coach/walk-print.ts';
import type { WalkReport } from '../bench/coach/walk-rows.ts';
import { anyBow, beyondBow, boundBow, contactBow, numberOf, unfixableBow } from '../bench/coach/walk-world.ts';
import { meanTear, onAxis } from '../bench/coach/walk-truth.ts';
import type { Played } from '../bench/coach/walk-work.ts';
import { outOfReach } from '../../src/practice/reach.ts';
import { usualSpeed } from '../../src/practice/shoot.ts';
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
  // Rows of whole tunes like the first row's are not played here, to be quick. The others are played once.
  const played = new Map<string, readonly Played[]>();
  const by: PlayPieces = (pieces) => Promise.all(pieces.map(async (piece) => {
    if (['contact', 'beyond', ...KIND_NAMES, ...CAP_NAMES].includes(piece.row)) return [];
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
  expect(caps.map(({ name }) => name)).toEqual(CAP_NAMES);
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

it('a bow out of reach is so by truth, and a bow of a kind has what its caps are about', () => {
  let found = 0;
  for (let i = 0; i < 40; i++) {
    const number = numberOf(SEED, i);
    const beyond = beyondBow(number, knobs);
    if (beyond === null) continue;
    found++;
    const { world, axis } = beyond;
    expect(outOfReach(world.bow, usualSpeed(world))).toContain(axis);
    // The screw at its end, or any setting inside the limits, leaves the axis outside; where it should stand is farther.
    expect(Math.abs(onAxis(axis, meanTear(world, AS_FOUND)))).toBeGreaterThan(1 / 4);
  }
  expect(found).toBeGreaterThan(30);
  for (const kind of KIND_NAMES) {
    const { bow } = boundBow(numberOf(SEED, 1), knobs, kind);
    for (const name of CAP_NAMES) if (kind !== 'any bow' && capRows(() => []).find((row) => row.name === name)?.kind === kind) expect(bow.adjustments[CAPS[name].knob]).toBeDefined();
  }
});

it('a cap that is lifted is another content, and nothing else of it changes', () => {
  for (const name of CAP_NAMES) {
    const lifted = withoutCap(content, name);
    const changed = Object.entries(lifted.knobs).filter(([id, knob]) => JSON.stringify(knob) !== JSON.stringify(content.knobs[id as keyof typeof knobs]));
    expect(changed.map(([id]) => id)).toEqual([CAPS[name].knob]);
    const rungs = content.ladders.flatMap((rule, i) => rule.rungs.filter((rung, nth) => JSON.stringify(rung) !== JSON.stringify(lifted.ladders[i]?.rungs[nth])));
    expect(rungs.filter((rung) => rung.knob !== CAPS[name].knob || rung.soft === undefined)).toEqual([]);
  }
});

it('what a cap costs is told by the same bows: the mean of what each shot more, and its interval', () => {
  const tune = (number: number, shots: number, left: number, excursions: readonly ('height' | 'side')[]): Played => ({
    deadly: false, bad: [], outOfReach: [],
    tune: {
      number, shots, excursions, end: 'left', why: '', axes: [{ axis: 'height', result: 'tuned', shots }, { axis: 'side', result: 'cannot', shots }], causes: [], touches: 0, moves: 2,
      questions: 0, moved: [], found: { x: 0, y: 0.4 }, left: { x: 0, y: left }, unmoved: { x: 0, y: 0.4 }, broadheads: null, aside: null, touched: [],
    },
  });
  const rows = capRows((row) => {
    if (row === 'any bow') return [tune(1, 20, 0.1, []), tune(2, 30, 0.1, []), tune(3, 40, 0.3, ['height'])];
    return row === 'rest-height soft' ? [tune(3, 43, 0.5, ['height']), tune(1, 20, 0.1, ['height']), tune(2, 30, 0.1, ['side'])] : [];
  });
  const soft = rows.find(({ name }) => name === 'rest-height soft');
  // By hand: 0, 0 and 3 shots more are 1 on average, give or take 1.96 of 1.732 / 1.732.
  expect([soft?.shipped.shots.value, soft?.lifted.shots.value, soft?.lifted.shots.high]).toEqual([30, 1, expect.closeTo(2.96, 2)]);
  expect([soft?.lifted.excursion.value, soft?.lifted.worse.value, soft?.lifted.outside.value, soft?.lifted.tuned.value]).toEqual([expect.closeTo(1 / 3, 9), expect.closeTo(1 / 3, 9), 0, 0]);
  expect(rows.find(({ name }) => name === 'yoke soft')?.lifted.shots.of).toBe(0);
});

it('the caps are printed by themselves where nothing else was played', async () => {
  const options = coachOptions({ seed: `${SEED}`, bows: '1', world: 'nominal', only: 'caps', workers: '' });
  if (typeof options === 'string') throw new Error(options);
  expect(options.rows).toEqual({ kernel: false, walk: false, caps: true, second: false });
  const report = await walk([SEED], 1, { tunes: false, caps: true }, undefined, async (pieces) => Promise.all(pieces.map(async (piece) => {
    const [done = []] = piece.row === 'any bow' || piece.row === 'rest-height soft' ? await piecesHere([piece]) : [];
    return done;
  })));
  const lines = walkLines(report).join('\n');
  expect(lines).toContain('rest-height, soft limit 1/16 in: 1/8');
  expect(lines).not.toContain('whole tunes');
  expect(report.caps.find(({ name }) => name === 'rest-height soft')?.shipped.shots.of).toBe(1);
});

it('intervals are those of Wilson 1927, and two standard errors', () => {
  // By hand, from (p + z2/2n +- z sqrt(pq/n + z2/4n2)) / (1 + z2/n) with p = 0.5, n = 4, z = 1.96.
  const { low, high } = shareWithin([1, 2, 3, 4], (n) => n > 2);
  expect([low, high]).toEqual([expect.closeTo(0.15, 2), expect.closeTo(0.85, 2)]);
  expect(shareWithin([], () => true)).toEqual({ value: 0, low: 0, high: 1, of: 0 });
  expect(meanWithin([3, 3, 3], (n) => n)).toEqual({ value: 3, low: 3, high: 3, of: 3 });
});
