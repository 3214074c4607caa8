// The face for screen readers, dumb terminals and pipes: lines in, lines out, nothing drawn and nothing redrawn.

import type { Readable, Writable } from 'node:stream';
import { CodedError } from '../errors.ts';
import type { Ask, Intent, Reply, SessionLike, View } from '../machine/types.ts';
import { clean } from './clean.ts';
import { LONGEST_LINE, readLines, type Line } from './lines.ts';
import { outputTo, type Output } from './output.ts';
import { COMMANDS, readCommand } from './plain-commands.ts';
import { adviceLines, askLines, historyLines, pictureLines, recordLines, sayLines, takenLines, whereLine, whyLines } from './plain-words.ts';

export interface PlainStreams {
  readonly input: Readable;
  readonly output: Writable;
  readonly now: () => Date;
  readonly notices?: readonly string[];
  /** True where what is typed does not show by itself (a pipe): the face then repeats it after the prompt. */
  readonly echo: boolean;
}

const PROMPT = '> ';
/** The values of a choice are for programs; here the numbered answers follow. */
const VALUES = / Choose (?:one of|from): .*$/s;
const offered = (ask: Ask | null): string[] => (ask?.kind === 'choice' ? ask.options.flatMap(({ value, label }) => [value, label]) : []);

class Plain {
  /** What was told last of each thing that is told only when it is new. */
  private readonly told = new Map<'place' | 'advice', string>();
  private opened = false;

  constructor(private readonly session: SessionLike, private readonly out: Output, private readonly streams: PlainStreams) {}

  print(lines: readonly string[]): Promise<void> {
    return this.out.write(lines.map((line) => `${line}\n`).join(''));
  }

  private isNew(name: 'place' | 'advice', text: string): boolean {
    const old = this.told.get(name) ?? '';
    this.told.set(name, text);
    return text !== old;
  }

  // All tears of a setting when its set is judged, and when the face opens; in between only the last one.
  private tears({ picture, ask }: View, before: Ask | null): readonly string[] {
    const opening = !this.opened;
    this.opened = true;
    if (picture?.kind !== 'paper') return [];
    const shot = before?.kind === 'tear' || before?.kind === 'impact';
    if (shot && (ask?.kind === 'tear' || ask?.kind === 'impact') && ask.shots.taken > 0) return takenLines(picture);
    return shot || opening ? pictureLines(picture) : [];
  }

  /** What is new in a view, then its question in full. `before` is the question that was answered. */
  async show(view: View, before: Ask | null = null): Promise<void> {
    const { title, part, day } = view.where;
    const advice = view.advice ? adviceLines(view.advice, view.ask?.text) : [];
    await this.print([
      // The count of shots alone is no news.
      ...(this.isNew('place', `${title}, ${part}, ${day}, ${view.type}`) ? ['', whereLine(view)] : []),
      ...sayLines(view),
      ...(view.type === 'stop' ? ['coach: The walk is stopped.'] : []),
      ...this.tears(view, before),
      ...(this.isNew('advice', advice.join('\n')) ? advice : []),
    ]);
    await this.ask(view.ask, 'full');
  }

  async ask(ask: Ask | null, form: 'full' | 'short'): Promise<void> {
    if (ask !== null) await this.print(['', ...askLines(ask, form)]);
  }

  /** One clear line, then the question again. */
  async mistake(message: string): Promise<void> {
    await this.print([clean(`not taken: ${message}`)]);
    await this.ask(this.session.view().ask, 'short');
  }

  async send(intent: Intent): Promise<void> {
    const { ask } = this.session.view();
    let reply: Reply;
    try {
      reply = this.session.send(intent, this.streams.now());
    } catch (error) {
      if (error instanceof CodedError) return this.mistake(error.message);
      throw error;
    }
    if (reply.error) return this.mistake(ask?.kind === 'choice' ? reply.error.message.replace(VALUES, '') : reply.error.message);
    if (!reply.noted) return this.show(reply.view, ask);
    await this.print(['noted.']);
    await this.ask(reply.view.ask, 'short');
  }

  /** Takes one line; false when the archer leaves. */
  async take(line: Line): Promise<boolean> {
    if (this.streams.echo) await this.print([line.kind === 'text' ? clean(line.text) : '']);
    if (line.kind === 'too long') return this.mistake(`That line is longer than ${LONGEST_LINE} bytes. Write it shorter.`).then(() => true);
    if (line.kind === 'not UTF-8') return this.mistake('That line has bytes that are no text (UTF-8). Write it again.').then(() => true);
    const { ask } = this.session.view();
    const command = readCommand(line.text, offered(ask));
    switch (command.kind) {
      case 'quit': return false;
      case 'nothing': await this.mistake('Nothing was typed. "help" lists what can be typed.'); break;
      case 'mistake': await this.mistake(command.message); break;
      case 'help': await this.print(COMMANDS); break;
      case 'again': await this.ask(ask, 'full'); break;
      case 'why': await this.print(ask ? whyLines(ask, this.session.glossary()) : []); break;
      case 'history': await this.print(historyLines(this.session.history())); break;
      case 'intent': await this.send(command.intent); break;
    }
    return true;
  }

  async run(): Promise<void> {
    await this.print([...(this.streams.notices ?? []).map(clean), '"help" lists what can be typed at any time.']);
    await this.show(this.session.view());
    if (await this.finished()) return;
    await this.out.write(PROMPT);
    for await (const line of readLines(this.streams.input)) {
      if (this.out.closed()) return;
      if (!(await this.take(line))) return this.print(['Everything is kept. Start quarterturn again to go on.']);
      if (await this.finished()) return;
      await this.out.write(PROMPT);
    }
    await this.print(['', 'The input has ended. Everything is kept.']);
  }

  /** At the end the record is told, and nothing more is asked. */
  private async finished(): Promise<boolean> {
    const { type, record } = this.session.view();
    if (type !== 'done') return false;
    await this.print(['', ...(record ? recordLines(record) : []), 'The tune is finished, and kept.']);
    return true;
  }
}

/** Talks until the tune is done, the archer leaves or the input ends. */
export async function runPlain(session: SessionLike, streams: PlainStreams): Promise<void> {
  await new Plain(session, outputTo(streams.output), streams).run();
}
