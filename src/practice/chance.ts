// Chance of the practice bow: every draw has a seed, a topic and a number of its own. So a shot, a reading or a move never depends on how
// many others were drawn before it: the same seed tells the same bow and the same luck, whatever is asked of it and in whatever order.

import { checks } from '../maths/check.ts';
import { seededRandom, type Random } from '../maths/random.ts';

const must = checks('chanceOf');

const TOPICS = ['bow', 'archer', 'arrows', 'danger', 'lesson', 'shot', 'reading', 'move', 'look'] as const;
export type Topic = (typeof TOPICS)[number];

/** The story of chance for the nth thing of a topic. Throws RangeError unless the seed is a whole number, 0 or more. */
// Example: chanceOf(1, 'shot', 1).uniform() is the same each time, and another than chanceOf(1, 'shot', 2).uniform().
export function chanceOf(seed: number, topic: Topic, nth = 0): Random {
  must.chanceOf.whole(seed, 'the seed of a practice bow', 0);
  return seededRandom(mixed(mixed(mixed(seed | 0, Math.floor(seed / 2 ** 32)), TOPICS.indexOf(topic) + 1), nth));
}

// A 32-bit finaliser (MurmurHash3, Austin Appleby, public domain): neighbours end far apart.
function mixed(word: number, part: number): number {
  let h = Math.imul(word ^ Math.imul(part, 0xcc9e2d51), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** True with this chance. */
export const happens = (chance: Random, p: number): boolean => chance.uniform() < p;
export const between = (chance: Random, low: number, high: number): number => low + (high - low) * chance.uniform();
/** Above or below 0, each as often. */
export const eitherSide = (chance: Random): 1 | -1 => (happens(chance, 1 / 2) ? 1 : -1);
/** With this median; `spread` is the standard deviation of its natural logarithm. */
export const logNormal = (chance: Random, median: number, spread: number): number => median * Math.exp(spread * chance.normal());
export const oneOfThese = <L extends readonly [unknown, ...unknown[]]>(chance: Random, list: L): L[number] =>
  list[Math.floor(chance.uniform() * list.length)] ?? list[0];
