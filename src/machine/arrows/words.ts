// Arrows and how far they lie off, as they are told.

import type { Content } from '../../content/types.ts';
import type { Tear } from '../types.ts';
import { phrase, sideInWords } from '../words.ts';
import type { NockToTurn } from './together.ts';

/** `0.61 in left, 0.22 in high`, the larger first; the smaller only where it is worth a word beside it. */
export function offInWords(off: Tear): string {
  const sides = [
    { size: Math.abs(off.x), words: sideInWords(off.x, 'right', 'left') },
    { size: Math.abs(off.y), words: sideInWords(off.y, 'high', 'low') },
  ].toSorted((a, b) => b.size - a.size);
  const largest = sides[0]?.size ?? 0;
  return sides.filter(({ size }, i) => i === 0 || size >= largest / 4).map(({ words }) => words).join(', ');
}

/** `arrow 4`, `arrows 4 and 11`, `arrows 4, 9 and 11`. */
export function arrowsInWords(content: Content, arrows: readonly string[]): string {
  const [first = ''] = arrows;
  if (arrows.length <= 1) return phrase(content, 'arrow-one', { arrow: first });
  return phrase(content, 'arrow-several', { arrows: `${arrows.slice(0, -1).join(', ')} and ${arrows.at(-1) ?? ''}` });
}

/** One entry for each count of vanes: `1 vane clockwise: arrows 2, 5 and 7; 2 vanes clockwise: arrow 3`. */
export function turnsInWords(content: Content, turns: readonly NockToTurn[]): string {
  const counts = [...new Set(turns.map(({ by }) => by))].toSorted((a, b) => a - b);
  const lines = counts.map((by) => phrase(content, 'turn-line', { vanes: vanesInWords(by), which: arrowsInWords(content, turns.filter((one) => one.by === by).map(({ arrow }) => arrow)) }));
  return lines.join('; ');
}

export const vanesInWords = (count: number): string => `${count} ${count === 1 ? 'vane' : 'vanes'}`;
