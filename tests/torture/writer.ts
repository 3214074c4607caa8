// A child that writes to a journal as fast as it can and says after each line that it is kept. Its parent kills it.
//   node writer.mjs JOURNAL [LINES [BYTES [WAIT-FOR]]]
// prints `open N` (lines found), then `kept SEQ` a line, or `failed CODE`.

import { existsSync, writeSync } from 'node:fs';
import { CodedError } from '../../src/errors.ts';
import { openFileStore } from '../../src/journal/file-store.ts';

const [path = '', lines = 'Infinity', bytes = '200000', gate] = process.argv.slice(2);
const now = new Date('2026-11-25T12:00:00.000Z');
const decided = { events: [], say: [], findings: [] };
/** At once and by itself: what was said before the kill has left the process. */
const say = (words: string): void => { writeSync(1, `${words}\n`); };

try {
  // All children of a race set off together.
  if (gate !== undefined) { say('ready'); while (!existsSync(gate)); }
  const store = openFileStore(path, { now });
  say(`open ${store.facts.length}`);
  for (let done = 0; done < Number(lines); done += 1) {
    const seq = store.facts.length + 1;
    const base = { seq, time: now.toISOString(), decided };
    store.append(seq === 1
      ? { ...base, kind: 'begun', v: 1, tune: 't', engine: '0', content: '1', known: [] }
      : { ...base, kind: 'noted', note: `${seq} `.repeat(Number(bytes) / 4) });
    say(`kept ${seq}`);
  }
  // A race is decided by who is still in when all have tried.
  if (gate !== undefined) setTimeout(() => store.close(), 400);
  else store.close();
} catch (cause) {
  say(`failed ${cause instanceof CodedError ? cause.code : String(cause)}`);
}
