// What few shots can say and what they cannot, on the walk itself: the order in which they come never matters, and three of them prove little.
// The situations are common practice: a shot more is cheaper than a wrong move; a little high is safe for the vanes, a little low is not.

import { describe, expect, it } from 'vitest';
import type { Carried, Tear, View } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import type { Bow } from '../tunes/archer.ts';
import { play, shippedContent } from '../tunes/play.ts';
import { Played } from './play-case.ts';

/** Every order of three. */
const ordersOf = <T>([a, b, c]: readonly [T, T, T]): readonly (readonly [T, T, T])[] => [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]];
type Three = readonly [number, number, number];

/** A new archer with a new bow who has shot these and no more. */
function after(tears: readonly Tear[]): Played {
  const played = new Played({ situation: '', bow: {}, once: {}, checks: {}, known: false, seen: [], next: { kind: 'leave', words: '' }, why: '', source: '' });
  for (const tear of tears) {
    played.untilItStands();
    played.answer(tear);
  }
  played.untilItStands();
  return played;
}
const AXES = [['up and down', (n: number): Tear => ({ x: 0, y: n })], ['sideways', (n: number): Tear => ({ x: n, y: 0.06 })], ['sideways, the other side', (n: number): Tear => ({ x: -n, y: 0.06 })]] as const;
const tuned = (views: readonly View[]): readonly unknown[] => views.flatMap(({ findings }) => findings.filter((found) => found.kind === 'axis' && found.result === 'tuned'));

/** One shot more is asked for, here and now; nothing is moved and nothing is called tuned. */
function wantsOneMore(played: Played): void {
  expect(played.view.ask).toMatchObject({ kind: 'tear', step: 'shoot-shooting', shots: { taken: 3, wanted: 4 } });
  expect([played.view.advice, played.view.bow]).toEqual([null, {}]);
  expect(tuned(played.views)).toEqual([]);
}

describe.each(AXES)('%s', (_axis, at) => {
  it('0.05, 0.30 and 0.55 in, in whatever order: a shot more, no move, and the same words', () => {
    const said = ordersOf([0.05, 0.3, 0.55]).map((three) => {
      const played = after(three.map(at));
      wantsOneMore(played);
      return JSON.stringify(played.view.say);
    });
    expect(new Set(said).size).toBe(1);
  });
  // Each three has its middle at 0.05 in and a standard deviation of 0.2 in.
  const [far, near] = [0.05 - 0.4 / Math.sqrt(3), 0.05 + 0.2 / Math.sqrt(3)];
  it.each([...ordersOf([-0.15, 0.05, 0.25]), [far, near, near], [near, far, near], [near, near, far]] as const)(
    '%f, %f and %f in, about 0.05 with a spread of 0.2: not called tuned, a shot more', (...three: Three) => wantsOneMore(after(three.map(at))));
});

describe('a steady 0.22 in', () => {
  const steady = (y: number): Bow => ({ start: { x: 0, y }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0, seed: 1, readsTo: 0 });
  const content = shippedContent();
  /** To the first move or the end of paper at the first distance. */
  const settled = (view: View): boolean => view.advice !== null || view.ask?.about === 'accept' || (view.ask?.kind === 'tear' && view.ask.distance.value === 9);
  const first = (bow: Bow): ReturnType<typeof play> => play(bow, { content, until: settled });
  /** An archer of whom earlier tunes have shown that single tears stray by 0.05 in. */
  const known = ((): Carried => {
    const carried = carriedOf(content, play(steady(0.06), { content, tune: 'before' }).store.facts);
    if (carried === null) throw new Error('nothing is handed over');
    return { ...carried, spread: { sd: 0.05, df: 16 } };
  })();
  const again = (bow: Bow): ReturnType<typeof play> => play({ ...bow, answers: { bow: 'before' } }, { content, known: [known], tune: 'now', until: settled });

  it('low is not called tuned, by nobody: the rest goes down', () => {
    for (const played of [first(steady(-0.22)), again(steady(-0.22))]) {
      expect(tuned(played.views)).toEqual([]);
      expect(played.last.advice).toMatchObject({ kind: 'adjust', knob: 'rest-height', direction: 'down' });
    }
  });
  it('high is called tuned where the archer is known to shoot that well', () => {
    const { findings, last } = again(steady(0.22));
    expect(findings.filter((found) => found.kind === 'axis' && found.axis === 'height')).toMatchObject([{ result: 'tuned' }]);
    expect(last.advice).toBeNull();
  });
  it('high is never moved for a new archer either: nine shots cannot tell 0.22 from 0.25 in, and it may be left', () => {
    const { views, last, asked } = first(steady(0.22));
    expect([tuned(views), last.advice, last.bow]).toEqual([[], null, {}]);
    expect(last.ask?.about).toBe('accept');
    expect(asked.filter((about) => about === 'tear')).toHaveLength(9);
  });
});
