// One key at the standing question: the next state, and what is to be sent or done. Pure.

import { entryText } from './entry.ts';
import type { Key } from './key-names.ts';
import { type Command, commandFor } from './key-table.ts';
import { chooseWith, pressPick } from './press-pick.ts';
import { pressPage } from './press-page.ts';
import { chooseMissed, pressTear } from './press-tear.ts';
import { answer, editPrompt, ENTRY_LIMIT, type Pressed, type Preview, still } from './pressed.ts';
import { modeOf, type ScreenState } from './state.ts';

export const press = (before: ScreenState, key: Key, preview: Preview): Pressed => {
  const state = before.message === null ? before : { ...before, message: null };
  if (key.ctrl && key.name === 'c') return { state, deed: { leave: 130 } };
  if (state.overlay !== null) return pressPage(state, state.overlay, key);
  if (key.name === 'escape' && !key.alt) return pressEscape(state);
  const mode = modeOf(state.view.ask, state.prompt);
  // In a question with letters of its own (yes, no, good, bad) those come before the commands.
  if (mode === 'pick' && !key.alt && !state.menu) {
    const picked = chooseWith(state, key);
    if (picked !== null) return picked;
  }
  const command = commandFor(state, key);
  if (command !== null) return run({ ...state, menu: false }, command);
  if (state.menu) return key.text === '' ? still(state) : still(state, `"${key.text}" is no key here; Esc goes back to typing`);
  switch (mode) {
    case 'none': return key.name === 'paste' ? still(state) : { state };
    case 'pick': return pressPick(state, key);
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
    case 'not known': return answer(state, 'not known');
    case 'put back': return { state, deed: { open: 'sure' } };
    case 'help': case 'history': case 'answers': case 'note': case 'stop': case 'other': return { state, deed: { open: command.id } };
  }
};

const pressEntry = (state: ScreenState, key: Key, mode: 'number' | 'amount' | 'text'): Pressed => {
  const { prompt } = state;
  if (key.name === 'enter') {
    const text = entryText(prompt.entry).trim();
    if (text === '') return still(state, mode === 'text' ? 'write a few words first' : 'type a number first');
    return answer(state, text);
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
