import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { encodeLine } from '../../src/journal/line.ts';
import { homeFolder, newTunePath, tunePath } from '../../src/journal/home.ts';
import { latestUnfinished, listTunes } from '../../src/journal/list.ts';
import type { Answer, Fact } from '../../src/machine/types.ts';
import { begun, noted, NOON, nothing, tuneOf } from './facts.ts';
import { failsWith, freshFolder, linesOf } from './folder.ts';

const here = freshFolder();

describe('the folder for tunes', () => {
  const env = { QUARTERTURN_HOME: '/q', XDG_DATA_HOME: '/x', HOME: '/h' };
  it.each<[string, Record<string, string>, string | undefined, string, string]>([
    ['the flag', env, '/f', 'linux', '/f'],
    ['a flag from here', env, 'f', 'linux', resolve('f')],
    ['our variable', env, undefined, 'linux', '/q'],
    ['an empty flag', env, '', 'linux', '/q'],
    ['the place for data', { ...env, QUARTERTURN_HOME: '' }, undefined, 'linux', '/x/quarterturn'],
    ['a place that is not absolute', { XDG_DATA_HOME: 'x', HOME: '/h' }, undefined, 'linux', '/h/.local/share/quarterturn'],
    ['nothing said', { HOME: '/h' }, undefined, 'linux', '/h/.local/share/quarterturn'],
    ['nothing said on macOS', { HOME: '/h' }, undefined, 'darwin', '/h/Library/Application Support/quarterturn'],
    ['nothing said on Windows', { HOME: '/h', LOCALAPPDATA: '/l' }, undefined, 'win32', '/l/quarterturn'],
  ])('%s', (_, variables, flag, platform, folder) => {
    expect(homeFolder(variables, flag, platform)).toBe(folder);
  });
});

describe('names of tunes', () => {
  const day = new Date(2026, 10, 5, 0, 30);
  it('are the local day and the letter after the last one used', () => {
    expect(newTunePath(`${here.path}/none`, day)).toEqual({ id: '2026-11-05-a', path: `${here.path}/none/2026-11-05-a.jsonl` });
    here.write('', '2026-11-05-a.jsonl');
    here.write('', '2026-11-06-k.jsonl');
    expect(newTunePath(here.path, day).id).toBe('2026-11-05-b');
    here.write('', '2026-11-05-c.jsonl.torn-4');
    expect(newTunePath(here.path, day).id).toBe('2026-11-05-d');
    here.write('', '2026-11-05-z.jsonl');
    expect(newTunePath(here.path, day).id).toBe('2026-11-05-aa');
    here.write('', '2026-11-05-az.jsonl');
    expect(newTunePath(here.path, day).id).toBe('2026-11-05-ba');
    here.write('', '2026-11-05-zz.jsonl');
    expect(newTunePath(here.path, day).id).toBe('2026-11-05-aaa');
  });
  it('never lead out of the folder', () => {
    for (const id of ['../x', '2026-11-05-a/../../x', '', '2026-11-05', '/etc/passwd', '2026-11-05-a\n']) {
      failsWith('no-tune', () => tunePath(here.path, id));
    }
    expect(tunePath('/q', '2026-11-05-ab')).toBe('/q/2026-11-05-ab.jsonl');
  });
});

describe('the list of tunes', () => {
  const at = (minute: number) => new Date(NOON.getTime() + minute * 60_000).toISOString();
  const answered = (seq: number, about: string, answer: Answer): Fact => ({ seq, time: at(seq), kind: 'answered', step: 's', about, answer, decided: nothing });
  const done = (seq: number, value: boolean): Fact => ({ ...noted(seq), time: at(seq), decided: { ...nothing, loop: { done: value } } });

  it('is empty where there is no folder', () => {
    expect(listTunes(`${here.path}/none`)).toEqual([]);
    expect(latestUnfinished([])).toBeNull();
  });

  it('has one row a tune, the latest line first, and changes nothing', () => {
    const carried = { from: 'x', bow: 'the old one', answers: {}, spread: null, gains: {} };
    here.write(linesOf([begun({ known: [carried], time: at(1) }), answered(2, 'bow', { kind: 'choice', values: ['x'] }), answered(3, 'tear', { kind: 'shots', shots: [{ x: 0, y: 0 }, { missed: true }] }), done(4, true)]), '2026-11-25-a.jsonl');
    here.write(linesOf([
      begun({ time: at(0) }),
      answered(2, 'bow', { kind: 'text', value: 'rde' }),
      answered(3, 'tear', { kind: 'shots', shots: [{ x: 0, y: 0 }] }),
      { seq: 4, time: at(4), kind: 'corrected', of: 2, answer: { kind: 'text', value: 'red' }, decided: nothing },
      { seq: 5, time: at(5), kind: 'corrected', of: 3, answer: { kind: 'shots', shots: [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 2, y: 0 }] }, decided: nothing },
    ]), '2026-11-25-b.jsonl');
    here.write(`${linesOf([begun({ time: at(2) }), done(2, true), done(3, false)])}torn`, '2026-11-25-c.jsonl');
    here.write('not a tune', 'notes.jsonl');
    here.write('not a tune', '2026-11-25-a.jsonl.lock');
    const names = here.names();
    const list = listTunes(here.path);
    expect(list).toEqual([
      { id: '2026-11-25-b', path: `${here.path}/2026-11-25-b.jsonl`, begun: at(0), last: at(5), finished: false, shots: 3, bow: 'red' },
      { id: '2026-11-25-a', path: `${here.path}/2026-11-25-a.jsonl`, begun: at(1), last: at(4), finished: true, shots: 2, bow: 'the old one' },
      { id: '2026-11-25-c', path: `${here.path}/2026-11-25-c.jsonl`, begun: at(2), last: at(3), finished: false, shots: 0, bow: null },
    ]);
    expect(latestUnfinished(list)?.id).toBe('2026-11-25-b');
    expect(latestUnfinished(list.filter(({ finished }) => finished))).toBeNull();
    expect(here.names()).toEqual(names);
    expect(here.read('2026-11-25-c.jsonl').toString().endsWith('torn')).toBe(true);
  });

  it('marks what cannot be gone on with, and goes on itself', () => {
    here.write(`${linesOf(tuneOf(2))}broken\n`, '2026-11-25-a.jsonl');
    here.write('', '2026-11-25-b.jsonl');
    here.write(encodeLine(begun()).replace('"v":1', '"v":2'), '2026-11-25-c.jsonl');
    mkdirSync(`${here.path}/2026-11-25-d.jsonl`);
    here.write(linesOf([begun({ time: '2020-01-01T00:00:00.000Z' })]), '2026-11-25-e.jsonl');
    const list = listTunes(here.path);
    const bad = Object.fromEntries(list.map((tune) => [tune.id.slice(-1), tune.bad]));
    expect(bad['a']).toMatch(/^line 3: .*checksum/);
    expect(bad['b']).toContain('nothing was kept');
    expect(bad['c']).toContain('version 2');
    expect(bad['d']).toContain('folder of that name');
    expect(bad['e']).toBeUndefined();
    expect(list.find(({ id }) => id.endsWith('a'))?.last).toBe(NOON.toISOString());
    expect(latestUnfinished(list)?.id).toBe('2026-11-25-e');
  });
});
