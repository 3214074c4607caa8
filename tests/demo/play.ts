// Plays one day of the story on a screen's store: reads, answers by visible keys, goes on until the night, the end, or the visitor's wish.

import type { View } from '../../src/machine/types.ts';
import { liveLines, listIsCut } from '../../src/screens/live.ts';
import { type Line, lineText } from '../../src/screens/look.ts';
import type { ScreenStore } from '../../src/screens/screen-store.ts';
import type { ScreenState } from '../../src/screens/state.ts';
import type { Actor } from './actor.ts';
import { type Pace, readingTime } from './pace.ts';

const KEY_MS = 60;
/** What was chosen or typed is looked at before it is taken. */
const LOOK_MS = 600;

export type DayEnd = 'finished' | 'night' | 'ended';

/** `seen`: lines that were read before, on this day or another; a question that comes again is read at a glance. */
export async function playDay(store: ScreenStore, actor: Actor, night: (view: View) => boolean, pace: Pace, seen: Set<string>): Promise<DayEnd> {
  for (;;) {
    const before = store.getState();
    const shown = linesOf(before, store);
    if (!(await pace.wait(readingTime(newWords(shown, seen))))) return 'ended';
    for (const line of shown) seen.add(worded(line));
    const { view } = before;
    if (view.type === 'done') return 'finished';
    if (night(view)) return 'night';
    const { keys } = actor.act(view, () => listIsCut(before, store.needs));
    for (const [at, one] of keys.entries()) {
      store.keys([one]);
      if (at < keys.length - 1 && !(await pace.wait(at === keys.length - 2 ? LOOK_MS : KEY_MS))) return 'ended';
    }
    const after = store.getState();
    if (after.view.seq === view.seq) throw new Error(`the demo's answer about ${view.ask?.about ?? ''} was not taken: ${after.message ?? ''}`);
  }
}

/** The live part, and the finished lines that went up since the question before. */
const linesOf = (state: ScreenState, { needs }: ScreenStore): readonly Line[] => [...(state.items.at(-1)?.lines ?? []), ...liveLines(state, needs)];

/** Other figures in the same words are read at a glance. */
const worded = (line: Line): string => lineText(line).replace(/\d+/g, '0');

const newWords = (lines: readonly Line[], seen: ReadonlySet<string>): number =>
  lines.map(worded).filter((line) => !seen.has(line)).reduce((sum, line) => sum + (line.match(/\p{L}{2,}|\d+/gu)?.length ?? 0), 0);
