// Frozen journals of every version that there was: each must be read, gone on with and told as a record by every later program.
// Never write one anew to make a test pass; a change of the lines is a new version, with a way up in src/journal/versions.ts.

import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { encodeLine } from '../../src/journal/line.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { readJournal } from '../../src/journal/read.ts';
import { claimIn, CURRENT_VERSION } from '../../src/journal/versions.ts';
import { replay } from '../../src/machine/replay.ts';
import type { Fact } from '../../src/machine/types.ts';
import { viewOf } from '../../src/machine/view.ts';
import { recordMarkdown } from '../../src/report/markdown.ts';
import { openSession, recordOf } from '../../src/session.ts';
import { shippedContent } from '../tunes/play.ts';
import { WRITABLE, writtenIn } from './writable.ts';

/** Each file and the first half of its SHA-256, as it was frozen. */
const SUMS: Readonly<Record<string, string>> = {
  'journal-v1-added-up.jsonl': 'b71e248177a4e730bebe4aaadf02b882',
  'journal-v1-arrows.jsonl': 'a32fb09b5b9e5496462fbcf2b8343375',
  'journal-v1-aside.jsonl': '1f596b5fec0e00eeb049b704d19ac016',
  'journal-v1-at-its-end.jsonl': 'ff7dacf32e74efaec4aaca8edb8b7ea1',
  'journal-v1-besides.jsonl': '20ad3751c747ebd77e506ab562054d7d',
  'journal-v1-broadheads.jsonl': '847feab59cbe5cee411641c0072810a6',
  'journal-v1-happenings.jsonl': '667926379144f43b1d24748e76a801a7',
  'journal-v1-known.jsonl': '4b288f5fa6c062c5a42177d7f76cf4c8',
  'journal-v1-many-odd.jsonl': '06b251f71427646b3c49ea035818234e',
  'journal-v1-paper.jsonl': 'e3bbfe6af6a7beafa842ecbe47bd40f0',
  'journal-v1-place.jsonl': 'af4af1de5310b302000a6d5d0ccdec97',
  'journal-v1-plumb-line.jsonl': 'c64d0656cc5bde23c998cf1834cc582c',
  'journal-v1-press.jsonl': 'c13080931d443626c6dc677c9f5652f3',
  'journal-v1-scatter.jsonl': '60e2fdfb44495d18cb4b4889f8f369c1',
  'journal-v1-set-turned.jsonl': '3bc94ab00ed2bb3b12247235143f07bd',
  'journal-v1-unfletched.jsonl': '1793339bb6f4050e59a081e9399cbc2e',
  'journal-v1.jsonl': 'd4458739c1cebe568277170fecb1f6d0',
};
/** Where a frozen tune no longer fits today's content, from this line on: made by hand for the lines' sake, not played. */
const UNFIT_FROM: Readonly<Record<string, number>> = { 'journal-v1.jsonl': 5 };
/** Read, but never written: a shot that was not called bad is kept without a word. */
const NOT_BY_PLAY: readonly string[] = ['shot: good'];

const FOLDER = new URL('../fixtures/', import.meta.url);
const files = readdirSync(FOLDER).filter((name) => /^journal-.*\.jsonl$/.test(name)).toSorted();
const versionOf = (name: string): number => Number(/^journal-v(\d+)(?:-[a-z-]+)?\.jsonl$/.exec(name)?.[1]);
const bytesOf = (name: string): Buffer => readFileSync(new URL(name, FOLDER));
const factsOf = (names: readonly string[]): readonly Fact[] => names.flatMap((name) => readJournal(bytesOf(name)).facts);
const content = shippedContent();

describe('frozen journals', () => {
  it('are there for every version from 1 to the present one, and for no other', () => {
    const versions = new Set(files.map(versionOf));
    expect([...versions].toSorted((a, b) => a - b)).toEqual(Array.from({ length: CURRENT_VERSION }, (_, i) => i + 1));
  });

  it('are the files that were frozen, and small', () => {
    const sums = Object.fromEntries(files.map((name) => [name, createHash('sha256').update(bytesOf(name)).digest('hex').slice(0, 32)]));
    expect(sums).toEqual(SUMS);
    const sizes = files.map((name) => bytesOf(name).length);
    expect(Math.max(...sizes)).toBeLessThan(200_000);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(640_000);
  });

  it('hold together all that can be written', () => {
    const found = writtenIn(factsOf(files));
    expect(WRITABLE.filter((name) => !found.has(name))).toEqual([]);
    const played = writtenIn(factsOf(files.filter((name) => UNFIT_FROM[name] === undefined && !name.endsWith('-aside.jsonl'))));
    expect(WRITABLE.filter((name) => !played.has(name))).toEqual([...NOT_BY_PLAY, 'order: setAside']);
  });
});

describe.each(files)('%s', (name) => {
  const bytes = bytesOf(name);
  const { facts, bad, torn, good } = readJournal(bytes);

  it('is read to its end', () => {
    expect([bad, torn.length, good]).toEqual([null, 0, bytes.length]);
    expect(claimIn(bytes.toString('utf8').split('\n')[0] ?? '')).toBe(versionOf(name));
    if (versionOf(name) === CURRENT_VERSION) expect(facts.map(encodeLine).join('')).toBe(bytes.toString('utf8'));
  });

  it('is replayed, shows where it stands, is gone on with, and is told as a record', () => {
    const { state, unfit } = replay(content, facts);
    const from = UNFIT_FROM[name];
    expect(unfit).toEqual(from === undefined ? null : { from, to: facts.length });
    const record = recordOf(content, facts);
    expect(record?.sections.length).toBeGreaterThan(0);
    if (record !== null) expect(recordMarkdown(record)).toContain(`# ${record.title}`);

    const store = memoryStore(facts);
    const session = openSession({ content, store, startAt: new Date(Date.parse(facts.at(-1)?.time ?? '') + 60_000), engine: '9', tune: 'x', known: [] });
    const view = session.view();
    expect(store.facts.slice(0, facts.length)).toEqual(facts);
    expect(view.type === 'done' ? view.record !== undefined : (view.ask?.text.length ?? 0) > 0).toBe(true);
    expect(store.facts.slice(facts.length).map(({ kind, v }) => [kind, v])).toEqual(state.notes.done ? [] : [['resumed', CURRENT_VERSION]]);
    // Who opens it again sees the same.
    expect(viewOf(content, replay(content, store.facts).state)).toEqual(view);
  });
});

describe('the first line of a sitting', () => {
  const versionsOf = (facts: readonly Fact[]): readonly unknown[] => facts.map(({ kind, v }) => [kind, v]);
  const note = { kind: 'note', note: 'x' } as const;
  const sitting = (name: string): readonly Fact[] => {
    const old = name === '' ? [] : factsOf([name]);
    const store = memoryStore(old);
    const session = openSession({ content, store, startAt: new Date('2026-05-01T09:00:00Z'), engine: '9', tune: 'x', known: [] });
    for (const minute of [1, 2]) session.send(note, new Date(Date.parse('2026-05-01T09:00:00Z') + minute * 60_000));
    return store.facts.slice(old.length);
  };

  it('says the version, and no other: also where a finished tune takes a note', () => {
    const v = CURRENT_VERSION;
    expect(versionsOf(sitting(''))).toEqual([['begun', v], ['noted', undefined], ['noted', undefined]]);
    expect(versionsOf(sitting('journal-v1-paper.jsonl'))).toEqual([['resumed', v], ['noted', undefined], ['noted', undefined]]);
    expect(versionsOf(sitting('journal-v1-press.jsonl'))).toEqual([['noted', v], ['noted', undefined]]);
  });
});
