// A small file that is made by one process only, however many try at the same moment.

import { createHash } from 'node:crypto';
import { closeSync, linkSync, openSync, unlinkSync, writeFileSync } from 'node:fs';
import { CodedError } from '../errors.ts';
import { systemCode } from './disk.ts';
import { inWords } from './troubles.ts';

/**
 * True when the file is now there and holds `text`. It never overwrites. It is written aside and then given its name, so that
 * nobody finds it empty; where the disk knows no second names (links), it is made in place.
 */
export function createOnly(path: string, text: string): boolean {
  const aside = `${path}.${createHash('sha256').update(text).digest('hex').slice(0, 8)}`;
  try {
    writeFileSync(aside, text, { mode: 0o600 });
    linkSync(aside, path);
    return true;
  } catch (cause) {
    const code = systemCode(cause);
    if (code === 'EEXIST') return false;
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'].includes(code)) throw notWritten(path, cause);
    return createInPlace(path, text);
  } finally {
    quietly(() => unlinkSync(aside));
  }
}

/** The same in two steps: made, then written. */
export function createInPlace(path: string, text: string): boolean {
  let fd: number;
  try {
    fd = openSync(path, 'wx', 0o600);
  } catch (cause) {
    if (systemCode(cause) === 'EEXIST') return false;
    throw notWritten(path, cause);
  }
  try {
    writeFileSync(fd, text);
    return true;
  } catch (cause) {
    quietly(() => unlinkSync(path));
    throw notWritten(path, cause);
  } finally {
    closeSync(fd);
  }
}

function notWritten(path: string, cause: unknown): CodedError {
  return new CodedError('home-not-writable', `The file ${path} could not be written: ${inWords(cause)} See that the disk has room and that the folder may be written to.`);
}

function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // What stays behind is a file that nobody reads.
  }
}
