// The one table of keys: it drives what a key does, the key line, and the keys part of the `?` page.

import { entryText } from './entry.ts';
import type { Key } from './key-names.ts';
import { cut, textWidth } from './text-width.ts';
import { isChecks, picksOf } from './options.ts';
import { formOf } from './pages.ts';
import { shotKind } from './shot-kind.ts';
import { modeOf, type ScreenState } from './state.ts';

export type CommandId = 'help' | 'leave' | 'put back' | 'history' | 'answers' | 'correct' | 'keep' | 'note' | 'stop' | 'other' | 'missed' | 'not known' | 'turn' | 'debrief';

export interface Command {
  readonly id: CommandId;
  readonly key: string;
  /** For the key line. */
  readonly label: string;
  /** For the `?` page. */
  readonly help: string;
  /** Left out of sight where it has no meaning at all. */
  readonly here?: (state: ScreenState) => boolean;
  /** True, or why not now. */
  readonly enabled: (state: ScreenState) => true | string;
}

const always = (): true => true;
const shooting = ({ view, prompt }: ScreenState): boolean => ['called', 'tear'].includes(modeOf(view.ask, prompt));
const practising = ({ view }: ScreenState): boolean => view.practice !== undefined;
const walking = ({ view }: ScreenState): true | string => (view.type === 'done' ? 'the tune is finished' : true);

export const COMMANDS: readonly Command[] = [
  { id: 'missed', key: 'm', label: 'missed', help: 'the shot missed: no hole in the paper, or off the target; Enter takes it', here: shooting, enabled: always },
  { id: 'not known', key: 'u', label: 'not known', help: 'you do not know, and have no way to find out now; Enter takes it',
    here: ({ view }) => view.ask?.unknown === true && picksOf(view.ask) === null, enabled: always },
  { id: 'help', key: '?', label: 'why', help: 'why this is asked, the words in it, and all keys (also F1)', enabled: always },
  { id: 'stop', key: 's', label: 'stop', help: 'something is wrong: stop here and say what', enabled: walking },
  { id: 'leave', key: 'q', label: 'leave', help: 'leave; all is kept (Ctrl-C does the same)', enabled: always },
  { id: 'put back', key: 'p', label: 'put back', help: 'undo the last adjustment on the bow', enabled: ({ view }) => view.may.putBack },
  { id: 'correct', key: 'c', label: 'correct', help: 'correct the last answer; the bow is not touched',
    enabled: ({ view }) => (view.ask?.correcting === undefined ? view.may.back : 'an answer is being corrected already: Esc keeps it as it was') },
  { id: 'history', key: 'h', label: 'history', help: 'what was done and what came of it; bring the bow back to an earlier point', enabled: always },
  { id: 'answers', key: 'r', label: 'review', help: 'review all your answers, and change one; the bow is not touched', enabled: always },
  { id: 'note', key: 'n', label: 'note', help: 'write a note into the record', enabled: walking },
  { id: 'other', key: 'o', label: 'other', help: 'you moved something, or something was replaced or fell', enabled: walking },
  { id: 'turn', key: 't', label: 'turn', help: 'in practice: turn something on the bow and tell nobody', here: practising, enabled: walking },
  { id: 'debrief', key: 'd', label: 'debrief', help: 'in practice: end it here, and be told what was true', here: practising, enabled: walking },
  { id: 'keep', key: 'esc', label: 'keep old answer', help: 'keep the answer as it was', here: ({ view }) => view.ask?.correcting !== undefined, enabled: always },
];

/** May a bare letter be a command now, or is it being typed? */
export const lettersAreCommands = (state: ScreenState): boolean => {
  const mode = modeOf(state.view.ask, state.prompt);
  if (state.menu || mode === 'none' || mode === 'pick' || mode === 'shoot' || mode === 'called') return true;
  return (mode === 'number' || mode === 'amount') && entryText(state.prompt.entry) === '';
};

/** The command that a key stands for at this moment, allowed or not. */
export const commandFor = (state: ScreenState, key: Key): Command | null => {
  if (key.ctrl) return null;
  const name = key.name === 'f1' ? '?' : key.name.toLowerCase();
  const command = COMMANDS.find((one) => one.key === name && (one.here?.(state) ?? true));
  if (command === undefined || command.id === 'keep') return null;
  if (key.alt || key.name === 'f1' || lettersAreCommands(state)) return command;
  // No answer begins with a question mark.
  return command.id === 'help' && entryText(state.prompt.entry) === '' ? command : null;
};

