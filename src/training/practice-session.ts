// A practice as the faces see it: the same session as at a real bow, with an invented bow beside it. What is asked, said and judged is the coach's
// own; what is seen, shot and felt comes from the invented bow, which does what hands truly do, whatever the coach is told.

import type { PracticeWords } from '../content/practice-words.ts';
import { fill } from '../content/fill.ts';
import type { Content, KnobId } from '../content/types.ts';
import { CodedError } from '../errors.ts';
import type { PracticeMark, PracticeOf } from '../journal/practice-mark.ts';
import { asSentence, readQuantity } from '../machine/answer.ts';
import { hasStopWord } from '../machine/stop-words.ts';
import type { Ask, Intent, Reply, SessionLike, View } from '../machine/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { askedOf } from '../practice/answers.ts';
import { byModel } from '../practice/by-model.ts';
import type { Flight } from '../practice/flight.ts';
import { afterLine } from '../practice/learner.ts';
import { FRESH, type Memory } from '../practice/memory.ts';
import { seenAt } from '../practice/seen.ts';
import type { World } from '../practice/world.ts';
import { openSession } from '../session.ts';
import { debriefOf } from './debrief.ts';
import { ridingStore, type MarkedStore, type RidingStore } from './riding-store.ts';
import { fitsWhatIsSeen } from './fits.ts';
import { lookWords } from './look-words.ts';
import { shownOf } from './shown.ts';
import { worldOf } from './world-of.ts';

export interface PracticeOptions {
  readonly content: Content;
  readonly words: PracticeWords;
  readonly store: MarkedStore;
  /** Which bow, where the practice is only just begun; one that is gone on with says so itself. */
  readonly of: PracticeOf;
  readonly startAt: Date;
  readonly engine: string;
  readonly tune: string;
}

const isOver = (): CodedError => new CodedError('walk-is-done', 'This practice is over, and what was true is told. Begin another with: quarterturn practice');

export const openPractice = (options: PracticeOptions): PracticeSession => new PracticeSession(options);

