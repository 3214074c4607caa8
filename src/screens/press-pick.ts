// Keys in a list: arrows, numbers, letters of its own, marks, Enter.

import type { Key } from './key-names.ts';
import { ANOTHER_AMOUNT, isChecks, SAY_ONLY, type Pick, picksOf } from './options.ts';
import { answer, heard, isLetter, type Pressed, still } from './pressed.ts';
import type { Prompt, ScreenState } from './state.ts';

/** Where an arrow, a number or a letter takes the cursor; null where the key does not move it. */
export const moveCursor = (cursor: number, picks: readonly Pick[], key: Key): number | null => {
  if (picks.length === 0 || key.ctrl || key.alt) return null;
  const last = picks.length - 1;
  switch (key.name) {
    case 'down': return cursor >= last ? 0 : cursor + 1;
    case 'up': return cursor <= 0 ? last : cursor - 1;
    case 'home': return 0;
    case 'end': return last;
    case 'pagedown': return Math.min(last, cursor + 5);
    case 'pageup': return Math.max(0, cursor - 5);
    default: return byName(picks, key.text.toLowerCase());
  }
};

const byName = (picks: readonly Pick[], text: string): number | null => {
  if (/^[1-9]$/.test(text)) return Number(text) <= picks.length ? Number(text) - 1 : null;
  const at = text === '' ? -1 : picks.findIndex((pick) => pick.letter === text);
  return at === -1 ? null : at;
};

/** Keys that only choose. They are tried before commands, as "n" means no where the question is yes or no. */
export const chooseWith = (state: ScreenState, key: Key): Pressed | null => {
  const picks = state.view.ask === null ? [] : (picksOf(state.view.ask) ?? []);
  const cursor = moveCursor(state.prompt.cursor, picks, key);
  if (cursor === null) return null;
  const prompt = { ...state.prompt, cursor };
  const marks = isMany(state) && /^[1-9]$/.test(key.text) ? toggled(prompt, picks) : prompt.marks;
  const furthest = key.name === 'down' || key.name === 'pagedown' ? Math.max(prompt.furthest, cursor) : prompt.furthest;
  return { state: { ...state, prompt: { ...prompt, marks, furthest } } };
};

export const pressPick = (state: ScreenState, key: Key): Pressed => {
  const { ask } = state.view;
  const picks = ask === null ? [] : (picksOf(ask) ?? []);
  if (key.name === 'paste') return heard(state, key.text, still(state, 'this is answered by choosing, not by pasting; nothing was taken'));
  if (key.text === ' ' && isMany(state)) {
    if (state.prompt.cursor < 0) return still(state, 'move to one first, then mark it with space');
    return { state: { ...state, prompt: { ...state.prompt, marks: toggled(state.prompt, picks) } } };
  }
  if (key.name === 'enter') return isMany(state) ? takeMarks(state, picks) : takePick(state, picks);
  if (isLetter(key)) return { state, deed: { word: key.text } };
  return key.text === '' ? { state } : still(state, `"${key.text}" is no key here; the arrows choose, ? tells all keys`);
};

const isMany = ({ view }: ScreenState): boolean => view.ask?.kind === 'choice' && view.ask.many === true;

const takePick = (state: ScreenState, picks: readonly Pick[]): Pressed => {
  const pick = picks[state.prompt.cursor];
  if (pick === undefined) return still(state, 'choose one first: a number or the arrows, then Enter');
  if (pick.value === ANOTHER_AMOUNT) return { state: { ...state, prompt: { ...state.prompt, typing: true } } };
  if (pick.value === SAY_ONLY) return { state, deed: { send: { kind: 'answer', answer: 'as told', hands: 'still' } } };
  return answer(state, pick.value);
};

/** Marks are sent as a list. With nothing marked, Enter takes the one that was moved to; but not a check: that would say that it fails. */
const takeMarks = (state: ScreenState, picks: readonly Pick[]): Pressed => {
  const { marks, cursor } = state.prompt;
  const chosen = marks.length > 0 ? picks.filter((pick) => marks.includes(pick.value)) : picks.slice(cursor, cursor + 1);
  if (cursor < 0 && marks.length === 0) return still(state, 'choose one first: a number or the arrows, space to mark, then Enter');
  if (marks.length === 0 && isChecks(state.view.ask) && picks[cursor]?.alone !== true) {
    return still(state, 'nothing is marked: space marks what is NOT true; 1 and Enter when all is true');
  }
  const values = chosen.map((pick) => pick.value);
  return answer(state, values.includes('not known') && chosen.every((pick) => pick.alone) ? 'not known' : values);
};

const toggled = (prompt: Prompt, picks: readonly Pick[]): readonly Pick['value'][] => {
  const pick = picks[prompt.cursor];
  if (pick === undefined) return prompt.marks;
  if (prompt.marks.includes(pick.value)) return prompt.marks.filter((value) => value !== pick.value);
  if (pick.alone) return [pick.value];
  const alone = new Set(picks.filter((one) => one.alone).map((one) => one.value));
  return [...prompt.marks.filter((value) => !alone.has(value)), pick.value];
};
