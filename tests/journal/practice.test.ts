// A practice is never taken for a tune, nor a tune for a practice, whoever copies which file where; and a program that knows nothing of
// practices says "newer" and leaves them alone.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { carriedFrom, pickTune, tuneList } from '../../src/commands.ts';
import { openFileStore, openPracticeStore } from '../../src/journal/file-store.ts';
import { practiceFolder, tuneIds } from '../../src/journal/home.ts';
import { OF_A_PRACTICE, PRACTICE_FROM } from '../../src/journal/kinds.ts';
import { encodeLine } from '../../src/journal/line.ts';
import { latestUnfinished, listTunes } from '../../src/journal/list.ts';
import type { PracticeMark } from '../../src/journal/practice-mark.ts';
import { readJournal } from '../../src/journal/read.ts';
import { claimIn, CURRENT_VERSION } from '../../src/journal/versions.ts';
import type { Fact } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import { shippedContent } from '../tunes/play.ts';
import { begun, noted, tuneOf } from './facts.ts';
import { failsWith, freshFolder, linesOf } from './folder.ts';

const OF = { lesson: null, seed: 12 } as const;
const lineOf = (fact: Fact, mark: PracticeMark | null = null): string => OF_A_PRACTICE.encode(fact, fact.kind === 'begun' ? { of: OF } : mark);
const practiceText = (lines = 3): string => tuneOf(lines).map((fact) => lineOf(fact)).join('');
const tuneText = (lines = 3): string => linesOf(tuneOf(lines));
const here = freshFolder();
const NAME = '2026-11-25-a.jsonl';
const atName = (): string => `${here.path}/${NAME}`;
const AT = new Date('2026-11-25T12:00:00Z');

describe('a practice among the tunes', () => {
  it('is listed as what it is, and refused to be gone on with, told as a record or handed on', () => {
    here.write(practiceText(), NAME);
    const tunes = listTunes(here.path);
    expect(tunes).toMatchObject([{ id: '2026-11-25-a', bad: 'it is a practice on an invented bow, and no tune', refusal: { code: 'practice-journal' } }]);
    expect(tuneList(tunes, here.path)).toContain('cannot be opened: it is a practice on an invented bow, and no tune');
    expect(latestUnfinished(tunes)).toBeNull();
    expect(failsWith('practice-journal', () => pickTune(tunes, '2026-11-25-a', () => null)).message).toContain('nothing of it is used for a real bow');
    expect(carriedFrom(tunes, '', shippedContent(), carriedOf)).toEqual([]);
    const before = here.read(NAME).toString('utf8');
    failsWith('practice-journal', () => openFileStore(atName(), { now: AT }));
    expect(here.read(NAME).toString('utf8')).toBe(before);
  });

  it('is taken for a newer journal by a program that knows nothing of practices', () => {
    const [first = ''] = practiceText().split('\n');
    // All that such a program looks at, before checksum and shape.
    expect(claimIn(first)).toBe(PRACTICE_FROM + CURRENT_VERSION);
    expect(claimIn(first)).toBeGreaterThan(CURRENT_VERSION);
  });

  it('is also known where only a later line says so', () => {
    const mixed = Buffer.from(`${tuneText(2)}${OF_A_PRACTICE.encode({ ...noted(3), v: 1 }, null)}`);
    expect(readJournal(mixed).bad).toMatchObject({ code: 'practice-journal', line: 3 });
    expect(readJournal(Buffer.from(practiceText(2) + encodeLine({ ...noted(3), v: 1 })), undefined, OF_A_PRACTICE).bad).toMatchObject({ code: 'not-practice', line: 3 });
  });

  it('does not lie in the folder of the tunes by itself', () => {
    openPracticeStore(`${practiceFolder(here.path)}/2026-11-25-a.jsonl`, { now: AT }).close();
    expect(tuneIds(here.path)).toEqual([]);
    expect(tuneIds(practiceFolder(here.path))).toEqual(['2026-11-25-a']);
  });
});

