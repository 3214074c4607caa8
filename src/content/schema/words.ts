// The small pieces of which every content file is made: ids, sentences, lists, and numbers written as an archer writes them.
// Each piece forgives what is unambiguous (one word where a list is meant) and says plainly what it does not take.

import { z } from 'zod';

/** Lower-case words joined by hyphens. */
export const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'id');

const tidy = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** One sentence or label on one line: line breaks and doubled blanks of the file are no part of it. */
export const line = z.string().transform(tidy).pipe(z.string().min(1, 'empty'));

/** Paragraphs: one string, or a list of strings; a line break that survives YAML starts a new one. */
export const paragraphs = z.preprocess(
  (given) => (typeof given === 'string' ? [given] : given),
  z.array(z.string()).transform((all) => all.flatMap((one) => one.split('\n').map(tidy)).filter((one) => one !== '')),
);

/** A list that may be written as its only member. Nothing at all (`key:` with no value) is no list: `[]` says empty. */
export function listOf<T extends z.ZodType>(member: T) {
  return z.preprocess((given) => (typeof given === 'string' ? [given] : given), z.array(member));
}

const FRACTION = /^([+-])?(?:(\d+)[ ]+)?(\d+)\/(\d+)$/;
const DECIMAL = /^[+-]?(\d+(\.\d+)?|\.\d+)$/;

/** A number from `0.25`, `"1/32"`, `"-3/16"` or `"1 1/8"`; null where the text is none of these. */
export function readNumber(text: string): number | null {
  const trimmed = text.trim();
  if (DECIMAL.test(trimmed)) return Number(trimmed);
  const parts = FRACTION.exec(trimmed);
  if (!parts) return null;
  const below = Number(parts[4]);
  if (below === 0) return null;
  const size = Number(parts[2] ?? 0) + Number(parts[3]) / below;
  return parts[1] === '-' ? -size : size;
}

/** A finite number, or a fraction in quotes. */
export const amount = z.preprocess((given) => {
  if (typeof given !== 'string') return given;
  return readNumber(given) ?? given;
}, z.number());

/** An object of which every key is known. The message carries the known keys to where the mistake is put into words. */
export function known<S extends z.ZodRawShape>(shape: S) {
  const keys = Object.keys(shape).join(' ');
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? keys : undefined) });
}
