// A whole tune in one sitting, or left once and taken up again: over the pipe's own face, in this process.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openFileStore } from '../../src/journal/file-store.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { NumberedArcher, type StoryBow } from './numbered-archer.ts';
import { Clock, HOUR, talkInProcess, type Talk } from './pipe-talk.ts';
import { NOON } from './play.ts';
import { walkThrough, type Instead, type Walked, type WalkLine } from './walk-through.ts';

export const walked = (bow: StoryBow, instead?: Instead): Promise<Walked> =>
  walkThrough(talkInProcess(memoryStore(), new Clock(NOON)), new NumberedArcher(bow), undefined, instead);

/** Walks, leaves by a kill where `when` first says so, and opens the same journal `hours` later. */
export async function leaveWhen(bow: StoryBow, when: (line: WalkLine) => boolean, hours = 24): Promise<Walked> {
  const folder = mkdtempSync(join(tmpdir(), 'quarterturn-tune-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const clock = new Clock(NOON);
  // Numbers that no process of this computer has: each sitting finds the last one dead.
  let pid = 2 ** 30;
  const open = (): Talk => talkInProcess(openFileStore(join(folder, 'tune.jsonl'), { now: clock.now(), pid: pid += 1 }), clock);
  let left = false;
  return walkThrough(open(), new NumberedArcher(bow), async (_answers, line) => {
    if (left || !when(line)) return null;
    left = true;
    clock.ms += hours * HOUR;
    return open();
  });
}

/** What was asked, in order. */
export const askedIn = ({ turns }: Walked): readonly string[] => turns.map(({ ask }) => ask.about);
/** All that the coach said. */
export const saidIn = ({ lines }: Walked): string => lines.flatMap(({ say }) => say).join('\n');