/** The keys that answer, before the commands. */
const answerKeys = (state: ScreenState): readonly (readonly [string, string])[] => {
  const { ask } = state.view;
  switch (modeOf(ask, state.prompt)) {
    case 'none': return [];
    case 'pick': return ask?.kind === 'choice' && ask.many
      ? [['space', isChecks(ask) ? 'NOT true' : 'mark'], ['enter', 'take'], ['arrows', 'choose']]
      : [['enter', 'take'], [ask?.kind === 'confirm' ? 'y, n' : 'arrows', 'choose']];
    case 'shoot': return [['enter', 'shoot']];
    case 'called': return [['g', 'good'], ['b', 'bad']];
    case 'tear': return [['enter', 'take']];
    case 'amount': return [['enter', 'take'], ['esc', 'back']];
    case 'number': case 'text': return [['enter', 'take']];
  }
};

const overlayKeys = (state: ScreenState): readonly (readonly [string, string])[] => {
  if (state.overlay === null) return [];
  const { page } = state.overlay;
  if (page.id === 'help') return [['esc', 'close'], ['space', 'further'], ['up', 'back']];
  const list = formOf(page).picks;
  return list === undefined
    ? [['enter', 'take'], ['esc', 'back']]
    : list.length === 0 ? [['esc', 'back']] : [['enter', 'take'], ['arrows', 'choose'], ['esc', 'back']];
};

/** What the key line tells, in the order in which it is cut. */
export const keysShown = (state: ScreenState): readonly (readonly [string, string])[] => {
  if (state.overlay !== null) return overlayKeys(state);
  const letters = lettersAreCommands(state);
  const mode = modeOf(state.view.ask, state.prompt);
  const commands = COMMANDS.filter((one) => (one.here?.(state) ?? true) && one.enabled(state) === true);
  const keep = commands.filter((one) => one.id === 'keep').map((one) => [one.key, one.label] as const);
  const rest = commands.filter((one) => one.id !== 'keep').filter((one) => !(state.view.ask?.kind === 'confirm' && one.key === 'n' && !state.menu));
  const shown = rest.map((one) => [one.key, one.label] as const);
  if (state.menu) return [['esc', 'back to typing'], ...shown];
  const now = rest.filter((one) => one.id === 'help' || (mode === 'tear' && one.id === 'missed')).map((one) => [one.key, one.label] as const);
  const { moved, bigWords } = shotKind(state.view.ask);
  const arrows = mode === 'tear' ? [['arrows', `move the ${moved}`] as const, ['shift', bigWords] as const] : [];
  if (!letters) return [...answerKeys(state), ...(keep.length > 0 ? keep : [['esc', 'other keys'] as const]), ...now, ...arrows];
  // The way out of a correction is told before anything else that may be cut.
  const [first, ...others] = answerKeys(state);
  return [...(first === undefined ? [] : [first]), ...(mode === 'called' ? others : []), ...keep, ...(mode === 'called' ? [] : others), ...shown];
};

/** What must not be cut where few fit: the answer, then "not known", "missed" and the stop; arrows are found without being told. */
const NARROW = ['space', 'g', 'b', 'enter', 'y, n', 'esc', 'u', 'm', 's', '?'];
const forNarrow = (keys: readonly (readonly [string, string])[]): readonly (readonly [string, string])[] => {
  const rank = ([key]: readonly [string, string]): number => (NARROW.includes(key) ? NARROW.indexOf(key) : NARROW.length);
  return [...keys].sort((a, b) => rank(a) - rank(b)).map(([key, label]) => [key, label === 'not known' ? 'unknown' : label] as const);
};

/** One line of keys, cut at the width; whatever is cut is on the `?` page. `more`: so are words that had no room, and `?` comes first. */
export const keyLine = (state: ScreenState, width: number, more = false): string => {
  const narrow = width < 60;
  const keys = narrow ? forNarrow(keysShown(state)) : keysShown(state);
  const shown = more ? [['?', 'more'] as const, ...keys.filter(([key]) => key !== '?')] : keys;
  const parts = shown.map(([key, label]) => `${key} ${label}`);
  let line = '';
  for (const part of parts) {
    const longer = line === '' ? part : `${line}${narrow ? '  ' : '   '}${part}`;
    if (textWidth(longer) > width - (part === parts.at(-1) ? 0 : 2)) return cut(`${line} \u2026`, width);
    line = longer;
  }
  return line;
};
