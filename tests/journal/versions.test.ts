// Journals of one, two and three versions, read whole. Versions 2 and 3 are invented here.

import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { openFileStore } from '../../src/journal/file-store.ts';
import { encodeLine } from '../../src/journal/line.ts';
import { prepareLine, readJournal } from '../../src/journal/read.ts';
import { claimedVersion, claimIn, CURRENT_VERSION, LIFTS, upgrade, type Lift, type Versions } from '../../src/journal/versions.ts';
import type { Fact } from '../../src/machine/types.ts';
import { begun, noted, nothing, NOON, tuneOf } from './facts.ts';
import { failsWith, freshFolder } from './folder.ts';

const here = freshFolder();

/** A line as a program of any version may write it: the object and its sum. */
function lineOf(raw: Readonly<Record<string, unknown>>): string {
  const body = JSON.stringify(raw);
  return `${body.slice(0, -1)},"sum":"${createHash('sha256').update(body).digest('hex').slice(0, 8)}"}\n`;
}

type Raw = Record<string, unknown>;
const time = NOON.toISOString();
const base = (seq: number) => ({ seq, time, decided: nothing });
const begunUnder = (v: number): Raw => ({ ...begun(), v });
const resumedUnder = (seq: number, v?: number): Raw => ({ ...base(seq), kind: 'resumed', away: 1, ...(v === undefined ? {} : { v }) });

// Version 1: a note has "note". Version 2: it has "remark". Version 3: "note", which begins with a capital letter.
const NOTE: Readonly<Record<number, (seq: number, words: string) => Raw>> = {
  1: (seq, words) => ({ ...base(seq), kind: 'noted', note: words }),
  2: (seq, words) => ({ ...base(seq), kind: 'noted', remark: words }),
  3: (seq, words) => ({ ...base(seq), kind: 'noted', note: words.toUpperCase() }),
};
const toTwo: Lift = (raw) => {
  const { note, ...rest } = raw as Raw;
  return note === undefined ? rest : { ...rest, remark: note };
};
const toThree: Lift = (raw) => {
  const { remark, ...rest } = raw as Raw;
  return remark === undefined ? rest : { ...rest, note: (remark as string).toUpperCase() };
};
const THREE: Versions = { current: 3, lifts: { 1: toTwo, 2: toThree } };
const journalOf = (...lines: readonly Raw[]): Buffer => Buffer.from(lines.map(lineOf).join(''));

describe('a version', () => {
  it('is a whole number from 1 on', () => {
    expect(claimedVersion(begun())).toBe(1);
    for (const v of [0, -1, 1.5, '1', null, undefined, 1e300]) expect(claimedVersion({ v })).toBeNull();
    for (const raw of [null, 'v', [1], {}]) expect(claimedVersion(raw)).toBeNull();
  });

  it('is what a line itself says, not what is said somewhere in it, and no line has to be whole for it', () => {
    expect(claimIn('{"seq":9,"v":4,"new":"shape"}')).toBe(4);
    expect(claimIn('{"seq":9, "new":[], "v" : 4 }')).toBe(4);
    for (const text of ['{"note":"\\"v\\":4"}', '{"decided":{"v":4}}', '{"v":"4"}', '"v"', '{"v":4', '']) expect(claimIn(text)).toBeNull();
  });

  it('has a way up from each before it, and no way that leads nowhere', () => {
    expect(Object.keys(LIFTS)).toEqual(Array.from({ length: CURRENT_VERSION - 1 }, (_, i) => `${i + 1}`));
  });

  it('is lifted step by step; a line that says its version says the new one', () => {
    const lifts = { 1: (raw: unknown) => ({ ...(raw as object), two: true }), 2: (raw: unknown) => ({ ...(raw as object), three: true }) };
    expect(upgrade(1, { a: 1 }, { current: 3, lifts })).toEqual({ a: 1, two: true, three: true });
    expect(upgrade(2, { a: 1 }, { current: 3, lifts })).toEqual({ a: 1, three: true });
    expect(upgrade(3, { a: 1 }, { current: 3, lifts })).toEqual({ a: 1 });
    const raw = Object.freeze({ v: 1, a: 1 });
    expect(upgrade(1, raw, { current: 3, lifts })).toEqual({ v: 3, a: 1, two: true, three: true });
    expect(raw).toEqual({ v: 1, a: 1 });
  });

  it('without a way up is a mistake that is said', () => {
    expect(() => upgrade(1, {}, { current: 3, lifts: { 1: toTwo } })).toThrow('from journal version 2 to 3');
    expect(() => upgrade(1, {}, { current: 2, lifts: {} })).toThrow('from journal version 1 to 2');
  });
});

