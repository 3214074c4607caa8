// Real processes, really killed and really refused by the system.

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readJournal } from '../../src/journal/read.ts';
import { reopened } from '../journal/folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'quarterturn-torture-'));
const writer = join(folder, 'writer.mjs');
// One small file starts in a tenth of the time that the sources take.
beforeAll(async () => {
  await build({ entryPoints: [join(import.meta.dirname, 'writer.ts')], outfile: writer, bundle: true, platform: 'node', format: 'esm', logLevel: 'error' });
});
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

interface Heard { open: number; kept: number; failed: string | null; signal: NodeJS.Signals | null }

/** Runs a writer and hears it out to its end; `killAfter` lines it is killed, `late` ms later. */
function hear(command: string, args: readonly string[], killAfter = Infinity, late = 0, onReady = (): void => {}): Promise<Heard> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    const heard: Heard = { open: -1, kept: 0, failed: null, signal: null };
    let rest = '';
    let lines = 0;
    let doomed = false;
    child.stdout.on('data', (data) => {
      const parts = (rest + String(data)).split('\n');
      rest = parts.pop() ?? '';
      for (const part of parts) {
        const [word, value] = part.split(' ');
        if (word === 'ready') onReady();
        if (word === 'open') heard.open = Number(value);
        if (word === 'kept') { heard.kept = Number(value); lines += 1; }
        if (word === 'failed') heard.failed = value ?? '';
      }
      if (lines >= killAfter && !doomed) { doomed = true; setTimeout(() => child.kill('SIGKILL'), late); }
    });
    child.on('error', reject);
    // 'close' comes after all that it wrote was read: nothing acknowledged is missed.
    child.on('close', (_, signal) => { heard.signal = signal; resolve(heard); });
  });
}

describe('a journal whose writer is killed in the middle of its work', () => {
  it('has every acknowledged line, twenty times over, and goes on', async () => {
    const tunes = [join(folder, 'a.jsonl'), join(folder, 'b.jsonl')];
    await Promise.all(tunes.map(async (path, which) => {
      let acknowledged = 0;
      for (let kill = 0; kill < 10; kill += 1) {
        // Moments spread over the writing of one line.
        const heard = await hear(process.execPath, [writer, path], 3, (kill * 7 + which * 3) % 11);
        expect(heard.failed).toBeNull();
        expect(heard.signal).toBe('SIGKILL');
        // At most the one line that was being written may be there unasked.
        expect(heard.open).toBeGreaterThanOrEqual(acknowledged);
        expect(heard.open).toBeLessThanOrEqual(acknowledged + 1);
        expect(heard.kept).toBeGreaterThanOrEqual(heard.open + 3);
        acknowledged = heard.kept;
      }
      const { facts, notices } = reopened(path);
      expect(facts.length).toBeGreaterThanOrEqual(acknowledged);
      expect(facts.length).toBeLessThanOrEqual(acknowledged + 1);
      expect(notices[0]).toContain('ended without leaving');
      const pieces = readdirSync(folder).filter((name) => name.startsWith(`${path.split('/').at(-1)}.torn`));
      for (const piece of pieces) expect(statSync(join(folder, piece)).size).toBeGreaterThan(0);
      expect(readJournal(readFileSync(path)).torn.length).toBe(0);
    }));
  }, 60_000);
});

describe('a journal that may grow no further', () => {
  // The system's own limit on the size of a file stands for a full disk: a short write first, then an error.
  it('says so, keeps all that it acknowledged, and goes on once there is room', async () => {
    const path = join(folder, 'full.jsonl');
    const limited = await hear('/bin/sh', ['-c', 'ulimit -f 64; exec "$@"', 'sh', process.execPath, writer, path, '40', '3000']);
    expect(limited.failed).toBe('cannot-write');
    expect(limited.kept).toBeGreaterThan(3);
    expect(limited.kept).toBeLessThan(40);
    const { facts, notices } = reopened(path);
    expect(facts.length).toBe(limited.kept);
    // The half line was cut at once; what is told is that the child went without closing.
    expect(notices.join()).not.toContain('set aside');
    const free = await hear(process.execPath, [writer, path, '3', '3000']);
    expect(free).toMatchObject({ open: limited.kept, kept: limited.kept + 3, failed: null });
  }, 10_000);
});

describe('many at once at the lock of a dead process', () => {
  it('let one in', async () => {
    const path = join(folder, 'race.jsonl');
    for (const round of [1, 2]) {
      const dead = await hear(process.execPath, [writer, path], 1);
      expect(dead.signal).toBe('SIGKILL');
      const gate = join(folder, `gate-${round}`);
      let ready = 0;
      const all = await Promise.all(Array.from({ length: 4 }, () =>
        hear(process.execPath, [writer, path, '2', '40', gate], Infinity, 0, () => { if ((ready += 1) === 4) writeFileSync(gate, ''); })));
      expect(all.map(({ failed }) => failed ?? 'in').toSorted()).toEqual(['in', 'locked', 'locked', 'locked']);
      expect(reopened(path).notices).toEqual([]);
    }
  }, 20_000);
});
