// The only mover: takes an intent, decides, writes the line to disk, and only then adopts and shows it.

import { CodedError, type ErrorCode } from './errors.ts';
import type { Content } from './content/types.ts';
import { CURRENT_VERSION } from './journal/versions.ts';
import { asSentence, MAX_TEXT, parseAnswer, readQuantity, UNSEEN } from './machine/answer.ts';
import { formatQuantity } from './maths/fractions.ts';
import { answerToAskInWords } from './machine/answer-words.ts';
import { aboutOf } from './machine/ask.ts';
import { correctable } from './machine/correctable.ts';
import type { FactDraft } from './machine/deciding.ts';
import { decideOn } from './machine/decide.ts';
import { historyOf } from './machine/history.ts';
import { carriedOf as carriedOfState, recordOf as recordOfState } from './machine/record.ts';
import { replay } from './machine/replay.ts';
import { answersOf } from './machine/review.ts';
import type { State } from './machine/state.ts';
import { hasStopWord } from './machine/stop-words.ts';
import { transcriptOf } from './machine/transcript.ts';
import type { AnswerEntry, BowRecord, Carried, Fact, HistoryEntry, Intent, Reply, SessionLike, Store, TranscriptEntry, View } from './machine/types.ts';
import { lastMoveToUndo, movesFrom, undoRuns } from './machine/undo.ts';
import { mayBringBack, viewOf } from './machine/view.ts';

export interface SessionOptions {
  readonly content: Content;
  readonly store: Store;
  readonly startAt: Date;
  readonly engine: string;
  readonly tune: string;
  /** Bows tuned here before, offered at the first question of a new tune. */
  readonly known: readonly Carried[];
}

export function openSession(options: SessionOptions): SessionLike {
  return new Session(options);
}

class Session implements SessionLike {
  private readonly content: Content;
  private readonly store: Store;
  private state: State;
  private lastSeq: number;
  private shown: View;
  /** The answered line that is open for correction. A place on the screen, not a fact. */
  private correcting: number | null = null;
  /** Whether this sitting has written a line. */
  private wrote = false;
  private readonly listeners = new Set<() => void>();

  constructor({ content, store, startAt, engine, tune, known }: SessionOptions) {
    this.content = content;
    this.store = store;
    const { state, unfit } = replay(content, store.facts);
    this.state = state;
    this.lastSeq = store.facts.at(-1)?.seq ?? 0;
    this.shown = viewOf(content, this.state);
    if (store.facts.length === 0) {
      this.take({ kind: 'begun', v: CURRENT_VERSION, seq: 1, time: startAt.toISOString(), tune, engine, content: content.version, known });
    } else if (!this.state.notes.done) {
      const away = Math.max(0, startAt.getTime() - Date.parse(store.facts.at(-1)?.time ?? ''));
      this.take({ kind: 'resumed', ...this.stamp(startAt), away, ...(unfit === null ? {} : { setAside: unfit }) });
    }
  }

  view(): View {
    return this.shown;
  }

  send(intent: Intent, now: Date): Reply {
    try {
      return this.move(intent, now);
    } catch (error) {
      if (error instanceof CodedError) return this.refuse(error.code, error.message);
      throw error;
    }
  }

  private move(intent: Intent, now: Date): Reply {
    if (this.state.notes.done && intent.kind !== 'note') return this.sinceDone(intent, now) ?? this.refuse('walk-is-done', 'This tune is finished. Begin another with: quarterturn new');
    switch (intent.kind) {
      case 'answer':
        return this.answer(intent.answer, now);
      case 'back':
        return this.back(intent.to);
      case 'keep':
        if (this.correcting === null) return this.refuse('not-correcting', 'No earlier answer is open.');
        return this.open(null);
      case 'putBack':
        return this.putBack(intent.to, now);
      case 'stop':
        return this.stop(intent.words, now);
      case 'say':
        return hasStopWord(intent.words) ? this.stop(intent.words, now) : this.refuse('not-understood', 'No word of danger is known in that.');
      case 'note':
        return this.note(intent.note, now);
      case 'moved':
        return this.moved(intent, now);
      case 'changed':
        return this.changed(intent, now);
      case 'turned': case 'debrief':
        return this.refuse('not-now', 'That is for a practice bow: "quarterturn practice" begins one.');
    }
  }

  /** A finished tune has nothing left to stop; a word of danger is kept with it all the same. */
  private sinceDone(intent: Intent, now: Date): Reply | null {
    const words = intent.kind === 'stop' || intent.kind === 'say' ? intent.words : intent.kind === 'changed' ? (intent.note ?? '') : '';
    if (intent.kind === 'stop' && words.trim() === '') return this.note('stop', now);
    return hasStopWord(words) ? this.note(words.slice(0, MAX_TEXT), now) : null;
  }

