// Whole tunes, played in process, and of each kind of question that ever stood in them one live session at that very moment.

import { openSession } from '../../src/session.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Ask, Fact, Intent, SessionLike, Store, View } from '../../src/machine/types.ts';
import { ownPress, scatters, mended, wrongSide } from '../tunes/bows.ts';
import { lowAndRight, slanted, unfletchedLow } from '../tunes/impact-bows.ts';
import { TestArcher } from '../tunes/archer.ts';
import { NumberedArcher, type StoryBow } from '../tunes/numbered-archer.ts';
import { NOON, shippedContent } from '../tunes/play.ts';

/** A question as it stood, and a way to have the session there as often as it is needed. */
export interface Standing {
  /** What tells it from the others, for the name of a test. */
  readonly name: string;
  readonly ask: Ask;
  readonly view: View;
  readonly session: () => SessionLike;
}

const content = shippedContent();
const MINUTE = 60_000;

/** State is never changed in place, so that a shallow copy with a store of its own is a whole session. */
function copyOf(session: SessionLike): SessionLike {
  const kept: Fact[] = [...(session as unknown as { readonly store: Store }).store.facts];
  const store: Store = { facts: kept, notices: [], append: (fact) => { kept.push(fact); }, close: () => undefined };
  const copy = Object.create(Object.getPrototypeOf(session) as object) as SessionLike;
  return Object.assign(copy, session, { store, listeners: new Set() });
}

interface Tune {
  readonly bow: StoryBow;
  /** Sent in place of an answer, once, at the first question where it gives one. */
  readonly happens?: (view: View) => Intent | null;
  readonly most?: number;
  readonly archer?: (bow: StoryBow) => TestArcher;
}

const bent: StoryBow = { start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.08, seed: 3, arrows: { 4: { error: { x: -0.7, y: 0.1 }, look: 'wobble' } }, answers: { 'arrows-wanted': 'all', 'arrow-count': 6, 'cams': 'screw-adjust' } };
const moved = (view: View): Intent | null => (view.chapter === 'paper' && view.ask?.kind === 'tear' && view.ask.shots.taken === 1 ? { kind: 'moved', knob: 'limb-bolts', direction: 'out', amount: '1/4 turn' } : null);

export const TUNES: readonly Tune[] = [
  { bow: ownPress(3) },
  { bow: wrongSide(2), happens: moved },
  { bow: mended(1), most: 40 },
  { bow: scatters(1), most: 90 },
  { bow: lowAndRight(2), most: 150 },
  { bow: unfletchedLow(4), most: 90 },
  { bow: slanted(3), most: 80 },
  { bow: bent, archer: (bow) => new TestArcher(bow), most: 110 },
  { bow: { ...ownPress(4), answers: { ...ownPress(4).answers, 'gate:history': 'dry-fire' } }, most: 30 },
  { bow: { ...ownPress(5), answers: { ...ownPress(5).answers, 'what-happened': 'person' } }, happens: (view) => (view.chapter === 'paper' ? { kind: 'stop', words: 'it cracked' } : null), most: 50 },
];

/** Plays them all and keeps one of each, by name: the first that had it. */
export function standings(namesOf: (view: View) => readonly string[]): Standing[] {
  const found = new Map<string, Standing>();
  const keep = (session: SessionLike): void => {
    const view = session.view();
    const { ask } = view;
    if (ask === null) return;
    const fresh = namesOf(view).filter((name) => !found.has(name));
    if (fresh.length === 0) return;
    const kept = copyOf(session);
    for (const name of fresh) found.set(name, { name, ask, view, session: () => copyOf(kept) });
  };
  for (const tune of TUNES) playKeeping(tune, keep);
  return [...found.values()];
}

function playKeeping({ bow, happens, most = 260, archer: archerOf = (own) => new NumberedArcher(own) }: Tune, keep: (session: SessionLike) => void): void {
  const session = openSession({ content, store: memoryStore([], { skipCodec: true }), startAt: new Date(NOON), engine: 'test', tune: 'test-tune', known: [] });
  const archer = archerOf(bow);
  let waiting = happens;
  for (let turn = 1; turn <= most; turn += 1) {
    const view = session.view();
    if (view.ask === null) return;
    keep(session);
    // The answer before, opened for correction: seen by every face, and closed again.
    const opened = copyOf(session);
    if (turn % 3 === 0 && opened.send({ kind: 'back' }, new Date(NOON + turn * MINUTE)).error === undefined) keep(opened);
    const instead = waiting?.(view) ?? null;
    if (instead !== null) waiting = undefined;
    const inTurn = archer instanceof NumberedArcher && bow.inTurn?.[view.ask.about] !== undefined;
    const intent: Intent = instead ?? { kind: 'answer', answer: inTurn ? archer.reply(view.ask, view.bow) : archer.answer(view) };
    const reply = session.send(intent, new Date(NOON + turn * MINUTE));
    if (reply.error !== undefined) throw new Error(`${view.ask.about}: ${reply.error.message}`);
  }
}
