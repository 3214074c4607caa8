// Content that could hurt somebody: held to the book of common practice (book.ts), and read for words that ask too much.
// A gate may be stricter than the book, a limit closer, a list longer. Nothing may be looser.

import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';
import { COMMON_PRACTICE } from './book.ts';
import type { Book } from './book.ts';
import { adjusting } from './harm/adjusting.ts';
import { asking } from './harm/asking.ts';
import { found } from './harm/found.ts';
import { gates } from './harm/gates.ts';
import { handling } from './harm/handling.ts';
import { order } from './harm/order.ts';

/** Each apart, for who only asks whether one of them finds something. */
export const HARM_RULES: readonly ((content: Content, where: Where, book: Book) => Problem[])[] =
  [gates, order, adjusting, found, asking, handling];

export function harm(content: Content, where: Where, book: Book = COMMON_PRACTICE): Problem[] {
  return HARM_RULES.flatMap((rule) => rule(content, where, book));
}
