// The few calls to the disk that the journal makes, gathered so that a test can make any of them fail.

import * as fs from 'node:fs';
import { dirname } from 'node:path';

export interface Disk {
  openSync(path: string, flags: number | string, mode?: number): number;
  closeSync(fd: number): void;
  /** May write less than asked for, as the system call may. Returns the bytes written. */
  writeSync(fd: number, bytes: Uint8Array, offset: number, length: number, position: number): number;
  readFileSync(fd: number): Buffer;
  readSync(fd: number, into: Uint8Array, offset: number, length: number, position: number): number;
  fsyncSync(fd: number): void;
  ftruncateSync(fd: number, length: number): void;
  fstatSync(fd: number): { readonly size: number; readonly nlink: number };
}

export const realDisk: Disk = {
  openSync: fs.openSync,
  closeSync: fs.closeSync,
  writeSync: (fd, bytes, offset, length, position) => fs.writeSync(fd, bytes, offset, length, position),
  readFileSync: (fd) => fs.readFileSync(fd),
  readSync: (fd, into, offset, length, position) => fs.readSync(fd, into, offset, length, position),
  fsyncSync: fs.fsyncSync,
  ftruncateSync: fs.ftruncateSync,
  fstatSync: (fd) => fs.fstatSync(fd),
};

/** Writes all of `bytes` at `position`, however many calls that takes. */
export function writeAll(disk: Disk, fd: number, bytes: Uint8Array, position: number): void {
  let done = 0;
  while (done < bytes.length) {
    const wrote = disk.writeSync(fd, bytes, done, bytes.length - done, position + done);
    if (wrote <= 0) throw new Error('the disk takes no more bytes');
    done += wrote;
  }
}

/** Makes the names in a folder durable: a new file is only safe once its folder is. Windows cannot, and needs it less. */
export function syncFolder(disk: Disk, folder: string): void {
  if (process.platform === 'win32') return;
  const fd = disk.openSync(folder, 'r');
  try {
    disk.fsyncSync(fd);
  } finally {
    disk.closeSync(fd);
  }
}

/**
 * Makes a folder and those above it, for its owner alone, and makes each new name durable. An old folder stays as it is.
 * One level at a time: Node 20's own recursive way never comes back where a parent cannot be made (/proc/…).
 */
export function makeFolder(disk: Disk, folder: string): void {
  if (fs.existsSync(folder)) return;
  const parent = dirname(folder);
  if (parent !== folder) makeFolder(disk, parent);
  fs.mkdirSync(folder, { mode: 0o700 });
  syncFolder(disk, parent);
}

/** The short name of a system error (ENOSPC, EACCES …), or its message. */
export function systemCode(cause: unknown): string {
  if (cause instanceof Error && 'code' in cause && typeof cause.code === 'string') return cause.code;
  return cause instanceof Error ? cause.message : String(cause);
}
