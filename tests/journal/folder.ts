// A folder of its own for a test, gone after it.

import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect } from 'vitest';
import { CodedError, type ErrorCode } from '../../src/errors.ts';
import { encodeLine } from '../../src/journal/line.ts';
import { openFileStore } from '../../src/journal/file-store.ts';
import type { Fact } from '../../src/machine/types.ts';
import { NOON } from './facts.ts';

export class Folder {
  path = '';
  get journal(): string { return join(this.path, 't.jsonl'); }
  names(): string[] { return readdirSync(this.path).toSorted(); }
  has(name: string): boolean { return existsSync(join(this.path, name)); }
  read(name = 't.jsonl'): Buffer { return readFileSync(join(this.path, name)); }
  write(bytes: string | Uint8Array, name = 't.jsonl'): void { writeFileSync(join(this.path, name), bytes); }
}

/** A new folder before each test of the file that calls this. */
export function freshFolder(): Folder {
  const folder = new Folder();
  beforeEach(() => { folder.path = mkdtempSync(join(tmpdir(), 'quarterturn-journal-')); });
  afterEach(() => { rmSync(folder.path, { recursive: true, force: true }); });
  return folder;
}

export const linesOf = (facts: readonly Fact[]): string => facts.map(encodeLine).join('');

/** What a journal holds for whoever opens it next. */
export function reopened(path: string): { facts: readonly Fact[]; notices: readonly string[] } {
  const store = openFileStore(path, { now: NOON });
  store.close();
  return { facts: store.facts, notices: store.notices };
}

/** The error that the work ends in, which must carry this code and teach. */
export function failsWith(code: ErrorCode, work: () => unknown): CodedError {
  try {
    work();
  } catch (cause) {
    expect(cause).toBeInstanceOf(CodedError);
    expect((cause as CodedError).code).toBe(code);
    return cause as CodedError;
  }
  throw new Error(`nothing was thrown where "${code}" was due`);
}
