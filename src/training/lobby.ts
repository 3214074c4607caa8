// The way into a practice, as a session of its own: what is to be practised is the first question, and after it the practice itself goes on in the
// same place. So all three faces have the menu, with their own keys, and none of them knows of it.

import type { PracticeWords } from '../content/practice-words.ts';
import { fill } from '../content/fill.ts';
import type { Content } from '../content/types.ts';
import type { ErrorCode } from '../errors.ts';
import type { PracticeOf } from '../journal/practice-mark.ts';
import { parseAnswer } from '../machine/answer.ts';
import { answerToAskInWords } from '../machine/answer-words.ts';
import { hasStopWord } from '../machine/stop-words.ts';
import type { Ask, Intent, Reply, SessionLike, TranscriptEntry, View } from '../machine/types.ts';
import { LESSONS } from '../practice/lesson-names.ts';
import { MOST_BOWS, nameOf } from './world-of.ts';

/** A practice that was broken off. */
export interface HalfDone { readonly id: string; readonly of: PracticeOf; readonly shots: number; readonly when: string }

export interface LobbyOptions {
  readonly content: Content;
  readonly words: PracticeWords;
  /** The latest first. */
  readonly halfDone: readonly HalfDone[];
  /** The number of the next bow of a lesson: another one each time that it is taken. */
  readonly next: (lesson: string) => number;
  /** Opens a practice that was broken off, or a new one. */
  readonly open: (choice: { readonly id: string } | { readonly of: PracticeOf }, now: Date) => { readonly session: SessionLike; readonly notices: readonly string[] };
}

/** As many as leave room for the lessons on a small screen. */
const MOST_HALF_DONE = 3;
const NUMBER = 'number';
/** How much of a practice that is gone on with is told again. */
const TOLD_AGAIN = 20;

export const openLobby = (options: LobbyOptions): SessionLike => new Lobby(options);

class Lobby implements SessionLike {
  private inside: SessionLike | null = null;
  private askNumber = false;
  /** What was said here, and from which line on the practice's own words are told. */
  private readonly said: TranscriptEntry[] = [];
  private from = 0;
  private notices: readonly string[] = [];
  private entered: View | null = null;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly options: LobbyOptions) {}

  view(): View {
    const view = this.inside?.view();
    if (view === undefined) return this.menu();
    if (this.notices.length === 0) return view;
    // Told once: with the view that the practice opens with.
    this.entered ??= view;
    return view === this.entered ? { ...view, say: [...this.notices, ...view.say] } : view;
  }

  private menu(): View {
    return {
      type: 'ask', seq: 0, chapter: 'safety', step: 'practice-menu', where: { title: 'Practice', part: '', day: 1, shots: 0 }, say: [],
      ask: this.askNumber ? this.numberAsk() : this.menuAsk(), bow: {}, advice: null, findings: [], practice: { of: '', seen: [] },
      may: { back: this.askNumber ? true : 'Nothing was answered yet.', putBack: 'Nothing was moved yet.' },
    };
  }

  private menuAsk(): Extract<Ask, { kind: 'choice' }> {
    const { words: { says, lessons }, words, halfDone } = this.options;
    const shots = (n: number): string => `${n} ${n === 1 ? 'shot' : 'shots'}`;
    return {
      kind: 'choice', about: 'practice', step: 'practice-menu', short: says['menu-short'], text: [says['menu-text']], why: [says['menu-why']], caution: [],
      options: [
        ...halfDone.slice(0, MOST_HALF_DONE).map((one) => ({ value: one.id, label: fill(says['menu-on'], { of: nameOf(one.of, words), shots: shots(one.shots), when: one.when }) })),
        ...LESSONS.map((lesson) => ({ value: lesson, label: fill(says['menu-new'], { lesson, menu: lessons[lesson]?.menu ?? '' }) })),
        { value: NUMBER, label: says['menu-number'] },
      ],
    };
  }

  private numberAsk(): Ask {
    const { says } = this.options.words;
    return {
      kind: 'number', unit: 'count', min: 1, max: MOST_BOWS, about: 'practice-bow', step: 'practice-number',
      short: says['number-short'], text: [says['number-text']], why: [says['number-why']], caution: [],
    };
  }

  send(intent: Intent, now: Date): Reply {
    if (this.inside !== null) return { ...this.inside.send(intent, now), view: this.view() };
    if (intent.kind === 'back' && this.askNumber) {
      this.askNumber = false;
      return this.shown();
    }
    const words = intent.kind === 'stop' || intent.kind === 'say' ? intent.words : '';
    if (intent.kind === 'say' && !hasStopWord(words)) return this.refuse('not-understood', 'No word of danger is known in that.');
    if (intent.kind !== 'answer') return this.refuse('not-now', 'Nothing was begun yet: no bow is in your hands. Choose what to practise, or leave.');
    return this.answer(intent.answer, now);
  }

  private answer(raw: unknown, now: Date): Reply {
    const { ask } = this.menu();
    if (ask === null) return this.refuse('not-now', 'Nothing is asked.');
    const parsed = parseAnswer(ask, raw);
    if (!parsed.ok) return this.refuse(parsed.code, parsed.message);
    const { answer } = parsed;
    if (answer.kind === 'number') return this.enter(ask, answerToAskInWords(ask, answer), { of: { lesson: null, seed: answer.value } }, now);
    const value = answer.kind === 'choice' ? (answer.values[0] ?? '') : '';
    if (value === NUMBER) {
      this.askNumber = true;
      return this.shown();
    }
    const lesson = LESSONS.find((one) => one === value);
    return this.enter(ask, answerToAskInWords(ask, answer), lesson === undefined ? { id: value } : { of: { lesson, seed: this.options.next(lesson) } }, now);
  }

  private enter(ask: Ask, answered: string, choice: Parameters<LobbyOptions['open']>[0], now: Date): Reply {
    const { session, notices } = this.options.open(choice, now);
    this.said.push({ seq: 0, who: 'archer', text: `${ask.short}: ${answered}` });
    this.from = Math.max(0, session.transcript().length - TOLD_AGAIN);
    this.inside = session;
    this.notices = notices;
    session.subscribe(() => { for (const listener of this.listeners) listener(); });
    return this.shown();
  }

  private shown(): Reply {
    for (const listener of this.listeners) listener();
    return { view: this.view() };
  }

  private refuse(code: ErrorCode, message: string): Reply {
    return { view: this.view(), error: { code, message } };
  }

  preview(answer: unknown): ReturnType<SessionLike['preview']> {
    if (this.inside !== null) return this.inside.preview(answer);
    const { ask } = this.menu();
    if (ask === null) return { ok: false, code: 'not-now', message: 'Nothing is asked.' };
    const parsed = parseAnswer(ask, answer);
    return parsed.ok ? { ...parsed, words: answerToAskInWords(ask, parsed.answer) } : parsed;
  }
  history(): ReturnType<SessionLike['history']> {
    return this.inside?.history() ?? [];
  }
  answers(): ReturnType<SessionLike['answers']> {
    return this.inside?.answers() ?? [];
  }
  transcript(): readonly TranscriptEntry[] {
    return [...this.said, ...(this.inside?.transcript().slice(this.from) ?? [])];
  }
  glossary(): Readonly<Record<string, string>> {
    return this.options.content.glossary;
  }
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
  close(): void {
    this.inside?.close();
  }
}
