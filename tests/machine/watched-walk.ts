// Walks a tune turn by turn through the session and holds every promise after each turn. Throws at the first broken one.

import assert from 'node:assert/strict';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { KNOBS, type Knob, type KnobId } from '../../src/content/types.ts';
import { replay } from '../../src/machine/replay.ts';
import { evolve, settingsOf, type State } from '../../src/machine/state.ts';
import { bowKnobOf, type Advice, type Answer, type Carried, type Fact, type Reply, type SessionLike, type Store, type View } from '../../src/machine/types.ts';
import { viewOf } from '../../src/machine/view.ts';
import { openSession, recordOf } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON } from '../tunes/play.ts';
import { gapOf, moveOf, type Turn } from './careless.ts';
import { GateBook } from './gate-book.ts';
import { isShot, promiseOfFact, promiseOfView } from './impact-promises.ts';
import { content } from './state-of.ts';

export interface Tally { turns: number; lines: number; refused: number; advices: number; shots: number; stops: number; corrected: number; done: number; killed: number; impacts: number }
export const noTally = (): Tally => ({ turns: 0, lines: 0, refused: 0, advices: 0, shots: 0, stops: 0, corrected: 0, done: 0, killed: 0, impacts: 0 });

export interface WalkOptions {
  readonly bow: Bow;
  readonly turns: readonly Turn[];
  /** 0..1000: how often the archer answers sensibly. */
  readonly care: number;
  /** Lines to begin with. */
  readonly facts?: readonly Fact[];
  readonly known?: readonly Carried[];
}

export class WatchedWalk {
  private session: SessionLike;
  private store: Store;
  private now: number;
  private readonly book = new GateBook(content);
  private readonly archer: TestArcher;
  /** What the journal alone says, followed line by line. */
  private own: State;
  private readonly moved = new Set<KnobId>();
  private correcting = false;

  constructor(private readonly options: WalkOptions, private readonly tally: Tally) {
    const { facts = [], bow } = options;
    this.archer = new TestArcher(bow);
    this.now = facts.length === 0 ? NOON : Date.parse(facts.at(-1)?.time ?? '') + 60_000;
    this.store = memoryStore(facts);
    this.session = this.open();
    this.own = replay(content, this.store.facts).state;
    for (const fact of this.store.facts) this.note(fact, false);
    this.look(this.session.view());
  }

  walk(): void {
    for (const turn of this.options.turns) this.turn(turn);
    this.end();
  }

  private open(): SessionLike {
    return openSession({ content, store: this.store, startAt: new Date(this.now), engine: 'test', tune: 'walk', known: this.options.known ?? [] });
  }

  private turn(turn: Turn): void {
    this.tally.turns++;
    this.now += gapOf(turn);
    const before = this.store.facts.length;
    const move = moveOf(turn, this.session.view(), this.archer, this.options.care);
    if (move.kind === 'killed') return this.reopen(before);
    const was = this.session.view();
    const reply = this.session.send(move.intent, new Date(this.now));
    const onlyLooks = move.intent.kind === 'back' || move.intent.kind === 'keep';
    const grown = this.store.facts.length - before;
    // (g) one line for each intent taken, none for one refused, none for opening and shutting an earlier answer
    assert.equal(grown, reply.error !== undefined || onlyLooks ? 0 : 1, `the journal grew by ${grown} for ${JSON.stringify(move.intent)}`);
    this.held(reply, was);
    this.adopt(before);
    this.correcting = reply.view.ask?.correcting !== undefined;
    if (reply.error === undefined && ['answer', 'stop', 'keep'].includes(move.intent.kind)) assert.ok(!this.correcting, `${move.intent.kind} must shut what was open`);
    if (reply.error === undefined && move.intent.kind === 'back') assert.ok(this.correcting);
    this.look(reply.view);
  }

  private held(reply: Reply, was: View): void {
    assert.deepEqual(reply.view, this.session.view());
    if (reply.error === undefined) return;
    this.tally.refused++;
    assert.deepEqual(reply.view, was, 'a refusal must change nothing that is shown');
    assert.ok(reply.error.message.length > 5 && /^[\x20-\x7e]*$/.test(reply.error.message), `the refusal reads "${reply.error.message}"`);
  }

  private reopen(before: number): void {
    this.tally.killed++;
    const done = this.session.view().type === 'done';
    this.session = this.open();
    this.correcting = false;
    assert.equal(this.store.facts.length, done ? before : before + 1);
    this.adopt(before);
    this.look(this.session.view());
  }

