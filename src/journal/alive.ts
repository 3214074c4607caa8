// Whether a process on this computer still runs. A number alone does not tell: numbers are used again.

import { readFileSync } from 'node:fs';
import { systemCode } from './disk.ts';

/** True where the process of that number is the one that started then, and still runs. Where a start time is not known, a live one is believed. */
export function stillRuns(owner: { readonly pid: number; readonly startTime: string | null }): boolean {
  const now = startTimeOf(owner.pid);
  return isAlive(owner.pid) && (owner.startTime === null || now === null || owner.startTime === now);
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
