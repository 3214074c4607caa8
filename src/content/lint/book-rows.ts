// What the book says of an adjustment on some bows: as much as is known and no more, to the same side as on all, and of bows that there are.

import { error } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { BookRow, Content, Knob, KnobId } from '../types.ts';

/** Least and most change of tear (in) for one unit, either way, that is told of any bow (common practice, from memory); none where nobody knows one. */
const TOLD: Readonly<Partial<Record<KnobId, readonly [number, number]>>> = {
  // An arm that drops early, to a blade or brushes that hold the shaft long; sideways a rest may do little.
  'rest-height': [0.1 * 32, 0.6 * 32],
  'nock-height': [0.1 * 32, 0.6 * 32],
  'rest-side': [0.05 * 32, 0.5 * 32],
  // An eighth to half an inch for a full twist each way, which is two pairs of half twists.
  'yoke': [1 / 16, 1 / 4],
};

export function bookRows(content: Content, where: Where): Problem[] {
  return Object.values(content.knobs).flatMap((knob) => [...common(knob, where), ...knob.books.flatMap((row, index) => rowOf(content, knob, row, index, where))]);
}

function common({ id, book }: Knob, where: Where): Problem[] {
  return book === null ? [] : size(id, book.change, book.per, (text) => error(where(['knobs', id, 'book']), text));
}

function rowOf(content: Content, { id, book, books, wrongSign, dead }: Knob, row: BookRow, index: number, where: Where): Problem[] {
  const tell = (key: string | null, text: string): Problem => error(where(['knobs', id, 'books', index, ...(key === null ? [] : [key])]), text);
  if (book === null) return [tell(null, `nobody knows what "${id}" does on any bow; take books out, or write the book first`)];
  const found = size(id, row.change, row.per, (text) => tell(null, text));
  if (row.change * book.change < 0) found.push(tell('change', `on some bows "${id}" would work to the other side than on all: nobody knows that; write the side of its book`));
  // The common row holds what is known best: of some bows less is known, never more.
  for (const [key, least] of [['wrongSign', wrongSign], ['dead', dead]] as const) {
    if (row[key] < least) found.push(tell(key, `${key} ${row[key]} of this row promises more than is known of "${id}"; write at least ${least}`));
    if (row[key] > 1) found.push(tell(key, `${key} of this row is ${row[key]}; a chance lies between 0 and 1`));
  }
  const asked = (about: string): readonly string[] => {
    const step = content.steps[about];
    return step?.kind === 'choice' ? step.options.map(({ value }) => value) : [];
  };
  const covers = (one: BookRow, cams: string, rest: string): boolean => (one.cams === 'any' || one.cams.includes(cams)) && (one.rest === 'any' || one.rest.includes(rest));
  const bows = asked('cams').flatMap((cams) => asked('rest').map((rest) => [cams, rest] as const));
  if (row.cams === 'any' && row.rest === 'any') found.push(tell(null, `this row fits any bow, and hides the book of "${id}"; write cams or rest`));
  else if (bows.length > 0 && !bows.some(([cams, rest]) => covers(row, cams, rest) && !books.slice(0, index).some((earlier) => covers(earlier, cams, rest)))) {
    found.push(tell(null, `no bow comes to this row of "${id}": rows before it take them all; put it before them, or take it out`));
  }
  return found;
}

function size(id: KnobId, change: number, per: number, tell: (text: string) => Problem): Problem[] {
  // Of a book that is per nothing limits.ts tells.
  if (!(per > 0)) return [];
  const [least, most] = TOLD[id] ?? [0, 0];
  const each = Math.abs(change / per);
  return each >= least - 1e-9 && each <= most + 1e-9 ? [] : [tell(`"${id}" is told to move the tear by ${each} in for one unit; what is known lies between ${least} and ${most}`)];
}
