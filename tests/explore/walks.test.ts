// Archers who do anything, against the whole machine: whatever they do, every promise holds after every turn. The long run is
// `npm run explore`; another part of it: WALKS=500 WALKS_SEED=7 npx vitest run tests/explore/walks.test.ts, and one walk that
// was found: WALKS_SEED=7 WALKS_PATH=12 (with WALKS_SHRINK=1 it takes its minutes to find the shortest).

import { expect, test } from 'vitest';
import { shippedContent } from '../tunes/play.ts';
import { hunt } from './hunt.ts';
import { INVARIANTS } from './invariants.ts';

const WALKS = Number(process.env['WALKS'] ?? 24);
const SEED = Number(process.env['WALKS_SEED'] ?? 20260302);
const PATH = process.env['WALKS_PATH'];

test(`${WALKS} walks of careful, careless, contradictory, tired and hurried archers keep ${INVARIANTS.length} promises`, { timeout: 3_600_000 }, () => {
  const content = shippedContent();
  const { tally, found } = hunt({ content, sound: content, walks: WALKS, seed: SEED, shrink: process.env['WALKS_SHRINK'] !== undefined, ...(PATH === undefined ? {} : { path: PATH }) });
  expect(found).toBeNull();
  // The walks must really have got about.
  expect(tally.walks).toBe(WALKS);
  expect(tally.lines).toBeGreaterThan(WALKS * 10);
  expect(tally.advices).toBeGreaterThan(WALKS / 10);
  expect(tally.shots).toBeGreaterThan(WALKS);
  expect(tally.impacts).toBeGreaterThan(WALKS / 2);
  expect(tally.stops).toBeGreaterThan(WALKS / 10);
  expect(tally.corrected).toBeGreaterThan(WALKS / 10);
  expect(tally.killed).toBeGreaterThan(WALKS / 10);
});
