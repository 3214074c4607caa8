// Bytes to lines, for the faces that read a stream. A line that is too long is read to its end and thrown away, so memory
// stays small; a last line without a newline still counts; lines end in LF or CR LF.

import type { Readable } from 'node:stream';

/** The longest line taken, in bytes, without its line end. */
export const LONGEST_LINE = 64 * 1024;

export type Line =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'too long' }
  | { readonly kind: 'not UTF-8' };

const LF = 0x0a;
const CR = 0x0d;

function decode(bytes: Buffer): Line {
  const end = bytes.at(-1) === CR ? bytes.length - 1 : bytes.length;
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, end)) };
  } catch {
    return { kind: 'not UTF-8' };
  }
}

/** Lines in order, each once. The next chunk is read only when the line before it was dealt with. */
export async function* readLines(input: Readable): AsyncGenerator<Line> {
  let kept: Buffer[] = [];
  let size = 0;
  let tooLong = false;

  const keep = (part: Buffer): void => {
    size += part.length;
    // One byte more than the limit may still be the CR of a line end.
    tooLong ||= size > LONGEST_LINE + 1;
    if (tooLong) kept = [];
    else if (part.length > 0) kept.push(part);
  };
  const finish = (): Line => {
    const bytes = Buffer.concat(kept);
    const over = tooLong || (bytes.length > LONGEST_LINE && bytes.at(-1) !== CR);
    kept = [];
    size = 0;
    tooLong = false;
    return over ? { kind: 'too long' } : decode(bytes);
  };

  // Leaving early must not destroy the stream: that would raise an error on it, and it is not ours to close.
  // oxlint-disable-next-line typescript/consistent-type-assertions -- what a stream gives, Node's types leave open
  for await (const chunk of input.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer | string>) {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
    let from = 0;
    for (let at = bytes.indexOf(LF); at !== -1; at = bytes.indexOf(LF, from)) {
      keep(bytes.subarray(from, at));
      yield finish();
      from = at + 1;
    }
    keep(bytes.subarray(from));
  }
  if (size > 0) yield finish();
}
