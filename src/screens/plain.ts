// The face for screen readers, dumb terminals and pipes: lines in, lines out, nothing drawn and nothing redrawn.

import type { Readable, Writable } from 'node:stream';
import { CodedError } from '../errors.ts';
import type { Answer, Ask, Intent, Reply, SessionLike, View } from '../machine/types.ts';
import { clean } from './clean.ts';
import { LONGEST_LINE, readLines, type Line } from './lines.ts';
import { outputTo, type Output } from './output.ts';
import { COMMANDS, readCommand } from './plain-commands.ts';
import { pictureLines, takenLines } from './plain-pictures.ts';
import { drawingLines, HOLD_LINE, isHeld, PRACTICE_COMMANDS, readPractice, seenLines, SHOOT_FIRST, shotLines } from './plain-practice.ts';
import { adviceLines, answersLines, askLines, cautionLines, historyLines, recordLines, sayLines, stepsLines, whereLine, whyLines } from './plain-words.ts';

export interface PlainStreams {
  readonly input: Readable;
  readonly output: Writable;
  readonly now: () => Date;
  readonly notices?: readonly string[];
  /** True where what is typed does not show by itself (a pipe): the face then repeats it after the prompt. */
  readonly echo: boolean;
}

const PROMPT = '> ';
/** Whoever comes back to the terminal, or listens, hears it at every question. */
const PRACTICE_PROMPT = 'practice > ';
/** The values of a choice are for programs; here the numbered answers follow. */
const VALUES = / Choose (?:one of|from): .*$/s;
const offered = (ask: Ask | null): string[] => (ask?.kind === 'choice' ? ask.options.flatMap(({ value, label }) => [value, label]) : []);

/** A question with what was answered to it, as it was understood. */
interface Answered { readonly ask: Ask; readonly answer: Answer }
const isShot = (ask: Ask | null): boolean => ask?.kind === 'tear' || ask?.kind === 'impact';

class Plain {
  /** What was told last of each thing that is told only when it is new. */
  private readonly told = new Map<'place' | 'advice', string>();
  private opened = false;
  /** Of a practice bow: the arrow was let go, and its hole is told. */
  private loosed = false;

  constructor(private readonly session: SessionLike, private readonly out: Output, private readonly streams: PlainStreams) {}

  print(lines: readonly string[]): Promise<void> {
    return this.out.write(lines.map((line) => `${line}\n`).join(''));
  }

  private isNew(name: 'place' | 'advice', text: string): boolean {
    const old = this.told.get(name) ?? '';
    this.told.set(name, text);
    return text !== old;
  }

  // All shots of a setting when its set is judged, and when the face opens; in between only the last one.
  private shots({ picture, ask }: View, answered: Answered | null): readonly string[] {
    const opening = !this.opened;
    this.opened = true;
    const shot = isShot(answered?.ask ?? null);
    if (answered !== null && shot && isShot(ask)) return takenLines(answered.ask, answered.answer, picture);
    return picture !== undefined && (shot || opening) ? pictureLines(picture) : [];
  }

  /** What is new in a view, then its question in full. */
  async show(view: View, answered: Answered | null = null): Promise<void> {
    this.loosed = false;
    const { title, part, day } = view.where;
    const advice = view.advice ? adviceLines(view.advice, view.ask?.text) : [];
    await this.print([
      // The count of shots alone is no news.
      ...(this.isNew('place', `${title}, ${part}, ${day}, ${view.type}`) ? ['', whereLine(view)] : []),
      ...sayLines(view),
      ...(view.type === 'stop' ? ['coach: The walk is stopped.'] : []),
      ...this.shots(view, answered),
      ...(this.isNew('advice', advice.join('\n')) ? advice : []),
    ]);
    await this.ask(view.ask, 'full');
  }

  async ask(ask: Ask | null, form: 'full' | 'short'): Promise<void> {
    const seen = seenLines(this.session.view());
    if (ask !== null) await this.print(['', ...askLines(ask, form, isHeld(ask, this.loosed) ? { seen, how: HOLD_LINE } : { seen })]);
  }

  /** One clear line, then the question again. */
  async mistake(message: string): Promise<void> {
    await this.print([clean(`not taken: ${message}`)]);
    await this.ask(this.session.view().ask, 'short');
  }

  private answered(ask: Ask | null, intent: Intent): Answered | null {
    if (ask === null || intent.kind !== 'answer') return null;
    const understood = this.session.preview(intent.answer);
    return understood.ok ? { ask, answer: understood.answer } : null;
  }

  /** What must be undone to come back to a point of the history is told before the first step of it. */
  async putBackTo(seq: number): Promise<void> {
    const entry = this.session.history().find((one) => one.seq === seq);
    if (entry === undefined) return this.mistake(`There is no point ${seq}. "history" lists them with their numbers.`);
    if (entry.back === null) return this.mistake('The bow stands there already: nothing is to be put back.');
    await this.print(stepsLines(entry, entry.back.steps));
    await this.send({ kind: 'putBack', to: entry.back.to });
  }