describe('a journal that was gone on with by later programs', () => {
  const mixed = journalOf(
    begunUnder(1), NOTE[1]!(2, 'a'), resumedUnder(3), NOTE[1]!(4, 'b'),
    resumedUnder(5, 2), NOTE[2]!(6, 'c'), resumedUnder(7, 2), NOTE[2]!(8, 'd'), resumedUnder(9, 3), NOTE[3]!(10, 'e'),
  );

  it('is read line by line, each under the newest version said at or before it', () => {
    const { facts, bad, good, version } = readJournal(mixed, THREE);
    expect([bad, good, version]).toEqual([null, mixed.length, 3]);
    expect(facts.flatMap((fact) => (fact.kind === 'noted' ? fact.note : []))).toEqual(['A', 'B', 'C', 'D', 'E']);
    // As this program would have written it.
    expect(facts.flatMap(({ v }) => v ?? [])).toEqual([3, 3, 3, 3]);
  });

  it('may be whole in an older version: then the next line has to say the new one', () => {
    const { version } = readJournal(journalOf(begunUnder(1), NOTE[1]!(2, 'a'), resumedUnder(3, 2)), THREE);
    expect(version).toBe(2);
    const note = NOTE[3]!(4, 'b') as unknown as Fact;
    expect(failsWith('internal', () => prepareLine(note, 4, { before: version, versions: THREE })).message).toMatch(/read as one of version 2.*Nothing was written/);
    expect(prepareLine({ ...note, v: 3 } as unknown as Fact, 4, { before: version, versions: THREE }).fact).toMatchObject({ v: 3, note: 'B' });
    expect(prepareLine(note, 4, { before: 3, versions: THREE }).fact).toMatchObject({ note: 'B' });
  });

  it('is kept byte for byte by opening it, and grows under the version of who opens it', () => {
    const old = journalOf(begunUnder(1), NOTE[1]!(2, 'a'));
    here.write(old);
    const store = openFileStore(here.journal, { now: NOON, versions: THREE });
    expect(store.facts[1]).toMatchObject({ note: 'A' });
    expect(here.read().equals(old)).toBe(true);
    failsWith('internal', () => store.append(noted(3)));
    expect(here.read().equals(old)).toBe(true);
    store.append(resumedUnder(3, 3) as unknown as Fact);
    store.append(noted(4, 'NOW'));
    store.close();
    const bytes = here.read();
    expect(bytes.subarray(0, old.length).equals(old)).toBe(true);
    expect(readJournal(bytes, THREE).facts.flatMap((fact) => (fact.kind === 'noted' ? fact.note : []))).toEqual(['A', 'NOW']);
    // And the older program says at which line it stops.
    expect(readJournal(bytes).bad).toMatchObject({ code: 'newer-journal', line: 3 });
    expect(failsWith('newer-journal', () => openFileStore(here.journal, { now: NOON })).message).toMatch(/t\.jsonl, line 3, .*version 3 .*up to version 1\. .*left as it is\. Install the newer quarterturn/);
    expect(here.read().equals(bytes)).toBe(true);
  });

  it.each([
    ['the sum made otherwise', '{"seq":3,"v":2,"kind":"resumed","crc":1}\n'],
    ['a kind of line that nobody knows', lineOf({ ...base(3), kind: 'dreamt', v: 2 })],
    ['a known line with more in it', lineOf({ ...resumedUnder(3, 2), mood: 'good' })],
    ['a note, on a finished tune', lineOf({ ...NOTE[2]!(3, 'x'), v: 2 })],
  ])('is of a newer program, not damaged, whatever its first newer line is: %s', (_, line) => {
    const bytes = Buffer.concat([Buffer.from(tuneOf(2).map(encodeLine).join('')), Buffer.from(`${line}not even JSON\ntorn`)]);
    here.write(bytes);
    const { facts, bad } = readJournal(bytes);
    expect(facts).toEqual(tuneOf(2));
    expect(bad).toMatchObject({ code: 'newer-journal', line: 3, reason: expect.stringContaining('version 2') as string });
    failsWith('newer-journal', () => openFileStore(here.journal, { now: NOON }));
    expect(here.read().equals(bytes)).toBe(true);
    expect(here.names()).toEqual(['t.jsonl']);
  });

  it('is damaged where a line before the newer one is', () => {
    const bytes = Buffer.from(`${encodeLine(begun())}x\n${lineOf(resumedUnder(3, 2))}`);
    expect(readJournal(bytes).bad).toMatchObject({ code: 'bad-journal', line: 2 });
  });

  it('goes on from the last whole line where the newer one was never written to its end', () => {
    here.write(`${tuneOf(2).map(encodeLine).join('')}${lineOf(resumedUnder(3, 2)).trimEnd()}`);
    const store = openFileStore(here.journal, { now: NOON });
    expect([store.facts, store.notices.length]).toEqual([tuneOf(2), 1]);
    store.close();
    expect(here.names()).toEqual(['t.jsonl', 't.jsonl.torn-3']);
  });
});

