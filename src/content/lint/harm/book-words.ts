// Reads the short rows of the book. Rows never change while a program runs, so each is taken apart once.

import { once } from '../../../maths/once.ts';
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

/** The answers or checks of a row, with what each means at least and where it is asked. */
export const meanings = once((row: StepRow): readonly Meant[] => KEYS.flatMap(([key, means]) => words(row[key]).map((word): Meant => {
  const [name = '', when] = word.split('@');
  return { name, means, when: when === undefined ? NONE : when.split('+') };
})));

export const entries = once((book: Book): readonly (readonly [chapter: string, id: string, row: StepRow])[] =>
  book.steps.flatMap((rows) => Object.entries(rows).flatMap(([chapter, steps]) => Object.entries(steps).map(([id, row]) => [chapter, id, row] as const))));