  private answer(raw: unknown, now: Date): Reply {
    const { ask } = this.shown;
    if (ask === null) return this.refuse('not-now', 'Nothing is asked at this point.');
    const parsed = parseAnswer(ask, raw);
    const words = wordsIn(raw);
    const danger = hasStopWord(words);
    // Words of danger are heard wherever they are written, even where a number was asked for.
    if (!parsed.ok) return danger ? this.stop(words, now) : this.refuse(parsed.code, parsed.message);
    const { answer } = parsed;
    // What a dealer found may be a crack, and is told in a sentence. An option may have such a word in it. All else is a call,
    // also where something was answered before it: "high 1/2 it cracked".
    const released = ask.about === 'released' && (words.match(/[a-z]{2,}/gi) ?? []).length >= 5 && (!danger || OF_A_DEALER.test(words));
    if (danger && !released && ask.kind !== 'choice') return this.stop(words, now);
    if (ask.about === 'released' && !released) return this.refuse('empty', 'Write who released the bow, when, and what was found.');
    const draft: FactDraft = this.correcting === null
      ? { kind: 'answered', ...this.stamp(now), step: ask.step, about: ask.about, answer }
      : { kind: 'corrected', ...this.stamp(now), of: this.correcting, answer };
    return this.take(draft);
  }

  /** Opens the last answer; again, the one before it; or the answer of that line. The bow does not move. */
  private back(to: number | undefined): Reply {
    const facts = correctable(this.content, this.state);
    if (to !== undefined) {
      if (facts.some((f) => f.seq === to)) return this.open(to);
      const answer = answersOf(this.content, this.state).find(({ seq }) => seq === to);
      if (answer === undefined) return this.refuse('nothing-earlier', `Line ${to} of this tune is no answer. Pick one from the review of answers.`);
      return this.refuse('not-now', `"${answer.answer}" (line ${to}) cannot be changed. ${answer.change === true ? '' : answer.change}`.trim());
    }
    const at = this.correcting === null ? -1 : facts.findIndex((f) => f.seq === this.correcting);
    const next = facts[at + 1];
    return next === undefined ? this.refuse('nothing-earlier', 'There is no earlier answer to correct.') : this.open(next.seq);
  }

  private open(seq: number | null): Reply {
    this.correcting = seq;
    this.show();
    return { view: this.shown };
  }

  private putBack(to: number | undefined, now: Date): Reply {
    const from = to ?? lastMoveToUndo(this.state);
    if (from === null) return this.refuse('nothing-to-put-back', 'No adjustment is there to put back: the bow is set as it was found.');
    const may = mayBringBack(this.content, this.state);
    if (may !== true) return this.refuse('not-now', may);
    if (movesFrom(this.state, from).length === 0) return this.refuse('nothing-to-put-back', `Nothing was moved at or after line ${from}.`);
    if (undoRuns(movesFrom(this.state, from)).length === 0) return this.refuse('nothing-to-put-back', `The bow stands as it was before line ${from} already.`);
    return this.take({ kind: 'wanted-back', ...this.stamp(now), to: from });
  }

  private stop(words: string, now: Date): Reply {
    // Nothing about its words keeps a stop from being one: too many are cut, none at all is "stop".
    const text = words.trim() === '' ? 'stop' : plainText(words.trim().slice(0, MAX_TEXT), 'stop') || 'stop';
    return this.take({ kind: 'stopped', ...this.stamp(now), words: text });
  }

  private note(words: string, now: Date): Reply {
    if (words.length > MAX_TEXT && hasStopWord(words) && !this.state.notes.done) return this.stop(words, now);
    const text = plainText(words, 'note');
    // A finished tune has nothing left to stop; the words are kept all the same.
    if (hasStopWord(text) && !this.state.notes.done) return this.stop(text, now);
    return { ...this.take({ kind: 'noted', ...this.stamp(now), note: text }), noted: true };
  }

  private moved(intent: Extract<Intent, { kind: 'moved' }>, now: Date): Reply {
    const knob = this.content.knobs[intent.knob];
    if (intent.direction !== knob.plus && intent.direction !== knob.minus) {
      return this.refuse('not-an-option', `${knob.name} goes ${knob.plus} or ${knob.minus}.`);
    }
    const read = readQuantity(intent.amount, knob.unit);
    if (!read.ok && hasStopWord(wordsIn(intent.amount))) return this.stop(wordsIn(intent.amount), now);
    if (!read.ok) return this.refuse('not-an-amount', asSentence(read.why));
    if (read.value <= 0 || read.value > knob.hard * 4) return this.refuse('out-of-range', `Write an amount above 0 and at most ${formatQuantity({ value: knob.hard * 4, unit: knob.unit })}.`);
    const delta = intent.direction === knob.plus ? read.value : -read.value;
    return this.take({ kind: 'moved', ...this.stamp(now), knob: intent.knob, delta });
  }

