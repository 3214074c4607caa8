// Single letters are keys here, and a frightened person types words. A letter that is no key begins a word, together with the
// letters right before it that were taken as keys: what those opened is closed again, and the word is heard whole.

import type { Answer } from '../machine/types.ts';
import { EMPTY, entryText, typed } from './entry.ts';
import type { Key } from './key-names.ts';
import { openPage } from './pages.ts';
import { type Pick, picksOf } from './options.ts';
import { chooseMissed } from './press-tear.ts';
import { heard, heardAfter, isLetter, type Pressed, type Preview, still } from './pressed.ts';
import { modeOf, type Overlay, type Run, type ScreenState } from './state.ts';

/** The run of letters after this one, which was taken as a key. */
export const runAfter = (before: ScreenState, key: Key): Run | null => {
  if (!isLetter(key)) return null;
  const { run } = before;
  return run === null
    ? { letters: key.text, prompt: before.prompt, correcting: before.view.ask?.correcting }
    : { ...run, letters: run.letters + key.text };
};

/** Letters in a row were a word from the first one on: what they did is undone, and the word stands in a line of its own. */
export const beginWord = (before: ScreenState, letter: string): Pressed => {
  const { run } = before;
  const entry = typed(EMPTY, (run?.letters ?? '') + letter);
  const state: ScreenState = { ...before, menu: false, run: null, message: null, prompt: run?.prompt ?? before.prompt, overlay: { ...openPage({ id: 'words' }, run?.letters), entry } };
  const opened = run !== null && before.view.ask?.correcting !== run.correcting;
  return opened ? { state, deed: { undo: state.prompt } } : { state };
};

/** A key put a whole word into the line ("not known", "missed"), and a letter follows: the key was the beginning of another word. */
export const followsFilled = ({ run, prompt, overlay, view }: ScreenState): boolean => {
  const mode = modeOf(view.ask, prompt);
  return overlay === null && run !== null && (mode === 'number' || mode === 'tear') && entryText(prompt.entry) !== '';
};

/** "es" after `y` and "o" after `n` spell the answer out that the first letter picked. */
export const spellsPick = ({ run }: ScreenState, key: Key, picks: readonly Pick[] | null): boolean => {
  if (run === null || !isLetter(key)) return false;
  const letters = (run.letters + key.text).toLowerCase();
  return (picks ?? []).some(({ letter }) => (letter === 'y' && 'yes'.startsWith(letters)) || (letter === 'n' && letters === 'no'));
};

const DEAF = 'no answer to this, and no word of danger that I know: Enter again stops here with these words, Esc goes back';

/** Enter on the words: danger stops; an answer is chosen, where Enter takes it; all else is asked about once more. */
export const takeWords = (state: ScreenState, overlay: Overlay, preview: Preview): Pressed => {
  const words = entryText(overlay.entry).trim();
  if (overlay.refused === words) return { state: { ...state, overlay: null }, deed: { send: { kind: 'stop', words } } };
  const understood = preview(words);
  const found = understood.ok ? choose({ ...state, overlay: null }, understood.answer) : null;
  // The first letters may have been keys on purpose after all: `h` for the history, and there "cracked".
  const later = words.startsWith(overlay.lead) ? words.slice(overlay.lead.length) : '';
  const asked = found ?? still({ ...state, overlay: { ...overlay, refused: words } }, DEAF);
  return heard(state, words, heardAfter(state, overlay.lead, later, heard(state, later, asked)));
};

const choose = (state: ScreenState, answer: Answer): Pressed | null => {
  const { ask } = state.view;
  if (ask === null) return null;
  if (answer.kind === 'shots') {
    const missed = answer.shots.length === 1 && answer.shots.some((shot) => 'missed' in shot);
    return missed ? { state: chooseMissed(state) } : still(state, 'call the shot first, g or b');
  }
  const cursor = (picksOf(ask) ?? []).findIndex((pick) => pick.value === valueOf(answer));
  if (cursor === -1) return null;
  return still({ ...state, prompt: { ...state.prompt, cursor } }, ask.kind === 'choice' && ask.many === true ? 'found: space marks it' : 'found: Enter takes it');
};

const valueOf = (answer: Answer): Pick['value'] | null => {
  switch (answer.kind) {
    case 'choice': return answer.values.length === 1 ? (answer.values[0] ?? null) : null;
    case 'confirm': return answer.value;
    case 'moved': return typeof answer.moved === 'string' ? answer.moved : null;
    case 'not known': return answer.kind;
    case 'number': case 'shots': case 'text': return null;
  }
};

/** A stray letter is no word: what moves or picks goes on with the question as if it had not been pressed. */
export const leavesWords = ({ page, entry }: Overlay, key: Key): boolean => {
  if (page.id !== 'words') return false;
  const letters = [...entryText(entry)].length;
  return key.name === 'up' || key.name === 'down' || (letters <= 1 && (key.name === 'backspace' || /^\d$/.test(key.text)));
};

