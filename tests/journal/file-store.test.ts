import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeLine } from '../../src/journal/line.ts';
import { openFileStore } from '../../src/journal/file-store.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Fact } from '../../src/machine/types.ts';
import { anyFact, begun, noted, NOON, tuneOf } from './facts.ts';
import { failsWith, freshFolder, linesOf, reopened } from './folder.ts';

const here = freshFolder();
const open = () => openFileStore(here.journal, { now: NOON });

describe('a journal on disk', () => {
  it('gives back what was kept, in order, and is the lines of the facts and nothing else', () => {
    const facts = tuneOf(5);
    const store = open();
    facts.forEach((fact) => store.append(fact));
    expect(store.facts).toEqual(facts);
    store.close();
    expect(here.read().toString('utf8')).toBe(linesOf(facts));
    expect(reopened(here.journal)).toEqual({ facts, notices: [] });
    expect(here.names()).toEqual(['t.jsonl']);
  });

  it('gives back any facts, as the store in memory does', () => {
    const tunes = fc.integer({ min: 1, max: 6 }).chain((n) => fc.tuple(...Array.from({ length: n }, (_, at) => anyFact(at + 1))));
    let run = 0;
    fc.assert(fc.property(tunes, (facts) => {
      const path = join(here.path, `${(run += 1)}.jsonl`);
      const store = openFileStore(path, { now: NOON });
      const memory = memoryStore();
      for (const fact of facts) { store.append(fact); memory.append(fact); }
      store.close();
      expect(reopened(path).facts).toEqual(facts);
      expect(memory.facts).toEqual(facts);
    }), { numRuns: 60 });
  });

  it('is for its owner alone, and so are the folders made for it', () => {
    const path = join(here.path, 'a', 'b', 't.jsonl');
    openFileStore(path, { now: NOON }).close();
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(statSync(join(here.path, 'a', 'b')).mode & 0o777).toBe(0o700);
    expect(statSync(join(here.path, 'a')).mode & 0o777).toBe(0o700);
  });

  it('takes no fact out of its place, and writes nothing of it', () => {
    const store = open();
    failsWith('internal', () => store.append(noted(1)));
    store.append(begun());
    failsWith('internal', () => store.append(noted(3)));
    failsWith('internal', () => store.append(begun({ seq: 2 })));
    store.append(noted(2));
    store.close();
    failsWith('internal', () => store.append(noted(3)));
    expect(here.read().toString('utf8')).toBe(linesOf(tuneOf(2)));
  });

  it('tells what is in the way of opening', () => {
    here.write('', 'file');
    expect(failsWith('home-not-writable', () => openFileStore(join(here.path, 'file', 't.jsonl'), { now: NOON })).message).toMatch(/file is in the way/);
    mkdirSync(here.journal);
    expect(failsWith('home-not-writable', open).message).toContain('a folder of that name is in the way');
    expect(here.has('t.jsonl.lock')).toBe(false);
  });
});

describe('a last line cut short', () => {
  it('is set aside and cut at whatever byte it broke, and the tune goes on', () => {
    const facts = tuneOf(3);
    const before = Buffer.from(linesOf(facts));
    const last = Buffer.from(encodeLine(noted(4, 'the tail was 7/16 high \u2014 and \u{1f3af} left')));
    // From one byte of the line to all of it without its newline.
    for (let length = 1; length < last.length; length += 1) {
      const name = `${length}.jsonl`;
      here.write(Buffer.concat([before, last.subarray(0, length)]), name);
      const store = openFileStore(join(here.path, name), { now: NOON });
      expect(store.facts).toEqual(facts);
      expect(store.notices).toHaveLength(1);
      expect(store.notices[0]).toContain(`${name}.torn-4`);
      store.append(noted(4));
      store.close();
      expect(here.read(`${name}.torn-4`).equals(last.subarray(0, length))).toBe(true);
      expect(here.read(name).toString('utf8')).toBe(linesOf(tuneOf(4)));
    }
  });

  it('may be the first line, or bytes that are no text', () => {
    here.write(encodeLine(begun()).slice(0, 40));
    expect(reopened(here.journal).facts).toEqual([]);
    expect(here.read().length).toBe(0);
    here.write(Buffer.concat([Buffer.from(linesOf(tuneOf(2))), Buffer.alloc(4096)]));
    expect(reopened(here.journal).facts).toEqual(tuneOf(2));
    expect(here.read('t.jsonl.torn-3').length).toBe(4096);
  });

  it('never writes over an earlier piece', () => {
    for (const piece of ['one', 'two', 'three']) {
      here.write(linesOf(tuneOf(2)) + piece);
      reopened(here.journal);
    }
    expect(here.names()).toEqual(['t.jsonl', 't.jsonl.torn-3', 't.jsonl.torn-3-2', 't.jsonl.torn-3-3']);
    expect(here.read('t.jsonl.torn-3-2').toString()).toBe('two');
  });
});