export class PracticeSession implements SessionLike {
  readonly of: PracticeOf;
  readonly world: World;
  private readonly inner: SessionLike;
  private readonly riding: RidingStore;
  private readonly flight: Flight = byModel();
  private memory: Memory = FRESH;
  /** Lines that are in the memory already. */
  private folded = 0;
  private ended: boolean;
  private shown: { readonly of: View; readonly memory: Memory; readonly ended: boolean; readonly view: View } | null = null;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly options: PracticeOptions) {
    const { content, store, startAt, engine, tune } = options;
    this.of = store.marks.get(1)?.of ?? options.of;
    this.world = worldOf(this.of, content);
    this.riding = ridingStore(store, this.of);
    this.ended = [...store.marks.values()].some(({ ended }) => ended === true);
    // Nothing of another bow is ever known here.
    this.inner = openSession({ content, store: this.riding.store, startAt, engine, tune, known: [] });
    this.fold();
  }

  /** The hidden bow, from the lines alone. */
  hidden(): Memory {
    return this.memory;
  }

  private fold(): void {
    const lines = this.riding.lines();
    for (const { fact, hands } of lines.slice(this.folded)) this.memory = afterLine(this.world, this.memory, fact, hands);
    this.folded = lines.length;
  }

  view(): View {
    const of = this.inner.view();
    const { memory, ended } = this;
    if (this.shown === null || this.shown.of !== of || this.shown.memory !== memory || this.shown.ended !== ended) {
      this.shown = { of, memory, ended, view: this.seen(of) };
    }
    return this.shown.view;
  }

  private seen(view: View): View {
    const { content, words } = this.options;
    const over = this.ended || view.type === 'done';
    const debrief = over ? debriefOf({ content, words, of: this.of, world: this.world, lines: this.riding.lines(), flight: this.flight }) : null;
    return shownOf(view, { content, words, of: this.of, world: this.world, memory: this.memory, flight: this.flight, ended: this.ended, debrief });
  }

  send(intent: Intent, now: Date): Reply {
    try {
      return this.move(intent, now);
    } catch (error) {
      if (error instanceof CodedError && error.code !== 'cannot-write') return { view: this.view(), error: { code: error.code, message: error.message } };
      throw error;
    }
  }

  private move(intent: Intent, now: Date): Reply {
    if (this.ended) throw isOver();
    switch (intent.kind) {
      case 'answer': return this.pass(intent, this.handsAt(intent), now);
      case 'turned': return this.turn(intent.knob, intent.direction, intent.amount, now);
      case 'debrief': return this.end(now);
      case 'back': case 'keep': case 'putBack': case 'stop': case 'say': case 'note': case 'moved': case 'changed': return this.pass(intent, {}, now);
    }
  }

  private pass(intent: Intent, mark: PracticeMark, now: Date): Reply {
    const reply = this.riding.with(mark, () => this.inner.send(intent, now));
    this.fold();
    for (const listener of this.listeners) listener();
    return { ...reply, view: this.view() };
  }

  /** What is truly done with this answer. */
  private handsAt({ answer, hands }: Extract<Intent, { kind: 'answer' }>): PracticeMark {
    const { ask, advice } = this.inner.view();
    if (ask === null || ask.correcting !== undefined) return {};
    if (ask.kind === 'tear' || ask.kind === 'impact') return this.shotMark(ask, answer);
    if (ask.kind !== 'amount') return this.overlookedBy(ask, answer);
    if (hands === 'still') return { turned: [] };
    const swapped = advice?.knob === 'nock-swap' && advice.arrow !== undefined && answer === 'as told';
    return swapped ? { newNock: advice.arrow ?? '' } : {};
  }

  private shotMark(ask: Extract<Ask, { kind: 'tear' | 'impact' }>, answer: unknown): PracticeMark {
    const understood = this.inner.preview(answer);
    if (understood.ok && understood.answer.kind === 'shots' && understood.answer.shots.length !== 1) throw new CodedError('not-a-tear', this.options.words.says['one-shot']);
    const { arrow, nockTurn, flying } = askedOf(this.world, ask);
    return { shot: { arrow, nockTurn, flying, at: ask.kind === 'tear' ? 'paper' : 'target', distance: ask.distance } };
  }

  /** What was to be seen, where this answer says something else: for the debrief, and not a word of it before. */
  private overlookedBy(ask: Ask, answer: unknown): PracticeMark {
    const understood = this.inner.preview(answer);
    const { content, words } = this.options;
    const seen = seenAt(this.world, this.memory, ask, this.flight);
    if (!understood.ok || seen === null || fitsWhatIsSeen(ask, understood.answer, seen)) return {};
    const overlooked = lookWords(words, content, ask, seen).join(' ');
    return overlooked === '' ? {} : { overlooked };
  }

  /** Something is turned and the coach is not told. It is kept as a note, so that the record of the practice knows. */
  private turn(id: KnobId, direction: string, amount: unknown, now: Date): Reply {
    const { content, words } = this.options;
    const knob = content.knobs[id];
    if (typeof amount === 'string' && hasStopWord(amount)) return this.pass({ kind: 'stop', words: amount }, {}, now);
    if (direction !== knob.plus && direction !== knob.minus) throw new CodedError('not-an-option', `${knob.name} goes ${knob.plus} or ${knob.minus}.`);
    const read = readQuantity(amount, knob.unit);
    if (!read.ok) throw new CodedError('not-an-amount', asSentence(read.why));
    const most = knob.hard * 4;
    if (read.value <= 0 || read.value > most) throw new CodedError('out-of-range', `Write an amount above 0 and at most ${formatQuantity({ value: most, unit: knob.unit })}.`);
    if (this.world.bow.adjustments[id] === undefined) throw new CodedError('not-now', fill(words.says.shop, { knob: knob.name }));
    const by = direction === knob.plus ? read.value : -read.value;
    const what = `${knob.name}, ${direction} ${formatQuantity({ value: read.value, unit: knob.unit })}`;
    return this.pass({ kind: 'note', note: fill(words.says['hidden-turn'], { what }) }, { turned: [{ knob: id, by }] }, now);
  }

  private end(now: Date): Reply {
    if (this.inner.view().type === 'done') throw isOver();
    const reply = this.riding.with({ ended: true }, () => this.inner.send({ kind: 'note', note: this.options.words.says.ended }, now));
    if (reply.error !== undefined) return { ...reply, view: this.view() };
    this.ended = true;
    this.fold();
    for (const listener of this.listeners) listener();
    return { view: this.view() };
  }

  preview(answer: unknown): ReturnType<SessionLike['preview']> {
    return this.inner.preview(answer);
  }
  history(): ReturnType<SessionLike['history']> {
    return this.inner.history();
  }
  answers(): ReturnType<SessionLike['answers']> {
    return this.inner.answers();
  }
  transcript(): ReturnType<SessionLike['transcript']> {
    return this.inner.transcript();
  }
  glossary(): ReturnType<SessionLike['glossary']> {
    return this.inner.glossary();
  }
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
  close(): void {
    this.inner.close();
  }
}
