// Keys of a shot: its call first, then its tear or where it landed, typed or moved to with the arrows.

import type { Answer, Tear } from '../machine/types.ts';
import { EMPTY, type Entry, entryText } from './entry.ts';
import type { Key } from './key-names.ts';
import { answer, editPrompt, ENTRY_LIMIT, heard, heardAfter, isLetter, type Pressed, type Preview, still } from './pressed.ts';
import { shotKind, type ShotKind } from './shot-kind.ts';
import type { ScreenState } from './state.ts';

const MISSED = 'missed';

export const pressTear = (state: ScreenState, key: Key, preview: Preview, mode: 'called' | 'tear'): Pressed =>
  mode === 'called' ? pressCall(state, key) : pressHole(state, key, preview);

/** On a practice bow the arrow is let go first; how that felt is told, and then it is called. */
export const pressShoot = (state: ScreenState, key: Key): Pressed => {
  if (key.name === 'enter' || key.text === ' ') return { state: { ...state, prompt: { ...state.prompt, loosed: true } } };
  if (key.name === 'paste') return heard(state, key.text, still(state, 'Enter lets the arrow go; nothing was taken'));
  if (isLetter(key)) return { state, deed: { word: key.text } };
  return key.text === '' ? { state } : still(state, `"${key.text}" is no key here: Enter lets the arrow go`);
};

const pressCall = (state: ScreenState, key: Key): Pressed => {
  const called = key.text.toLowerCase() === 'g' ? 'good' : key.text.toLowerCase() === 'b' ? 'bad' : null;
  if (called !== null) return { state: { ...state, prompt: { ...state.prompt, called } } };
  if (key.name === 'enter') return still(state, 'call it first: g for a good shot, b for a bad one');
  if (key.name === 'paste') return heard(state, key.text, still(state, 'call the shot first, g or b; nothing was taken'));
  if (isLetter(key)) return { state, deed: { word: key.text } };
  return key.text === '' ? { state } : still(state, `"${key.text}" is no key here: g good, b bad, m missed`);
};

const pressHole = (state: ScreenState, key: Key, preview: Preview): Pressed => {
  const { prompt } = state;
  const text = shotText(prompt.entry);
  if (key.name === 'enter') return takeHole(state, preview);
  if (key.name === 'backspace' && text === '') {
    return { state: { ...state, prompt: { ...prompt, called: prompt.tail === null ? null : prompt.called, tail: null, entry: EMPTY } } };
  }
  const kind = shotKind(state.view.ask);
  const move = moveOf(key, kind);
  if (move === null) return editPrompt(state, key, ENTRY_LIMIT.tear, { caret: false });
  const from = prompt.tail ?? tearOf(preview, text) ?? { x: 0, y: 0 };
  const tail = { x: within(from.x + move.x, kind.edge), y: within(from.y + move.y, kind.edge) };
  return { state: { ...state, prompt: { ...prompt, entry: EMPTY, tail } } };
};

const within = (value: number, edge: number): number => Math.max(-edge, Math.min(edge, value));

const moveOf = (key: Key, { step: small, bigStep: big }: ShotKind): Tear | null => {
  const step = key.shift ? big : small;
  switch (key.ctrl || key.alt ? '' : key.name) {
    case 'up': return { x: 0, y: step };
    case 'down': return { x: 0, y: -step };
    case 'left': return { x: -step, y: 0 };
    case 'right': return { x: step, y: 0 };
    case 'pageup': return { x: 0, y: big };
    case 'pagedown': return { x: 0, y: -big };
    case 'home': return { x: -big, y: 0 };
    case 'end': return { x: big, y: 0 };
    default: return null;
  }
};

/** The one shot in an answer, where it is one. */
const shotIn = (given: Answer): Tear | null => {
  const shot = given.kind === 'shots' && given.shots.length === 1 ? given.shots[0] : undefined;
  return shot === undefined || 'missed' in shot ? null : { x: shot.x, y: shot.y };
};

/** A missed shot is put into the line, where Enter takes it: one stray key makes no shot. */
export const chooseMissed = (state: ScreenState): ScreenState => ({
  ...state, prompt: { ...state.prompt, loosed: true, called: state.prompt.called ?? 'good', tail: null, entry: { before: MISSED, after: '' } },
});

/** What was typed for a shot; the key `m` alone stands for its word. */
export const shotText = (entry: Entry): string => {
  const text = entryText(entry).trim();
  return text.toLowerCase() === 'm' ? MISSED : text;
};

/** What was typed, as a tear, once it can be read as one. */
export const tearOf = (preview: Preview, text: string): Tear | null => {
  if (text === '') return null;
  const understood = preview(text);
  return understood.ok ? shotIn(understood.answer) : null;
};

/** Words are listened to before they are read as a shot: "high 1/2 it cracked" is both. */
const takeHole = (state: ScreenState, preview: Preview): Pressed =>
  heard(state, /\p{L}/u.test(entryText(state.prompt.entry)) ? shotText(state.prompt.entry) : '', readHole(state, preview));

const readHole = (state: ScreenState, preview: Preview): Pressed => {
  const { prompt } = state;
  const text = shotText(prompt.entry);
  const called = prompt.called ?? 'good';
  if (prompt.tail !== null) return answer(state, { ...prompt.tail, called });
  const kind = shotKind(state.view.ask);
  if (text === '') return still(state, `move the ${kind.moved} with the arrows, or type it: ${kind.like}. ${kind.onTheSpot}`);
  // The letter that called it may have been the first one of "bad high 1/2", or of "blood".
  const whole = prompt.lead + text;
  const alone = preview(text);
  const understood = !alone.ok && /^(bad|good)\b/i.test(whole) ? preview(whole) : alone;
  if (!understood.ok) return heardAfter(state, prompt.lead, text, still(state, alone.ok ? null : alone.message));
  const tear = shotIn(understood.answer);
  if (tear !== null) return answer(state, { ...tear, called });
  if (understood.answer.kind === 'shots' && understood.answer.shots.length > 1) {
    return still(state, 'one shot at a time here: each is called before it is looked at');
  }
  return answer(state, understood.answer.kind === 'shots' ? { missed: true } : text);
};
