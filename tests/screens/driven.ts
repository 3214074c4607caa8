// A screen without a terminal: bytes in, lines and intents out.

import type { View } from '../../src/machine/types.ts';
import { KeyParser } from '../../src/screens/keys.ts';
import { liveLines } from '../../src/screens/live.ts';
import { lineText } from '../../src/screens/look.ts';
import { createScreenStore } from '../../src/screens/screen-store.ts';
import { FakeSession, type Script } from './fake-session.ts';

export const DOWN = '\u001b[B';
export const UP = '\u001b[A';
export const LEFT = '\u001b[D';
export const RIGHT = '\u001b[C';
export const ESC = '\u001b';
export const paste = (text: string): string => `\u001b[200~${text}\u001b[201~`;

export const drive = (views: readonly View[] | Script, size = { columns: 80, rows: 24 }, braille = false) => {
  const session = new FakeSession('views' in views ? views : { views });
  const mistakes: unknown[] = [];
  const store = createScreenStore({ session, now: () => new Date('2031-05-01T10:00:00Z'), size, braille, onMistake: (error) => mistakes.push(error) });
  const parser = new KeyParser();
  const lines = (): string[] => liveLines(store.getState(), store.needs).map((line) => lineText(line).trimEnd());
  return {
    session, store, mistakes, lines,
    /** Each string is one read, with a quiet moment after it. */
    press: (...reads: string[]): void => {
      for (const read of reads) {
        store.keys(parser.push(read));
        store.keys(parser.quiet(false));
      }
    },
    frame: (): string => lines().join('\n'),
    /** The frame as running words, wherever it was wrapped. */
    words: (): string => lines().join(' ').replace(/\s+/g, ' '),
    said: (): string => store.getState().items.flatMap((item) => item.lines).map((line) => lineText(line).trimEnd()).join('\n'),
  };
};