  /** What changed is kept, and so is a word of danger said of it: it stops besides. */
  private changed({ what, note = '' }: Extract<Intent, { kind: 'changed' }>, now: Date): Reply {
    const kept = this.take({ kind: 'changed', ...this.stamp(now), what, note });
    return hasStopWord(note) ? this.stop(note, now) : kept;
  }

  preview(raw: unknown): ReturnType<SessionLike['preview']> {
    const { ask } = this.shown;
    if (ask === null) return { ok: false, code: 'not-now', message: 'Nothing is asked at this point.' };
    const parsed = parseAnswer(ask, raw);
    return parsed.ok ? { ...parsed, words: answerToAskInWords(ask, parsed.answer) } : parsed;
  }

  history(): readonly HistoryEntry[] {
    return historyOf(this.content, this.state);
  }

  answers(): readonly AnswerEntry[] {
    return answersOf(this.content, this.state);
  }

  transcript(): readonly TranscriptEntry[] {
    return transcriptOf(this.content, this.state);
  }

  glossary(): Readonly<Record<string, string>> {
    return this.content.glossary;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  close(): void {
    this.store.close();
  }

  private stamp(now: Date): { readonly seq: number; readonly time: string } {
    return { seq: this.lastSeq + 1, time: now.toISOString() };
  }

  // Decide and work out the next view first, unseen; then the line goes to disk; only then is it adopted.
  private take(draft: FactDraft): Reply {
    // The first line of every sitting says the version: an older program then sees which lines it does not know, and reads on as before
    // where all are its own. A finished tune is not resumed, so it may be a note that says it.
    const { fact, next } = decideOn(this.content, this.state, this.wrote ? draft : { ...draft, v: CURRENT_VERSION });
    // A note does not close an answer that is open for correction; everything else does.
    const open = draft.kind === 'noted' ? this.correcting : null;
    const view = viewOf(this.content, next, open);
    this.store.append(fact);
    this.wrote = true;
    // From here on nothing can fail: an answer that could not be written leaves everything as it was, also an open correction.
    this.correcting = open;
    this.state = next;
    this.lastSeq = fact.seq;
    this.shown = view;
    for (const listener of this.listeners) listener();
    return { view };
  }

  private show(): void {
    this.shown = viewOf(this.content, this.state, this.correcting);
    for (const listener of this.listeners) listener();
  }

  private refuse(code: ErrorCode, message: string): Reply {
    return { view: this.shown, error: { code, message } };
  }
}

/** Of what is told by somebody who was at a dealer's, one of these is a part; of a shout none is. */
const OF_A_DEALER = /\b(dealers?|shop|technician|released?|repaired|replaced|fixed|mended|checked|inspected|found|examined|looked)\b/i;

/** The words in what came in, also where a list of them was sent. */
const wordsIn = (raw: unknown): string => (Array.isArray(raw) ? raw : [raw]).filter((part) => typeof part === 'string').join(', ').trim();

function plainText(words: string, what: string): string {
  const text = words.trim();
  if (text === '') throw new CodedError('empty', `Nothing was written. Write a few words to ${what}.`);
  if (text.length > MAX_TEXT) throw new CodedError('too-long', `That is ${text.length} characters; at most ${MAX_TEXT} can be kept. Write it shorter.`);
  return text.replace(/[\u0000-\u001f\u007f-\u009f]+/g, ' ').replace(new RegExp(UNSEEN, 'gu'), '').trim();
}

/** Every name that `ask.about` may carry, sorted: printed with the schema of the pipe. */
export function aboutList(content: Content): readonly string[] {
  const names = Object.values(content.steps).flatMap((step) => [
    aboutOf(step),
    ...(step.kind === 'chunk' ? step.checks.map((check) => `gate:${check.id}`) : []),
  ]);
  return [...new Set([...names, 'tear', 'impact', 'moved', 'inspected', 'finishing', 'accept', 'arrow-look', 'turn-the-set', 'practice', 'practice-bow'])].sort();
}

/** The record of a finished tune, or of one that is under way; null where nothing was begun. */
export function recordOf(content: Content, facts: readonly Fact[]): BowRecord | null {
  return facts.length === 0 ? null : recordOfState(content, replay(content, facts).state);
}

export function carriedOf(content: Content, facts: readonly Fact[]): Carried | null {
  return facts.length === 0 ? null : carriedOfState(content, replay(content, facts).state);
}

