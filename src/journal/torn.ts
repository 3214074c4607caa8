// A last line without its end: the program was cut off while it wrote. It was never answered for, but nothing is thrown away.

import { basename, dirname } from 'node:path';
import { systemCode, syncFolder, writeAll, type Disk } from './disk.ts';
import type { Reading } from './read.ts';

/** Copies the torn line beside the journal, makes the copy durable, and only then cuts it off. Returns what to tell. */
export function cutTorn(disk: Disk, path: string, fd: number, { torn, facts, good }: Reading): string {
  const aside = copyAside(disk, `${path}.torn-${facts.length + 1}`, torn);
  syncFolder(disk, dirname(path));
  disk.ftruncateSync(fd, good);
  disk.fsyncSync(fd);
  return `The last line (${facts.length + 1}) had not been written to its end when the program stopped. It was set aside in ${basename(aside)}; give that answer again.`;
}

/** Writes to a name that is still free: an earlier copy is never written over. */
function copyAside(disk: Disk, wanted: string, bytes: Uint8Array): string {
  for (let copy = 1; ; copy += 1) {
    const name = copy === 1 ? wanted : `${wanted}-${copy}`;
    let fd: number;
    try {
      fd = disk.openSync(name, 'wx', 0o600);
    } catch (cause) {
      if (systemCode(cause) === 'EEXIST') continue;
      throw cause;
    }
    try {
      writeAll(disk, fd, bytes, 0);
      disk.fsyncSync(fd);
    } finally {
      disk.closeSync(fd);
    }
    return name;
  }
}
