// The demo on a terminal: the program's own screen, fed with the story's keys. The visitor's keys reach the pace and nothing else.

import { render } from 'ink';
import type { Content } from '../../src/content/types.ts';
import { App } from '../../src/screens/app.tsx';
import { inkStdout } from '../../src/screens/ink-stdout.ts';
import { openingLines } from '../../src/screens/items.ts';
import type { Key } from '../../src/screens/key-names.ts';
import { type KeyInput, readKeys } from '../../src/screens/key-reader.ts';
import { liveLines, liveWidth } from '../../src/screens/live.ts';
import { paragraph, span } from '../../src/screens/look.ts';
import { growRoom, hasBraille, sizeOf, written } from '../../src/screens/run.tsx';
import type { ScreenStore } from '../../src/screens/screen-store.ts';
import { playDays, type Stage } from './days.ts';
import type { Day } from './invented.ts';
import type { Pace } from './pace.ts';
import type { Story } from './story.ts';

export interface DemoStreams {
  readonly stdin: NodeJS.ReadStream & KeyInput;
  readonly stdout: NodeJS.WriteStream;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Space holds the demo up and lets it go on; q and Ctrl-C end it; no other key does anything. */
export function visit(pace: Pace, keys: readonly Key[]): void {
  for (const key of keys) {
    if (key.text === ' ') pace.toggle();
    else if (key.text.toLowerCase() === 'q' || (key.ctrl && key.name === 'c')) pace.end();
  }
}

/** Resolves when the story is over or was ended, the terminal being as it was. */
export async function screenDemo(content: Content, story: Story, pace: Pace, { stdin, stdout, env }: DemoStreams): Promise<void> {
  let mistake: unknown = null;
  const fail = (error: unknown): void => {
    mistake ??= error;
    pace.end();
  };
  const stage: Stage = {
    size: () => sizeOf(stdout),
    braille: hasBraille(env),
    tell: (text) => { stdout.write(`\n${written(paragraph(span('  '), text, liveWidth(sizeOf(stdout).columns)))}`); },
    show: (day, store) => show(day, store, stdout, env, fail),
    mistake: fail,
  };
  const end = (): void => pace.end();
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.on(signal, end);
  const stopReading = readKeys(stdin, stdout, (keys) => visit(pace, keys), end);
  try {
    await playDays(content, story, pace, stage);
  } finally {
    stopReading();
    for (const signal of signals) process.off(signal, end);
  }
  if (mistake !== null) throw mistake;
}

function show({ session }: Day, store: ScreenStore, stdout: NodeJS.WriteStream, env: DemoStreams['env'], fail: (error: unknown) => void): () => Promise<void> {
  stdout.write(written(openingLines(session.view(), session.transcript(), [], liveWidth(sizeOf(stdout).columns))));
  const app = <App store={store} onMistake={fail} />;
  const ink = render(app, { stdout: inkStdout(stdout), exitOnCtrlC: false, maxFps: 60, incrementalRendering: false, patchConsole: false });
  const onResize = (): void => {
    const before = store.getState();
    const size = sizeOf(stdout);
    stdout.write(growRoom(liveLines(before, store.needs), before.size, size, env));
    store.resize(size);
    ink.rerender(app);
  };
  stdout.on('resize', onResize);
  return async () => {
    stdout.off('resize', onResize);
    // The frame is empty by now: what stays on the terminal are the finished lines alone.
    ink.rerender(app);
    const ended = ink.waitUntilExit();
    ink.unmount();
    await ended;
  };
}
