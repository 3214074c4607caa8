// Careless, contradictory archers against the whole machine: whatever they do, every promise holds after every turn.
// Longer runs: WALKS=2000 WALKS_SEED=7 npx vitest run tests/machine/random-walks.test.ts

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Carried, Fact } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import type { Bow } from '../tunes/archer.ts';
import { play } from '../tunes/play.ts';
import type { Turn } from './careless.ts';
import { content } from './state-of.ts';
import { noTally, WatchedWalk } from './watched-walk.ts';

const WALKS = Number(process.env['WALKS'] ?? 40);
const SEED = Number(process.env['WALKS_SEED'] ?? 20260302);

const bows: readonly Bow[] = [
  { start: { x: 0.3, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 }, 'nock-height': { x: 0, y: 6 } }, sd: 0.1, seed: 3, answers: { 'arrows-set-aside': 2, method: 'unfletched' }, groups: { start: { x: 0, y: -2 }, gain: { 'rest-height': { x: 0, y: 24 } }, sd: 0.8 } },
  { start: { x: -0.6, y: -0.4 }, gain: { 'rest-height': { x: 0, y: -4 }, 'yoke': { x: -0.1, y: 0.05 } }, sd: 0.08, seed: 5, answers: { press: 'trained', hand: 'left', 'arrows-set-aside': 1, method: 'plumb-line' }, plumb: { drift: 0.15, gain: {}, sd: 1 } },
  { start: { x: 0.7, y: 0.1 }, gain: { 'cam-screw': { x: 0.3, y: 0 } }, sd: 0.15, seed: 8, answers: { 'cams': 'screw-adjust', 'rest-scale': 'coarse', 'bolts-top': 0, 'bolts-bottom': 0, 'arrows-set-aside': 1, method: 'none' }, groups: { start: { x: 1, y: 0 }, gain: {}, sd: 1 } },
  { start: { x: 0.02, y: 0.05 }, gain: {}, sd: 0.06, seed: 13, answers: { 'centre-shot': '23/32', 'nock-height': '-1/16', 'arrows-set-aside': 1, method: 'unfletched', 'broadheads-wanted': 'fixed' }, groups: { start: { x: 0.5, y: -0.5 }, gain: {}, sd: 0.7, sdSecond: 1 } },
];

/** The same bow with an archer who shoots broadheads now, and does not wait for a frame. */
const atTarget = (bow: Bow, answers: Bow['answers'] = {}): Bow =>
  ({ ...bow, start: { x: 0.03, y: 0.06 }, answers: { ...bow.answers, 'broadheads-wanted': 'fixed', ...(bow.answers?.['method'] === 'none' ? { method: 'plumb-line' } : {}), ...answers } });

// Where walks begin: a new tune, of a new bow and of one tuned before; the first sheet, the first advice, after a first move, the side, a target, the finish.
const begins: readonly ((bow: Bow) => readonly Fact[])[] = [
  () => [],
  () => [],
  (bow) => play(bow, { until: (v) => v.ask?.kind === 'tear' }).store.facts,
  (bow) => play(bow, { until: (v) => v.advice?.kind === 'adjust' }).store.facts,
  (bow) => play(bow, { until: (v) => Object.keys(v.bow).length > 0 && v.ask?.kind === 'tear' }).store.facts,
  (bow) => play(bow, { until: (v) => v.ask?.kind === 'tear' && v.ask.axis === 'side' }).store.facts,
  (bow) => play(bow, { until: (v) => v.chapter === 'broadheads' || v.chapter === 'finish' }).store.facts,
  (bow) => play(atTarget(bow), { until: (v) => v.ask?.kind === 'impact' || v.chapter === 'finish' }).store.facts,
  (bow) => play(atTarget(bow, { 'gate:backstop': 'no-paper' }), { until: (v) => v.ask?.kind === 'impact' }).store.facts,
  (bow) => play(bow, { until: (v) => v.chapter === 'finish' }).store.facts,
];
const cache = new Map<string, readonly Fact[]>();
function beginning(bow: number, at: number): readonly Fact[] {
  const key = `${bow} ${at}`;
  const known = cache.get(key) ?? begins[at]?.(bows[bow] ?? bows[0]!) ?? [];
  cache.set(key, known);
  return known;
}

/** What the bow of the second beginning brings along. */
const knownOf = (bow: number): readonly Carried[] => {
  const carried = carriedOf(content, beginning(bow, begins.length - 1));
  return carried === null ? [] : [carried];
};

const turn: fc.Arbitrary<Turn> = fc.record({ roll: fc.nat(999), pick: fc.nat(0xffff), pause: fc.nat(99) });

test(`${WALKS} walks of careless archers keep every promise`, { timeout: 3_600_000 }, () => {
  const tally = noTally();
  fc.assert(
    fc.property(fc.nat(bows.length - 1), fc.nat(begins.length - 1), fc.constantFrom(600, 800, 900, 970), fc.array(turn, { minLength: 20, maxLength: 120, size: 'max' }), (bow, at, care, turns) => {
      const known = at === 1 ? knownOf(bow) : [];
      const one = { ...bows[bow]!, answers: { ...bows[bow]!.answers, ...(at === 1 ? { bow: known[0]?.from } : {}) } };
      new WatchedWalk({ bow: one, turns, care, known, facts: beginning(bow, at) }, tally).walk();
    }),
    // A walk that fails is told as it is; WALKS_SHRINK=1 takes the minutes to find the shortest.
    { numRuns: WALKS, seed: SEED, endOnFailure: process.env['WALKS_SHRINK'] === undefined, ...(process.env['WALKS_PATH'] === undefined ? {} : { path: process.env['WALKS_PATH'] }) },
  );
  if (process.env['WALKS'] !== undefined) process.stdout.write(`${JSON.stringify(tally)}\n`);
  // The walks must really have got about: a harness that is refused everywhere proves nothing.
  expect(tally.lines).toBeGreaterThan(WALKS * 10);
  expect(tally.advices).toBeGreaterThan(WALKS / 10);
  expect(tally.shots).toBeGreaterThan(WALKS);
  expect(tally.impacts).toBeGreaterThan(WALKS);
  expect(tally.stops).toBeGreaterThan(WALKS / 10);
  expect(tally.corrected).toBeGreaterThan(WALKS / 10);
  expect(tally.killed).toBeGreaterThan(WALKS / 10);
});
