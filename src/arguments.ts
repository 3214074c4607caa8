// The command line to what is wanted. What is not understood gets one line that says what would be.

import { parseArgs } from 'node:util';
import { CodedError } from './errors.ts';

export type Face = 'screen' | 'plain' | 'pipe';
interface Given { readonly face: Face | null; readonly home?: string }
/** A tune to walk through: a new one, one named, or the latest. */
export type Walking = Given & ({ readonly command: 'go-on' | 'new' } | { readonly command: 'resume'; readonly id: string | null });
/** Something to tell about the tunes that are kept. */
export type Telling = Given & ({ readonly command: 'list' } | { readonly command: 'record'; readonly id: string | null });
/** What is practised: by a menu, a bow by its number, a lesson by its name, or one that was broken off. */
export type Practising = Given & { readonly command: 'practice' } & (
  | { readonly what: 'menu' } | { readonly what: 'bow' | 'lesson'; readonly name: string }
  | { readonly what: 'resume' | 'record' | 'debrief'; readonly id: string | null } | { readonly what: 'list' }
);
export type Wanted = { readonly command: 'help' | 'version' | 'schema' } | Walking | Telling | Practising;

export const HELP = `quarterturn walks you through tuning a compound bow,
one adjustment at a time.

  quarterturn              go on with the latest tune, or begin one
  quarterturn new          begin a tune
  quarterturn resume [ID]  go on with a tune
  quarterturn list         the tunes on this machine
  quarterturn record [ID]  the bow record of a tune, as Markdown

  quarterturn practice                an invented bow to learn on
  quarterturn practice --lesson NAME  one of its lessons
  quarterturn practice --bow N        a bow by its number
  quarterturn practice list           what was practised; and
              resume, record, debrief [ID]  as with tunes

  --plain                  numbered lines, for screen readers and pipes
  --pipe                   one JSON object a line each way, for programs
  --pipe --schema          what goes over the pipe, as JSON Schema
  --home DIR               keep tunes in DIR (or set QUARTERTURN_HOME)
  --help, --version

Every answer is on disk before the next question shows.
Nothing leaves this machine.
`;

const COMMANDS = ['new', 'resume', 'list', 'record', 'practice'] as const;
const PRACTICE = ['list', 'resume', 'record', 'debrief'] as const;
const OPTIONS = {
  plain: { type: 'boolean' }, pipe: { type: 'boolean' }, schema: { type: 'boolean' },
  home: { type: 'string' }, bow: { type: 'string' }, lesson: { type: 'string' }, help: { type: 'boolean', short: 'h' }, version: { type: 'boolean' },
} as const;

const bad = (message: string): CodedError => new CodedError('bad-argument', `${message} "quarterturn --help" lists what there is.`);

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (cause) {
    // Node's own sentence names the option; what follows its first full stop is advice for programmers.
    const said = cause instanceof Error ? cause.message.split(/\. |\n/)[0] : '';
    throw bad(`${said || 'The command line is not understood'}.`);
  }
}

/** Throws CodedError('bad-argument'). */
export function readArguments(args: readonly string[]): Wanted {
  const { values, positionals } = parse(args);
  if (values.help) return { command: 'help' };
  if (values.version) return { command: 'version' };
  if (values.schema && !values.pipe) throw bad('--schema goes with --pipe: quarterturn --pipe --schema.');
  if (values.pipe && values.plain) throw bad('--pipe and --plain do not go together: choose one.');
  if (values.home === '') throw bad('--home needs a folder: --home DIR.');
  const [word, id, ...more] = positionals;
  if (word !== 'practice' && (values.bow !== undefined || values.lesson !== undefined)) throw bad('--bow and --lesson go with practice: quarterturn practice --bow 12.');
  if (values.schema) {
    if (word !== undefined) throw bad('--pipe --schema goes by itself.');
    return { command: 'schema' };
  }
  const face: Face | null = values.pipe ? 'pipe' : values.plain ? 'plain' : null;
  const rest = { face, ...(values.home === undefined ? {} : { home: values.home }) };
  if (word === undefined) return { command: 'go-on', ...rest };
  const command = COMMANDS.find((name) => name === word);
  if (command === undefined) throw bad(`There is no command "${word}". The commands are ${COMMANDS.join(', ')}.`);
  if (command === 'practice') return { command, ...rest, ...practiceIn(values, id, more) };
  if (command === 'resume' || command === 'record') {
    if (more.length > 0) throw bad(`"${command}" takes one tune.`);
    return { command, id: id ?? null, ...rest };
  }
  if (id !== undefined) throw bad(`"${command}" takes nothing after it, but "${id}" was given.`);
  return { command, ...rest };
}

type What = Practising extends infer P ? (P extends Practising ? Omit<P, 'command' | keyof Given> : never) : never;

function practiceIn({ bow, lesson }: { readonly bow?: string; readonly lesson?: string }, word: string | undefined, [id, ...more]: readonly string[]): What {
  if (bow !== undefined && lesson !== undefined) throw bad('--bow and --lesson do not go together: a lesson has a bow of its own.');
  if (word !== undefined && (bow !== undefined || lesson !== undefined)) throw bad(`--${bow === undefined ? 'lesson' : 'bow'} begins a practice, and "${word}" goes by itself.`);
  if (bow !== undefined) return { what: 'bow', name: bow };
  if (lesson !== undefined) return { what: 'lesson', name: lesson };
  if (word === undefined) return { what: 'menu' };
  const what = PRACTICE.find((one) => one === word);
  if (what === undefined) throw bad(`"practice ${word}" is not known. There is practice alone, practice --lesson NAME, practice --bow N, and practice ${PRACTICE.join(', ')}.`);
  if (what === 'list' ? id !== undefined : more.length > 0) throw bad(what === 'list' ? '"practice list" takes nothing after it.' : `"practice ${what}" takes one practice.`);
  return what === 'list' ? { what } : { what, id: id ?? null };
}

/** The face that fits: the one asked for, else the screen where both ends are terminals that can redraw. */
export function chooseFace(asked: Face | null, term: string | undefined, stdinIsTTY: boolean, stdoutIsTTY: boolean): Face {
  if (asked !== null) return asked;
  return stdinIsTTY && stdoutIsTTY && term !== 'dumb' ? 'screen' : 'plain';
}