  async send(intent: Intent): Promise<void> {
    const { ask } = this.session.view();
    if (intent.kind === 'answer' && isHeld(ask, this.loosed)) return this.heardOr(typeof intent.answer === 'string' ? intent.answer : '', SHOOT_FIRST);
    const answered = this.answered(ask, intent);
    let reply: Reply;
    try {
      reply = this.session.send(intent, this.streams.now());
    } catch (error) {
      if (error instanceof CodedError) return this.mistake(error.message);
      throw error;
    }
    if (reply.error) return this.mistake(ask?.kind === 'choice' ? reply.error.message.replace(VALUES, '') : reply.error.message);
    if (!reply.noted) return this.show(reply.view, answered);
    await this.print([intent.kind === 'turned' ? 'turned, and the coach was not told.' : 'noted.']);
    await this.ask(reply.view.ask, 'short');
  }

  /** "changed the limb cracked" is no command that is known, and a word of danger all the same. */
  private async heardOr(words: string, message: string): Promise<void> {
    const said: Intent = { kind: 'say', words };
    const { error, view } = this.session.send(said, this.streams.now());
    await (error === undefined ? this.show(view) : this.mistake(error.code === 'not-understood' ? message : error.message));
  }

  /** On a practice bow: how it felt, then what it left, then what may be typed. */
  private async shoot(): Promise<void> {
    const view = this.session.view();
    if (!isHeld(view.ask, this.loosed)) return this.mistake('Nothing is to be shot now, or it was shot already.');
    this.loosed = true;
    await this.print(shotLines(view));
    await this.ask(view.ask, 'short');
  }

  /** What only a practice knows; false where the line means what it always means. */
  private async practised(text: string): Promise<boolean> {
    const view = this.session.view();
    const command = view.practice === undefined ? null : readPractice(text, isHeld(view.ask, this.loosed));
    switch (command?.kind) {
      case undefined: return false;
      case 'shoot': await this.shoot(); break;
      case 'draw': await (this.loosed ? this.print([...drawingLines(view), ...cautionLines(view.ask)]) : this.mistake(SHOOT_FIRST)); break;
      case 'mistake': await this.heardOr(text, command.message); break;
      case 'intent': await this.send(command.intent); break;
    }
    return true;
  }

  /** Takes one line; false when the archer leaves. */
  async take(line: Line): Promise<boolean> {
    if (this.streams.echo) await this.print([line.kind === 'text' ? clean(line.text) : '']);
    if (line.kind === 'too long') return this.mistake(`That line is longer than ${LONGEST_LINE} bytes. Write it shorter.`).then(() => true);
    if (line.kind === 'not UTF-8') return this.mistake('That line has bytes that are no text (UTF-8). Write it again.').then(() => true);
    const { ask, practice } = this.session.view();
    if (await this.practised(line.text)) return true;
    const command = readCommand(line.text, offered(ask));
    switch (command.kind) {
      case 'quit': return false;
      case 'nothing': await this.mistake('Nothing was typed. "help" lists what can be typed.'); break;
      case 'mistake': await this.heardOr(line.text, command.message); break;
      // Whatever was looked up, the question stands, and its cautions with it.
      case 'help': await this.print([...COMMANDS, ...(practice === undefined ? [] : PRACTICE_COMMANDS), ...cautionLines(ask)]); break;
      case 'again': await this.ask(ask, 'full'); break;
      case 'why': await this.print([...(ask ? whyLines(ask, this.session.glossary()) : []), ...cautionLines(ask)]); break;
      case 'history': await this.print([...historyLines(this.session.history()), ...cautionLines(ask)]); break;
      case 'answers': await this.print([...answersLines(this.session.answers()), ...cautionLines(ask)]); break;
      case 'put back to': await this.putBackTo(command.seq); break;
      case 'intent': await this.send(command.intent); break;
    }
    return true;
  }

  async run(): Promise<void> {
    const { practice } = this.session.view();
    await this.print([...(practice === undefined ? [] : [clean(`PRACTICE, on an invented bow${practice.of === '' ? '' : `: ${practice.of}`}.`)]), ...(this.streams.notices ?? []).map(clean), '"help" lists what can be typed at any time.']);
    await this.show(this.session.view());
    if (await this.finished()) return;
    await this.out.write(this.session.view().practice === undefined ? PROMPT : PRACTICE_PROMPT);
    for await (const line of readLines(this.streams.input)) {
      if (this.out.closed()) return;
      if (!(await this.take(line))) return this.print([practice === undefined ? 'Everything is kept. Start quarterturn again to go on.' : 'This was practice. Everything is kept: "quarterturn practice" goes on with it.']);
      if (await this.finished()) return;
      await this.out.write(this.session.view().practice === undefined ? PROMPT : PRACTICE_PROMPT);
    }
    await this.print(['', 'The input has ended. Everything is kept.']);
  }

  /** At the end the record is told, and nothing more is asked. */
  private async finished(): Promise<boolean> {
    const { type, record, practice } = this.session.view();
    if (type !== 'done') return false;
    const debrief = practice?.debrief === undefined ? [] : ['', ...recordLines(practice.debrief)];
    await this.print(['', ...(record ? recordLines(record) : []), ...debrief, practice === undefined ? 'The tune is finished, and kept.' : 'The practice is over, and kept.']);
    return true;
  }
}

/** Talks until the tune is done, the archer leaves or the input ends. */
export async function runPlain(session: SessionLike, streams: PlainStreams): Promise<void> {
  await new Plain(session, outputTo(streams.output), streams).run();
}
