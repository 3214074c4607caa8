// Puts a key parser on a terminal: raw mode, bracketed paste, and the two timers that the parser itself does not have.

import { type Key, KeyParser } from './keys.ts';

/** Long enough for the rest of an arrow key over a slow line, short enough that Escape feels at once. */
const ESCAPE_MS = 40;
/** A paste whose end mark was lost is over after this long without a byte. */
const PASTE_MS = 1500;

export interface KeyInput {
  on(event: 'data' | 'end', listener: (chunk: Buffer | string) => void): unknown;
  off(event: 'data' | 'end', listener: (chunk: Buffer | string) => void): unknown;
  resume(): unknown;
  pause(): unknown;
  setRawMode?(mode: boolean): unknown;
}

/** Starts reading; the result stops it and gives the terminal back as it was. All keys of one read come together. */
export const readKeys = (
  input: KeyInput,
  output: { write(text: string): unknown },
  onKeys: (keys: readonly Key[]) => void,
  onEnd: () => void,
): (() => void) => {
  const parser = new KeyParser();
  let short: NodeJS.Timeout | undefined;
  let long: NodeJS.Timeout | undefined;
  const give = (keys: readonly Key[]): void => {
    if (keys.length > 0) onKeys(keys);
  };
  const onData = (chunk: Buffer | string): void => {
    clearTimeout(short);
    clearTimeout(long);
    give(parser.push(chunk));
    if (!parser.waiting) return;
    short = setTimeout(() => give(parser.quiet(false)), ESCAPE_MS);
    long = setTimeout(() => give(parser.quiet(true)), PASTE_MS);
  };
  input.setRawMode?.(true);
  input.on('data', onData);
  input.on('end', onEnd);
  input.resume();
  output.write('\u001b[?2004h');
  return () => {
    clearTimeout(short);
    clearTimeout(long);
    input.off('data', onData);
    input.off('end', onEnd);
    output.write('\u001b[?2004l');
    input.setRawMode?.(false);
    input.pause();
  };
};