describe('a tune among the practices', () => {
  it('is refused and left as it is', () => {
    here.write(tuneText(), NAME);
    const [one] = listTunes(here.path, OF_A_PRACTICE);
    expect(one).toMatchObject({ bad: 'it is the tune of a real bow, and no practice', refusal: { code: 'not-practice' } });
    expect(failsWith('not-practice', () => openPracticeStore(atName(), { now: AT })).message).toContain('is the tune of a real bow');
    expect(here.read(NAME).toString('utf8')).toBe(tuneText());
  });

  it('does not become one by a mark on its lines, nor a practice a tune without its mark', () => {
    const marked = JSON.stringify({ ...begun(), practice: { of: OF } });
    expect(readJournal(Buffer.from(`${marked}\n`)).bad?.code).toBe('bad-journal');
    const unmarked = OF_A_PRACTICE.encode(begun(), null);
    expect(readJournal(Buffer.from(unmarked), undefined, OF_A_PRACTICE).bad).toMatchObject({ code: 'bad-journal', reason: 'the first line of a practice says which bow it is of, and no other line does' });
  });
});

describe('the lines of a practice', () => {
  it('come back with what the hands did, byte for byte', () => {
    const marks: readonly PracticeMark[] = [
      { turned: [] }, { turned: [{ knob: 'rest-side', by: -1 / 32 }] }, { newNock: '4' }, { overlooked: 'You see it.' }, { ended: true },
      { shot: { arrow: null, nockTurn: 0, flying: 'field', at: 'paper', distance: { value: 7, unit: 'ft' } } },
    ];
    const text = lineOf(begun()) + marks.map((mark, at) => lineOf(noted(at + 2), mark)).join('');
    const { facts, marks: read, bad } = readJournal(Buffer.from(text), undefined, OF_A_PRACTICE);
    expect([bad, [...read.values()]]).toEqual([null, [{ of: OF }, ...marks]]);
    expect(facts[0]).toEqual(begun());
    expect(facts.map((fact) => OF_A_PRACTICE.encode(fact, read.get(fact.seq) ?? null)).join('')).toBe(text);
  });

  it.each([['a knob that there is not', { turned: [{ knob: 'no-knob', by: 1 }] }], ['a key too many', { turned: [], more: 1 }]])('are refused with %s', (_name, mark) => {
    const text = lineOf(begun()) + OF_A_PRACTICE.encode(noted(2), mark as unknown as PracticeMark);
    expect(readJournal(Buffer.from(text), undefined, OF_A_PRACTICE).bad).toMatchObject({ code: 'bad-journal', line: 2 });
  });

  it('go through the store and its lock like any other', () => {
    const path = atName();
    const store = openPracticeStore(path, { now: AT });
    store.append(begun(), { of: OF });
    store.append(noted(2), { turned: [] });
    failsWith('locked', () => openPracticeStore(path, { now: AT }));
    store.close();
    const again = openPracticeStore(path, { now: AT });
    expect([again.facts.length, again.marks.get(1), again.marks.get(2)]).toEqual([2, { of: OF }, { turned: [] }]);
    again.close();
    expect(listTunes(here.path, OF_A_PRACTICE)).toMatchObject([{ practice: OF, finished: false }]);
  });
});

it('a frozen practice is read by every later program as it was meant', () => {
  const bytes = readFileSync(new URL('../fixtures/practice-v1.jsonl', import.meta.url));
  const { facts, marks, bad, version } = readJournal(bytes, undefined, OF_A_PRACTICE);
  expect([bad, version, marks.get(1)]).toEqual([null, CURRENT_VERSION, { of: { lesson: 'the first guess is wrong', seed: 2 } }]);
  expect([...marks.values()].map((mark) => Object.keys(mark)[0])).toEqual(expect.arrayContaining(['of', 'shot', 'turned', 'overlooked', 'ended']));
  expect(facts.map((fact) => OF_A_PRACTICE.encode(fact, marks.get(fact.seq) ?? null)).join('')).toBe(bytes.toString('utf8'));
  expect(readJournal(bytes).bad?.code).toBe('practice-journal');
});
