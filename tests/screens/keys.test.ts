import { PassThrough } from 'node:stream';
import readline from 'node:readline';
import { describe, expect, it } from 'vitest';
import { type Key, KeyParser } from '../../src/screens/keys.ts';

/** `C-A-S-name`, or the text in quotes: short enough to read a list of. */
const show = (key: Key): string => {
  if (key.name === 'paste') return `paste(${JSON.stringify(key.text)})`;
  const marks = `${key.ctrl ? 'C-' : ''}${key.alt ? 'A-' : ''}${key.shift && key.text === '' ? 'S-' : ''}`;
  return key.text === '' ? marks + key.name : `${marks}'${key.text}'`;
};

/** Feeds reads one after another; `wait` is a quiet moment of more than 40 ms. */
const keysOf = (...reads: (Buffer | string)[]): string[] => {
  const parser = new KeyParser();
  return reads.flatMap((read) => (read === 'wait' ? parser.quiet(false) : parser.push(read))).map(show);
};

const CASES: readonly (readonly [string, readonly (Buffer | string)[], readonly string[]])[] = [
  ['abc then CR in one read', ['abc\r'], ["'a'", "'b'", "'c'", 'enter']],
  ['two lines in one read', ['ab\rcd\r'], ["'a'", "'b'", 'enter', "'c'", "'d'", 'enter']],
  ['a bracketed paste with a CR inside', ['\u001b[200~one\rtwo\u001b[201~'], ['paste("one\\rtwo")']],
  ['a bracketed paste in four reads', ['\u001b[20', '0~one', '\u001b[A two\u001b[2', '01~x'], ['paste("one\\u001b[A two")', "'x'"]],
  ['arrows', ['\u001b[A', '\u001b[B', '\u001b[C', '\u001b[D', '\u001bOA'], ['up', 'down', 'right', 'left', 'up']],
  ['an arrow in two reads', ['\u001b', '[A'], ['up']],
  ['an arrow in three reads', ['\u001b', '[', 'A'], ['up']],
  ['an arrow that pauses inside its sequence', ['\u001b[', 'wait', 'A'], ['up']],
  ['a bare Escape', ['\u001b', 'wait'], ['escape']],
  ['Escape, then an arrow', ['\u001b', 'wait', '\u001b[A'], ['escape', 'up']],
  ['Escape twice', ['\u001b\u001b', 'wait'], ['escape', 'escape']],
  ['Alt-b', ['\u001bb'], ['A-b']],
  ['e acute', ['\u00e9'], ["'\u00e9'"]],
  ['e acute split inside its two bytes', [Buffer.from([0xc3]), Buffer.from([0xa9])], ["'\u00e9'"]],
  ['an emoji with a skin tone', ['\u{1f44d}\u{1f3fd}'], ["'\u{1f44d}\u{1f3fd}'"]],
  ['CJK', ['\u5f13\u77e2'], ["'\u5f13'", "'\u77e2'"]],
  ['backspace and Ctrl-H', ['\u007f\b'], ['backspace', 'backspace']],
  ['Delete', ['\u001b[3~'], ['delete']],
  ['Tab and Shift-Tab', ['\t', '\u001b[Z'], ['tab', 'S-tab']],
  ['CR, LF, and the two together', ['\r', 'x', '\n', 'x', '\r\n'], ['enter', "'x'", 'enter', "'x'", 'enter']],
  ['Ctrl-A and Ctrl-C', ['\u0001\u0003'], ['C-a', 'C-c']],
  ['PgUp and PgDn', ['\u001b[5~\u001b[6~'], ['pageup', 'pagedown']],
  ['Home and End in each encoding', ['\u001b[H\u001bOH\u001b[1~\u001b[7~\u001b[F\u001bOF\u001b[4~\u001b[8~'],
    ['home', 'home', 'home', 'home', 'end', 'end', 'end', 'end']],
  ['F1 in each encoding', ['\u001bOP\u001b[11~\u001b[[A'], ['f1', 'f1', 'f1']],
  ['Ctrl-Left and Shift-Up', ['\u001b[1;5D\u001b[1;2A'], ['C-left', 'S-up']],
  ['the kitty protocol: a, A, Shift-Enter, a key let go', ['\u001b[97u\u001b[97;2u\u001b[13;2u\u001b[97;1:3u'], ["'a'", "'A'", 'S-enter']],
  ['Shift-Enter as xterm may send it', ['\u001b[27;2;13~'], ['S-enter']],
  ['three arrows in one read', ['\u001b[A\u001b[A\u001b[B'], ['up', 'up', 'down']],
  ['mouse reports, new and old', ['\u001b[<0;10;10M\u001b[<0;10;10m', '\u001b[M !!', 'x'], ["'x'"]],
  ['focus in and out', ['\u001b[I\u001b[O'], []],
  ['Ctrl-F1', ['\u001b[1;5P'], ['C-f1']],
  ['Down and Enter in one read', ['\u001b[B\r'], ['down', 'enter']],
  ['replies of the terminal', ['\u001b[?62;22c', '\u001b[?2026;2$y', '\u001b]11;rgb:0/0/0\u0007', '\u001bP1$r0m\u001b\\', '\u001b[24;80R', 'x'], ["'x'"]],
  ['a reply that never ends', ['\u001b]11;rgb', 'wait', 'x'], ["'x'"]],
  ['a sequence cut short by Enter', ['\u001b[1;\r'], ['enter']],
  ['unknown keys', ['\u001b[99~\u001b[1;5Y\u001b[1;2;3;4z', '\u0000', '\u0085', 'x'], ["'x'"]],
  ['a byte that is no UTF-8', [Buffer.from([0xff, 0x61])], ["'a'"]],
];

