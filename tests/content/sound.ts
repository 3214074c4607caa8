// The small sound content of the fixtures, as text by path, and a way to spoil it in one place.

import { contentFiles } from '../tools/compile-content.mjs';
import { checkContent } from '../../src/content/lint.ts';
import { sayProblem } from '../../src/content/problem.ts';
import type { Book } from '../../src/content/lint/book.ts';
import { NO_BOOK } from './small-book.ts';

const SOUND: ReadonlyMap<string, string> = contentFiles(new URL('../fixtures/bad-content/sound', import.meta.url).pathname);

export const sound = (): Map<string, string> => new Map(SOUND);

/** The sound content with `from` replaced by `to`, once, in `content/FILE`. The text must be there: no case may pass by not biting. */
export function spoilt(file: string, from: string, to: string): Map<string, string> {
  const files = sound();
  const before = files.get(`content/${file}`);
  if (before === undefined || !before.includes(from)) throw new Error(`${file} does not hold ${JSON.stringify(from)}`);
  return files.set(`content/${file}`, before.replace(from, () => to));
}

export const told = (files: ReadonlyMap<string, string>, book: Book = NO_BOOK): string[] => checkContent(files, book).problems.map(sayProblem);
