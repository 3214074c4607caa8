// The screen's own small questions (a note, a stop, something else, the history): what each shows, and where it leads.

import { type AnswerEntry, CHANGED, type HistoryEntry, type Intent, type KnobId } from '../machine/types.ts';
import { KNOBS } from '../content/types.ts';
import type { Pick } from './options.ts';
import type { Overlay, Page } from './state.ts';
import { EMPTY, entryText } from './entry.ts';
import { CHANGED_WORDS, KNOB_WORDS, ledgerWords } from './words.ts';

export interface Form {
  readonly title: string;
  readonly text: readonly string[];
  readonly picks?: readonly Pick[];
  /** Where it is typed: may it be left empty? */
  readonly mayBeEmpty?: boolean;
}

export type Taken = { readonly intent: Intent } | { readonly words: string } | { readonly page: Page } | { readonly wants: string };

const pick = (value: string | boolean, label: string, letter?: string): Pick => ({ value, label, pass: false, ...(letter === undefined ? {} : { letter }) });
const knobWords = (knob: KnobId): string => KNOB_WORDS[knob].name;

export const openPage = (page: Page, lead = ''): Overlay =>
  ({ page, cursor: page.id === 'history' || page.id === 'answers' ? page.entries.length - 1 : -1, entry: EMPTY, lead, refused: '' });

const pointWords = ({ what, came, back }: HistoryEntry): string => `${what}${came === undefined ? '' : `: ${came}`}${back === null ? ' (the bow stands there)' : ''}`;
export const answerWords = ({ question, answer }: AnswerEntry): string => `${question}${question.endsWith('?') ? '' : ':'} ${answer}`;
const numbered = (steps: readonly string[]): string[] => steps.map((step, at) => `${at + 1}. ${step}`);

const setWords = ({ bow }: HistoryEntry): readonly string[] => {
  const set = ledgerWords(bow);
  return set.length === 0 ? ['as it was found'] : set;
};

/** Told below a list about the entry that the cursor is on: a label, and what it stands before. */
export const detailOf = ({ page, cursor }: Overlay): readonly (readonly [string, string])[] => {
  if (page.id === 'history') {
    const entry = page.entries[cursor];
    if (entry === undefined) return [];
    const steps = entry.back === null ? ['nothing: the bow stands there'] : numbered(entry.back.steps);
    return [...labelled('back', steps), ...labelled('bow', setWords(entry))];
  }
  if (page.id !== 'answers') return [];
  const entry = page.entries[cursor];
  if (entry === undefined) return [];
  return [entry.change === true ? ['yes', 'it may be changed; the bow is not touched'] : ['no', entry.change]];
};

const labelled = (label: string, texts: readonly string[]): (readonly [string, string])[] => texts.map((text, at) => [at === 0 ? label : '', text]);

export const formOf = (page: Page): Form => {
  switch (page.id) {
    case 'help': return { title: 'why', text: [] };
    case 'note': return { title: 'A note for the record.', text: ['Write it in one line.'] };
    case 'words': return {
      title: 'In words: what is the matter?',
      text: ['Enter tells it. A word of danger stops here at once; an answer is looked up in the list. Esc goes back.'],
    };
    case 'stop': return {
      title: 'Stop. Put the bow down, point everything at the ground, and say what is wrong.',
      text: ['Enter alone stops too.'], mayBeEmpty: true,
    };
    case 'history': return {
      title: page.entries.length === 0 ? 'Nothing was done to the bow yet.' : 'Points that the bow was at. Enter brings it back to one.',
      text: [],
      picks: page.entries.map((entry) => pick(String(entry.seq), pointWords(entry))),
    };
    case 'answers': return {
      title: page.entries.length === 0 ? 'Nothing was answered yet.' : 'All your answers, oldest first. Enter opens one to change it.',
      text: [],
      picks: page.entries.map((entry) => pick(String(entry.seq), answerWords(entry))),
    };
    case 'sure': return {
      title: page.to === null ? 'Put the last adjustment on the bow back?' : `Bring the bow back to this point: ${page.what}?`,
      text: page.to === null ? ['The coach then says what to turn, which way and how much.'] : ['To be put back, in this order:', ...numbered(page.steps), ...page.settings.map((set) => `Then it is set: ${set}`)],
      picks: [pick(true, 'yes, back', 'y'), pick(false, 'no, leave it as it is', 'n')],
    };
    case 'other': return {
      title: 'What happened that I did not ask for?', text: [],
      picks: [pick('moved', 'I moved something on the bow'), ...CHANGED.map((what) => pick(what, CHANGED_WORDS[what]))],
    };
    case 'end': return {
      title: 'End this practice here, and be told what was true?',
      text: ['It cannot be gone on with afterwards. Who only wants a rest leaves with q.'],
      picks: [pick(true, 'yes, tell me', 'y'), pick(false, 'no, go on', 'n')],
    };
    case 'knob': return { title: page.quiet ? 'Turn what? The coach is not told.' : 'What did you move?', text: [], picks: KNOBS.map((knob) => pick(knob, knobWords(knob))) };
    case 'way': return { title: `Which way ${page.quiet ? 'do you turn' : 'did you move'} ${knobWords(page.knob)}?`, text: [], picks: KNOB_WORDS[page.knob].ways.map(([way, label]) => pick(way, label)) };
    case 'how much': return { title: `How much ${page.quiet ? 'do you turn' : 'did you move'} ${knobWords(page.knob)}?`, text: [`With its unit, for example ${KNOB_WORDS[page.knob].like}.`] };
    case 'changed': return { title: `${CHANGED_WORDS[page.what]}: what should be remembered of it?`, text: ['Enter alone is enough.'], mayBeEmpty: true };
  }
};