describe('keys', () => {
  it.each(CASES)('%s', (_, reads, wanted) => {
    expect(keysOf(...reads)).toEqual(wanted);
  });

  it.each(CASES.filter(([, reads]) => reads.every((read) => read !== 'wait')))('byte by byte: %s', (name, reads, wanted) => {
    // Two reads that end in a CR and begin with an LF are two keys only when they are apart in time; the parser has no clock.
    const bytes = Buffer.concat(reads.map((read) => Buffer.from(read)));
    const parser = new KeyParser();
    const keys = [...bytes].flatMap((byte) => parser.push(Buffer.from([byte])));
    if (name === 'an emoji with a skin tone') expect(keys.map((key) => key.text).join('')).toBe('\u{1f44d}\u{1f3fd}');
    else expect([...keys, ...parser.quiet(false)].map(show)).toEqual(wanted);
  });

  it('takes a large unmarked read for a paste, so that its letters are no commands', () => {
    const parser = new KeyParser();
    const keys = [...parser.push('q'.repeat(4095)), ...parser.push('q\rq'.repeat(50)), ...parser.quiet(false), ...parser.push('q')];
    expect(keys.map((key) => [key.name, key.length])).toEqual([['paste', 4095], ['paste', 150], ['q', undefined]]);
  });

  it('keeps the beginning of a very long paste and says how long it was', () => {
    const keys = new KeyParser().push(`\u001b[200~${'x'.repeat(100_000)}\u001b[201~y`);
    expect(keys.map((key) => [key.name, key.text.length, key.length])).toEqual([['paste', 16_384, 100_000], ['y', 1, undefined]]);
  });

  it('ends a paste whose end mark was lost, after a long quiet', () => {
    const parser = new KeyParser();
    expect([...parser.push('\u001b[200~abc'), ...parser.quiet(false)]).toEqual([]);
    expect(parser.quiet(true).map(show)).toEqual(['paste("abc")']);
  });
});

describe('why not the reader that comes with Node', () => {
  it('lets a mouse report and a reply through as typed text, and parts an emoji from its skin tone', async () => {
    const typed = async (bytes: string): Promise<string[]> => {
      const stream = new PassThrough();
      const seen: string[] = [];
      readline.emitKeypressEvents(stream);
      stream.on('keypress', (text: string | undefined) => {
        if (text !== undefined) seen.push(text);
      });
      stream.write(bytes);
      await new Promise((done) => setImmediate(done));
      return seen;
    };
    expect(await typed('\u001b[<0;10;10M')).toContain('M');
    expect(await typed('\u001b[?62;22c')).toContain('c');
    expect(await typed('\u{1f44d}\u{1f3fd}')).toHaveLength(2);
  });
});
