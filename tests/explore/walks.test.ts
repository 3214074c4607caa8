// Archers who do anything, against the whole machine: whatever they do, every promise holds after every turn. The long run is
// `npm run explore`; another part of it: WALKS=500 WALKS_SEED=7 npx vitest run tests/explore/walks.test.ts

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shippedContent } from '../tunes/play.ts';
import { noTally } from './tally.ts';
import { inWords, walkArbitrary, walkIt } from './walks.ts';

const WALKS = Number(process.env['WALKS'] ?? 60);
const SEED = Number(process.env['WALKS_SEED'] ?? 20260302);

test(`${WALKS} walks of careless, contradictory, tired and hurried archers keep every promise`, { timeout: 3_600_000 }, () => {
  const tally = noTally();
  const content = shippedContent();
  fc.assert(
    fc.property(walkArbitrary, (walk) => {
      try {
        walkIt(walk, content, content, tally);
      } catch (error) {
        throw new Error(`${inWords(walk)}: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
      }
    }),
    // A walk that fails is told as it is; WALKS_SHRINK=1 takes the minutes to find the shortest.
    { numRuns: WALKS, seed: SEED, unbiased: true, endOnFailure: process.env['WALKS_SHRINK'] === undefined },
  );
  // The walks must really have got about.
  expect(tally.lines).toBeGreaterThan(WALKS * 10);
  expect(tally.advices).toBeGreaterThan(WALKS / 10);
  expect(tally.shots).toBeGreaterThan(WALKS);
  expect(tally.impacts).toBeGreaterThan(WALKS);
  expect(tally.stops).toBeGreaterThan(WALKS / 10);
  expect(tally.corrected).toBeGreaterThan(WALKS / 10);
  expect(tally.killed).toBeGreaterThan(WALKS / 10);
});
