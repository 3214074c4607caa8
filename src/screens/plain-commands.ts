// One typed line to what is meant by it. What is no command is an answer, and the session reads it.

import { KNOBS } from '../content/types.ts';
import { CHANGED, type Intent } from '../machine/types.ts';
import { CHANGED_WORDS, KNOB_WORDS } from './words.ts';

export type Command =
  | { readonly kind: 'nothing' | 'why' | 'history' | 'answers' | 'again' | 'help' | 'quit' }
  /** The number of a point in the history, which the face turns into what is to be undone. */
  | { readonly kind: 'put back to'; readonly seq: number }
  | { readonly kind: 'intent'; readonly intent: Intent }
  | { readonly kind: 'mistake'; readonly message: string };

export const COMMANDS = [
  'why             why this is asked, and what the words mean',
  'again           the question in full once more',
  'back            correct the last answer; again for the one before',
  'answers         all your answers, each with its number',
  'change N        correct answer number N; the bow is not touched',
  'keep            leave a correction, the answer stays as it was',
  'put back        undo the last adjustment on the bow',
  'history         every point the bow was at, and what came of it, each with its number',
  'put back N      bring the bow back to point N of the history',
  'note WORDS      keep a note',
  'stop WORDS      something is wrong: stop at once',
  'moved KNOB DIRECTION AMOUNT   you moved something that the coach did not ask for; "moved" alone lists the names',
  'changed WHAT WORDS            something was replaced or fell; "changed" alone lists the names',
  'answer WORDS    take the words as the answer, even if they look like a command',
  'quit            leave; everything is kept',
] as const;

const intent = (value: Intent): Command => ({ kind: 'intent', intent: value });
const mistake = (message: string): Command => ({ kind: 'mistake', message });

const SIMPLE: Readonly<Record<string, Command>> = {
  '?': { kind: 'why' }, 'why': { kind: 'why' }, 'again': { kind: 'again' }, 'history': { kind: 'history' }, 'answers': { kind: 'answers' }, 'help': { kind: 'help' },
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
  if (back) return { kind: 'put back to', seq: Number(back[1]) };
  const change = /^change(?: answer)?(?: (?:number )?(\d{1,9}))?$/.exec(lower);
  if (change) return change[1] === undefined ? mistake('Which answer? "answers" lists them with their numbers; then type it like: change 12.') : intent({ kind: 'back', to: Number(change[1]) });
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
  if (knob === undefined) return mistake(`What was moved? One of: ${KNOBS.map((id) => `${id} (${KNOB_WORDS[id].name})`).join('; ')}. ${how}`);
  const { ways, like } = KNOB_WORDS[knob];
  const own = `Type it like: moved ${knob} ${ways[0][0]} ${like}.`;
  const direction = ways.find(([word]) => word === directionWord.toLowerCase())?.[0];
  if (direction === undefined) return mistake(`Which way? ${ways.map(([word, words]) => (words === word ? word : `${word} (${words})`)).join(' or ')}. ${own}`);
  if (amount.length === 0) return mistake(`By how much? ${own}`);
  return intent({ kind: 'moved', knob, direction, amount: amount.join(' ') });
}

function readChanged(rest: string): Command {
  const [word = '', ...note] = rest.split(/\s+/);
  const what = CHANGED.find((name) => name === word.toLowerCase());
  if (what === undefined) return mistake(`What changed? One of: ${CHANGED.map((name) => `${name} (${CHANGED_WORDS[name]})`).join('; ')}. Type it like: changed string new one fitted.`);
  return intent({ kind: 'changed', what, ...(note.length > 0 ? { note: note.join(' ') } : {}) });
}
