// The journal on disk: one line a fact, durable when `append` returns, and nothing kept when it throws.

import { constants } from 'node:fs';
import { dirname } from 'node:path';
import { CodedError } from '../errors.ts';
import type { Fact, Store } from '../machine/types.ts';
import { makeFolder, realDisk, syncFolder, writeAll, type Disk } from './disk.ts';
import { OF_A_PRACTICE, OF_A_TUNE, type JournalKind } from './kinds.ts';
import { takeLock } from './lock.ts';
import type { PracticeMark } from './practice-mark.ts';
import { prepareLine, readJournal, type Reading } from './read.ts';
import { cutTorn } from './torn.ts';
import { inWords, refuseBad, usable } from './troubles.ts';
import { VERSIONS, type Versions } from './versions.ts';

export interface FileStoreOptions {
  readonly now: Date;
  /** Who opens it; for tests of the lock. */
  readonly host?: string;
  readonly pid?: number;
  /** The disk; for tests of its faults. */
  readonly disk?: Disk;
  /** Versions that are known; for tests of later ones. */
  readonly versions?: Versions;
}

/** A store of a practice: each line may say besides what was truly done. */
export interface PracticeStore extends Store {
  readonly marks: ReadonlyMap<number, PracticeMark>;
  append(fact: Fact, mark?: PracticeMark | null): void;
}

/**
 * Opens a journal for writing, or begins an empty one. A last line that was cut short is copied aside and cut off, with a notice.
 * Throws CodedError: 'locked', 'bad-journal' or 'newer-journal' (the file stays as it is), 'home-not-writable'.
 */
export const openFileStore = (path: string, opts: FileStoreOptions): Store => openAs(OF_A_TUNE, path, opts);

/** The same for a practice: its lines and a tune's are never taken for one another ('practice-journal', 'not-practice'). */
export const openPracticeStore = (path: string, opts: FileStoreOptions): PracticeStore => openAs(OF_A_PRACTICE, path, opts);

function openAs(kind: JournalKind, path: string, opts: FileStoreOptions): PracticeStore {
  const { disk = realDisk, versions = VERSIONS } = opts;
  usable(path, () => makeFolder(disk, dirname(path)));
  const lock = takeLock(path, opts);
  let fd: number | null = null;
  try {
    const file = usable(path, () => openOrCreate(disk, path));
    fd = file;
    const reading = readJournal(usable(path, () => disk.readFileSync(file)), versions, kind);
    refuseBad(path, reading);
    const notices = lock.notice === null ? [] : [lock.notice];
    if (reading.torn.length > 0) notices.push(usable(path, () => cutTorn(disk, path, file, reading)));
    return new FileStore(disk, path, file, reading, { versions, kind }, notices, () => lock.release());
  } catch (cause) {
    if (fd !== null) disk.closeSync(fd);
    lock.release();
    throw cause;
  }
}

class FileStore implements PracticeStore {
  readonly facts: Fact[];
  readonly marks: Map<number, PracticeMark>;
  /** Bytes up to the end of the last line that was made durable. */
  #good: number;
  /** What a failed append may have left behind `#good`; null when the file ends there. */
  #leftover: Buffer | null = null;
  /** The version that the last line was written under. */
  #version: number;
  #open = true;

  constructor(
    private readonly disk: Disk,
    private readonly path: string,
    private readonly fd: number,
    reading: Reading,
    private readonly as: { readonly versions: Versions; readonly kind: JournalKind },
    readonly notices: readonly string[],
    private readonly release: () => void,
  ) {
    this.facts = [...reading.facts];
    this.marks = new Map(reading.marks);
    this.#good = reading.good;
    this.#version = reading.version;
  }

  append(fact: Fact, mark: PracticeMark | null = null): void {
    if (!this.#open) throw new CodedError('internal', 'A line was to be written after the journal was closed.');
    const line = prepareLine(fact, this.facts.length + 1, { before: this.#version, ...this.as, mark });
    const bytes = Buffer.from(line.text, 'utf8');
    this.#checkTail();
    try {
      writeAll(this.disk, this.fd, bytes, this.#good);
      this.disk.fsyncSync(this.fd);
    } catch (cause) {
      this.#leftover = bytes;
      try {
        this.#cutLeftover();
      } catch {
        // The disk refuses even that: the next append tries again, and after it the next opening.
      }
      throw this.#cannotWrite(cause);
    }
    this.#good += bytes.length;
    this.#version = this.as.versions.current;
    this.facts.push(line.fact);
    if (mark !== null) this.marks.set(line.fact.seq, mark);
  }

  close(): void {
    if (!this.#open) return;
    this.#open = false;
    try {
      this.#cutLeftover();
    } catch {
      // The next opening sets it aside.
    }
    this.disk.closeSync(this.fd);
    this.release();
  }

  /** The file must end where we left it: a half line of our own is cut, anything else there is not ours to write over. */
  #checkTail(): void {
    let state;
    try {
      this.#cutLeftover();
      state = this.disk.fstatSync(this.fd);
    } catch (cause) {
      throw this.#cannotWrite(cause);
    }
    if (state.size !== this.#good || state.nlink === 0) {
      const what = state.nlink === 0 ? 'was removed' : 'was changed by another program';
      throw new CodedError('cannot-write', `The journal ${this.path} ${what} while it was open here, so this answer was not written. Leave and start again: what is in the file then is read anew.`);
    }
  }

  /** Cuts what a failed append left, after reading that it is just that. Throws what the disk throws. */
  #cutLeftover(): void {
    if (this.#leftover === null) return;
    const tail = Buffer.alloc(Math.max(0, this.disk.fstatSync(this.fd).size - this.#good));
    const read = this.disk.readSync(this.fd, tail, 0, tail.length, this.#good);
    if (read !== tail.length || !this.#leftover.subarray(0, tail.length).equals(tail)) return;
    this.disk.ftruncateSync(this.fd, this.#good);
    this.disk.fsyncSync(this.fd);
    this.#leftover = null;
  }

  #cannotWrite(cause: unknown): CodedError {
    return new CodedError('cannot-write', `The answer could not be written to ${this.path}: ${inWords(cause)} Nothing of it was kept; the ${this.facts.length} lines before it are safe. Mend that, then give the answer again.`);
  }
}

function openOrCreate(disk: Disk, path: string): number {
  const fd = disk.openSync(path, constants.O_RDWR | constants.O_CREAT, 0o600);
  if (disk.fstatSync(fd).size === 0) syncFolder(disk, dirname(path));
  return fd;
}
