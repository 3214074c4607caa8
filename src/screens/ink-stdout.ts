// The terminal as Ink is to see it. Ink wipes screen and scroll-back once it believes that its output fills the terminal;
// our live part is always shorter, so it is told of a terminal without end. Resizes are told to it by us, in our order.

import { lineWidth, type Line } from './look.ts';

type Out = NodeJS.WriteStream;

const ENDLESS = 1_000_000;

export const inkStdout = (stdout: Out): Out =>
  new Proxy(stdout, {
    get: (target, name) => {
      if (name === 'rows') return ENDLESS;
      const value: unknown = Reflect.get(target, name, target);
      if (name === 'on' || name === 'off') {
        return (event: string, listener: (...args: unknown[]) => void): Out => {
          // oxlint-disable-next-line typescript/consistent-type-assertions -- Node's types know the name of each event alone; this is any of them
          if (event !== 'resize') target[name](event as 'pipe', listener);
          return stdout;
        };
      }
      return typeof value === 'function' ? (...args: unknown[]): unknown => Reflect.apply(value, target, args) : value;
    },
  });

/**
 * Rows that the terminal added when it became narrower and broke the lines that stood there. Ink erases as many rows as it
 * wrote; these are to be erased besides, or they stay as ghosts.
 */
export const addedRows = (lines: readonly Line[], columns: number): number =>
  lines.reduce((sum, line) => sum + Math.max(0, Math.ceil(lineWidth(line) / columns) - 1), 0);

/** Erases `rows` rows upwards from the cursor, which stands below the live part. */
export const eraseRows = (rows: number): string => '\u001b[2K\u001b[1A'.repeat(rows);
