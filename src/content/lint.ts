// The second look at the content, once every file can be read: do the parts fit each other, and is the order safe?
// It runs apart from the schemas, so that a slip in one file never hides the rest.

import { inOrder } from './problem.ts';
import type { Problem } from './problem.ts';
import { readContent } from './read.ts';
import type { Where } from './read.ts';
import type { Content } from './types.ts';
import { COMMON_PRACTICE } from './lint/book.ts';
import type { Book } from './lint/book.ts';
import { bookRows } from './lint/book-rows.ts';
import { calling } from './lint/calling.ts';
import { figures } from './lint/figures.ts';
import { harm } from './lint/harm.ts';
import { height } from './lint/height.ts';
import { limits } from './lint/limits.ts';
import { references } from './lint/references.ts';
import { safety } from './lint/safety.ts';
import { ways } from './lint/ways.ts';
import { words } from './lint/words.ts';

export { CALLED_BY_THE_MACHINE } from './lint/calling.ts';

const RULES: readonly ((content: Content, where: Where, book: Book) => Problem[])[] = [references, calling, ways, safety, limits, bookRows, harm, height, words, figures];

/**
 * Everything that does not fit, in reading order. `where` finds the place of a part by its path in the content. What it must
 * hold is common practice; a bench with a small content of its own hands in a smaller book.
 */
export function lint(content: Content, where: Where, book: Book = COMMON_PRACTICE): Problem[] {
  return inOrder(RULES.flatMap((rule) => rule(content, where, book)));
}

/** Reads and lints. `content` is null where a file cannot be read; with an error in `problems` it must not be used. */
export function checkContent(files: ReadonlyMap<string, string>, book?: Book): { readonly content: Content | null; readonly problems: readonly Problem[] } {
  const read = readContent(files);
  if (!read.ok) return { content: null, problems: read.problems };
  return { content: read.content, problems: inOrder([...read.problems, ...lint(read.content, read.where, book)]) };
}
