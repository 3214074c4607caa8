// Random walks by fast-check: which archer, which bow, where it begins, and one number for each turn.

import fc from 'fast-check';
import type { Content } from '../../src/content/types.ts';
import { beginning, BEGINS, BOWS, knownOf } from './begins.ts';
import { MOST_TURN, TEMPERS } from './careless.ts';
import type { Tally } from './tally.ts';
import { WatchedWalk } from './watched-walk.ts';

export interface Walk {
  readonly bow: number;
  readonly begin: number;
  readonly temper: number;
  readonly turns: readonly number[];
}

const turn = fc.nat(MOST_TURN);
const turns = (minLength: number, maxLength: number) => fc.array(turn, { minLength, maxLength, size: 'max' });

/** Only walks that begin there, of that archer, or of at least so many turns. */
export interface Narrowed { readonly begin?: string; readonly temper?: string; readonly least?: number }

const oneOf = (all: readonly { readonly name: string }[], name: string | undefined): fc.Arbitrary<number> =>
  (name === undefined ? fc.nat(all.length - 1) : fc.constant(all.findIndex((one) => one.name === name)));

/** Mostly short, for most of what can go wrong does so soon; one in twenty as long as a whole day of tuning. */
export const walks = ({ begin, temper, least }: Narrowed = {}): fc.Arbitrary<Walk> => fc.record({
  bow: fc.nat(BOWS.length - 1), begin: oneOf(BEGINS, begin), temper: oneOf(TEMPERS, temper),
  turns: least !== undefined ? turns(least, 2 * least) : fc.oneof({ weight: 15, arbitrary: turns(5, 32) }, { weight: 4, arbitrary: turns(32, 110) }, { weight: 1, arbitrary: turns(110, 400) }),
});

/** Walks it; throws a Violation where a promise is broken. */
export function walkIt({ bow, begin, temper, turns }: Walk, content: Content, sound: Content, tally: Tally): void {
  const known = begin === 1 ? knownOf(sound, bow) : [];
  const one = BOWS[bow]!;
  tally.walks++;
  new WatchedWalk({
    content, sound, turns, known, temper: TEMPERS[temper]!, facts: beginning(sound, bow, begin),
    bow: begin === 1 ? { ...one, answers: { ...one.answers, bow: known[0]?.from } } : one,
  }, tally).walk();
}

export const inWords = ({ bow, begin, temper, turns }: Walk): string =>
  `bow ${bow}, from ${BEGINS[begin]?.name}, ${TEMPERS[temper]?.name}, ${turns.length} turns`;
