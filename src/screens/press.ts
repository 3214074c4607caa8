// One key at the standing question: the next state, and what is to be sent or done. Pure.

import { entryText } from './entry.ts';
import type { Key } from './key-names.ts';
import { type Command, commandFor } from './key-table.ts';
import { NOT_KNOWN, picksOf } from './options.ts';
import { formOf } from './pages.ts';
import { chooseWith, pressPick } from './press-pick.ts';
import { pressPage } from './press-page.ts';
import { chooseMissed, pressShoot, pressTear } from './press-tear.ts';
import { beginWord, followsFilled, leavesWords, runAfter, spellsPick } from './press-word.ts';
import { answer, editPrompt, ENTRY_LIMIT, heardAfter, isLetter, type Pressed, type Preview, still } from './pressed.ts';
import { modeOf, type ScreenState } from './state.ts';

export const press = (given: ScreenState, key: Key, preview: Preview): Pressed => {
  const unsaid = given.message === null ? given : { ...given, message: null };
  const before = unsaid.overlay !== null && leavesWords(unsaid.overlay, key) ? { ...unsaid, overlay: null } : unsaid;
  if (before !== unsaid && key.name === 'backspace') return { state: before };
  if (isLetter(key) && followsFilled(before)) return beginWord(before, key.text);
  if (spellsPick(before, key, before.overlay === null ? before.view.ask && picksOf(before.view.ask) : (formOf(before.overlay.page).picks ?? null))) {
    return { state: { ...before, run: runAfter(before, key) } };
  }
  const pressed = pressKey({ ...before, run: null }, key, preview);
  if (pressed.deed !== undefined && 'word' in pressed.deed) return beginWord(before, pressed.deed.word);
  if (!isLetter(key)) return pressed;
  if (!isTyped(before, pressed.state)) return { ...pressed, state: { ...pressed.state, run: runAfter(before, key) } };
  // What is typed right after a letter that was a key may belong together with it.
  const led = before.run !== null && before.overlay === null && entryText(before.prompt.entry) === '';
  return led ? { ...pressed, state: { ...pressed.state, prompt: { ...pressed.state.prompt, lead: before.run?.letters ?? '' } } } : pressed;
};

/** A letter that went into a line, where all the others did what keys do. */
const isTyped = (before: ScreenState, { prompt, overlay }: ScreenState): boolean =>
  before.overlay === null ? entryText(prompt.entry) !== entryText(before.prompt.entry) && overlay === null && prompt.called === before.prompt.called && !fills(before, prompt.entry.before)
    : overlay !== null && formOf(overlay.page).picks === undefined && overlay.page === before.overlay.page;

/** The whole words that a key puts into an empty line. */
const fills = ({ prompt }: ScreenState, text: string): boolean => entryText(prompt.entry) === '' && text.length > 1;

const pressKey = (state: ScreenState, key: Key, preview: Preview): Pressed => {
  if (key.ctrl && key.name === 'c') return { state, deed: { leave: 130 } };
  if (state.overlay !== null) return pressPage(state, state.overlay, key, preview);
  if (key.name === 'escape' && !key.alt) return pressEscape(state);
  const mode = modeOf(state.view.ask, state.prompt);
  // In a question with letters of its own (yes, no, good, bad) those come before the commands.
  if (mode === 'pick' && !key.alt && !state.menu) {
    const picked = chooseWith(state, key);
    if (picked !== null) return picked;
  }
  const command = commandFor(state, key);
  if (command !== null) return run({ ...state, menu: false }, command);
  if (state.menu && isLetter(key)) return { state, deed: { word: key.text } };
  if (state.menu) return key.text === '' ? still(state) : still(state, `"${key.text}" is no key here; Esc goes back to typing`);
  switch (mode) {
    case 'none': return key.name === 'paste' ? still(state) : { state };
    case 'pick': return pressPick(state, key);
    case 'shoot': return pressShoot(state, key);
    case 'called': case 'tear': return pressTear(state, key, preview, mode);
    case 'number': case 'amount': case 'text': return pressEntry(state, key, mode);
  }
};

const pressEscape = (state: ScreenState): Pressed => {
  const mode = modeOf(state.view.ask, state.prompt);
  if (state.menu) return { state: { ...state, menu: false } };
  if (mode === 'amount') return { state: { ...state, prompt: { ...state.prompt, typing: false } } };
  if (state.view.ask?.correcting !== undefined) return { state, deed: { send: { kind: 'keep' } } };
  return { state: { ...state, menu: mode === 'tear' || mode === 'number' || mode === 'text' || state.view.ask?.kind === 'confirm' } };
};

const run = (state: ScreenState, command: Command): Pressed => {
  const may = command.enabled(state);
  if (may !== true) return still(state, `not now: ${may}`);
  switch (command.id) {
    case 'leave': return { state, deed: { leave: 0 } };
    case 'correct': return { state, deed: { send: { kind: 'back' } } };
    case 'keep': return { state, deed: { send: { kind: 'keep' } } };
    case 'missed': return { state: chooseMissed(state) };
    // It is put into the line, where Enter takes it: one stray letter answers nothing.
    case 'not known': return { state: { ...state, prompt: { ...state.prompt, entry: { before: NOT_KNOWN, after: '' } } } };
    case 'put back': return { state, deed: { open: 'sure' } };
    case 'help': case 'history': case 'answers': case 'note': case 'stop': case 'other': case 'turn': case 'debrief': return { state, deed: { open: command.id } };
  }
};

const pressEntry = (state: ScreenState, key: Key, mode: 'number' | 'amount' | 'text'): Pressed => {
  const { prompt } = state;
  if (key.name === 'enter') {
    const text = entryText(prompt.entry).trim();
    if (text === '') return still(state, mode === 'text' ? 'write a few words first' : 'type a number first');
    return heardAfter(state, prompt.lead, text, answer(state, text));
  }
  if (key.name === 'tab') return takeEarlier(state);
  return editPrompt(state, key, ENTRY_LIMIT[mode], { caret: true });
};

/** Tab puts an earlier answer into the line, where it can be looked at before Enter takes it. */
const takeEarlier = (state: ScreenState): Pressed => {
  const earlier = state.view.ask?.suggestion;
  const text = earlier?.kind === 'number' || earlier?.kind === 'text' ? String(earlier.value) : '';
  if (text === '' || entryText(state.prompt.entry) !== '') return { state };
  return { state: { ...state, prompt: { ...state.prompt, entry: { before: text, after: '' } } } };
};
