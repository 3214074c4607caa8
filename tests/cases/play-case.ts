// Plays a case up to the step that it asks for: everything before is answered by the usual archer, the shots are the case's own.

import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Ask, Intent, SessionLike, View } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher } from '../tunes/archer.ts';
import { NOON, shippedContent } from '../tunes/play.ts';
import type { Case, Seen } from './case.ts';
import { takeImpacts } from './play-impacts.ts';
import { ROUND } from './round.ts';

const content = shippedContent();
const MINUTE = 60_000;

export class Played {
  readonly views: View[] = [];
  private store = memoryStore();
  private session: SessionLike;
  private now = NOON;
  /** What was asked so far. */
  readonly asked = new Set<string>();

  constructor(private readonly given: Case) {
    this.session = this.open();
  }

  get view(): View { return this.session.view(); }
  get ask(): Ask {
    if (this.view.ask === null) throw new Error('nothing is asked');
    return this.view.ask;
  }

  private open(): SessionLike {
    return openSession({ content, store: this.store, startAt: new Date(this.now), engine: 'test', tune: 'a-case', known: [] });
  }

  send(intent: Intent): View {
    this.now += MINUTE;
    const reply = this.session.send(intent, new Date(this.now));
    if (reply.error !== undefined) throw new Error(`${this.ask.about}: ${reply.error.message} (sent ${JSON.stringify(intent)})`);
    this.views.push(reply.view);
    return reply.view;
  }

  answer(answer: unknown): View { return this.send({ kind: 'answer', answer }); }

  /** The usual archer's answer, with what the case says of this bow. */
  usual(): View {
    const { about } = this.ask;
    const once = this.asked.has(about) ? {} : this.given.once;
    this.asked.add(about);
    const archer = new TestArcher({ start: { x: 0, y: 0 }, gain: {}, sd: 0, seed: 1, answers: { ...this.given.bow, ...once } });
    return this.answer(archer.answer({ ask: this.ask, bow: this.view.bow }));
  }

  /** True where the walk stands at a choice of its own: a change, a cause to look for, a stop, or the end. */
  stands(): boolean {
    const { type, ask } = this.view;
    return type !== 'ask' || ask === null || ['tear', 'impact', 'amount'].includes(ask.kind) || ['inspected', 'accept', 'finishing', 'broadheads-farther'].includes(ask.about);
  }

  /** Answers questions until the walk stands; not one that the case's own answers stop. */
  untilItStands(): void {
    for (let turn = 0; turn < 120 && !this.stands(); turn += 1) this.usual();
  }

  /** Takes the whole of `seen`; afterwards the coach stands at its next step. */
  run(): void {
    for (const item of this.given.seen) this.take(item);
    if (this.given.next.kind === 'ask') return this.untilAsked(this.given.next.about[0] ?? '');
    this.untilItStands();
  }

  private untilAsked(about: string): void {
    for (let turn = 0; turn < 120 && this.ask.about !== about && !(this.stands() && this.view.type === 'ask'); turn += 1) this.usual();
  }

  private take(item: Seen): void {
    if ('later' in item) this.comeBack(item.later);
    else if ('stop' in item) { this.untilItStands(); this.send({ kind: 'stop', words: item.stop }); }
    else if ('moved' in item) this.move(item.moved);
    else if ('shots' in item) this.exactly(item.shots);
    else if ('impacts' in item || 'line' in item || 'round' in item) takeImpacts(this, item);
    else this.shootSet(item.tear, item.spread ?? 0.1);
  }

  private comeBack(hours: number): void {
    this.now += hours * 60 * MINUTE;
    this.session = this.open();
    this.views.push(this.view);
  }

  private exactly(shots: Extract<Seen, { shots: unknown }>['shots']): void {
    for (const shot of shots) {
      this.untilItStands();
      this.answer(shot === 'missed' ? { missed: true } : Array.isArray(shot) ? { x: shot[0], y: shot[1] } : shot);
    }
  }

  // As long as the coach wants shots at this setting and distance, they come from the same place.
  private shootSet([x, y]: readonly [number, number], spread: number): void {
    this.untilItStands();
    const { distance } = this.plan();
    const bow = JSON.stringify(this.view.bow);
    for (let at = 0; at < 20 && this.view.ask?.kind === 'tear'; at += 1) {
      const plan = this.plan();
      if (plan.distance !== distance || JSON.stringify(this.view.bow) !== bow) return;
      // A fresh set is another matter: the case says what it shows.
      if (at > 0 && plan.taken === 0) return;
      const [dx, dy] = ROUND[at % ROUND.length] ?? [0, 0];
      this.answer({ x: x + dx * spread, y: y + dy * spread });
      this.untilItStands();
    }
  }

  private plan(): { distance: number; taken: number } {
    if (this.ask.kind !== 'tear') throw new Error(`a shot is wanted, not ${this.ask.about} (${this.view.say.join(' ')})`);
    return { distance: this.ask.distance.value, taken: this.ask.shots.taken };
  }

  private move({ knob, way, size }: Extract<Seen, { moved: unknown }>['moved']): void {
    this.untilItStands();
    const { advice } = this.view;
    if (advice?.knob === knob && advice.direction === way) {
      const asTold = Math.abs((advice.amount?.value ?? 0) - size) < 1e-9;
      this.answer(asTold ? 'as told' : { value: size, unit: advice.amount?.unit });
    } else this.send({ kind: 'moved', knob, direction: way, amount: size });
  }

  /** Everything that the coach has said since `from` views ago, in one text. */
  said(): string {
    return this.views.flatMap((view) => [...view.say, view.advice?.what ?? '', view.advice?.why ?? '']).join('\n');
  }
}
