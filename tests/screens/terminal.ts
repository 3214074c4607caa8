// A terminal small enough to trust: it keeps the lines that were ever shown, and moves its cursor as Ink asks it to.
// What a sequence does is taken from ECMA-48 (CUU, EL, CHA, ED); one that is not expected here throws.

import { PassThrough, Writable } from 'node:stream';

export class FakeTerminal extends Writable {
  readonly isTTY = true;
  /** Everything from the first line on; the last `rows` of it are what is seen. */
  lines: string[] = [''];
  raw = '';
  cleared = 0;
  private row = 0;
  private column = 0;

  constructor(public columns: number, public rows: number) {
    super({ decodeStrings: false });
  }

  override _write(chunk: string | Buffer, _: unknown, done: () => void): void {
    const text = String(chunk);
    this.raw += text;
    for (const part of text.match(/\u001b\[[?\d;]*[A-Za-z]|[\s\S]/gu) ?? []) this.take(part);
    done();
  }

  resize(columns: number, rows: number): void {
    this.columns = columns;
    this.rows = rows;
    this.emit('resize');
  }

  get shown(): string {
    return this.lines.slice(-this.rows).join('\n').trimEnd();
  }

  get all(): string {
    return this.lines.join('\n').trimEnd();
  }

  private take(part: string): void {
    const sequence = /^\u001b\[([?\d;]*)([A-Za-z])$/.exec(part);
    if (sequence === null) return this.put(part);
    const [, given = '', final = ''] = sequence;
    const count = Number(given || '1');
    if (final === 'A') this.row = Math.max(0, this.lines.length - this.rows, this.row - count);
    else if (final === 'K') this.lines[this.row] = given === '2' ? '' : (this.lines[this.row] ?? '').slice(0, this.column);
    else if (final === 'G') this.column = count - 1;
    else if (final === 'J') this.cleared += 1;
    else if (final !== 'm' && final !== 'h' && final !== 'l') throw new Error(`an escape sequence that no screen of ours sends: ${JSON.stringify(part)}`);
  }

  private put(char: string): void {
    if (char === '\r') this.column = 0;
    else if (char === '\n') {
      this.row += 1;
      this.column = 0;
      if (this.row === this.lines.length) this.lines.push('');
    } else {
      const line = (this.lines[this.row] ?? '').padEnd(this.column);
      this.lines[this.row] = line.slice(0, this.column) + char + line.slice(this.column + 1);
      this.column += 1;
      if (this.column > this.columns) throw new Error(`a line wider than the terminal: ${this.lines[this.row]}`);
    }
  }
}

export class FakeKeyboard extends PassThrough {
  readonly isTTY = true;
  rawMode = false;
  setRawMode(mode: boolean): this {
    this.rawMode = mode;
    return this;
  }
  ref(): this {
    return this;
  }
  unref(): this {
    return this;
  }
}

/** Waits until something is so; fails with what was seen instead. */
export const until = async (holds: () => boolean, seen: () => string): Promise<void> => {
  const deadline = performance.now() + 4000;
  while (!holds()) {
    if (performance.now() > deadline) throw new Error(`waited in vain; this was seen:\n${seen()}`);
    await new Promise((done) => setTimeout(done, 5));
  }
};
