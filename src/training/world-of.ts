// From what is asked for (a number, the name of a lesson) to the invented bow, and back to words.

import type { Content } from '../content/types.ts';
import { fill } from '../content/fill.ts';
import type { PracticeWords } from '../content/practice-words.ts';
import { CodedError } from '../errors.ts';
import type { PracticeOf } from '../journal/practice-mark.ts';
import { LESSONS, type Lesson } from '../practice/lesson-names.ts';
import { lessonBow } from '../practice/lessons.ts';
import { bowByNumber, type World } from '../practice/world.ts';

/** Bows have numbers up to this, so that one can be said aloud. */
export const MOST_BOWS = 999_999;

const bad = (message: string): CodedError => new CodedError('bad-argument', message);

/** The bow number in a word. Throws CodedError('bad-argument') with what would be one. */
export function bowNumber(text: string): number {
  const number = /^\d{1,9}$/.test(text.trim()) ? Number(text) : NaN;
  if (number >= 1 && number <= MOST_BOWS) return number;
  throw bad(`"${text}" is no number of a practice bow. Write a whole number from 1 to ${MOST_BOWS}, like: quarterturn practice --bow 12.`);
}

const plain = (name: string): string => name.toLowerCase().replace(/[^a-z]+/g, ' ').trim();

/** The lesson of that name, also with hyphens. Throws CodedError('bad-argument') with all names. */
export function lessonNamed(text: string): Lesson {
  const found = LESSONS.find((lesson) => lesson === plain(text));
  if (found !== undefined) return found;
  throw bad(`There is no lesson "${text}". The lessons are: ${LESSONS.map((lesson) => `"${lesson}"`).join(', ')}.`);
}

/** Throws CodedError('bad-argument') on a lesson that a later program may know. */
export function worldOf({ lesson, seed }: PracticeOf, { knobs }: Content): World {
  return lesson === null ? bowByNumber(seed, knobs) : lessonBow(lessonNamed(lesson), seed, knobs);
}

/** `lesson: one bad arrow, bow 3`, or `bow 12`. */
export const nameOf = ({ lesson, seed }: PracticeOf, { says }: PracticeWords): string =>
  (lesson === null ? fill(says.bow, { number: seed }) : fill(says.lesson, { name: lesson, number: seed }));
