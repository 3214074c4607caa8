// After a look that found nothing: the shots count, one stray is no third look, a hand that is too wide still ends it, a gross tear
// is not shot again, and a change that leaves more than two inches goes back all the same.

import { describe, expect, test } from 'vitest';
import { evidenceOn } from '../../src/machine/loop/evidence.ts';
import { judgeSet } from '../../src/machine/loop/judge-set.ts';
import { countingSets } from '../../src/machine/loop/sets.ts';
import type { LoopNotes } from '../../src/machine/notes.ts';
import { replay } from '../../src/machine/replay.ts';
import type { State } from '../../src/machine/state.ts';
import type { Tear, View } from '../../src/machine/types.ts';
import { play } from '../tunes/play.ts';
import { content, stateOf } from './state-of.ts';

type Rows = readonly (readonly [number, number])[];

/** A tune whose tears are these, the last one for ever, until a view of one kind stands for the nth time. */
function told(tears: Rows, [kind, nth]: readonly ['tear' | 'inspected' | 'end', number], answers = {}) {
  let [n, met] = [0, 0];
  const tear = (): Tear => {
    const [x, y] = tears[Math.min(n, tears.length - 1)] ?? [0, 0];
    return { x: x + 0.02 * (n++ % 3), y };
  };
  const stands = ({ ask }: View): boolean => (kind === 'tear' ? ask?.kind === 'tear' : ask?.about === kind);
  const played = play({ start: { x: 0, y: 0 }, gain: {}, sd: 0.1, seed: 1, answers: { tear, ...answers } }, { most: 90, until: (view) => stands(view) && ++met === nth });
  return { ...played, state: replay(content, played.store.facts).state };
}
/** What was done, in order: shots (t), looks, moves. */
const doings = (views: readonly View[]): string => views.flatMap(({ ask, advice, step }) =>
  (ask?.kind === 'tear' ? ['t'] : ask?.about === 'inspected' ? [step.replace('inspect-', '')] : ask?.about === 'moved' ? [advice?.kind ?? ''] : [])).join(' ');
const counting = (state: State): number => countingSets(state).flatMap(({ shots }) => shots).length;

const THREE_WAYS: Rows = [[0.9, 0.1], [-0.9, 0], [0, 0.95]];

