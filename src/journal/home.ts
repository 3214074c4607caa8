// Where tunes are kept: one folder, one journal a tune, named by the day it was begun and a letter.

import { readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { CodedError } from '../errors.ts';
import { systemCode } from './disk.ts';
import { inWords } from './troubles.ts';

const ENDING = '.jsonl';
const ID = /^\d{4}-\d{2}-\d{2}-[a-z]+$/;

/** The folder for tunes, as an absolute path; it need not be there yet. What is named first wins: flag, QUARTERTURN_HOME, the system's place for data. */
export function homeFolder(
  env: Readonly<Record<string, string | undefined>>,
  flag?: string,
  platform: string = process.platform,
): string {
  const named = flag || env['QUARTERTURN_HOME'];
  if (named) return resolve(named);
  // The XDG rules say that a path which is not absolute is to be ignored.
  const xdg = env['XDG_DATA_HOME'];
  if (xdg && isAbsolute(xdg)) return join(xdg, 'quarterturn');
  const own = env['HOME'] || homedir();
  if (platform === 'darwin') return join(own, 'Library', 'Application Support', 'quarterturn');
  if (platform === 'win32') return join(env['LOCALAPPDATA'] || join(own, 'AppData', 'Local'), 'quarterturn');
  return join(own, '.local', 'share', 'quarterturn');
}

/** Practices have a folder of their own below: a list of tunes never looks into it. */
export const practiceFolder = (home: string): string => join(home, 'practice');

/** Ids of the tunes in a folder, in no order; none where the folder is not there. Throws CodedError('home-not-writable'). */
export function tuneIds(home: string): string[] {
  return namesIn(home)
    .filter((name) => name.endsWith(ENDING))
    .map((name) => name.slice(0, -ENDING.length))
    .filter((id) => ID.test(id));
}

/** The journal of a tune. Throws CodedError('no-tune') for what cannot be an id, so that an id never leads out of the folder. */
export function tunePath(home: string, id: string): string {
  if (!ID.test(id)) {
    throw new CodedError('no-tune', `"${id}" is not the name of a tune. Names look like 2026-11-25-a: the day it was begun and a letter.`);
  }
  return join(home, id + ENDING);
}

/** A name for a tune begun now (local day): the letter after the last one used that day, also by what is left of a removed tune. */
export function newTunePath(home: string, now: Date): { readonly id: string; readonly path: string } {
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n, at) => String(n).padStart(at === 0 ? 4 : 2, '0')).join('-');
  const used = namesIn(home)
    .filter((name) => name.startsWith(`${day}-`))
    .map((name) => rankOf(/^[a-z]+/.exec(name.slice(day.length + 1))?.[0] ?? ''));
  const id = `${day}-${lettersOf(Math.max(0, ...used) + 1)}`;
  return { id, path: tunePath(home, id) };
}

/** a = 1 … z = 26, aa = 27; nothing = 0. */
function rankOf(letters: string): number {
  return [...letters].reduce((rank, letter) => rank * 26 + letter.charCodeAt(0) - 96, 0);
}

function lettersOf(rank: number): string {
  return rank === 0 ? '' : lettersOf(Math.floor((rank - 1) / 26)) + String.fromCharCode(97 + ((rank - 1) % 26));
}

function namesIn(home: string): string[] {
  try {
    return readdirSync(home);
  } catch (cause) {
    if (systemCode(cause) === 'ENOENT') return [];
    throw new CodedError('home-not-writable', `The folder for tunes, ${home}, cannot be read: ${inWords(cause)} Mend that, or choose another folder.`);
  }
}
