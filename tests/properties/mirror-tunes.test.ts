// Whole tunes in a mirror: for every kind of cams and every way of seeing a fault, the mirrored archer with the same luck is asked the same questions and
// told the mirrored adjustment, side and amount at every step, to the last bit. (tests/machine/mirror.test.ts draws bows at random, at paper.)

import { describe, expect, it } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { bowKnobOf, type KnobId, type SessionLike, type Tear, type View } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON, shippedContent } from '../tunes/play.ts';
import { bothEnds, mirroredAdvice, mirroredLedger, mirroredWords, MirroredArcher, plainAdvice } from './mirrored.ts';

const content = shippedContent();
const MINUTE = 60_000;

const CAMS = [
  ['yoke', 'trained'], ['yoke', 'shop'], ['single-cam', 'trained'], ['hybrid', 'trained'],
  ['two-track', 'trained'], ['screw-adjust', 'none'], ['unknown', 'none'],
] as const;

/** What one unit of each adjustment changes, in inches of tear; nobody's bow, but every side of it is felt. */
const GAIN: Partial<Record<KnobId, Tear>> = {
  'rest-side': { x: 3, y: 0.5 }, 'rest-height': { x: 0.2, y: -6 }, 'yoke': { x: -0.12, y: 0.05 },
  'cam-screw': { x: 0.5, y: 0 }, 'cam-spacers': { x: -0.2, y: 0 }, 'nock-height': { x: 0, y: 6 },
};
const atTarget = (factor: number): Partial<Record<KnobId, Tear>> =>
  Object.fromEntries(Object.entries(GAIN).map(([knob, { x, y }]) => [knob, { x: factor * x, y: factor * y }]));
const HUNTER = { 'use': 'hunting', 'broadheads-wanted': 'fixed', 'broadheads-farther': 'farther', 'group-at-20': 1 } as const;

const READINGS: Readonly<Record<string, (seed: number) => Bow>> = {
  'a tear in paper': (seed) => ({ seed, sd: 0.08, start: { x: -0.55, y: 0.4 }, gain: GAIN }),
  'broadheads against field points': (seed) => ({
    seed, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {}, answers: HUNTER, groups: { start: { x: 2.2, y: -2.4 }, gain: atTarget(-4), sd: 0.3 },
  }),
  'unfletched against fletched': (seed) => ({
    seed, sd: 0.04, start: { x: 0, y: 0.06 }, gain: {}, groups: { start: { x: -2.2, y: 2 }, gain: atTarget(-4), sd: 0.3 },
    answers: { 'use': 'target', 'gate:backstop': 'no-paper', 'method': 'unfletched', 'group-at-20': 1 },
  }),
  'a plumb line': (seed) => ({
    seed, sd: 0.04, start: { x: 0, y: 0.06 }, gain: {}, plumb: { drift: 0.2, gain: { 'rest-side': -3.2, 'yoke': 0.05 }, sd: 0.3 },
    answers: { 'use': 'target', 'gate:backstop': 'no-paper', 'method': 'plumb-line', 'group-at-20': 1 },
  }),
};

interface Mirrored { readonly adjusted: readonly View[]; readonly sideways: number; readonly last: View }

/** Plays both at once and holds each view against the other. */
function bothWays(bow: Bow): Mirrored {
  const open = (): SessionLike => openSession({ content, store: memoryStore([], { skipCodec: true }), startAt: new Date(NOON), engine: 'test', tune: 'a-tune', known: [] });
  const [here, there] = [open(), open()];
  const [archer, other] = [new TestArcher(bow), new MirroredArcher(bow)];
  const adjusted: View[] = [];
  for (let turn = 1; turn <= 300 && here.view().chapter !== 'finish'; turn++) {
    const now = new Date(NOON + turn * MINUTE);
    const replies = [here.send({ kind: 'answer', answer: archer.answer(here.view()) }, now), there.send({ kind: 'answer', answer: other.answer(there.view()) }, now)];
    for (const { error } of replies) expect(error).toBeUndefined();
    const [mine, theirs] = [here.view(), there.view()];
    const at = `turn ${turn}, ${mine.step}`;
    expect([theirs.type, theirs.chapter, theirs.step, theirs.ask?.about], at).toEqual([mine.type, mine.chapter, mine.step, mine.ask?.about]);
    expect(plainAdvice(theirs.advice), at).toEqual(mirroredAdvice(mine.advice));
    expect(theirs.bow, at).toEqual(mirroredLedger(mine.bow));
    expect(theirs.findings, at).toEqual(mine.findings);
    // What is said of shots names the other side.
    if (mine.ask?.kind === 'tear' || mine.ask?.kind === 'impact') expect(theirs.say.map(bothEnds), at).toEqual(mine.say.map((text) => bothEnds(mirroredWords(text))));
    if (mine.advice?.kind === 'adjust' || mine.advice?.kind === 'put-back') adjusted.push(mine);
  }
  // Tightening and the record know no sides.
  expect([here.view().chapter, there.view().chapter]).toEqual(['finish', 'finish']);
  const sideways = adjusted.filter(({ advice }) => { const knob = bowKnobOf(advice); return knob !== null && content.knobs[knob].axis === 'side'; });
  return { adjusted, sideways: sideways.length, last: here.view() };
}

describe.each(Object.entries(READINGS))('%s', (how, bowOf) => {
  // Away from paper the ladder is the same: some of it are enough.
  const cams = how.startsWith('a tear') ? CAMS : CAMS.filter((_, i) => i % (how.startsWith('broadheads') ? 2 : 3) === 0);
  it.each(cams.map(([cams, press], i) => [cams, press, i % 2 === 0 ? 'right' : 'left', i] as const))('%s, press: %s, %s-handed', (cams, press, hand, i) => {
    const bow = bowOf(40 + i);
    const { adjusted, sideways } = bothWays({ ...bow, answers: { ...bow.answers, cams, press, hand, lean: 'leans-left' } });
    // Nothing would be shown by a tune in which nothing is moved to a side; a plumb line knows no other.
    expect(sideways).toBeGreaterThan(0);
    if (how !== 'a plumb line') expect(adjusted.length).toBeGreaterThan(sideways);
  });
});
