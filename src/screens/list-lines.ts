// A list to choose from, as lines: a mark for the cursor, the number, the label; a window of it where it is too long.

import { type Line, paragraph, span } from './look.ts';
import type { Pick } from './options.ts';

export interface ListLook {
  readonly cursor: number;
  /** Present where several may be marked. */
  readonly marks?: readonly Pick['value'][];
  /** Marked is what is NOT true: a tick beside a check would be read the other way round. */
  readonly checks?: boolean;
  /** Said behind a label, by value: "your answer before". */
  readonly beside?: ReadonlyMap<Pick['value'], string>;
}

const labelled = (pick: Pick, at: number, look: ListLook, width: number): Line[] => {
  const here = at === look.cursor;
  const number = pick.letter ?? (at < 9 ? String(at + 1) : ' ');
  const mark = markOf(pick, look);
  const beside = look.beside?.get(pick.value);
  const tone = here ? 'strong' : 'plain';
  return paragraph(span(`  ${here ? '>' : ' '} ${number} ${mark}`, tone), beside === undefined ? pick.label : `${pick.label} (${beside})`, width, tone);
};

const markOf = (pick: Pick, { marks, checks }: ListLook): string => {
  if (marks === undefined) return '';
  const marked = marks.includes(pick.value);
  if (checks === true && pick.alone !== true) return marked ? 'NOT ' : '    ';
  return marked ? '[x] ' : '[ ] ';
};

export const listLines = (picks: readonly Pick[], look: ListLook, width: number): Line[] =>
  picks.flatMap((pick, at) => labelled(pick, at, look, width));

const hidden = (picks: readonly Pick[], { marks = [] }: ListLook, where: string): string[] => {
  const marked = picks.filter((pick) => marks.includes(pick.value)).length;
  return picks.length === 0 ? [] : [`${picks.length} more ${where}${marked === 0 ? '' : `, ${marked} marked`}`];
};

/** With less room than this what is hidden above and below is told in one line. */
const ROOMY = 6;

/** At most `room` lines around the cursor, with what is hidden above and below told; but the pick under the cursor is never cut. */
export const listWindow = (picks: readonly Pick[], look: ListLook, width: number, room: number): Line[] => {
  const parts = picks.map((pick, at) => labelled(pick, at, look, width));
  if (parts.flat().length <= room) return parts.flat();
  let from = Math.max(0, look.cursor);
  let to = from;
  const height = (): number => parts.slice(from, to + 1).flat().length;
  const told = (): number => Math.min((from > 0 ? 1 : 0) + (to < parts.length - 1 ? 1 : 0), room < ROOMY ? 1 : 2);
  for (let grew = true; grew;) {
    grew = false;
    for (const way of [1, -1]) {
      const [was, wasTo] = [from, to];
      if (way === 1 && to < parts.length - 1) to += 1;
      if (way === -1 && from > 0) from -= 1;
      if (from === was && to === wasTo) continue;
      if (height() + told() > room) [from, to] = [was, wasTo];
      else grew = true;
    }
  }
  const above = hidden(picks.slice(0, from), look, 'above');
  const below = hidden(picks.slice(to + 1), look, 'below');
  const tell = (words: readonly string[]): Line[] => (words.length === 0 ? [] : [[span(`      \u2026 ${words.join(', ')}`, 'soft')]]);
  const shown = parts.slice(from, to + 1).flat();
  return room < ROOMY ? [...shown, ...tell([...above, ...below])] : [...tell(above), ...shown, ...tell(below)];
};