  private adopt(before: number): void {
    for (const fact of this.store.facts.slice(before)) {
      this.tally.lines++;
      // (h) numbered without a gap, stamped with the moment at which it came in
      assert.equal(fact.seq, this.store.facts.indexOf(fact) + 1);
      assert.equal(fact.time, new Date(this.now).toISOString());
      this.own = evolve(content, this.own, fact);
      assert.ok(this.own.fits, `line ${fact.seq} does not fit its own content`);
      promiseOfFact(fact, this.own);
      this.note(fact, this.session.view().type === 'stop');
    }
  }

  private note(fact: Fact, stopped: boolean): void {
    this.book.read(fact, stopped);
    if (fact.kind === 'stopped') this.tally.stops++;
    if (fact.kind === 'corrected') this.tally.corrected++;
    if (fact.kind === 'moved') this.moved.add(fact.knob);
    const told = fact.kind === 'answered' ? fact.decided.loop?.told : undefined;
    if (told !== undefined) this.moved.add(told.knob);
    if (fact.kind === 'answered' && fact.answer.kind === 'shots') this.tally.shots++;
  }

  // ---- what every view must keep to ----------------------------------------------------------------------------------

  private look(view: View): void {
    if (!this.correcting) assert.deepEqual(view, viewOf(content, this.own), '(f) the journal replayed must show what the session shows');
    assert.equal(view.seq, this.store.facts.at(-1)?.seq);
    this.safeToShoot(view);
    this.safeToDraw(view);
    promiseOfView(view, this.book, this.own);
    if (isShot(view.ask) && view.ask.kind === 'impact') this.tally.impacts++;
    if (view.type === 'stop') this.onlyWaysOut(view);
    if (view.advice?.kind === 'adjust' || view.advice?.kind === 'put-back') this.oneAdjustment(view.advice, view);
    if (view.type === 'done') this.honestRecord();
  }

  // (b) nothing is shot and nothing adjusted while a gate is failed, not known or due
  private safeToShoot(view: View): void {
    const { ask, advice } = view;
    const onBow = advice?.kind === 'adjust' || advice?.kind === 'put-back';
    const asked = ask !== null && ask.correcting === undefined && ['tear', 'impact', 'amount'].includes(ask.kind);
    if (!onBow && !asked) return;
    // Putting back is undrawn work: what must be drawn or shot to look at it waits until all is back.
    const waits = (reason: string): boolean => advice?.kind === 'put-back' && reason.endsWith(' is due') && ['draw', 'shoot'].includes(content.steps[reason.split(/[ /]/)[0] ?? '']?.pause ?? '');
    assert.deepEqual(this.book.forbids().filter((reason) => !waits(reason)), [], `${onBow ? 'an adjustment is shown' : `a ${ask?.kind} is asked`} at ${view.step}`);
    assert.ok(!this.book.fingers, 'this coach does not read paper for a finger release');
  }

  // (c) nobody draws a bow that was not looked at
  private safeToDraw(view: View): void {
    const { ask } = view;
    if (ask === null || ask.correcting !== undefined) return;
    const pause = content.steps[ask.step.split('/')[0] ?? '']?.pause;
    if (pause !== 'draw' && pause !== 'shoot') return;
    assert.deepEqual(this.book.forbidsDraw(ask.step), [], `${ask.step} is asked, and draws the bow`);
  }

  // (e) a stop asks the questions that lead out of it, and shows nothing else to do
  private onlyWaysOut(view: View): void {
    if (view.ask !== null && view.ask.correcting === undefined) assert.ok(this.book.waysOut().has(view.ask.step), `stopped, and asked: ${view.ask.step}; ways out: ${[...this.book.waysOut()].join(' ')}`);
    assert.ok(view.advice === null || view.advice.kind === 'shop' || view.advice.kind === 'inspect');
  }

  // (a) one knob, one amount, and the setting that the ledger will then show; (d) inside what content allows
  private oneAdjustment(advice: Advice, view: View): void {
    this.tally.advices++;
    const { amount, to, direction } = advice;
    const id = bowKnobOf(advice);
    assert.ok(id !== null && amount !== undefined && to !== undefined && direction !== undefined);
    const knob = content.knobs[id];
    assert.ok(amount.value > 0 && amount.unit === knob.unit && to.unit === knob.unit);
    assert.ok(direction === knob.plus || direction === knob.minus);
    const from = view.bow[id]?.value ?? 0;
    const delta = direction === knob.plus ? amount.value : -amount.value;
    assert.ok(Math.abs(from + delta - to.value) < 1e-9, `${from} and ${delta} do not make ${to.value}`);
    if (advice.kind === 'adjust') this.withinLimits(knob, from, to.value, view);
  }

