// What one chapter, one sitting and one tune learn is what the next begins with: how the archer's shots stray on both axes, what each
// adjustment does and to which side; an unfinished tune of the same bow hands on what it learned, and nothing that was measured.

import { describe, expect, test } from 'vitest';
import { withLearnedSince } from '../../src/commands.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { paperSpreadOf, priorOf, spreadOf } from '../../src/machine/loop/evidence.ts';
import { replay } from '../../src/machine/replay.ts';
import type { State } from '../../src/machine/state.ts';
import type { Carried, View } from '../../src/machine/types.ts';
import { carriedOf, openSession } from '../../src/session.ts';
import type { Bow } from './archer.ts';
import { NOON, play, shippedContent, type PlayOptions } from './play.ts';

const content = shippedContent();
/** A rest that answers to the other side than the first guess, and twice as much as the book up and down. */
const BOW: Bow = {
  seed: 3, sd: 0.07, start: { x: -0.4, y: 0.55 }, gain: { 'rest-height': { x: 0, y: -11 }, 'rest-side': { x: 7, y: 0 } },
  answers: { 'cams': 'yoke', 'press': 'shop', 'nock-height': '1/16', 'centre-shot': '13/16', 'contact': 'clean', 'rest': 'blade' },
};
const again = (bow: Bow, from: string, seed: number): Bow => ({ ...bow, seed, answers: { ...bow.answers, bow: from } });
const tune = (bow: Bow, options: PlayOptions = {}) => play(bow, { content, store: memoryStore([], { skipCodec: true }), ...options });
const handed = (played: ReturnType<typeof tune>): Carried => {
  const carried = carriedOf(content, played.store.facts);
  if (carried === null) throw new Error('nothing is handed over');
  // In between the rest was set back to the maker's figure, and the nock to where it was.
  return { ...carried, answers: { ...carried.answers, 'centre-shot': { kind: 'number', value: 13 / 16 }, 'nock-height': { kind: 'number', value: 1 / 16 } } };
};
const stateOf = ({ store }: ReturnType<typeof tune>): State => replay(content, store.facts).state;
const first = tune(BOW, { tune: 'one' });
const carried = handed(first);

describe('from one tune to the next', () => {
  test('the spread of both axes, worth sixteen shots an axis at the most', () => {
    const end = paperSpreadOf(stateOf(first));
    expect(carried.spread?.sd).toBeCloseTo(end.sd, 2);
    expect(carried.spread?.df).toBe(Math.min(16, end.df / 2));
    expect(end.df).toBeGreaterThan(32);
    // The next tune begins with it, and with nothing else.
    const begun = tune(again(BOW, 'one', 9), { tune: 'two', known: [carried], until: ({ ask }) => ask?.kind === 'tear' });
    const spread = spreadOf(stateOf(begun));
    expect([spread.df, spread.sd]).toEqual([2 * 16, expect.closeTo(end.sd, 2)]);
  });

  test('what each adjustment does, and its side: the first move sideways is no trial any more, and goes the right way at once', () => {
    expect(Math.sign(carried.gains['rest-side']?.mean ?? 0)).toBe(1);
    const advised = (played: ReturnType<typeof tune>) => played.views.map(({ advice }) => advice).find((advice) => advice?.kind === 'adjust' && advice.knob === 'rest-side');
    expect(advised(first)).toMatchObject({ direction: 'left', trial: true });
    const second = tune(again({ ...BOW, start: { x: -0.4, y: 0.06 } }, 'one', 9), { tune: 'two', known: [carried], until: ({ advice }) => advice?.knob === 'rest-side' });
    expect(advised(second)).toMatchObject({ direction: 'right' });
    expect(advised(second)?.trial).toBeUndefined();
    for (const knob of ['rest-height', 'rest-side'] as const) expect(priorOf(content, stateOf(second), knob)).toEqual(carried.gains[knob]);
  });
});

describe('from one chapter to the next', () => {
  test('what paper taught is what is believed with broadheads, and is kept apart from what they show', () => {
    const hunt: Bow = { ...BOW, groups: { start: { x: 1.5, y: -5 }, gain: { 'rest-height': { x: 0, y: 43 }, 'rest-side': { x: -27, y: 0 } }, sd: 0.3 }, answers: { ...BOW.answers, 'broadheads-wanted': 'fixed', 'group-at-20': 0.75, 'cams': 'unknown' } };
    const there = tune({ ...hunt, start: { x: -0.3, y: 0.45 } }, { until: ({ ask }) => ask?.kind === 'impact' });
    const state = stateOf(there);
    const learned = state.notes.learned['rest-height'];
    expect(learned).toBeDefined();
    expect(priorOf(content, state, 'rest-height').mean / (learned?.mean ?? NaN)).toBeCloseTo(-3.9, 1);
    const end = tune({ ...hunt, start: { x: -0.3, y: 0.45 } }, { until: ({ chapter }) => chapter === 'arrows' || chapter === 'finish' });
    expect(end.views.some(({ advice, chapter }) => chapter === 'broadheads' && advice?.knob === 'rest-height')).toBe(true);
    expect(stateOf(end).notes.learned['rest-height']).toEqual(learned);
  });
});

