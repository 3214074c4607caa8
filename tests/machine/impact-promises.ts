// What every tune at a target keeps to, whatever the archer does: held after each turn of a watched walk.

import assert from 'node:assert/strict';
import type { Fact, View } from '../../src/machine/types.ts';
import type { ShotSet, State } from '../../src/machine/state.ts';
import type { GateBook } from './gate-book.ts';

/** Three of each kind, then the heads change shafts. */
const HALF = 6;

type Ask = NonNullable<View['ask']>;
export const isShot = (ask: View['ask']): ask is Extract<Ask, { kind: 'impact' | 'tear' }> =>
  ask !== null && ask.correcting === undefined && (ask.kind === 'impact' || ask.kind === 'tear');

/** What is asked for may be shot by this archer, with the gates of its own passed; nobody is told to move the sight. */
export function promiseOfView(view: View, book: GateBook, state: State): void {
  const { ask, advice } = view;
  if (advice !== null && view.chapter !== 'finish') assert.doesNotMatch(`${advice.what} ${advice.undo ?? ''}`, /sight/i, 'the sight is moved at the end, never to make two kinds meet');
  if (!isShot(ask)) return;
  assert.deepEqual(book.forbidsShot(ask), [], `${ask.step}: a ${ask.shaft} shaft with a ${ask.head} is asked for`);
  if (ask.head === 'broadhead') assert.equal(ask.kind, 'impact', 'a broadhead is never shot through paper');
  const set = state.sets.at(-1);
  if (ask.head !== 'broadhead' || set?.of !== 'broadheads' || goodOf(set).length <= HALF) return;
  const swapped = state.answers['heads-swapped']?.seq ?? 0;
  assert.ok(swapped > (set.shots[0]?.seq ?? 0), 'the heads change shafts before the second half of a set');
}

/** Judged only where both kinds were shot as often. */
export function promiseOfFact(fact: Fact, state: State): void {
  if (fact.kind !== 'answered' || fact.answer.kind !== 'shots' || !fact.decided.events.some(({ type }) => type === 'verdict')) return;
  const set = state.sets.find((one) => one.shots.some(({ seq }) => seq === fact.seq));
  if (set === undefined || (set.of !== 'broadheads' && set.of !== 'unfletched')) return;
  const second = goodOf(set).filter(({ tag }) => tag?.head === 'broadhead' || tag?.shaft === 'unfletched').length;
  assert.equal(goodOf(set).length - second, second, `judged with ${second} of one kind and ${goodOf(set).length - second} of the other`);
}

const goodOf = (set: ShotSet): ShotSet['shots'] => set.shots.filter(({ good }) => good);
