// All that a screen remembers between two keys. It lives outside React, so that two keys in one read both count.

import type { AnswerEntry, Ask, HistoryEntry, KnobId, Tear, View } from '../machine/types.ts';
import type { Changed, Direction } from '../machine/types.ts';
import { EMPTY, type Entry } from './entry.ts';
import { type Pick, picksOf, startingCursor } from './options.ts';
import type { Line } from './look.ts';

export interface Size { readonly columns: number; readonly rows: number }

/** What was begun for the standing question and not sent yet. */
export interface Prompt {
  /** Which pick the cursor is on; -1 is none. */
  readonly cursor: number;
  readonly marks: readonly Pick['value'][];
  /** How far down the list was gone through, pick by pick. */
  readonly furthest: number;
  readonly entry: Entry;
  /** `moved another amount` was picked: the amount is being typed. */
  readonly typing: boolean;
  /** Of a practice bow: all that there is to be seen was on the screen, on the `?` page. */
  readonly looked: boolean;
  /** Of a practice bow: the arrow was let go. */
  readonly loosed: boolean;
  /** A shot's call, given before the hole is looked at. */
  readonly called: 'good' | 'bad' | null;
  /** The tail as moved by the arrow keys. */
  readonly tail: Tear | null;
  /** Letters that were taken as keys right before this line was typed: with it they may be a word. */
  readonly lead: string;
}

/** A page or small question of the screen's own, over the standing one. */
export type Page =
  | { readonly id: 'help'; readonly top: number }
  | { readonly id: 'history'; readonly entries: readonly HistoryEntry[] }
  | { readonly id: 'answers'; readonly entries: readonly AnswerEntry[] }
  /** `steps`: what is to be undone, in this order, and the `settings` that this leads to; not known where `to` is null, for the last adjustment. */
  | { readonly id: 'sure'; readonly what: string; readonly to: number | null; readonly steps: readonly string[]; readonly settings: readonly string[] }
  | { readonly id: 'note' }
  /** Words typed where keys were expected. */
  | { readonly id: 'words' }
  | { readonly id: 'stop' }
  | { readonly id: 'other' }
  /** `quiet`: it is turned on a practice bow, and the coach is not told. */
  | { readonly id: 'knob'; readonly quiet: boolean }
  | { readonly id: 'way'; readonly knob: KnobId; readonly quiet: boolean }
  | { readonly id: 'how much'; readonly knob: KnobId; readonly way: Direction; readonly quiet: boolean }
  /** The end of a practice, before its time. */
  | { readonly id: 'end' }
  | { readonly id: 'changed'; readonly what: Changed };

export interface Overlay {
  readonly page: Page;
  readonly cursor: number;
  readonly entry: Entry;
  /** As in a prompt: the letters that opened the page. */
  readonly lead: string;
  /** Words in which nothing was understood: Enter again stops with them. */
  readonly refused: string;
}

/** Letters pressed one after the other, all taken as keys so far. Should they turn out to be a word, it is heard whole. */
export interface Run {
  readonly letters: string;
  /** What stood before the first of them: it comes back where they were a word. */
  readonly prompt: Prompt;
  readonly correcting: number | undefined;
}

export interface Item { readonly id: number; readonly lines: readonly Line[] }

export interface ScreenState {
  readonly size: Size;
  readonly view: View;
  readonly prompt: Prompt;
  readonly overlay: Overlay | null;
  /** Escape was pressed while typing: the next letter is a command. */
  readonly menu: boolean;
  readonly run: Run | null;
  /** One thing to tell about the last key. */
  readonly message: string | null;
  /** Finished lines, for <Static>: only ever longer. */
  readonly items: readonly Item[];
  /** The exit code, once the screen is to end. */
  readonly leaving: number | null;
}

export const promptFor = (ask: Ask | null): Prompt => ({
  cursor: ask === null ? -1 : startingCursor(ask, picksOf(ask) ?? []),
  // What must be picked deliberately is not even marked as it was before.
  marks: ask?.kind === 'choice' && ask.many && ask.noDefault !== true && ask.suggestion?.kind === 'choice' ? notPassing(ask, ask.suggestion.values) : [],
  furthest: -1,
  entry: EMPTY,
  typing: false,
  looked: false,
  loosed: false,
  called: null,
  tail: null,
  lead: '',
});

const notPassing = (ask: Ask, values: readonly string[]): readonly string[] =>
  values.filter((value) => ask.kind === 'choice' && ask.options.some((option) => option.value === value && !option.pass));

/** How the standing question is answered at this moment. */
export type Mode = 'none' | 'pick' | 'shoot' | 'called' | 'tear' | 'number' | 'amount' | 'text';

export const modeOf = (ask: Ask | null, prompt: Prompt): Mode => {
  switch (ask?.kind) {
    case undefined: return 'none';
    case 'choice': case 'confirm': return 'pick';
    case 'amount': return prompt.typing ? 'amount' : 'pick';
    case 'tear': case 'impact': return ask.practice === true && !prompt.loosed ? 'shoot' : prompt.called === null ? 'called' : 'tear';
    case 'number': return 'number';
    case 'text': return 'text';
  }
};
