// What the archer is told when the journal cannot be opened, read or written: what is wrong, where, and what to do.

import { basename, dirname } from 'node:path';
import { CodedError } from '../errors.ts';
import { systemCode } from './disk.ts';
import type { Reading } from './read.ts';

/** Throws where a finished line cannot be read, with its number and what to do. */
export function refuseBad(path: string, reading: Reading): void {
  const refusal = refusalOf(path, reading);
  if (refusal !== null) throw refusal;
}

/** The error that opening this journal ends in, or null where all its finished lines can be read. */
export function refusalOf(path: string, { bad }: Reading): CodedError | null {
  if (bad === null) return null;
  if (bad.code === 'newer-journal') {
    const from = bad.line === 1 ? '' : `, line ${bad.line},`;
    return new CodedError('newer-journal', `${path}${from} was written by a newer quarterturn: ${bad.reason}. The file was left as it is. Install the newer quarterturn to go on with this tune, or begin a new one.`);
  }
  if (bad.code === 'practice-journal') {
    return new CodedError('practice-journal', `${path} is a practice on an invented bow: it is no tune, and nothing of it is used for a real bow. The file was left as it is. Practices belong into the folder "practice"; "quarterturn practice" goes on with them there.`);
  }
  if (bad.code === 'not-practice') {
    return new CodedError('not-practice', `${path} is the tune of a real bow, not a practice. The file was left as it is. Move it back into the folder of the tunes; "quarterturn resume" goes on with it there.`);
  }
  const mend = bad.line === 1
    ? 'Put back a copy of it that you kept, or begin a new tune.'
    : `Put back a copy of it that you kept; or copy it, delete line ${bad.line} and all lines after it, and go on from line ${bad.line - 1}.`;
  return new CodedError('bad-journal', `${path}, line ${bad.line}, cannot be read: ${bad.reason}. The file was left as it is. ${mend}`);
}

/** Runs a call to the disk while opening; what the system refuses becomes words about the folder. */
export function usable<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (cause) {
    if (cause instanceof CodedError) throw cause;
    throw new CodedError('home-not-writable', `The journal ${basename(path)} cannot be opened in ${dirname(path)}: ${inWords(cause)} No answer in it was lost. Choose another folder, or mend this one and try again.`);
  }
}

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full.',
  EDQUOT: 'your share of the disk is used up.',
  EFBIG: 'the file has reached the size that the system allows.',
  EROFS: 'the disk can only be read.',
  EACCES: 'you may not write there.',
  EPERM: 'you may not write there.',
  EISDIR: 'a folder of that name is in the way.',
  ENOTDIR: 'a file is in the way where a folder should be.',
  EEXIST: 'a file is in the way where a folder should be.',
  EIO: 'the disk reports a fault.',
};

/** A system error as the end of a sentence. */
export function inWords(cause: unknown): string {
  const code = systemCode(cause);
  const words = WORDS[code];
  return words === undefined ? `the system says ${code}.` : `${words.slice(0, -1)} (${code}).`;
}
