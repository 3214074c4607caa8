// The same bow once more: with what the first tune learned it takes fewer shots and no more changes, and ends as well.
// With a part replaced nothing of that is used, and it goes exactly as with a new bow.

import { describe, expect, test } from 'vitest';
import { latestOfEach } from '../../src/commands.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Carried, Tear, View } from '../../src/machine/types.ts';
import { seededRandom } from '../../src/maths/random.ts';
import { carriedOf, openSession } from '../../src/session.ts';
import { formatQuantity } from '../../src/maths/fractions.ts';
import type { Bow } from './archer.ts';
import { NOON, play, shippedContent, type PlayOptions } from './play.ts';

const content = shippedContent();
const BOWS = 12;

/** A bow without a press whose rest answers, on a side that nobody knows beforehand, and two days on which it is off. */
function bowOf(seed: number): { readonly first: Bow; readonly again: Bow } {
  const chance = seededRandom(500 + seed);
  const between = (a: number, b: number): number => a + (b - a) * chance.uniform();
  const side = (): number => (chance.uniform() < 0.5 ? -1 : 1);
  const gain = { 'rest-height': { x: 0, y: -between(5, 12) }, 'rest-side': { x: side() * between(4, 9), y: 0 } };
  const sd = between(0.04, 0.12);
  const tear = (): Tear => ({ x: side() * between(0.3, 0.6), y: between(0.3, 0.7) });
  const answers = { 'cams': 'two-track', 'press': 'none', 'nock-height': '1/16', 'centre-shot': '13/16' };
  return { first: { start: tear(), gain, sd, seed, answers }, again: { start: tear(), gain, sd, seed: 1000 + seed, answers } };
}

/** Up to the second distance: all that is decided. */
const decided = (view: View): boolean => view.chapter !== 'paper' && view.chapter !== 'safety' && view.chapter !== 'baseline' && view.chapter !== 'warm-up'
  || (view.ask?.kind === 'tear' && view.ask.distance.value === 9);
const tune = (bow: Bow, options: PlayOptions = {}) => play(bow, { content, store: memoryStore([], { skipCodec: true }), until: decided, ...options });
const picked = (bow: Bow, how: string): Bow => ({ ...bow, answers: { ...bow.answers, bow: how } });

interface Course { readonly shots: number; readonly changes: number; readonly tuned: number }
function courseOf({ asked, findings }: ReturnType<typeof tune>): Course {
  const count = (about: string): number => asked.filter((each) => each === about).length;
  // By the last word on each axis: one may be judged again after the other was moved.
  const ends = (['height', 'side'] as const).map((axis) => findings.findLast((f) => f.kind === 'axis' && f.axis === axis));
  return { shots: count('tear'), changes: count('moved'), tuned: ends.filter((f) => f?.kind === 'axis' && f.result === 'tuned').length };
}
const sumOf = (all: readonly Course[], what: keyof Course): number => all.reduce((sum, one) => sum + one[what], 0);

/** What a tune of this bow hands over; in between its rest was set back to the maker's figure. */
function handedOver(first: Bow): Carried {
  const carried = carriedOf(content, tune(first, { tune: 'one' }).store.facts);
  if (carried === null) throw new Error('nothing is handed over');
  return { ...carried, answers: { ...carried.answers, 'centre-shot': { kind: 'number', value: 13 / 16 }, 'nock-height': { kind: 'number', value: 1 / 16 } } };
}
const bows = Array.from({ length: BOWS }, (_, i) => bowOf(i + 1)).map((bow) => ({ ...bow, carried: handedOver(bow.first) }));
const fresh = bows.map(({ again }) => tune(again, { tune: 'two' }));

/** All that is shown of shots and changes at paper, turn by turn. */
const shown = ({ views }: ReturnType<typeof tune>): unknown => views.filter(({ chapter }) => chapter === 'paper')
  .map(({ ask, advice, bow, findings }) => ({ shots: ask?.kind === 'tear' ? ask.shots : ask?.step, advice, bow, findings: findings.filter(({ kind }) => kind !== 'gate') }));

