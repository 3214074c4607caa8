// The disk refuses, at every call in turn and in every way: what was acknowledged stays, what was refused is gone, and the tune goes on.

import { appendFileSync, truncateSync, unlinkSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CodedError } from '../../src/errors.ts';
import { realDisk, type Disk } from '../../src/journal/disk.ts';
import { openFileStore } from '../../src/journal/file-store.ts';
import { noted, NOON, tuneOf } from './facts.ts';
import { failsWith, freshFolder, linesOf, reopened } from './folder.ts';

const here = freshFolder();
const fault = (code: string) => Object.assign(new Error(`${code}: injected`), { code });

/** A real disk on which the named call does something else. */
const diskWith = (over: Partial<Disk>): Disk => ({ ...realDisk, ...over });

describe('short writes', () => {
  it('are gone on with until all bytes are there', () => {
    const disk = diskWith({ writeSync: (fd, bytes, offset, length, at) => realDisk.writeSync(fd, bytes, offset, Math.min(length, 7), at) });
    const store = openFileStore(here.journal, { now: NOON, disk });
    tuneOf(4).forEach((fact) => store.append(fact));
    store.close();
    expect(here.read().toString()).toBe(linesOf(tuneOf(4)));
  });
  it('of nothing at all end, with an error', () => {
    const store = openFileStore(here.journal, { now: NOON, disk: diskWith({ writeSync: () => 0 }) });
    failsWith('cannot-write', () => store.append(tuneOf(1)[0]!));
  });
});

describe('a write that fails', () => {
  it.each(['ENOSPC', 'EIO', 'EFBIG', 'EDQUOT', 'ESTALE'])('with %s after some bytes leaves nothing behind and can be tried again', (code) => {
    let full = false;
    const store = openFileStore(here.journal, {
      now: NOON,
      disk: diskWith({
        writeSync(fd, bytes, offset, length, at) {
          if (full && offset > 0) throw fault(code);
          return realDisk.writeSync(fd, bytes, offset, full ? 30 : length, at);
        },
      }),
    });
    tuneOf(3).forEach((fact) => store.append(fact));
    full = true;
    const error = failsWith('cannot-write', () => store.append(noted(4)));
    expect(error.message).toContain(code);
    expect(error.message).toContain('the 3 lines before it are safe');
    expect(store.facts).toEqual(tuneOf(3));
    expect(here.read().toString()).toBe(linesOf(tuneOf(3)));
    full = false;
    store.append(noted(4, 'another answer'));
    store.close();
    expect(reopened(here.journal)).toEqual({ facts: [...tuneOf(3), noted(4, 'another answer')], notices: [] });
  });

  it('where the half line cannot be cut at once is cut by the next append', () => {
    let broken = false;
    const store = openFileStore(here.journal, {
      now: NOON,
      disk: diskWith({
        writeSync(fd, bytes, offset, length, at) {
          if (broken && offset > 0) throw fault('EIO');
          return realDisk.writeSync(fd, bytes, offset, broken ? 30 : length, at);
        },
        ftruncateSync(fd, length) {
          if (broken) throw fault('EIO');
          realDisk.ftruncateSync(fd, length);
        },
      }),
    });
    tuneOf(2).forEach((fact) => store.append(fact));
    broken = true;
    failsWith('cannot-write', () => store.append(noted(3)));
    expect(here.read().length).toBe(linesOf(tuneOf(2)).length + 30);
    failsWith('cannot-write', () => store.append(noted(3)));
    broken = false;
    // Shorter than what was left behind: nothing of that may stick out behind it.
    store.append(noted(3, ''));
    store.close();
    expect(reopened(here.journal)).toEqual({ facts: [...tuneOf(2), noted(3, '')], notices: [] });
  });

  it('of the sync counts as not kept, though all bytes were taken', () => {
    let broken = false;
    const store = openFileStore(here.journal, {
      now: NOON,
      disk: diskWith({ fsyncSync(fd) { if (broken) throw fault('EIO'); realDisk.fsyncSync(fd); } }),
    });
    store.append(tuneOf(1)[0]!);
    broken = true;
    failsWith('cannot-write', () => store.append(noted(2)));
    expect(store.facts).toHaveLength(1);
    broken = false;
    store.append(noted(2, 'second try'));
    store.close();
    expect(reopened(here.journal).facts).toEqual([tuneOf(1)[0], noted(2, 'second try')]);
  });
});

