// Starts the built program as a user or another program would, with a clean environment and a folder of its own.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const PROGRAM = fileURLToPath(new URL('../../dist/quarterturn.js', import.meta.url));

export interface Ended { readonly code: number | null; readonly stdout: string; readonly stderr: string }

/** A new folder for tunes, removed when the test ends. */
export function newHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'quarterturn-test-'));
  onTestFinished(() => rmSync(home, { recursive: true, force: true }));
  return home;
}

export const start = (args: readonly string[], env: Record<string, string> = {}) =>
  spawn(process.execPath, [PROGRAM, ...args], { env: { PATH: process.env['PATH'] ?? '', HOME: '/nonexistent', ...env }, stdio: ['pipe', 'pipe', 'pipe'] });

/** Runs to the end with all of `typed` as its input. */
export function run(args: readonly string[], typed: string | Buffer = '', env: Record<string, string> = {}): Promise<Ended> {
  const child = start(args, env);
  let [stdout, stderr] = ['', ''];
  child.stdout.on('data', (data: Buffer) => { stdout += data; });
  child.stderr.on('data', (data: Buffer) => { stderr += data; });
  child.stdin.on('error', () => undefined);
  child.stdin.end(typed);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, stdout, stderr }));
  });
}
