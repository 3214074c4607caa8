import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { hostname } from 'node:os';
import { describe, expect, it, vi } from 'vitest';
import { openFileStore } from '../../src/journal/file-store.ts';
import { startTimeOf } from '../../src/journal/alive.ts';
import { createInPlace, createOnly } from '../../src/journal/create-only.ts';
import { takeLock } from '../../src/journal/lock.ts';
import { noted, NOON, tuneOf } from './facts.ts';
import { failsWith, freshFolder, reopened } from './folder.ts';

const here = freshFolder();
const open = () => openFileStore(here.journal, { now: NOON });
const lockOf = (owner: object) => here.write(`${JSON.stringify({ since: NOON.toISOString(), ...owner })}\n`, 't.jsonl.lock');
/** A process number that was in use a moment ago and is not now. */
const deadPid = (): number => spawnSync(process.execPath, ['-e', '']).pid;
const tellsStartTimes = existsSync('/proc/self/stat');

describe('the lock of a journal', () => {
  it('names who holds it, and is gone after closing', () => {
    const store = open();
    expect(JSON.parse(here.read('t.jsonl.lock').toString())).toEqual({
      pid: process.pid, host: hostname(), startTime: startTimeOf(process.pid), since: NOON.toISOString(),
    });
    store.close();
    store.close();
    expect(here.names()).toEqual(['t.jsonl']);
  });

  it('lets one writer in at a time, and says who has it', () => {
    const first = open();
    first.append(tuneOf(1)[0]!);
    const error = failsWith('locked', open);
    expect(error.message).toContain(`process ${process.pid}`);
    expect(error.message).toContain('t.jsonl.lock');
    first.append(noted(2));
    first.close();
    const second = open();
    expect(second.facts).toEqual(tuneOf(2));
    second.close();
  });

  it('is kept where the holder lives in another process', async () => {
    const child = spawn(process.execPath, ['-e', 'process.stdin.resume()'], { stdio: ['pipe', 'ignore', 'ignore'] });
    const ended = new Promise((done) => child.on('exit', done));
    try {
      lockOf({ pid: child.pid, host: hostname(), startTime: startTimeOf(child.pid!) });
      failsWith('locked', open);
      // Where no start time was written down, a live process is believed.
      lockOf({ pid: child.pid, host: hostname(), startTime: null });
      failsWith('locked', open);
      lockOf({ pid: child.pid, host: hostname(), startTime: '1' });
      if (tellsStartTimes) expect(reopened(here.journal).notices[0]).toContain('ended without leaving');
    } finally {
      child.kill('SIGKILL');
      await ended;
    }
  });

  it('of a dead process is taken over, with a word', () => {
    lockOf({ pid: deadPid(), host: hostname(), startTime: '12345' });
    const store = open();
    expect(store.notices).toHaveLength(1);
    expect(store.notices[0]).toContain('ended without leaving');
    failsWith('locked', open);
    store.close();
    expect(here.names()).toEqual(['t.jsonl']);
  });

  it.runIf(tellsStartTimes)('of a dead process that its parent has not seen off is taken over too', async () => {
    // The shell becomes a sleep, which never asks after the child that the shell had started.
    const parent = spawn('/bin/sh', ['-c', 'sleep 0.3 & echo $!; exec sleep 20'], { stdio: ['ignore', 'pipe', 'ignore'] });
    const ended = new Promise((done) => parent.on('exit', done));
    try {
      const pid = Number(await new Promise((told) => parent.stdout.once('data', told)));
      await vi.waitFor(() => expect(readFileSync(`/proc/${pid}/stat`, 'utf8')).toContain(') Z '), 4000);
      lockOf({ pid, host: hostname(), startTime: startTimeOf(pid) });
      expect(reopened(here.journal).notices[0]).toContain('ended without leaving');
    } finally {
      parent.kill('SIGKILL');
      await ended;
    }
  });

  it('of another computer is kept, though the number means nothing here', () => {
    lockOf({ pid: deadPid(), host: 'bench-2', startTime: null });
    const error = failsWith('locked', open);
    expect(error.message).toContain('"bench-2"');
    expect(error.message).toContain(`remove ${here.journal}.lock`);
    expect(here.has('t.jsonl')).toBe(false);
  });

  it.each(['', '{"pid":1', 'null\n', '{"pid":-4,"host":"x","startTime":null,"since":""}\n'])('that says nothing (%j) is taken over', (text) => {
    here.write(text, 't.jsonl.lock');
    expect(reopened(here.journal).notices[0]).toContain('without a name');
  });

  it('is not removed by who no longer has it', () => {
    const lock = takeLock(here.journal, { now: NOON });
    lockOf({ pid: 1, host: 'bench-2', startTime: null });
    lock.release();
    expect(here.read('t.jsonl.lock').toString()).toContain('bench-2');
  });

  it('is not held up by who died while taking it over, but waits for who lives', () => {
    const stale = { pid: deadPid(), host: hostname(), startTime: '1' };
    lockOf(stale);
    here.write(here.read('t.jsonl.lock'), 't.jsonl.lock.taking');
    expect(reopened(here.journal).notices[0]).toContain('ended without leaving');
    expect(here.names()).toEqual(['t.jsonl']);

    lockOf({ pid: process.pid, host: hostname(), startTime: startTimeOf(process.pid) });
    here.write(here.read('t.jsonl.lock'), 't.jsonl.lock.taking');
    lockOf(stale);
    expect(failsWith('locked', open).message).toContain('at this very moment');
    expect(here.names()).toEqual(['t.jsonl', 't.jsonl.lock', 't.jsonl.lock.taking']);
  });
});

describe.each([['whole from the start', createOnly], ['made in place', createInPlace]])('a file made by one only, %s', (_, create) => {
  it('is written once, for its owner alone, and leaves nothing else behind', () => {
    const path = `${here.path}/x`;
    expect(create(path, 'first')).toBe(true);
    expect(create(path, 'second')).toBe(false);
    expect(here.read('x').toString()).toBe('first');
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(here.names()).toEqual(['x']);
    failsWith('home-not-writable', () => create(`${here.path}/none/x`, 'first'));
  });
});
