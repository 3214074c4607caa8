// One typed line to what is meant by it. What is no command is an answer, and the session reads it.

import { DIRECTIONS, KNOBS } from '../content/types.ts';
import { CHANGED, type Intent } from '../machine/types.ts';

export type Command =
  | { readonly kind: 'nothing' | 'why' | 'history' | 'again' | 'help' | 'quit' }
  | { readonly kind: 'intent'; readonly intent: Intent }
  | { readonly kind: 'mistake'; readonly message: string };

export const COMMANDS = [
  'why             why this is asked, and what the words mean',
  'again           the question in full once more',
  'back            correct the last answer; again for the one before',
  'keep            leave a correction, the answer stays as it was',
  'put back        undo the last adjustment on the bow',
  'put back N      bring the bow back to what it was before line N of the history',
  'history         what was done and what came of it',
  'note WORDS      keep a note',
  'stop WORDS      something is wrong: stop at once',
  'moved KNOB DIRECTION AMOUNT   you changed something that was not advised',
  'changed WHAT WORDS            something on the bow was replaced or fell',
  'answer WORDS    take the words as the answer, even if they look like a command',
  'quit            leave; everything is kept',
] as const;

const intent = (value: Intent): Command => ({ kind: 'intent', intent: value });
const mistake = (message: string): Command => ({ kind: 'mistake', message });

const SIMPLE: Readonly<Record<string, Command>> = {
  '?': { kind: 'why' }, 'why': { kind: 'why' }, 'again': { kind: 'again' }, 'history': { kind: 'history' }, 'help': { kind: 'help' },
  'quit': { kind: 'quit' }, 'leave': { kind: 'quit' },
  'back': intent({ kind: 'back' }), 'keep': intent({ kind: 'keep' }),
  'put back': intent({ kind: 'putBack' }), 'put it back': intent({ kind: 'putBack' }),
};

/** `taken` are words that the question itself offers; they are answers even where a command has the same name. */
export function readCommand(line: string, taken: readonly string[] = []): Command {
  const text = line.trim();
  if (text === '') return { kind: 'nothing' };
  const lower = text.toLowerCase().replace(/\s+/g, ' ');
  const answer = (words: string): Command => intent({ kind: 'answer', answer: words });
  const first = lower.split(' ')[0] ?? '';
  const rest = text.slice(first.length).trim();

  // A stop is a stop, whatever else was asked.
  if (/^stop\b/.test(lower)) return intent({ kind: 'stop', words: text.replace(/^stop[\s:,.!]*/i, '') || 'stop' });
  if (taken.some((words) => words.toLowerCase() === lower)) return answer(text);
  const simple = Object.hasOwn(SIMPLE, lower) ? SIMPLE[lower] : undefined;
  if (simple !== undefined) return simple;

  const back = /^put (?:it )?back (?:to )?(\d{1,9})$/.exec(lower);
  if (back) return intent({ kind: 'putBack', to: Number(back[1]) });
  if (first === 'note') return rest === '' ? mistake('A note needs words: note WORDS.') : intent({ kind: 'note', note: rest });
  if (first === 'answer') return rest === '' ? mistake('An answer needs words: answer WORDS.') : answer(rest);
  if (first === 'moved') return readMoved(rest);
  if (first === 'changed') return readChanged(rest);
  return answer(text);
}

function readMoved(rest: string): Command {
  const how = 'Type it like: moved rest-height up 1/32 in.';
  // "rest height" and "rest-height" are the same.
  const joined = KNOBS.reduce((words, knob) => words.replace(new RegExp(`^${knob.replace('-', '[- ]')}\\b`, 'i'), knob), rest);
  const [knobWord = '', directionWord = '', ...amount] = joined.split(/\s+/);
  const knob = KNOBS.find((id) => id === knobWord.toLowerCase());
  if (knob === undefined) return mistake(`What was moved? One of: ${KNOBS.join(', ')}. ${how}`);
  const direction = DIRECTIONS.find((word) => word === directionWord.toLowerCase());
  if (direction === undefined) return mistake(`Which way? One of: ${DIRECTIONS.join(', ')}. ${how}`);
  if (amount.length === 0) return mistake(`By how much? ${how}`);
  return intent({ kind: 'moved', knob, direction, amount: amount.join(' ') });
}

function readChanged(rest: string): Command {
  const [word = '', ...note] = rest.split(/\s+/);
  const what = CHANGED.find((name) => name === word.toLowerCase());
  if (what === undefined) return mistake(`What changed? One of: ${CHANGED.join(', ')}. Type it like: changed string new one fitted.`);
  return intent({ kind: 'changed', what, ...(note.length > 0 ? { note: note.join(' ') } : {}) });
}
