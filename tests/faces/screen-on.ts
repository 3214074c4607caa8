// The screen on a real session, without a terminal: keys in, the frame out.

import type { SessionLike } from '../../src/machine/types.ts';
import { KeyParser } from '../../src/screens/keys.ts';
import { liveLines } from '../../src/screens/live.ts';
import { lineText } from '../../src/screens/look.ts';
import { createScreenStore } from '../../src/screens/screen-store.ts';

export function screenOn(session: SessionLike, size = { columns: 80, rows: 24 }) {
  const mistakes: unknown[] = [];
  const store = createScreenStore({ session, now: () => new Date('2026-03-02T18:00:00Z'), size, braille: false, onMistake: (error) => mistakes.push(error) });
  const parser = new KeyParser();
  return {
    mistakes,
    message: (): string | null => store.getState().message,
    press: (...reads: string[]): void => {
      for (const read of reads) {
        store.keys(parser.push(read));
        store.keys(parser.quiet(false));
      }
    },
    /** The frame as running words, wherever it was wrapped. */
    lines: (): string[] => liveLines(store.getState(), store.needs).map((line) => lineText(line).trimEnd()),
    words: (): string => liveLines(store.getState(), store.needs).map((line) => lineText(line).trim()).join(' ').replace(/\s+/g, ' '),
  };
}