describe('an unfinished tune', () => {
  const untilLearned = (view: View): boolean => view.findings.some((f) => f.kind === 'knob' && f.result === 'learned' && f.knob === 'rest-height');
  /** A restless day: wider shots, and the rest answers otherwise than it did. */
  const second = tune({ ...again(BOW, 'one', 5), sd: 0.12, gain: { ...BOW.gain, 'rest-height': { x: 0, y: -7 } } }, {
    tune: 'two', known: [{ ...carried, gains: { 'rest-side': carried.gains['rest-side']! } }], until: untilLearned,
  });
  const open = { finished: false, carried: carriedOf(content, second.store.facts) };
  const done = { finished: true, carried };

  test('hands on the spread and what was learned, of the same bow; measures stay those of the finished one', () => {
    const [known, ...others] = withLearnedSince([open, done]);
    expect(others).toEqual([]);
    expect(known?.from).toBe('one');
    expect(known?.answers).toEqual(carried.answers);
    expect(known?.spread).toEqual(open.carried?.spread);
    expect(known?.spread?.sd).not.toBe(carried.spread?.sd);
    expect(known?.gains['rest-height']?.mean).toBe(open.carried?.gains['rest-height']?.mean);
    expect(Math.abs(known?.gains['rest-height']?.mean ?? 0)).toBeLessThan(10);
    // What it did not learn anew still holds, as it held there.
    expect(known?.gains['rest-side']).toEqual(carried.gains['rest-side']);
    // The next tune begins with it, and says so.
    const session = openSession({ content, store: memoryStore(), startAt: new Date(NOON), engine: 'test', tune: 'three', known: known === undefined ? [] : [known] });
    const { view } = session.send({ kind: 'answer', answer: 'one' }, new Date(NOON + 60_000));
    expect(view.say.join(' ')).toContain(`strays about ${known?.spread?.sd.toFixed(2)} in`);
  });

  test('hands on nothing where it is older than the finished one, of another bow, or never got to shoot', () => {
    expect(withLearnedSince([done, open])).toEqual([carried]);
    const other = tune(BOW, { tune: 'nine', until: untilLearned });
    const unknown = { finished: false, carried: carriedOf(content, other.store.facts) };
    expect(withLearnedSince([unknown, done])).toEqual([carried]);
    // A bow that no tune was finished of is not offered: nothing of it was looked at to the end.
    expect(withLearnedSince([unknown])).toEqual([]);
    expect(withLearnedSince([{ finished: false, carried: null }, done])).toEqual([carried]);
  });

  test('that stands stopped hands on nothing: nobody knows what is done to the bow', () => {
    const { session, store } = tune(again(BOW, 'one', 5), { tune: 'two', known: [carried], until: ({ ask }) => ask?.kind === 'tear' && ask.shots.taken === 2 });
    session.send({ kind: 'stop', words: 'it cracked' }, new Date(NOON + 9e7));
    expect(carriedOf(content, store.facts)).toBeNull();
  });

  test('by another archer hands on what the bow answered, and not how that archer shoots', () => {
    const robin = tune({ ...again(BOW, 'other-archer', 5), sd: 0.15 }, { tune: 'two', known: [carried], until: ({ findings }) => findings.some((f) => f.kind === 'axis') });
    const [known] = withLearnedSince([{ finished: false, carried: carriedOf(content, robin.store.facts) }, done]);
    expect(known?.spread).toEqual(carried.spread);
  });

  test('in which a string was replaced takes the old answers with it', () => {
    const replaced = tune(again(BOW, 'one', 5), {
      tune: 'two', known: [carried], until: ({ ask }) => ask?.kind === 'tear' && ask.shots.taken === 2,
      instead: (() => { let said = false; return (view: View) => { if (said || view.ask?.kind !== 'tear' || view.ask.shots.taken !== 1) return null; said = true; return { kind: 'changed', what: 'string' } as const; }; })(),
    });
    const [known] = withLearnedSince([{ finished: false, carried: carriedOf(content, replaced.store.facts) }, done]);
    expect(known?.gains).toEqual({});
  });
});
