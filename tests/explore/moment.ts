// What a promise is held against: the moment after one line was taken (or refused), seen from outside.

import type { Content, KnobId } from '../../src/content/types.ts';
import type { State } from '../../src/machine/state.ts';
import { bowKnobOf, type Advice, type Fact, type Intent, type View } from '../../src/machine/types.ts';
import type { BowBook } from './books/bow-book.ts';
import type { GateBook } from './books/gate-book.ts';
import type { NockBook } from './books/nock-book.ts';

export interface Moment {
  /** The content as it is shipped, whatever the walk itself was given. */
  readonly content: Content;
  /** What was tried; null where the tune was just opened. */
  readonly intent: Intent | null;
  /** The line that was taken; null where nothing was written. */
  readonly line: Fact | null;
  readonly lines: readonly Fact[];
  readonly view: View;
  /** What was shown before; null where the tune was just opened. */
  readonly was: View | null;
  /** The state before and after, worked out from the journal alone. */
  readonly before: State;
  readonly state: State;
  readonly gates: GateBook;
  readonly bow: BowBook;
  readonly nocks: NockBook;
  /** Why it was refused; null where it was not. */
  readonly refused: string | null;
  /** This question stands for the first time in this walk. */
  readonly fresh: boolean;
  /** The walk ends here: what stands now stands in the record. */
  readonly ending: boolean;
  /** What would be shown if these words were said now. */
  readonly said: (words: string) => View;
  /** What the whole journal shows, read anew from its first line. */
  readonly replayed: () => View;
  /** What the journal would show as a record. */
  readonly record: () => readonly { readonly title: string; readonly rows: readonly { readonly name: string; readonly value: string }[] }[];
}

/** One promise. `broken` says in words how this moment breaks it, or null. */
export interface Invariant {
  readonly id: string;
  /** The rule, in words that a bow technician would sign. */
  readonly rule: string;
  /** In which part of the program it is kept. */
  readonly held: string;
  readonly broken: (moment: Moment) => string | null;
}

export type Ask = NonNullable<View['ask']>;
export type ShotAsk = Extract<Ask, { kind: 'tear' | 'impact' }>;

/** The question that stands, unless it is an earlier one that was only opened again. */
export const asked = ({ view: { ask } }: Moment): Ask | null => (ask === null || ask.correcting !== undefined ? null : ask);

export function shotAsked(moment: Moment): ShotAsk | null {
  const ask = asked(moment);
  return ask?.kind === 'tear' || ask?.kind === 'impact' ? ask : null;
}

/** Work on the bow that stands to be done. */
export function workTold({ view: { advice } }: Moment): NonNullable<View['advice']> | null {
  return advice?.kind === 'adjust' || advice?.kind === 'put-back' ? advice : null;
}

/** The next adjustment of the bow that stands to be made, and what it is about. */
export function adjustmentTold({ view: { advice } }: Moment): { readonly advice: Advice; readonly knob: KnobId } | null {
  const knob = bowKnobOf(advice);
  return advice?.kind === 'adjust' && knob !== null ? { advice, knob } : null;
}

/** The content step that a question's id belongs to. */
export const stepOf = (content: Content, id: string): Content['steps'][string] | undefined => content.steps[id.split('/')[0] ?? ''];

export const first = (broken: readonly string[]): string | null => broken[0] ?? null;
