// Keys on a page of the screen's own. Escape always leads out.

import { editEntry, entryText, oneLine, typed } from './entry.ts';
import type { Key } from './key-names.ts';
import { formOf, openPage, takePage } from './pages.ts';
import { moveCursor } from './press-pick.ts';
import { takeWords } from './press-word.ts';
import { ENTRY_LIMIT, heard, heardAfter, isLetter, isTooLong, type Pressed, type Preview, still, tooLong } from './pressed.ts';
import type { Overlay, ScreenState } from './state.ts';

const PAGE_STEP = 5;
const close = (state: ScreenState): Pressed => ({ state: { ...state, overlay: null, message: null } });

export const pressPage = (state: ScreenState, overlay: Overlay, key: Key, preview: Preview): Pressed => {
  if (key.name === 'escape') return close(state);
  const { page } = overlay;
  if (page.id === 'help') return pressHelp(state, page.top, key);
  const { picks } = formOf(page);
  if (key.name === 'enter') return take(state, overlay, preview);
  if (picks !== undefined) {
    if (key.name === 'paste') return heard(state, key.text, still(state, 'this is answered by choosing, not by pasting; nothing was taken'));
    const cursor = moveCursor(overlay.cursor, picks, key);
    return cursor === null ? pressLetter(state, key) : { state: { ...state, overlay: { ...overlay, cursor } } };
  }
  const entry = key.name === 'paste' ? typed(overlay.entry, oneLine(key.text)) : editEntry(overlay.entry, key, { caret: true });
  if (entry === null) return { state };
  if (isTooLong(entryText(entry), entryText(overlay.entry), ENTRY_LIMIT.text)) return still(state, tooLong(key, ENTRY_LIMIT.text));
  return { state: { ...state, overlay: { ...overlay, entry } } };
};

/** On a page without a line to type on, `s` is the stop that it is everywhere, and other letters begin a word. */
const pressLetter = (state: ScreenState, key: Key): Pressed => {
  if (!isLetter(key) || state.view.type === 'done') return { state };
  return { state, deed: key.text.toLowerCase() === 's' ? { open: 'stop' } : { word: key.text } };
};

const take = (state: ScreenState, overlay: Overlay, preview: Preview): Pressed => {
  const taken = takePage(overlay);
  if ('words' in taken) return takeWords(state, overlay, preview);
  if ('intent' in taken) {
    const sent: Pressed = { state: { ...state, overlay: null }, deed: { send: taken.intent } };
    // The key that opened a note may have been the first letter of what was typed on: "n", "ew noise".
    return heardAfter(state, overlay.lead, taken.intent.kind === 'note' ? taken.intent.note : '', sent);
  }
  if ('page' in taken) return { state: { ...state, overlay: openPage(taken.page) } };
  return taken.wants === '' ? close(state) : still(state, taken.wants);
};

/** The help page is cut to the screen where it is drawn, which also holds `top` inside it. */
const pressHelp = (state: ScreenState, top: number, key: Key): Pressed => {
  const to = (next: number): Pressed => ({ state: { ...state, overlay: openPage({ id: 'help', top: Math.max(0, next) }) } });
  switch (key.name) {
    case ' ': case 'pagedown': return to(top + PAGE_STEP);
    case 'down': return to(top + 1);
    case 'pageup': return to(top - PAGE_STEP);
    case 'up': return to(top - 1);
    case 'home': return to(0);
    case '?': case 'q': case 'enter': case 'f1': return close(state);
    case 'paste': return heard(state, key.text, still(state));
    default: return pressLetter(state, key);
  }
};
