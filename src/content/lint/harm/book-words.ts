// Reads the short rows of the book. Rows never change while a program runs, so each is taken apart once.

import type { GateFail } from '../../types.ts';
import type { Book, StepRow } from '../book/shape.ts';

export type Meaning = GateFail | 'pass' | 'route';
export interface Meant { readonly name: string; readonly means: Meaning; readonly when: readonly string[] }

const NONE: readonly string[] = [];
const split = new Map<string, readonly string[]>();

export function words(text: string | undefined): readonly string[] {
  if (text === undefined || text === '') return NONE;
  const before = split.get(text);
  if (before !== undefined) return before;
  const after = text.split(' ');
  split.set(text, after);
  return after;
}

const KEYS = [['shop', 'shop'], ['fix', 'fix'], ['lookUp', 'look-up'], ['note', 'note'], ['pass', 'pass'], ['route', 'route']] as const;
const meant = new WeakMap<StepRow, readonly Meant[]>();

/** The answers or checks of a row, with what each means at least and where it is asked. */
export function meanings(row: StepRow): readonly Meant[] {
  const before = meant.get(row);
  if (before !== undefined) return before;
  const after = KEYS.flatMap(([key, means]) => words(row[key]).map((word): Meant => {
    const [name = '', when] = word.split('@');
    return { name, means, when: when === undefined ? NONE : when.split('+') };
  }));
  meant.set(row, after);
  return after;
}

const flat = new WeakMap<Book, readonly (readonly [chapter: string, id: string, row: StepRow])[]>();

export function entries(book: Book): readonly (readonly [chapter: string, id: string, row: StepRow])[] {
  const before = flat.get(book);
  if (before !== undefined) return before;
  const after = book.steps.flatMap((rows) => Object.entries(rows).flatMap(([chapter, steps]) =>
    Object.entries(steps).map(([id, row]) => [chapter, id, row] as const)));
  flat.set(book, after);
  return after;
}
