// One writer at a time: a small file beside the journal says which process has it open.
// A process is known by its number and the moment it started, since numbers are used again.

import { closeSync, linkSync, openSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';
import { CodedError } from '../errors.ts';
import { systemCode } from './disk.ts';
import { inWords } from './troubles.ts';

const ownerSchema = z.object({ pid: z.int().min(1), host: z.string(), startTime: z.string().nullable(), since: z.string() });
export type Owner = z.infer<typeof ownerSchema>;

export interface Lock {
  /** What was found in the way and taken over, to be told once; null where nothing was. */
  readonly notice: string | null;
  /** Gives the journal free. A lock that is no longer ours is left alone. */
  release(): void;
}

/** Takes the lock of a journal. Throws CodedError('locked') where another process has it, or may have it. */
export function takeLock(journal: string, opts: { readonly now: Date; readonly host?: string; readonly pid?: number }): Lock {
  const path = `${journal}.lock`;
  const pid = opts.pid ?? process.pid;
  const me: Owner = { pid, host: opts.host ?? hostname(), startTime: startTimeOf(pid), since: opts.now.toISOString() };
  const mine = `${JSON.stringify(me)}\n`;
  let notice: string | null = null;
  // A few tries: between looking and taking, another may have let go of it, or taken it over.
  for (let tries = 0; tries < 5; tries += 1) {
    if (create(path, mine)) return { notice, release: () => release(path, mine) };
    const held = readSettled(path);
    if (held === null) continue;
    const owner = ownerOf(held);
    if (owner !== null) refuseIfHeld(path, owner, me);
    if (setAside(path, held, pid)) notice = takenOver(owner);
  }
  throw new CodedError('locked', `Another quarterturn is opening this tune at this very moment. Wait a second and try again. If it stays so, remove ${path}.`);
}

/** True when the lock file is now there and ours. It never overwrites. */
function create(path: string, text: string): boolean {
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
  return new CodedError('home-not-writable', `The lock ${path} could not be written: ${inWords(cause)} See that the disk has room and that the folder may be written to.`);
}

/** The lock's text, or null if it is gone. One without its end may be in the making: it gets a moment. */
function readSettled(path: string): string | null {
  for (let wait = 0; ; wait += 1) {
    const text = readNow(path);
    if (text === null || text.endsWith('\n') || wait === 10) return text;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
  }
}

function readNow(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    if (systemCode(cause) === 'ENOENT') return null;
    throw new CodedError('home-not-writable', `The lock ${path} cannot be read: ${inWords(cause)} See what it is and whose; if no quarterturn is running, remove it.`);
  }
}

function ownerOf(text: string): Owner | null {
  try {
    return ownerSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

function refuseIfHeld(path: string, owner: Owner, me: Owner): void {
  if (owner.host !== me.host) {
    throw new CodedError('locked', `This tune is open on another computer, "${owner.host}", since ${owner.since}. Leave it there first. If that computer no longer has it open, remove ${path} and try again.`);
  }
  const now = startTimeOf(owner.pid);
  const same = owner.startTime === null || now === null || owner.startTime === now;
  if (isAlive(owner.pid) && same) {
    throw new CodedError('locked', `This tune is open in another window (process ${owner.pid}, since ${owner.since}). Leave it there first, or end that process. Only if it is no quarterturn, remove ${path}.`);
  }
}

/** Moves a stale lock out of the way; true if it was the one that was looked at and not a new one in its place. */
function setAside(path: string, stale: string, pid: number): boolean {
  const aside = `${path}.stale-${pid}`;
  try {
    renameSync(path, aside);
  } catch (cause) {
    if (systemCode(cause) === 'ENOENT') return false;
    throw new CodedError('home-not-writable', `The old lock ${path} cannot be removed: ${inWords(cause)} See that the folder may be written to.`);
  }
  const same = readNow(aside) === stale;
  // Another was quicker, and this is its lock: give it back (a link does not overwrite a third one's).
  if (!same) quietly(() => linkSync(aside, path));
  quietly(() => unlinkSync(aside));
  return same;
}

function takenOver(owner: Owner | null): string {
  return owner === null
    ? 'A lock without a name was left on this tune; it was removed.'
    : `The last sitting (since ${owner.since}) ended without leaving. Its lock was removed; every answer it had taken is kept.`;
}

function release(path: string, mine: string): void {
  quietly(() => {
    if (readNow(path) === mine) unlinkSync(path);
  });
}

/** Alive, and not a dead process that its parent has not yet seen off. */
function isAlive(pid: number): boolean {
  const state = statOf(pid)?.[0];
  if (state !== undefined) return state !== 'Z' && state !== 'X';
  try {
    process.kill(pid, 0);
    return true;
  } catch (cause) {
    return systemCode(cause) !== 'ESRCH';
  }
}

/** When the process started, in the system's own count (Linux: ticks since boot); null where the system does not say. */
export function startTimeOf(pid: number): string | null {
  return statOf(pid)?.[19] ?? null;
}

/** The fields of /proc/PID/stat after the command's name (which may hold spaces and brackets): the state is the first of them. */
function statOf(pid: number): string[] | null {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return text.slice(text.lastIndexOf(')') + 2).trim().split(' ');
  } catch {
    return null;
  }
}

function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // Nothing is lost: what stays behind is a lock that the next start finds stale.
  }
}