test(`${BOWS} bows, tuned once more: fewer shots, no more changes, as many axes tuned`, () => {
  const known = bows.map(({ again, carried }) => courseOf(tune(picked(again, 'one'), { tune: 'two', known: [carried] })));
  const without = fresh.map(courseOf);
  // Measured on these twelve: 22.9 shots without and 17.1 with, 4.9 and 3.4 changes, 1.75 and 1.83 axes tuned.
  expect(sumOf(known, 'shots')).toBeLessThan(0.85 * sumOf(without, 'shots'));
  expect(sumOf(known, 'changes')).toBeLessThanOrEqual(sumOf(without, 'changes'));
  expect(sumOf(known, 'tuned')).toBeGreaterThanOrEqual(sumOf(without, 'tuned') - 2);
});

describe('with a part replaced', () => {
  test('at the start: shots, changes and findings of a new bow, to the last figure', () => {
    for (const [i, { again, carried }] of bows.slice(0, 4).entries()) {
      const replaced = tune(picked(again, 'replaced'), { tune: 'two', known: [carried] });
      expect(replaced.asked).toEqual(expect.arrayContaining(['gate:first-draw', 'peak-weight', 'nock-height', 'centre-shot']));
      // The kind of cams was told already; all else is asked as of a new bow.
      const rest = (all: unknown): unknown => (all as { readonly shots: unknown }[]).filter(({ shots }) => shots !== 'cams' && shots !== 'press');
      expect(rest(shown(replaced))).toEqual(rest(shown(fresh[i] ?? replaced)));
    }
  });

  test('told at the first sheet: from there on as with a new bow', () => {
    for (const { again, carried } of bows.slice(4, 7)) {
      const onceAtPaper = (): NonNullable<PlayOptions['instead']> => {
        let done = false;
        return (view) => {
          if (done || view.ask?.kind !== 'tear') return null;
          done = true;
          return { kind: 'changed', what: 'string' };
        };
      };
      const known = tune(picked(again, 'one'), { tune: 'two', known: [carried], instead: onceAtPaper() });
      const unknown = tune(again, { tune: 'two', instead: onceAtPaper() });
      const tears = (played: typeof known): unknown => played.views.flatMap(({ ask, advice }) => (ask?.kind === 'tear' || advice?.kind === 'adjust' ? [{ shots: ask?.kind === 'tear' ? ask.shots : null, advice }] : []));
      expect(tears(known)).toEqual(tears(unknown));
    }
  });
});

test('the record is compared with its figures at hand', () => {
  const { again, carried } = bows[0]!;
  const { views } = tune(picked(again, 'one'), { tune: 'two', known: [carried] });
  const ask = views.find((view) => view.ask?.step === 'as-recorded')?.ask;
  expect(ask?.text.find((line) => line.startsWith('On record: '))).toBe(
    'On record: Axle to axle: 33 1/8 in; Brace height: 6 5/8 in; Nock height above level: 1/16 in; Centre shot as it is now: 13/16 in; '
      + 'Top limb bolt, turns out from fully seated: 1 turn; Bottom limb bolt, turns out from fully seated: 1 turn.',
  );
});

test('after a move in the same tune the record is told as the bow stands', () => {
  const { again, carried } = bows[0]!;
  const begun = tune(picked(again, 'one'), { tune: 'two', known: [carried], until: (view) => view.bow['rest-side'] !== undefined });
  const moved = begun.last.bow['rest-side']?.value ?? 0;
  expect(moved).not.toBe(0);
  const { last } = play(picked(again, 'one'), { content, store: begun.store, tune: 'two', known: [carried], startAt: NOON + 30 * 60 * 60_000, until: (view) => view.ask?.step === 'as-recorded' });
  // Right-handed: the riser stands right of the arrow, so that a rest moved right comes nearer to it.
  expect(last.ask?.text.find((line) => line.startsWith('On record: '))).toContain(`Centre shot as it is now: ${formatQuantity({ value: 13 / 16 - moved, unit: 'in' })};`);
});

