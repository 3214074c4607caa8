// What terminals send for a key, as one small event. Sequences that are not listed give no event at all.

export interface Key {
  /** `up`, `enter`, `pageup`, `paste`, … or, for typed text, the text itself. */
  readonly name: string;
  /** What would be typed; empty for a key that types nothing. */
  readonly text: string;
  readonly ctrl: boolean;
  readonly alt: boolean;
  readonly shift: boolean;
  /** For a paste: how long it was before it was cut. */
  readonly length?: number;
}

export const key = (name: string): Key => ({ name, text: '', ctrl: false, alt: false, shift: false });

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Splits text into what a person would call characters. */
export const splitGraphemes = (text: string): string[] => [...graphemes.segment(text)].map((part) => part.segment);

export const textKeys = (text: string): Key[] => splitGraphemes(text).map((part) => ({ ...key(part), text: part }));

const ctrl = (name: string): Key => ({ ...key(name), ctrl: true });

/** Control bytes. NUL and the odd ones past 0x1b are left out: nobody means them. */
export const C0_NAMES: Readonly<Record<number, Key>> = {
  ...Object.fromEntries(Array.from({ length: 26 }, (_, i) => [i + 1, ctrl(String.fromCharCode(97 + i))])),
  0x08: key('backspace'),
  0x09: key('tab'),
  0x0a: key('enter'),
  0x0d: key('enter'),
  0x7f: key('backspace'),
};

const BY_FINAL: Readonly<Record<string, string>> = {
  A: 'up', B: 'down', C: 'right', D: 'left', H: 'home', F: 'end',
  P: 'f1', Q: 'f2', R: 'f3', S: 'f4', M: 'enter',
  a: 'up', b: 'down', c: 'right', d: 'left',
};
const BY_NUMBER: Readonly<Record<string, string>> = {
  1: 'home', 2: 'insert', 3: 'delete', 4: 'end', 5: 'pageup', 6: 'pagedown', 7: 'home', 8: 'end',
  11: 'f1', 12: 'f2', 13: 'f3', 14: 'f4', 15: 'f5', 17: 'f6', 18: 'f7', 19: 'f8', 20: 'f9', 21: 'f10', 23: 'f11', 24: 'f12',
};
const BY_CODE: Readonly<Record<number, string>> = { 9: 'tab', 13: 'enter', 27: 'escape', 127: 'backspace', 57414: 'enter' };

/** ESC O x. */
export const functionKey = (final: string): Key | null => {
  const name = BY_FINAL[final];
  return name === undefined ? null : { ...key(name), ctrl: final >= 'a' };
};

/** ESC [ params final, or null for all that is not a key (mouse, focus, replies) and for keys that we do not know. */
export const csiKey = (params: string, final: string): Key | null => {
  if (!/^[\d;:]*$/.test(params)) return params === '[' && final >= 'A' && final <= 'E' ? key(`f${final.charCodeAt(0) - 64}`) : null;
  const [first = '', second = '', third = ''] = params.split(';');
  if (final === 'u') return codeKey(first, second);
  if (final === '~' && first === '27' && third !== '') return codeKey(third, second);
  if (final === 'Z') return { ...key('tab'), shift: true };
  if (final === '~' || final === '$' || final === '^' || final === '@') {
    const name = BY_NUMBER[first];
    if (name === undefined) return null;
    const event = withModifiers(name, second);
    return event === null ? null : { ...event, shift: event.shift || final === '$' || final === '@', ctrl: event.ctrl || final === '^' || final === '@' };
  }
  if (final === 'M' || (first !== '' && first !== '1')) return null;
  const name = BY_FINAL[final];
  if (name === undefined) return null;
  const event = withModifiers(name, second);
  return event === null ? null : { ...event, shift: event.shift || (final >= 'a' && final <= 'd') };
};

/** A key given as a code point (the kitty protocol and xterm's modifyOtherKeys). */
const codeKey = (code: string, modifiers: string): Key | null => {
  const point = Number.parseInt(code, 10);
  if (!Number.isFinite(point) || point > 0x10ffff) return null;
  const special = BY_CODE[point];
  if (special !== undefined) return withModifiers(special, modifiers);
  if (point < 0x20 || (point >= 0x80 && point < 0xa0) || (point >= 0xd800 && point < 0xf900)) return null;
  const char = String.fromCodePoint(point);
  const event = withModifiers(char, modifiers);
  if (event === null || event.ctrl || event.alt) return event;
  const text = event.shift ? char.toUpperCase() : char;
  return { ...event, name: text, text };
};

/** `5` or `5:1`: one more than the bits shift 1, alt 2, ctrl 4; event type 3 is a key let go, which is no key press. */
const withModifiers = (name: string, modifiers: string): Key | null => {
  const [bits = '', type = ''] = modifiers.split(':');
  if (type === '3') return null;
  const mask = bits === '' ? 0 : Number.parseInt(bits, 10) - 1;
  return { name, text: '', shift: (mask & 1) !== 0, alt: (mask & 2) !== 0, ctrl: (mask & 4) !== 0 };
};