describe('a finished line that cannot be read', () => {
  const lines = tuneOf(5).map(encodeLine);
  const withLine = (at: number, line: string) => lines.map((good, i) => (i === at - 1 ? line : good)).join('');
  const moved = (over: Partial<Fact>) => encodeLine({ ...noted(3), ...over } as Fact);

  it.each<[string, string, number, RegExp]>([
    ['no JSON', withLine(3, 'hello\n'), 3, /checksum/],
    ['an empty line', withLine(3, '\n'), 3, /empty/],
    ['a changed word', withLine(3, lines[2]!.replace('note 3', 'note 4')), 3, /checksum does not fit/],
    ['a wrong sum', withLine(3, lines[2]!.replace(/"sum":"......../, '"sum":"00000000')), 3, /checksum does not fit/],
    ['no sum', withLine(3, '{"seq":3}\n'), 3, /does not end with a checksum/],
    ['bytes that are no text', Buffer.from(withLine(3, lines[2]!)).toString('latin1').replace('note 3', 'note \u00ff'), 3, /UTF-8/],
    ['a number twice', withLine(3, lines[1]!), 3, /number 2 where 3 was due/],
    ['a number left out', withLine(3, ''), 3, /number 4 where 3 was due/],
    ['a second beginning', withLine(3, encodeLine(begun({ seq: 3 }))), 3, /in the middle/],
    ['another beginning', withLine(1, encodeLine(noted(1))), 1, /first line/],
    ['the last line', withLine(5, 'x\n'), 5, /checksum/],
    ['two lines glued', withLine(3, lines[2]!.slice(0, 20) + lines[2]!), 3, /checksum/],
    ['line ends of another system', withLine(3, lines[2]!.replace('\n', '\r\n')), 3, /checksum/],
    ['a bad line and a torn one', withLine(3, 'x\n') + 'torn', 3, /checksum/],
  ])('%s', (_, text, line, reason) => {
    expect(moved({})).toBe(lines[2]);
    const bytes = Buffer.from(text, 'latin1');
    here.write(bytes);
    const error = failsWith('bad-journal', open);
    expect(error.message).toContain(`line ${line},`);
    expect(error.message).toMatch(reason);
    expect(error.message).toMatch(line === 1 ? /begin a new tune/ : new RegExp(`go on from line ${line - 1}`));
    expect(here.read().equals(bytes)).toBe(true);
    expect(here.names()).toEqual(['t.jsonl']);
  });
});

describe('a journal of a newer program', () => {
  it('is not touched, whatever its lines look like, not even its torn end', () => {
    for (const text of ['{"v":2,"x":"y"}\n{"z":1}\ntorn', encodeLine(begun()).replace('"v":1', '"v":7')]) {
      here.write(text);
      const error = failsWith('newer-journal', open);
      expect(error.message).toContain('Install the newer quarterturn');
      expect(here.read().toString()).toBe(text);
      expect(here.names()).toEqual(['t.jsonl']);
    }
  });
});

describe('a store in memory', () => {
  it('keeps to the rules of the file', () => {
    const store = memoryStore(tuneOf(2));
    failsWith('internal', () => store.append(noted(4)));
    failsWith('internal', () => store.append({ ...noted(3), kind: 'moved', knob: 'yoke', delta: Number.NaN } as unknown as Fact));
    store.append(noted(3));
    expect(store.facts).toEqual(tuneOf(3));
    store.close();
    failsWith('internal', () => store.append(noted(4)));
  });
  it('holds what would come back from disk, not what was handed in', () => {
    const fact = { ...noted(2), decided: { events: [], say: [], findings: [], loop: { gone: undefined, wanted: 1 } } };
    const store = memoryStore([begun(), fact]);
    expect(Object.keys(store.facts[1]!.decided.loop!)).toEqual(['wanted']);
    expect(memoryStore([begun(), fact], { skipCodec: true }).facts[1]).toBe(fact);
  });
});
