// Bytes from a terminal to key events. Node's own reader lets mouse, focus and terminal replies through as typed text
// and splits an emoji from its skin tone (tests/screens/keys.test.ts holds it against the same list), so this one is ours.
// It has no clock: the caller says when it has been quiet for a while (key-reader.ts).

import { StringDecoder } from 'node:string_decoder';
import { C0_NAMES, csiKey, functionKey, type Key, key, textKeys } from './key-names.ts';

export type { Key } from './key-names.ts';

/** More typed text than this in one read is no typing: it is a paste into a terminal without bracketed paste. */
const BURST = 256;
/** A paste is read to its end, but no more than this is kept of it. */
export const PASTE_KEPT = 16_384;
const PASTE_START = '\u001b[200~';
const PASTE_END = '\u001b[201~';
const SEQUENCE_CAP = 64;

type Mode = 'ground' | 'escape' | 'csi' | 'ss3' | 'string' | 'paste' | 'skip';

export class KeyParser {
  private readonly decoder = new StringDecoder('utf8');
  private mode: Mode = 'ground';
  private held = '';
  private text = '';
  private skip = 0;
  private pasted = '';
  private pastedLength = 0;
  private afterCr = false;
  private bursting = false;
  private out: Key[] = [];

  /** True while a quiet moment means something: a lone Escape, or a reply that never ended. Never inside a CSI. */
  get waiting(): boolean {
    return this.mode === 'escape' || this.mode === 'string' || this.mode === 'paste' || this.bursting;
  }

  /** Takes one read and gives the keys that are complete. */
  push(chunk: Buffer | string): Key[] {
    const read = typeof chunk === 'string' ? chunk : this.decoder.write(chunk);
    if (this.mode === 'ground' && (this.bursting || read.length > BURST) && !read.includes('\u001b')) {
      this.burst(read);
    } else {
      for (const char of read) this.take(char);
      this.flushText();
    }
    return this.drain();
  }

  /** The line has been quiet: what was held back is decided now. `long` is a pause that even a paste does not make. */
  quiet(long: boolean): Key[] {
    this.bursting = false;
    if (this.mode === 'escape') this.emit(key('escape'));
    else if (this.mode === 'paste') {
      if (!long) return [];
      this.endPaste();
    } else if (this.mode !== 'string') return [];
    this.mode = 'ground';
    this.held = '';
    return this.drain();
  }

  private drain(): Key[] {
    const keys = this.out;
    this.out = [];
    return keys;
  }

  private emit(...keys: Key[]): void {
    this.flushText();
    this.out.push(...keys);
  }

  private flushText(): void {
    if (this.text === '') return;
    const text = this.text;
    this.text = '';
    this.out.push(...textKeys(text));
  }

  private burst(read: string): void {
    this.bursting = true;
    const line = /^[^\r\n]*[\r\n]$/.test(read) && read.length <= BURST * 4;
    const body = line ? read.slice(0, -1) : read;
    this.out.push({ ...key('paste'), text: body.slice(0, PASTE_KEPT), length: body.length });
    if (line) this.out.push(key('enter'));
  }

  private take(char: string): void {
    switch (this.mode) {
      case 'ground': return this.ground(char);
      case 'escape': return this.escape(char);
      case 'csi': return this.csi(char);
      case 'ss3': return this.ss3(char);
      case 'string': return this.string(char);
      case 'paste': return this.paste(char);
      case 'skip':
        this.skip -= 1;
        if (this.skip <= 0) this.mode = 'ground';
    }
  }

  private ground(char: string): void {
    const code = char.codePointAt(0) ?? 0;
    const lfOfCrLf = char === '\n' && this.afterCr;
    this.afterCr = char === '\r';
    if (lfOfCrLf) return;
    if (char === '\u001b') {
      this.flushText();
      this.mode = 'escape';
    } else if (code < 0x20 || code === 0x7f) {
      const named = C0_NAMES[code];
      if (named !== undefined) this.emit(named);
    } else if (!(code >= 0x80 && code < 0xa0) && code !== 0xfffd) {
      this.text += char;
    }
  }

  private escape(char: string): void {
    this.held = '';
    const code = char.codePointAt(0) ?? 0;
    if (char === '[') this.mode = 'csi';
    else if (char === 'O') this.mode = 'ss3';
    else if (char === ']' || char === 'P' || char === '_' || char === '^' || char === 'X') this.mode = 'string';
    else if (char === '\u001b') this.emit(key('escape'));
    else {
      this.mode = 'ground';
      const base = code < 0x20 || code === 0x7f ? C0_NAMES[code] : { ...key(char.toLowerCase()), shift: char !== char.toLowerCase() };
      if (base !== undefined) this.emit({ ...base, alt: true });
    }
  }

  private csi(char: string): void {
    const code = char.codePointAt(0) ?? 0;
    if (char === '\u001b') this.mode = 'escape';
    else if (code < 0x20) {
      this.mode = 'ground';
      this.ground(char);
    } else if (this.held === '' && char === '[') {
      // The Linux console writes F1 to F5 as ESC [ [ A to E.
      this.held = '[';
    } else if (this.held === '[' || (code >= 0x40 && code <= 0x7e) || (char === '$' && /^\d+$/.test(this.held))) {
      this.finishCsi(char);
    } else {
      this.held += char;
      if (this.held.length > SEQUENCE_CAP) this.mode = 'ground';
    }
  }

  private finishCsi(final: string): void {
    this.mode = 'ground';
    const params = this.held;
    this.held = '';
    if (params === '' && final === 'M') {
      // The oldest mouse report: three bytes follow.
      this.mode = 'skip';
      this.skip = 3;
    } else if (params === '200' && final === '~') {
      this.mode = 'paste';
      this.pasted = '';
      this.pastedLength = 0;
    } else {
      const found = csiKey(params, final);
      if (found !== null) this.emit(found);
    }
  }

  private ss3(char: string): void {
    this.mode = 'ground';
    const found = functionKey(char);
    if (found !== null) this.emit(found);
  }

  private string(char: string): void {
    if (char === '\u0007') this.mode = 'ground';
    else if (char === '\u001b') this.held = '\u001b';
    else if (char === '\\' && this.held === '\u001b') this.mode = 'ground';
    else this.held = '';
  }

  private paste(char: string): void {
    this.pasted += char;
    this.pastedLength += char.length;
    if (this.pasted.endsWith(PASTE_END)) {
      this.pasted = this.pasted.slice(0, -PASTE_END.length);
      this.pastedLength -= PASTE_END.length;
      this.endPaste();
    } else if (this.pasted.length > PASTE_KEPT + PASTE_START.length * 2) {
      // Keep the beginning and a tail long enough to see the end mark.
      this.pasted = this.pasted.slice(0, PASTE_KEPT) + this.pasted.slice(-PASTE_END.length);
    }
  }

  private endPaste(): void {
    this.mode = 'ground';
    this.emit({ ...key('paste'), text: this.pasted.slice(0, PASTE_KEPT), length: this.pastedLength });
    this.pasted = '';
  }
}