/** Enter on a page: the next page, what to send, or what is still wanted. */
export const takePage = ({ page, cursor, entry, lead }: Overlay): Taken => {
  const form = formOf(page);
  const text = entryText(entry).trim();
  const chosen = form.picks?.[cursor]?.value;
  if (form.picks !== undefined && chosen === undefined) return { wants: form.picks.length === 0 ? 'nothing is there to choose' : 'choose one first' };
  if (form.picks === undefined && text === '' && form.mayBeEmpty !== true) return { wants: 'write something first, or Esc to go back' };
  switch (page.id) {
    case 'help': return { wants: '' };
    // Who types "not known" where a number goes has pressed n for a note, and writes the rest of it here.
    case 'note': return /^ot known$/i.test(text) ? { wants: 'this is a note: for "not known" press Esc, then u' } : { intent: { kind: 'note', note: text } };
    case 'words': return { words: text };
    case 'stop': return { intent: { kind: 'stop', words: text === '' ? 'stop' : joined(lead, text) } };
    case 'history': return fromHistory(page, cursor);
    case 'answers': {
      const entry = page.entries[cursor];
      if (entry === undefined) return { wants: 'choose one first' };
      return entry.change === true ? { intent: { kind: 'back', to: entry.seq } } : { wants: `not that one: ${entry.change}` };
    }
    case 'sure': return chosen === true ? { intent: page.to === null ? { kind: 'putBack' } : { kind: 'putBack', to: page.to } } : { wants: '' };
    case 'other': {
      const what = CHANGED.find((one) => one === chosen);
      return { page: what === undefined ? { id: 'knob', quiet: false } : { id: 'changed', what } };
    }
    case 'end': return chosen === true ? { intent: { kind: 'debrief' } } : { wants: '' };
    case 'knob': {
      const knob = KNOBS.find((one) => one === chosen);
      return knob === undefined ? { wants: 'choose one first' } : { page: { id: 'way', knob, quiet: page.quiet } };
    }
    case 'way': {
      const way = KNOB_WORDS[page.knob].ways.find(([one]) => one === chosen)?.[0];
      return way === undefined ? { wants: 'choose one first' } : { page: { id: 'how much', knob: page.knob, way, quiet: page.quiet } };
    }
    case 'how much': return { intent: { kind: page.quiet ? 'turned' : 'moved', knob: page.knob, direction: page.way, amount: text } };
    case 'changed': return { intent: text === '' ? { kind: 'changed', what: page.what } : { kind: 'changed', what: page.what, note: text } };
  }
};

/** The key `s` may have been the first letter of what was typed on: "top", "omeone is in front". */
const joined = (lead: string, text: string): string => (/s$/i.test(lead) && /^(top|omeone|omebody|omething|nap|plint|plit|tring|trand|lip|tuck|hot|hatter)/i.test(text) ? lead + text : text);

const fromHistory = (page: Page & { readonly id: 'history' }, cursor: number): Taken => {
  const entry = page.entries[cursor];
  if (entry === undefined) return { wants: 'choose one first' };
  if (entry.back === null) return { wants: 'the bow stands there already: nothing is to be put back' };
  return { page: { id: 'sure', what: entry.what, to: entry.back.to, steps: entry.back.steps, settings: setWords(entry) } };
};
