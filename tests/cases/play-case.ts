// Plays a case up to the step that it asks for: everything before is answered by the usual archer, the shots are the case's own.

import { DIRECTIONS } from '../../src/content/types.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Ask, Carried, Intent, SessionLike, View } from '../../src/machine/types.ts';
import { carriedOf, openSession } from '../../src/session.ts';
import { mirroredAnswer, otherSide } from '../properties/mirrored.ts';
import { TestArcher } from '../tunes/archer.ts';
import { NOON, play, shippedContent } from '../tunes/play.ts';
import type { Case, Seen } from './case.ts';
import { takeArrows } from './play-arrows.ts';
import { takeHits, takeImpacts } from './play-impacts.ts';
import { ROUND } from './round.ts';

const content = shippedContent();
const MINUTE = 60_000;
const BEFORE = 'before';

/** What a tune of the same bow handed over: it was in tune, and all was well. */
const carried = (): Carried => {
  before ??= carriedOf(content, play({ start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.05, seed: 1 }, { tune: BEFORE, startAt: NOON - 7 * 24 * 60 * MINUTE }).store.facts);
  if (before === null) throw new Error('that tune hands nothing over');
  return before;
};
let before: Carried | null | undefined;

/** What is told of the bow's mirror: hands, sides and what lies left or right of the middle change places. */
function inAMirror(intent: Intent, about: string): Intent {
  if (intent.kind === 'moved') return { ...intent, direction: DIRECTIONS.find((one) => one === otherSide(intent.direction)) ?? intent.direction };
  return intent.kind === 'answer' ? { ...intent, answer: mirroredAnswer(about, intent.answer) } : intent;
}

export class Played {
  readonly views: View[] = [];
  private store = memoryStore([], { skipCodec: true });
  private session: SessionLike;
  private now = NOON;
  /** Checks that were told to be not so, or not known. */
  private readonly told = new Set<string>();
  /** What was asked so far. */
  readonly asked = new Set<string>();

  /** In a mirror whatever is told is told of the other hand and the other side. */
  constructor(private readonly given: Case, private readonly mirrored = false) {
    this.session = this.open();
  }

  get view(): View { return this.session.view(); }
  get ask(): Ask {
    if (this.view.ask === null) throw new Error('nothing is asked');
    return this.view.ask;
  }

  private open(): SessionLike {
    return openSession({ content, store: this.store, startAt: new Date(this.now), engine: 'test', tune: 'a-case', known: this.given.known ? [carried()] : [] });
  }

  send(intent: Intent): View {
    this.now += MINUTE;
    const reply = this.session.send(this.mirrored ? inAMirror(intent, this.view.ask?.about ?? '') : intent, new Date(this.now));
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
    const check = this.checked();
    if (check !== null) return this.answer(check);
    const known = this.given.known ? { bow: BEFORE } : {};
    const archer = new TestArcher({ start: { x: 0, y: 0 }, gain: {}, sd: 0, seed: 1, answers: { ...known, ...this.given.bow, ...once } });
    return this.answer(archer.answer({ ask: this.ask, bow: this.view.bow }));
  }

  // In the list what is not so is picked; asked on its own it is told once, and then it was mended.
  private checked(): string | string[] | null {
    const { ask, given: { checks } } = this;
    if (ask.kind !== 'choice') return null;
    const open = (check: string): boolean => checks[check] !== undefined && !this.told.has(check);
    const picked = ask.many === true ? ask.options.map(({ value }) => value).filter(open) : [];
    for (const one of picked) this.asked.add(`gate:${one}`);
    if (picked.length > 0) return picked;
    const check = ask.about.replace(/^gate:/, '');
    if (!open(check)) return null;
    this.told.add(check);
    return checks[check] === 'not known' ? 'not known' : 'false';
  }

  /** True where the walk stands at a choice of its own: a change, a cause to look for, a stop, or the end. */
  stands(): boolean {
    const { type, ask } = this.view;
    return type !== 'ask' || ask === null || ['tear', 'impact', 'amount'].includes(ask.kind) || ['inspected', 'accept', 'finishing', 'broadheads-farther', 'arrow-look', 'turn-the-set'].includes(ask.about);
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

  private upTo(about: string): void {
    for (let turn = 0; turn < 120 && this.ask.about !== about; turn += 1) this.usual();
    if (this.ask.about !== about) throw new Error(`${about} is not asked, but ${this.ask.about}`);
    this.usual();
  }

  private take(item: Seen): void {
    if ('later' in item) this.comeBack(item.later);
    else if ('stop' in item) { this.untilItStands(); this.send({ kind: 'stop', words: item.stop }); }
    else if ('changed' in item) { this.untilItStands(); this.send({ kind: 'changed', what: item.changed }); }
    else if ('moved' in item) this.move(item.moved);
    else if ('shots' in item) this.exactly(item.shots);
    else if ('found' in item) { this.untilItStands(); this.answer(item.found); }
    else if ('answered' in item) this.upTo(item.answered);
    else if ('change' in item) this.change(item.change);
    else if ('arrows' in item) takeArrows(this, item.arrows);
    else if ('hits' in item) takeHits(this, item.hits);
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

  private change(how: Extract<Seen, { change: unknown }>['change']): void {
    this.untilItStands();
    const set = this.ask.about === 'turn-the-set';
    if (how === 'one stays' || set) this.answer(how === 'cannot' ? 'leave' : how);
    else this.answer(how === 'done' ? 'as told' : 'not now');
  }

  private move({ knob, way, size }: Extract<Seen, { moved: unknown }>['moved']): void {
    this.untilItStands();
    const { advice } = this.view;
    if (advice?.knob === knob && advice.direction === (this.mirrored ? otherSide(way) : way)) {
      const asTold = Math.abs((advice.amount?.value ?? 0) - size) < 1e-9;
      this.answer(asTold ? 'as told' : { value: size, unit: advice.amount?.unit });
    } else this.send({ kind: 'moved', knob, direction: way, amount: size });
  }

  /** Everything that the coach has said since `from` views ago, in one text. */
  said(): string {
    return this.views.flatMap((view) => [...view.say, view.advice?.what ?? '', view.advice?.why ?? '']).join('\n');
  }
}
