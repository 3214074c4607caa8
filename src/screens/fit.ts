// Blocks of lines, fitted into a height. What can be read elsewhere goes first; the question, the input and the keys stay.

import type { Line } from './look.ts';

export interface Block {
  readonly lines: readonly Line[];
  /** Lower is shortened earlier. */
  readonly rank: number;
  /** The same in at most `room` lines; a block without it is never shortened. */
  readonly shrink?: (room: number) => readonly Line[];
  /** True where what is left out can be read on the `?` page, and is told of. */
  readonly tell?: boolean;
}

export interface Fitted { readonly lines: readonly Line[]; readonly cut: boolean }

const total = (parts: readonly (readonly Line[])[]): number => parts.reduce((sum, lines) => sum + lines.length, 0);

/** Shortens blocks by rank until all have room. `cut` says that something was left out that `?` shows. */
export const fit = (blocks: readonly Block[], height: number): Fitted => {
  const parts = blocks.map((block) => block.lines);
  const order = blocks.map((block, at) => ({ block, at })).filter(({ block }) => block.shrink !== undefined).sort((a, b) => a.block.rank - b.block.rank);
  for (const { block, at } of order) {
    const over = total(parts) - height;
    if (over <= 0) break;
    parts[at] = block.shrink?.(Math.max(0, block.lines.length - over)) ?? block.lines;
  }
  // A block that was all or nothing may have left room for what went before it.
  for (const { block, at } of order.toReversed()) {
    const now = parts[at] ?? [];
    const room = height - total(parts) + now.length;
    const fuller = room >= block.lines.length ? block.lines : (block.shrink?.(Math.max(0, room)) ?? now);
    if (fuller.length > now.length && fuller.length <= room) parts[at] = fuller;
  }
  const cut = order.some(({ block, at }) => block.tell === true && (parts[at]?.length ?? 0) < block.lines.length);
  // Nothing may make the screen too tall, not even a question that cannot be shortened further.
  return { lines: parts.flat().slice(0, Math.max(1, height)), cut };
};

/** A block that may lose its end, line by line. */
export const endless = (rank: number, lines: readonly Line[], tell = false): Block => ({ rank, lines, tell, shrink: (room) => lines.slice(0, Math.max(0, room)) });
/** A block that is shown whole or not at all. */
export const wholeOrNone = (rank: number, lines: readonly Line[]): Block => ({ rank, lines, shrink: (room) => (room >= lines.length ? lines : []) });
export const fixed = (lines: readonly Line[]): Block => ({ rank: Number.POSITIVE_INFINITY, lines });
