import type { Book } from '../../src/content/lint/book.ts';

/** The text of every YAML file under content/, by its path as shown. */
export function contentFiles(root: string): Map<string, string>;
/** Throws an Error that lists every mistake, one a line. `book`: what the content must hold; common practice where none is given. */
export function compileContent(options: { root: string; outFile: string; book?: Book }): Promise<void>;
/** The words of the practice bow, in the same way. */
export function compilePractice(options: { root: string; outFile: string }): Promise<void>;
