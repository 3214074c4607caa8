// What may never be seen on a screen of this size.

import { textWidth } from '../../src/screens/text-width.ts';
import { isHeader, readLive } from './read-screen.ts';
import type { Shown, Size } from './tmux.ts';

const KEYS = /\b(enter take|esc |g good|\? why)/;

export interface Expected {
  readonly size: Size;
  /** A question is to stand there. */
  readonly question: boolean;
  /** Finished lines were written for another width: only the live part is held to this one. */
  readonly resized: boolean;
}

/** Every fault of one screen, in words. */
export function faultsOf({ screen }: Shown, { size: { columns, rows }, question, resized }: Expected): readonly string[] {
  const live = readLive(screen);
  if (live === null) return ['no header is on the screen'];
  const wide = (resized ? live.lines : screen).filter((line) => textWidth(line) > columns - 1);
  return [
    ...wide.map((line) => `a line is ${textWidth(line)} wide, and ${columns - 1} is the most: ${line.slice(0, 60)}`),
    ...(live.lines.length > rows - 3 ? [`the live part has ${live.lines.length} lines, and ${rows - 3} are the most`] : []),
    ...(question && !/^ {2}(coach|shoot) /m.test(live.lines.join('\n')) && !/\bcalled (good|bad)/.test(live.words) ? ['no question is to be seen'] : []),
    ...(KEYS.test(live.keys) || !question ? [] : [`the last line is no line of keys: ${live.keys.trim()}`]),
  ];
}

/** Headers beside the one that is wanted: each is an old frame that was left behind. */
export const oldFrames = ({ all }: Shown): number => Math.max(0, all.filter(isHeader).length - 1);
