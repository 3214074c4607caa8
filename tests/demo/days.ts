// The two days one after the other, whatever they are shown on.

import type { Content } from '../../src/content/types.ts';
import { createScreenStore, type ScreenStore } from '../../src/screens/screen-store.ts';
import type { Fact } from '../../src/machine/types.ts';
import type { Size } from '../../src/screens/state.ts';
import { Actor } from './actor.ts';
import { withBanner } from './banner.ts';
import { type Day, openDay } from './invented.ts';
import type { Pace } from './pace.ts';
import { type DayEnd, playDay } from './play.ts';
import type { Story } from './story.ts';

const MINUTE_MS = 60_000;
const NIGHT_MS = 4000;

export interface Stage {
  readonly size: () => Size;
  readonly braille: boolean;
  /** Puts up a day; the result takes it down again. */
  show(day: Day, store: ScreenStore): () => Promise<void>;
  /** Said between the frames. */
  tell(text: string): void;
  mistake(error: unknown): void;
}

export const FIRST = 'This is an invented demo: an invented bow over two invented days, typed by itself. Nothing is measured and nothing is kept.';
export const NIGHT = 'A night passes (invented demo). The archer starts the program again the next day.';
export const OVER = 'End of the invented demo; nothing of it was kept. For your own bow: npm start';

export const minutesFrom = (start: Date): (() => Date) => {
  let ms = start.getTime();
  return () => new Date(ms += MINUTE_MS);
};

/** Resolves when the story is over or the visitor has ended it, with the lines of the tune as it then stands. */
export async function playDays(content: Content, story: Story, pace: Pace, stage: Stage): Promise<{ readonly end: DayEnd; readonly facts: readonly Fact[] }> {
  const actor = new Actor(story);
  const seen = new Set<string>();
  let facts: readonly Fact[] = [];
  let end: DayEnd = 'ended';
  stage.tell(FIRST);
  for (const [at, morning] of story.mornings.entries()) {
    if (at > 0) {
      stage.tell(NIGHT);
      if (!(await pace.wait(NIGHT_MS))) return { end: 'ended', facts };
    }
    const day = openDay(content, morning, facts);
    const bare = createScreenStore({ session: day.session, now: minutesFrom(morning), size: stage.size(), braille: stage.braille, onMistake: stage.mistake });
    const store = withBanner(bare, pace);
    const takeDown = stage.show(day, store);
    try {
      end = await playDay(store, actor, at === 0 ? story.night : () => false, pace, seen);
    } finally {
      store.leave(0);
      await takeDown();
      day.session.close();
    }
    facts = day.facts;
    if (end !== 'night') break;
  }
  stage.tell(OVER);
  return { end, facts };
}