describe('a file that another hand changed while it was open', () => {
  const cases: [string, () => void, RegExp][] = [
    ['longer', () => appendFileSync(here.journal, 'x\n'), /changed by another/],
    ['shorter', () => truncateSync(here.journal, 10), /changed by another/],
    ['removed', () => unlinkSync(here.journal), /was removed/],
  ];
  it.each(cases)('%s: no answer is said to be kept', (_, change, reason) => {
    const store = openFileStore(here.journal, { now: NOON });
    tuneOf(2).forEach((fact) => store.append(fact));
    change();
    expect(failsWith('cannot-write', () => store.append(noted(3))).message).toMatch(reason);
    expect(store.facts).toEqual(tuneOf(2));
    store.close();
  });
  it('is not cut after a failed write that left its half line', () => {
    let broken = false;
    const store = openFileStore(here.journal, {
      now: NOON,
      disk: diskWith({
        writeSync(...args) { if (broken) throw fault('ENOSPC'); return realDisk.writeSync(...args); },
        ftruncateSync(...args) { if (broken) throw fault('EIO'); realDisk.ftruncateSync(...args); },
      }),
    });
    store.append(tuneOf(1)[0]!);
    broken = true;
    failsWith('cannot-write', () => store.append(noted(2)));
    broken = false;
    appendFileSync(here.journal, 'not ours\n');
    failsWith('cannot-write', () => store.append(noted(2)));
    store.close();
    expect(here.read().toString()).toBe(`${linesOf(tuneOf(1))}not ours\n`);
  });
});

describe('a fault while opening', () => {
  it.each(['openSync', 'fsyncSync', 'ftruncateSync', 'writeSync', 'readFileSync'] as const)('in %s loses no byte of a torn line and gives the lock back', (call) => {
    const bytes = `${linesOf(tuneOf(2))}{"seq":3,"ti`;
    here.write(bytes);
    const disk = diskWith({ [call]: () => { throw fault('EIO'); } });
    failsWith('home-not-writable', () => openFileStore(here.journal, { now: NOON, disk }));
    expect(here.has('t.jsonl.lock')).toBe(false);
    expect(here.read().toString()).toBe(bytes);
    expect(reopened(here.journal).facts).toEqual(tuneOf(2));
  });
});

describe('power loss', () => {
  // A disk that forgets: after a cut, of what was not yet synced any part may be there. Calls fail at random as well.
  it('at any moment, with calls failing at random: all that was acknowledged is there, and at most the refused line beside it', () => {
    const step = fc.record({ note: fc.string(), failAt: fc.option(fc.constantFrom('write', 'sync', 'cut'), { nil: null, freq: 3 }), part: fc.nat(200) });
    let run = 0;
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), fc.nat(300), (steps, survived) => {
      const path = `${here.journal}-${(run += 1)}`;
      let durable = 0;
      let failing: { failAt: string | null; part: number } = { failAt: null, part: 0 };
      const disk = diskWith({
        writeSync(fd, bytes, offset, length, at) {
          if (failing.failAt !== 'write' && failing.failAt !== 'cut') return realDisk.writeSync(fd, bytes, offset, length, at);
          realDisk.writeSync(fd, bytes, offset, Math.min(length, failing.part), at);
          throw fault('ENOSPC');
        },
        fsyncSync(fd) {
          if (failing.failAt === 'sync') throw fault('EIO');
          realDisk.fsyncSync(fd);
          const { size } = realDisk.fstatSync(fd);
          if (path === opened.get(fd)) durable = size;
        },
        ftruncateSync(fd, length) {
          if (failing.failAt === 'cut') throw fault('EIO');
          realDisk.ftruncateSync(fd, length);
        },
        openSync(name, flags, mode) {
          const fd = realDisk.openSync(name, flags, mode);
          opened.set(fd, name);
          return fd;
        },
      });
      const opened = new Map<number, string>();
      const store = openFileStore(path, { now: NOON, disk });
      const told: string[] = [];
      for (const { note, failAt, part } of steps) {
        const seq = told.length + 1;
        const fact = seq === 1 ? tuneOf(1)[0]! : noted(seq, note);
        failing = { failAt, part };
        try {
          store.append(fact);
          told.push(linesOf([fact]));
        } catch (cause) {
          expect((cause as CodedError).code).toBe('cannot-write');
        }
      }
      expect(store.facts.map((fact) => linesOf([fact]))).toEqual(told);
      // The cut: no close, the lock stays, and anything past what was synced is there in part.
      const size = here.read(path.split('/').at(-1)).length;
      truncateSync(path, Math.max(durable, size - survived));
      unlinkSync(`${path}.lock`);
      const after = reopened(path).facts.map((fact) => linesOf([fact]));
      expect(after.slice(0, told.length)).toEqual(told);
      expect(after.length - told.length).toBeLessThanOrEqual(1);
      failing = { failAt: null, part: 0 };
      store.close();
    }), { numRuns: 150 });
  });
});
