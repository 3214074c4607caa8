// Walks a tune turn by turn through the session on a memory store, and holds every promise after each turn. Throws a Violation
// at the first one that is broken.

import type { Content } from '../../src/content/types.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { decide } from '../../src/machine/decide.ts';
import { replay } from '../../src/machine/replay.ts';
import { emptyState, evolve, type State } from '../../src/machine/state.ts';
import type { Carried, Fact, Intent, SessionLike, Store, View } from '../../src/machine/types.ts';
import { viewOf } from '../../src/machine/view.ts';
import { placeOf } from '../../src/machine/walk.ts';
import { recordOf } from '../../src/machine/record.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON } from '../tunes/play.ts';
import { BowBook } from './books/bow-book.ts';
import { GateBook } from './books/gate-book.ts';
import { NockBook } from './books/nock-book.ts';
import { gapOf, moveOf, turnOf, type Temper } from './careless.ts';
import { brokenBy, Violation } from './invariants.ts';
import type { Moment } from './moment.ts';
import type { Tally } from './tally.ts';

export interface WalkOptions {
  /** What the program runs on. */
  readonly content: Content;
  /** What is shipped: the promises are held against it. */
  readonly sound: Content;
  readonly bow: Bow;
  readonly temper: Temper;
  /** One number a turn (careless.ts). */
  readonly turns: readonly number[];
  /** Lines to begin with. */
  readonly facts?: readonly Fact[];
  readonly known?: readonly Carried[];
}

const AFTER_THE_END = 6;

// Many walks begin with the same lines: what they come to is folded once for each content.
const begun = new WeakMap<Content, Map<readonly Fact[], State>>();

function stateAt(content: Content, facts: readonly Fact[]): State {
  if (facts.length === 0) return emptyState();
  const known = begun.get(content) ?? new Map<readonly Fact[], State>();
  begun.set(content, known);
  const state = known.get(facts) ?? replay(content, facts).state;
  known.set(facts, state);
  return state;
}

export class WatchedWalk {
  private session: SessionLike;
  private readonly store: Store;
  private now: number;
  private readonly gates: GateBook;
  private readonly bow = new BowBook();
  private readonly nocks = new NockBook();
  private readonly archer: TestArcher;
  /** What the journal alone says, followed line by line. */
  private own: State = emptyState();
  private readonly seen = new Set<string>();

  constructor(private readonly options: WalkOptions, private readonly tally: Tally) {
    const { facts = [], bow, content, sound } = options;
    this.archer = new TestArcher(bow);
    this.gates = new GateBook(sound);
    this.now = facts.length === 0 ? NOON : Date.parse(facts.at(-1)?.time ?? '') + 60_000;
    // Every line of a tune from its beginning goes through the journal's own text and back; the other walks save that time.
    this.store = memoryStore(facts, { skipCodec: facts.length > 0 });
    this.session = this.open();
    this.own = stateAt(content, facts);
    for (const fact of facts) this.note(fact, false);
    this.adopt(facts.length, null, null, null);
  }

  walk(): void {
    let after = 0;
    for (const n of this.options.turns) {
      // A finished tune takes notes and refuses the rest: a few turns show that.
      if (this.session.view().type === 'done' && ++after > AFTER_THE_END) break;
      this.turn(n);
    }
    this.end();
  }

  private open(): SessionLike {
    const { content, known = [] } = this.options;
    return openSession({ content, store: this.store, startAt: new Date(this.now), engine: 'test', tune: 'walk', known });
  }

  private turn(n: number): void {
    const { temper } = this.options;
    const turn = turnOf(n);
    this.tally.turns++;
    this.now += gapOf(turn, temper);
    const before = this.store.facts.length;
    const was = this.session.view();
    const move = moveOf(turn, was, this.archer, temper, () => this.session.history().flatMap(({ back }) => back?.to ?? []));
    if (move.kind === 'killed') return this.reopen(before);
    const reply = this.session.send(move.intent, new Date(this.now));
    if (reply.error !== undefined) this.tally.refused++;
    this.adopt(before, move.intent, was, reply.error?.message ?? null);
  }

  private reopen(before: number): void {
    this.tally.killed++;
    this.session = this.open();
    this.adopt(before, null, null, null);
  }

  private adopt(before: number, intent: Intent | null, was: View | null, refused: string | null): void {
    const { content } = this.options;
    const state = this.own;
    const fresh = this.store.facts.slice(before);
    for (const fact of fresh) {
      this.tally.lines++;
      this.own = evolve(content, this.own, fact);
      this.note(fact, this.session.view().type === 'stop');
    }
    if (fresh.length > 1) throw new Violation([{ invariant: 'refusal-changes-nothing', how: `${fresh.length} lines were written for ${JSON.stringify(intent)}` }]);
    this.look(intent, was, fresh[0] ?? null, refused, state);
  }

  private note(fact: Fact, stopped: boolean): void {
    this.gates.read(fact, stopped);
    this.bow.read(fact);
    this.nocks.read(fact);
    if (fact.kind === 'stopped') this.tally.stops++;
    if (fact.kind === 'corrected') this.tally.corrected++;
    if (fact.kind === 'answered' && fact.answer.kind === 'shots') this.tally.shots++;
  }

  private look(intent: Intent | null, was: View | null, line: Fact | null, refused: string | null, before: State, ending = false): void {
    const { content, sound } = this.options;
    const view = this.session.view();
    const { store, own, seen } = this;
    const key = `${view.type} ${view.ask?.step ?? ''} ${view.advice?.kind ?? ''}`;
    const moment: Moment = {
      content: sound, intent, line, lines: store.facts, view, was, before, state: own, gates: this.gates, bow: this.bow, nocks: this.nocks, refused, ending,
      fresh: !seen.has(key),
      said: (words) => viewOf(content, evolve(content, own, decide(content, own, { kind: 'stopped', seq: store.facts.length + 1, time: new Date(this.now).toISOString(), words }))),
      replayed: () => viewOf(content, own),
      record: () => recordOf(content, own).sections,
    };
    seen.add(key);
    const broken = brokenBy(moment);
    if (broken.length > 0) throw new Violation(broken);
    this.tell(view);
  }

  private tell({ ask, advice, type }: View): void {
    this.tally.places.add(placeOf(this.own.walk));
    if (advice?.kind === 'adjust' || advice?.kind === 'put-back') this.tally.advices++;
    if (ask?.kind === 'impact' && ask.correcting === undefined) this.tally.impacts++;
    if (type === 'stop') this.tally.stopped++;
  }

  // The whole journal, read anew; and all pages that may be opened.
  private end(): void {
    const { content } = this.options;
    if (this.session.view().type === 'done') this.tally.done++;
    this.look(null, null, null, null, this.own, true);
    const { state, unfit } = replay(content, this.store.facts);
    if (unfit !== null) throw notTold(`line ${unfit.from} does not fit when it is read again`);
    if (JSON.stringify(viewOf(content, state)) !== JSON.stringify(viewOf(content, this.own))) throw notTold('the whole journal shows something else when it is read again');
    this.session.transcript();
    this.session.history();
    this.session.answers();
  }
}

const notTold = (how: string): Violation => new Violation([{ invariant: 'journal-tells-all', how }]);
