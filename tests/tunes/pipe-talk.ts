// One end of a pipe: a line goes in, a line comes out. Here in this process, over streams, with the clock in our hand.

import { PassThrough } from 'node:stream';
import { createInterface } from 'node:readline';
import type { Store } from '../../src/machine/types.ts';
import { runPipe } from '../../src/screens/pipe.ts';
import { outSchema, type OutLine } from '../../src/screens/pipe-schema.ts';
import { openSession } from '../../src/session.ts';
import { shippedContent } from './play.ts';

export interface Talk {
  /** The next line that the program says. */
  hear(): Promise<OutLine>;
  /** Says a line and hears the one that answers it. */
  say(line: unknown): Promise<OutLine>;
}

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** A clock that stands until it is moved, milliseconds. */
export class Clock {
  constructor(public ms: number) {}
  now = (): Date => new Date(this.ms);
}

let content: ReturnType<typeof shippedContent> | null = null;

/** Opens a session on a store and talks to it through the pipe's own face. Each line said takes a minute. */
export function talkInProcess(store: Store, clock: Clock): Talk {
  content ??= shippedContent();
  const session = openSession({ content, store, startAt: clock.now(), engine: 'test', tune: 'a-tune', known: [] });
  const input = new PassThrough();
  const output = new PassThrough();
  const lines = createInterface({ input: output })[Symbol.asyncIterator]();
  const running = runPipe(session, { input, output, now: clock.now });
  running.then(() => output.end(), (error: Error) => output.destroy(error));
  const hear = async (): Promise<OutLine> => {
    const { value, done } = await lines.next();
    if (done === true) throw new Error('the pipe ended without a line');
    return outSchema.parse(JSON.parse(value));
  };
  const say = (line: unknown): Promise<OutLine> => {
    clock.ms += MINUTE;
    input.write(`${JSON.stringify(line)}\n`);
    return hear();
  };
  return { hear, say };
}
