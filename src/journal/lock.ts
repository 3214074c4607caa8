// One writer at a time: a small file beside the journal says which process has it open.
// A process is known by its number and the moment it started, since numbers are used again.

import { readFileSync, renameSync, unlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';
import { CodedError } from '../errors.ts';
import { startTimeOf, stillRuns } from './alive.ts';
import { createOnly } from './create-only.ts';
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
  const lock = (notice: string | null): Lock => ({ notice, release: () => release(path, mine) });
  // Several tries: between looking and taking, another may have let go of it, or be taking it over.
  for (let tries = 0; tries < 100; tries += 1) {
    if (createOnly(path, mine)) return lock(null);
    const held = readSettled(path);
    if (held === null) continue;
    const owner = ownerOf(held);
    if (owner !== null) refuseIfHeld(path, owner, me);
    if (replaceStale(path, held, mine)) return lock(takenOver(owner));
    pause();
  }
  throw new CodedError('locked', `Another quarterturn is opening this tune at this very moment. Wait a second and try again. If it stays so, remove ${path} and ${path}.taking.`);
}

/** The lock's text, or null if it is gone. One without its end may be in the making: it gets a moment. */
function readSettled(path: string): string | null {
  for (let wait = 0; ; wait += 1) {
    const text = readNow(path);
    if (text === null || text.endsWith('\n') || wait === 10) return text;
    pause();
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
  if (stillRuns(owner)) {
    throw new CodedError('locked', `This tune is open in another window (process ${owner.pid}, since ${owner.since}). Leave it there first, or end that process. Only if it is no quarterturn, remove ${path}.`);
  }
}

/**
 * Puts our lock in the place of a stale one; false if another is at it or was quicker. One at a time, by a claim beside the lock:
 * without it, two that saw the same stale lock could remove it one after the other, the second time with a live one in its place.
 */
function replaceStale(path: string, stale: string, mine: string): boolean {
  const claim = `${path}.taking`;
  if (!createOnly(claim, mine)) {
    // Whoever claimed it and died on the spot holds nobody up.
    const owner = ownerOf(readSettled(claim) ?? '');
    if (owner === null || !stillRuns(owner)) quietly(() => unlinkSync(claim));
    return false;
  }
  try {
    if (readNow(path) !== stale) return false;
    // The claim becomes the lock in one stroke: there is no moment without a lock.
    renameSync(claim, path);
    return readNow(path) === mine;
  } catch (cause) {
    if (systemCode(cause) === 'ENOENT') return false;
    throw new CodedError('home-not-writable', `The old lock ${path} cannot be replaced: ${inWords(cause)} See that the folder may be written to.`);
  } finally {
    quietly(() => { if (readNow(claim) === mine) unlinkSync(claim); });
  }
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

/** Five milliseconds. */
function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
}

function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // Nothing is lost: what stays behind is a lock that the next start finds stale.
  }
}