describe('what is said and offered', () => {
  const [{ again, carried }] = bows as [(typeof bows)[0], ...typeof bows];
  const opened = (known: readonly Carried[]) => openSession({ content, store: memoryStore(), startAt: new Date(NOON), engine: 'test', tune: 'two', known });
  const say = (how: string, known = [carried]): readonly string[] => {
    const session = opened(known);
    return session.send({ kind: 'answer', answer: how }, new Date(NOON + 60_000)).view.say;
  };

  test('each bow by its name, its day and its archer, and beside it with a part replaced or another archer', () => {
    const done = play({ ...bows[0]!.first, answers: { ...bows[0]!.first.answers, 'arrows-wanted': 'later' } }, { content, tune: 'one' });
    const named = carriedOf(content, done.store.facts);
    expect(named?.bow).toBe('Old Blue, last tuned 2026-03-02, Kim');
    expect(done.last.record?.sections.flatMap(({ rows }) => rows.filter(({ name }) => name === 'Name').map(({ value }) => value))).toEqual(['Kim', 'Old Blue']);
    const { ask } = opened(named === null ? [] : [named]).view();
    expect(ask?.kind === 'choice' && ask.options.map(({ value, label }) => [value, label])).toEqual([
      ['one', 'Old Blue, last tuned 2026-03-02, Kim'],
      ['replaced', 'One of these, but string, cables, rest, release aid or arrows were replaced'],
      ['other-archer', 'One of these, with another archer'],
      ['another', 'Another bow, or one not tuned here yet'],
    ]);
    // Known now, neither name is asked again: bow and archer are the same.
    const second = play(picked(again, 'one'), { content, tune: 'two', known: named === null ? [] : [named] });
    expect([second.last.type, second.asked.filter((about) => about.endsWith('-name'))]).toEqual(['done', []]);
    const next = carriedOf(content, second.store.facts);
    expect([next?.from, next?.bowId, next?.archerId, next?.bow]).toEqual(['two', 'one', 'one', 'Old Blue, last tuned 2026-03-02, Kim']);
    // In other hands only the archer's name is; and the bow stays that bow.
    const other = play(picked({ ...again, answers: { ...again.answers, 'archer-name': 'Robin' } }, 'other-archer'), { content, tune: 'three', known: next === null ? [] : [next] });
    expect(other.asked.filter((about) => about.endsWith('-name'))).toEqual(['archer-name']);
    const third = carriedOf(content, other.store.facts);
    expect([third?.bowId, third?.archerId, third?.bow]).toEqual(['one', 'three', 'Old Blue, last tuned 2026-03-02, Robin']);
    // Two archers of one bow: both are offered, and either finds the bow as it was left last.
    const offered = latestOfEach([third!, next!, named!]);
    expect(offered.map(({ from }) => from)).toEqual(['three', 'two']);
    expect(offered[1]?.answers['centre-shot']).toEqual(third?.answers['centre-shot']);
    expect(offered[1]?.answers['archer-name']).toEqual({ kind: 'text', value: 'Kim' });
  });

  test('what is carried over is said when the bow is picked: spread and gains, the gains alone, or nothing', () => {
    const { spread, gains } = carried;
    const spreadLine = `From last time: one of your shots strays about ${spread?.sd.toFixed(2)} in from the others. I begin with that.`;
    const gainLine = `From last time (the rest, sideways): 1/32 in moved the tail about ${Math.abs((gains['rest-side']?.mean ?? NaN) / 32).toFixed(2)} in. I begin with that, and watch whether it still does.`;
    const nothing = content.phrases['known-nothing-carried'];
    expect(say('one')).toEqual(expect.arrayContaining([content.phrases['bow-known'], spreadLine, gainLine]));
    expect(say('other-archer')).toContain(gainLine);
    expect(say('other-archer')).not.toContain(spreadLine);
    expect(say('replaced')).toEqual([content.phrases['bow-known-replaced'], nothing]);
    expect(say('another')).toEqual([content.phrases['bow-new']]);
  });

  test('with several bows the replaced one is asked for by name, and nothing is carried before', () => {
    const session = opened([carried, { ...carried, from: 'zero', bow: 'The other', gains: {}, spread: null }]);
    const which = session.send({ kind: 'answer', answer: 'other-archer' }, new Date(NOON + 60_000)).view;
    expect([which.step, which.ask?.kind === 'choice' && which.ask.options.map(({ value }) => value)]).toEqual(['which-bow', ['one', 'zero', 'another']]);
    const told = session.send({ kind: 'answer', answer: 'zero' }, new Date(NOON + 120_000)).view;
    expect(told.say).toContain(content.phrases['known-nothing-carried']);
    expect(session.answers().at(-1)).toEqual({ seq: 3, question: 'Which of them?', answer: 'The other', change: true });
  });
});