  private withinLimits(knob: Knob, from: number, to: number, view: View): void {
    const axis = knob.axis === 'none' ? 'height' : knob.axis;
    const value = (id: string): Answer | undefined => this.own.answers[id]?.answer;
    const word = (id: string): string => { const a = value(id); return a?.kind === 'choice' ? (a.values[0] ?? '') : ''; };
    const figure = (id: string): number | undefined => { const a = value(id); return a?.kind === 'number' ? a.value : undefined; };
    const press = word('growing') === 'growing' ? 'shop' : word('press');
    const rule = content.ladders.find((r) => r.axis === axis && (r.cams === 'any' || r.cams.includes(word('cams'))) && (r.press === 'any' || r.press.includes(press)));
    const soft = rule?.rungs.find((r) => r.knob === knob.id)?.soft ?? knob.soft;
    const [here, makers] = [figure('centre-shot'), figure('centre-shot-figure')];
    const offset = knob.from !== 'maker' || here === undefined || makers === undefined ? 0 : word('hand') === 'left' ? here - makers : makers - here;
    const [was, will] = [Math.abs(from + offset), Math.abs(to + offset)];
    const nock = figure('nock-height');
    const mendsNock = knob.id === 'nock-height' && nock !== undefined && (nock < 0 || nock > 0.25);
    assert.ok(mendsNock || will <= soft + 1e-9 || will < was, `${knob.id} from ${from} to ${to}: soft limit ${soft}, ${offset} off where it counts from`);
    const step = Math.abs(to - from);
    const mendsRest = knob.id === 'rest-side' && was > 1 / 16 + 1e-9 && will < 1e-9;
    const mean = view.picture?.kind === 'paper' ? view.picture.mean : undefined;
    const off = mean === undefined ? Infinity : Math.abs(axis === 'height' ? mean.y - 1 / 16 : mean.x);
    const far = knob.firstWhenFar !== null && off > knob.firstWhenFar.over - 0.05 ? knob.firstWhenFar.step : 0;
    const cap = this.moved.has(knob.id) ? Math.max(knob.later, knob.first) : Math.max(knob.first, far);
    if (!mendsNock && !mendsRest) assert.ok(step <= cap + 1e-9, `${knob.id} by ${step}: at most ${cap} at once`);
    if (knob.id === 'nock-height' && nock !== undefined) {
      const since = this.own.answers['nock-height']?.seq ?? 0;
      const now = this.own.moves.filter((m) => m.knob === knob.id && m.seq > since).reduce((sum, m) => sum + m.delta, nock);
      const then = now + to - from;
      const outside = (h: number): number => Math.max(0, -h, h - 0.25);
      assert.ok(outside(then) <= 1 / 64 + 1e-9 || outside(then) < outside(now), `the nock would stand ${then} above level`);
    }
  }

  // (i) the record says "tuned" only where a line found it, nothing later took it back, and the knobs of that axis still stand there
  private honestRecord(): void {
    const rows = recordOf(content, this.store.facts)?.sections.flatMap((section) => section.rows) ?? [];
    for (const axis of ['height', 'side'] as const) {
      const row = rows.find((r) => r.name === content.phrases[`axis-${axis}`]);
      if (row?.value.startsWith('tuned') !== true) continue;
      const found = this.store.facts.findLast((f) => f.decided.findings.some((x) => x.kind === 'axis' && x.chapter === 'paper' && x.axis === axis));
      const result = found?.decided.findings.findLast((x) => x.kind === 'axis' && x.chapter === 'paper' && x.axis === axis);
      assert.ok(found !== undefined && result?.kind === 'axis' && result.result === 'tuned', `the record says ${axis} ${row.value}`);
      const replaced = this.store.facts.find((f) => f.seq > found.seq && f.kind === 'changed' && ['string', 'rest', 'release', 'arrow'].includes(f.what));
      assert.equal(replaced, undefined, `the record says ${axis} ${row.value}`);
      const [then, now] = [settingsOf(this.own.moves.filter((m) => m.seq <= found.seq)), settingsOf(this.own.moves)];
      for (const knob of KNOBS) if (content.knobs[knob].axis === axis) assert.equal(now[knob] ?? 0, then[knob] ?? 0, `the record says ${axis} ${row.value}, and ${knob} was moved since`);
    }
  }

  private end(): void {
    if (this.session.view().type === 'done') this.tally.done++;
    this.honestRecord();
    const { state, unfit } = replay(content, memoryStore(this.store.facts).facts);
    assert.equal(unfit, null);
    assert.deepEqual(viewOf(content, state), viewOf(content, this.own), '(f) the whole journal, replayed');
    this.session.transcript();
    this.session.history();
  }
}