describe('a way up that fails', () => {
  const journal = journalOf(begunUnder(1), NOTE[1]!(2, 'a'), NOTE[1]!(3, 'b'));
  const withLift = (lift: Lift): Versions => ({ current: 2, lifts: { 1: (raw) => ((raw as Raw)['seq'] === 2 ? lift(raw) : raw) } });

  it.each<[string, Lift, RegExp]>([
    ['by throwing', (raw) => (raw as { gone: { field: string } }).gone.field, /^it was written under version 1 of the journal and could not be brought to version 2 \(.+\)$/],
    ['by throwing what is no error', () => { throw Object('why'); }, /could not be brought to version 2 \(why\)$/],
    ['with more than one line of words', () => { throw new Error('one\n    at two'); }, /\(one\)$/],
    ['with nothing', () => undefined, /not as it should be .*written under version 1 of the journal and brought to version 2$/],
    ['with a word', () => 'junk', /not as it should be/],
    ['with a list', () => [], /not as it should be/],
    ['with a field that no fact has', (raw) => ({ ...(raw as object), extra: 1 }), /not as it should be.*extra/],
    ['with another number', (raw) => ({ ...(raw as object), seq: 7 }), /number 7 where 2 was due/],
    ['with a beginning', () => ({ ...begun(), seq: 2 }), /begins a tune in the middle/],
  ])('%s makes a line that cannot be read, in one clear line', (_, lift, reason) => {
    const { facts, bad } = readJournal(journal, withLift(lift));
    expect(facts).toHaveLength(1);
    expect(bad).toMatchObject({ code: 'bad-journal', line: 2, reason: expect.stringMatching(reason) as string });
    expect(bad?.reason).not.toMatch(/\n|\bat \//);
    here.write(journal);
    const { message } = failsWith('bad-journal', () => openFileStore(here.journal, { now: NOON, versions: withLift(lift) }));
    expect(message).toContain('t.jsonl, line 2, cannot be read');
    expect(message).not.toContain('\n');
    expect(here.read().equals(journal)).toBe(true);
    expect(here.names()).toEqual(['t.jsonl']);
  });

  it('by a gap is said as such', () => {
    expect(readJournal(journal, { current: 3, lifts: { 1: toTwo } }).bad).toMatchObject({ line: 1, reason: 'no way is known from journal version 2 to 3' });
  });
});
