// Starts the screen on a terminal, and ends it: on q, Ctrl-C, a signal, the end of the input or a mistake, always with the
// terminal as it was and one line that says how to go on.

import { render } from 'ink';
import type { SessionLike, View } from '../machine/types.ts';
import { App } from './app.tsx';
import { addedRows, eraseRows, inkStdout } from './ink-stdout.ts';
import { openingLines } from './items.ts';
import { type KeyInput, readKeys } from './key-reader.ts';
import { liveLines, liveWidth } from './live.ts';
import { type Line, lineText, paragraph, span } from './look.ts';
import { createScreenStore } from './screen-store.ts';
import type { Size } from './state.ts';
import { HOW_TO_GO_ON, HOW_TO_GO_ON_PRACTISING, HOW_TO_SEE_AGAIN, HOW_TO_SEE_PRACTICE } from './words.ts';

export interface ScreenStreams {
  readonly stdin: NodeJS.ReadStream & KeyInput;
  readonly stdout: NodeJS.WriteStream;
  readonly now: () => Date;
  /** What was noticed while opening, told once. */
  readonly notices: readonly string[];
  /** Where the locale and the kind of terminal are read; the process's own if not given. */
  readonly env?: Readonly<Record<string, string | undefined>>;
}

const SIGNALS = [['SIGTERM', 143], ['SIGHUP', 129], ['SIGINT', 130]] as const;
const MISTAKE = 70;
const FALLBACK: Size = { columns: 80, rows: 24 };

/** The demo starts this screen too, and shares what a terminal is asked for. */
export const sizeOf = (stdout: NodeJS.WriteStream): Size => ({ columns: stdout.columns || FALLBACK.columns, rows: stdout.rows || FALLBACK.rows });
export const written = (lines: readonly Line[]): string => lines.map((line) => `${lineText(line).trimEnd()}\n`).join('');

/** Braille only where the font is likely to have it: a UTF-8 locale, and not the bare console. */
export const hasBraille = (env: Readonly<Record<string, string | undefined>>): boolean =>
  env['TERM'] !== 'linux' && /utf-?8/i.test(env['LC_ALL'] || env['LC_CTYPE'] || env['LANG'] || '');

/** These cut long lines when they get narrower, where all others break them anew. */
const reflows = (env: Readonly<Record<string, string | undefined>>): boolean => env['TERM'] !== 'linux' && env['XTERM_VERSION'] === undefined;

/** What erases the rows that a terminal adds when it gets narrower and breaks the live part's lines anew; nothing where it does not. */
export const growRoom = (live: readonly Line[], before: Size, now: Size, env: Readonly<Record<string, string | undefined>>): string =>
  (now.columns < before.columns && reflows(env) ? eraseRows(addedRows(live, now.columns)) : '');

/** Runs until the archer leaves; resolves with the exit code when the terminal is given back and all is written. */
export const runScreen = async (session: SessionLike, { stdin, stdout, now, notices, env = process.env }: ScreenStreams): Promise<number> => {
  let mistake: unknown = null;
  const onMistake = (error: unknown): void => {
    mistake ??= error ?? new Error('unknown');
    store.leave(MISTAKE);
  };
  const store = createScreenStore({ session, now, size: sizeOf(stdout), braille: hasBraille(env), onMistake });
  stdout.write(written(openingLines(session.view(), session.transcript(), notices, liveWidth(sizeOf(stdout).columns))));

  const app = <App store={store} onMistake={onMistake} />;
  const ink = render(app, { stdout: inkStdout(stdout), stdin, exitOnCtrlC: false, maxFps: 60, incrementalRendering: false, patchConsole: false });
  const left = new Promise<number>((resolve) => {
    const look = (): void => {
      const { leaving } = store.getState();
      if (leaving !== null) resolve(leaving);
    };
    store.subscribe(look);
    look();
  });

  const onResize = (): void => {
    const size = sizeOf(stdout);
    const before = store.getState();
    stdout.write(growRoom(liveLines(before, store.needs), before.size, size, env));
    store.resize(size);
    ink.rerender(app);
  };
  const handlers = SIGNALS.map(([signal, exit]) => [signal, (): void => store.leave(exit)] as const);
  for (const [signal, handler] of handlers) process.on(signal, handler);
  stdout.on('resize', onResize);
  const stopReading = readKeys(stdin, stdout, (keys) => store.keys(keys), () => store.leave(0));

  const exit = await left;
  stopReading();
  stdout.off('resize', onResize);
  // Ink would flush its last frame by itself; this makes sure that the frame is the empty one.
  ink.rerender(app);
  const ended = ink.waitUntilExit();
  ink.unmount();
  await ended;
  for (const [signal, handler] of handlers) process.off(signal, handler);
  await new Promise<void>((resolve) => {
    stdout.write(written(paragraph(span('  '), farewell(exit, mistake, session.view()), liveWidth(sizeOf(stdout).columns))), () => resolve());
  });
  return exit;
};

const farewell = (exit: number, mistake: unknown, { type, practice }: View): string => {
  const goOn = practice === undefined ? HOW_TO_GO_ON : HOW_TO_GO_ON_PRACTISING;
  if (exit !== MISTAKE) return type !== 'done' ? goOn : practice === undefined ? HOW_TO_SEE_AGAIN : HOW_TO_SEE_PRACTICE;
  const what = mistake instanceof Error ? mistake.message : String(mistake);
  return `a mistake in the program itself (${(what.split('\n')[0] ?? '').slice(0, 120)}); ${goOn}`;
};