describe('scatter that was looked into', () => {
  test('before the look its shots count for nothing; where nothing was found they are how the archer shoots, and count', () => {
    const before = told(THREE_WAYS, ['inspected', 1]).state;
    expect([before.notes.scattered.length, before.notes.strayed.length, counting(before)]).toEqual([1, 0, 0]);
    const after = told([...THREE_WAYS, [0, 0]], ['tear', 4]).state;
    expect([after.notes.scattered.length, after.notes.strayed.length, counting(after)]).toEqual([0, 1, 3]);
    // One more is judged together with them, and with the spread that they show.
    const judged = told([...THREE_WAYS, [0, 0]], ['tear', 5]).state;
    const evidence = evidenceOn(content, judged, 'height', null);
    expect([evidence?.shots, (evidence?.belief?.sd ?? 0) > 0.3]).toEqual([4, true]);
  });

  test('where a cause was found they do not, and the next scatter is looked into like the first', () => {
    const { state } = told([...THREE_WAYS, [0, 0]], ['tear', 4], { 'inspected': 'grip' });
    expect([state.notes.strayed.length, state.notes.epoch]).toEqual([0, 2]);
    // They were shot with another grip: in an epoch of their own they hand on nothing of the tear here.
    expect(evidenceOn(content, state, 'height', null)).toBeNull();
  });

  const agreeing: Rows = [[0, 0.5], [0.03, 0.55], [-0.04, 0.47], [0.02, 0.52]];
  const strayed = (strays: Rows, notes: Partial<LoopNotes>): State => stateOf({ sets: [{ shots: agreeing }, { shots: [...agreeing, ...strays] }], notes });
  const judged = (strays: Rows, notes: Partial<LoopNotes>) => judgeSet(content, strayed(strays, notes));
  const [one, two]: readonly [Rows, Rows] = [[[0.1, 2.2]], [[0.1, 2.2], [1.9, 0.4]]];

  test('one stray among shots that agree is looked into once, and weighed as one from then on', () => {
    expect(judged(one, {})).toMatchObject({ verdict: 'inconsistent', notes: { inspection: 'scatter', inspections: 1 } });
    // Looks for something else are no look for scatter.
    expect(judged(one, { inspections: 2 })?.verdict).toBe('inconsistent');
    for (const inspections of [1, 2]) expect(judged(one, { strayed: [1], inspections })).toBeNull();
    // And it hardly moves what the others say: their middle is 0.51.
    expect(evidenceOn(content, strayed(one, { strayed: [1], inspections: 2 }), 'height', null)?.mean).toBeCloseTo(0.51, 1);
  });

  test('a set beyond luck is looked into twice; there is no third look for its strays', () => {
    expect(judged(two, { strayed: [1], inspections: 1 })).toMatchObject({ verdict: 'inconsistent', notes: { inspections: 2 } });
    expect(judged(two, { strayed: [1], inspections: 2 })).toBeNull();
  });

  /** Nine shots that lie so far apart on both axes, none of them far from all others. */
  const hand = (sd: number, notes: Partial<LoopNotes>) => judgeSet(content, stateOf({
    sets: [{ shots: [[-1.2, 0.5], [1.1, -1.3], [0.4, 1.4], [-1, -0.7], [0.8, 0.2], [-0.2, 1.2], [1.3, -0.5], [-1.1, 0.8], [0.1, -1.2]].map(([x = 0, y = 0]): [number, number] => [sd * x, sd * y]) }], notes,
  }));
  test('a hand that is too wide ends it, also after two looks; one that is merely wide is shot on with', () => {
    const looked = { strayed: [1], inspections: 2 };
    for (const sd of [0.8, 1.2]) expect(hand(sd, looked)).toMatchObject({ verdict: 'inconsistent', notes: { inspections: 3 } });
    expect(hand(0.35, looked)).toBeNull();
    expect(hand(0.35, {})?.verdict).toBe('inconsistent');
  });

  test('two wild sets and no cause: it ends as scatter, with no third look and nothing called tuned', () => {
    const wild: Rows = Array.from({ length: 40 }, (_, i): readonly [number, number] => [[-1.2, 0.9], [1.3, -0.2], [0.1, -1.4], [-0.9, -0.8], [1.1, 1.2]][i % 5] as [number, number]);
    const { views, findings } = told(wild, ['end', 1]);
    expect(doings(views).match(/scatter/g)).toHaveLength(2);
    expect(findings.flatMap((f) => (f.kind === 'axis' ? [`${f.axis} ${f.result}`] : []))).toEqual(['height inconsistent', 'side inconsistent']);
  });
});

describe('a gross tear that was looked into', () => {
  test('that three shots agree on is not shot again, but mended; where a cause was put right it is shot anew', () => {
    expect(doings(told([[0, 1.2]], ['tear', 4]).views)).toBe('t t t gross adjust t');
    expect(doings(told([[0, 1.2]], ['tear', 4], { 'inspected': 'grip' }).views)).toBe('t t t gross t');
  });

  test('after a change more than two inches go back at once, also where a look for scatter came in between', () => {
    const high: Rows = [[0, 0.9], [0, 0.9], [0, 0.9]];
    expect(doings(told([...high, [0, 2.6]], ['tear', 7]).views)).toMatch(/^t t t adjust t t( t)? put-back t/);
    const { views } = told([...high, [0.9, 1.6], [-0.9, 2.6], [0, 3.4], [0, 2.6]], ['tear', 12]);
    // As many more as it takes to read five together.
    expect(doings(views)).toMatch(/^t t t adjust t t t scatter( t){1,6} put-back t/);
    expect(views.flatMap(({ say }) => say)).toContain('More than two inches after that change. It goes back before anything else.');
  });
});
