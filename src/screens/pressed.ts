// What a key press comes to, and the small moves that every kind of prompt shares.

import type { Intent, SessionLike } from '../machine/types.ts';
import { editEntry, entryText, oneLine, typed } from './entry.ts';
import type { Key } from './key-names.ts';
import type { Page, Prompt, ScreenState } from './state.ts';

/**
 * What is to be done about a key, besides the next state: send, leave with an exit code, open a page, have words heard (and
 * only where they hold no danger do what is `otherwise` to be done), or a letter that is no key here: a word begins.
 */
export type Deed =
  | { readonly send: Intent } | { readonly leave: number } | { readonly open: 'help' | 'history' | 'answers' | 'note' | 'stop' | 'other' | 'sure' | 'turn' | 'debrief' }
  | { readonly say: string; readonly otherwise: Pressed } | { readonly word: string }
  /** Letters were a word: the correction that one of them opened is closed again, and the question is as it was. */
  | { readonly undo: Prompt };
export interface Pressed { readonly state: ScreenState; readonly deed?: Deed }
export type Preview = SessionLike['preview'];
export type PageId = Page['id'];

/** Characters that a line takes. More than this is never an answer. */
export const ENTRY_LIMIT = { number: 60, amount: 60, tear: 200, text: 2000 } as const;

export const still = (state: ScreenState, message: string | null = null): Pressed => ({ state: { ...state, message } });
export const answer = (state: ScreenState, value: unknown): Pressed => ({ state, deed: { send: { kind: 'answer', answer: value } } });

/** Typing, editing and pasting, with a limit that loses nothing that was there. */
export const editPrompt = (state: ScreenState, key: Key, limit: number, options: { readonly caret: boolean }): Pressed => {
  const { entry } = state.prompt;
  const next = key.name === 'paste' ? typed(entry, oneLine(key.text)) : editEntry(entry, key, options);
  if (next === null) return { state };
  if (isTooLong(entryText(next), entryText(entry), limit)) return still(state, tooLong(key, limit));
  return { state: { ...state, prompt: { ...state.prompt, entry: next, tail: null } } };
};

/** Has words heard first; what they are besides is done only where they hold no danger. */
export const heard = (state: ScreenState, words: string, otherwise: Pressed): Pressed => (words === '' ? otherwise : { state, deed: { say: words, otherwise } });

/** The same for what was typed right after letters that were keys: any of them may have been the beginning of the word. */
export const heardAfter = (state: ScreenState, lead: string, words: string, otherwise: Pressed): Pressed =>
  words === '' ? otherwise : [...lead].reduceRight((then, _letter, at) => heard(state, lead.slice(at) + words, then), otherwise);

/** A letter without Ctrl or Alt: it may be the beginning of a word. */
export const isLetter = (key: Key): boolean => !key.ctrl && !key.alt && /^\p{L}$/u.test(key.text);

export const isTooLong = (next: string, before: string, limit: number): boolean => next.length > limit && next.length > before.length;

export const tooLong = (key: Key, limit: number): string =>
  key.name === 'paste'
    ? `what was pasted has ${key.length ?? key.text.length} characters, and ${limit} fit here; nothing of it was taken`
    : `${limit} characters fit here`;
