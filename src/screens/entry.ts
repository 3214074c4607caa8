// One line of typing with a caret. Pure: takes a key, gives the next entry, or null where the key is not its business.

import { clean } from './clean.ts';
import { type Key, splitGraphemes } from './key-names.ts';

export interface Entry { readonly before: string; readonly after: string }

export const EMPTY: Entry = { before: '', after: '' };
export const entryText = (entry: Entry): string => entry.before + entry.after;

const dropLast = (text: string): string => splitGraphemes(text).slice(0, -1).join('');
const dropFirst = (text: string): string => splitGraphemes(text).slice(1).join('');
const last = (text: string): string => splitGraphemes(text).at(-1) ?? '';
const first = (text: string): string => splitGraphemes(text)[0] ?? '';

/** Text as one line without control characters: what a paste may leave behind. */
export const oneLine = (text: string): string => clean(text).replace(/\p{Cf}/gu, '').normalize('NFC');

export const typed = (entry: Entry, text: string): Entry => ({ before: entry.before + text, after: entry.after });

/** `caret: false` leaves the arrow keys to whoever else wants them. */
export const editEntry = (entry: Entry, key: Key, options: { readonly caret: boolean }): Entry | null => {
  const { before, after } = entry;
  if (key.alt) return null;
  if (key.text !== '' && !key.ctrl && key.name !== 'paste') return typed(entry, key.text);
  switch (key.ctrl ? `ctrl-${key.name}` : key.name) {
    case 'backspace': return { before: dropLast(before), after };
    case 'delete': return { before, after: dropFirst(after) };
    case 'ctrl-u': return { before: '', after };
    case 'ctrl-k': return { before, after: '' };
    case 'ctrl-w': return { before: before.replace(/\S+\s*$/, ''), after };
    default: return options.caret ? moveCaret(entry, key) : null;
  }
};

const moveCaret = ({ before, after }: Entry, key: Key): Entry | null => {
  switch (key.ctrl ? `ctrl-${key.name}` : key.name) {
    case 'left': return { before: dropLast(before), after: last(before) + after };
    case 'right': return { before: before + first(after), after: dropFirst(after) };
    case 'home': case 'ctrl-a': return { before: '', after: before + after };
    case 'end': case 'ctrl-e': return { before: before + after, after: '' };
    default: return null;
  }
};
