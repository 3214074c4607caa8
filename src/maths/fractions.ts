// Numbers as an archer writes them (1 1/8 in, .5, 3,5 mm, -1/64) and as the coach writes them back.

import { checks } from './check.ts';
import { convert } from './convert.ts';
import { unitFromWord, unitWord } from './unit-words.ts';
import type { Unit } from './units.ts';

const must = checks('formatInches', 'formatQuantity');

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly code: 'empty' | 'not-a-number'; readonly why: string };

const LONGEST = 64;
const SIGN = '[+-]?';
const MIXED = new RegExp(`^(${SIGN})(\\d+)(?: |-| - )(\\d+) ?/ ?(\\d+)`);
const FRACTION = new RegExp(`^(${SIGN})(\\d+) ?/ ?(\\d+)`);
const DECIMAL = new RegExp(`^(${SIGN})(\\d+[.,]?\\d*|[.,]\\d+)`);

/** Written otherwise, meant the same: signs and marks that telephones and word processors put in. */
const ALIKE: readonly (readonly [RegExp, string])[] = [
  [/[\u2212\u2013]/g, '-'], [/[\u2033\u201c\u201d]/g, '"'], [/\u2044/g, '/'], [/[\u00a0\u2009\u202f]/g, ' '],
  [/\u00bc/g, ' 1/4'], [/\u00bd/g, ' 1/2'], [/\u00be/g, ' 3/4'],
  [/\u215b/g, ' 1/8'], [/\u215c/g, ' 3/8'], [/\u215d/g, ' 5/8'], [/\u215e/g, ' 7/8'],
];

/**
 * Reads a quantity and gives it in `unit`, which is also meant where no unit is written. Any text is allowed:
 * what cannot be read comes back with a one-line reason that says what to write. Never throws.
 */
// Example: parseQuantity('1-1/8 in', 'in') is { ok: true, value: 1.125 }; parseQuantity('25.4 mm', 'in') is { ok: true, value: 1 }.
export function parseQuantity(text: string, unit: Unit): Parsed {
  if (text.length > LONGEST) return no(`that is longer than ${LONGEST} characters; write one number, like ${like(unit)}`);
  let rest = text;
  for (const [seen, meant] of ALIKE) rest = rest.replace(seen, meant);
  // The sign before a half that was one character: "- 1/2" is -1/2.
  rest = rest.trim().replace(/ +/g, ' ').replace(/^([+-]) (?=[\d.,])/, '$1');
  if (/[\p{Cc}\p{Cf}\p{Cs}]/u.test(rest)) return no(`there are characters in it that cannot be read; write it as ${like(unit)}`);
  if (rest === '') return { ok: false, code: 'empty', why: `nothing was written; a number is needed, like ${like(unit)}` };

  const read = readNumber(rest);
  if (typeof read === 'string') return no(read === '' ? `that is not a number; write it as ${like(unit)}` : read);
  const word = rest.slice(read.length).trim();
  if (word === '') return yes(read.value);
  if (/^[\d.,/+-]/.test(word)) return no(`there is more than one number; write one, like ${like(unit)}`);
  if (/^e[+-]?\d/i.test(word)) return no(`write the number out in digits, like ${like(unit)}`);
  const written = unitFromWord(word);
  if (written === null) return no(`the words after the number are not a unit known here; write it as ${like(unit)}`);
  const value = convert(read.value, written, unit);
  if (value === null) return no(`"${word}" cannot be turned into ${unitWord(unit, 2) || 'a count'}; write it as ${like(unit)}`);
  return yes(value);
}

/** The number at the start of the text and how long it is, or why it is none ('' where nothing more can be said). */
function readNumber(text: string): { value: number; length: number } | string {
  const mixed = MIXED.exec(text);
  if (mixed) {
    const [all, sign, whole, over, under] = mixed;
    if (Number(under) === 0) return 'a fraction cannot have 0 below its line';
    if (Number(over) >= Number(under)) return 'the fraction after a whole number must be less than 1, like 1 1/8';
    return { value: signed(sign, Number(whole) + Number(over) / Number(under)), length: all.length };
  }
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const [all, sign, over, under] = fraction;
    if (Number(under) === 0) return 'a fraction cannot have 0 below its line';
    return { value: signed(sign, Number(over) / Number(under)), length: all.length };
  }
  const decimal = DECIMAL.exec(text);
  if (!decimal) return '';
  const [all, sign, digits = ''] = decimal;
  // One thousand or one and a bit? A guess could be a thousandfold wrong.
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) return `the comma can be read two ways; write ${digits.replace(',', '')} or ${digits.replace(',', '.')}`;
  return { value: signed(sign, Number(digits.replace(',', '.'))), length: all.length };
}

const signed = (sign: string | undefined, size: number): number => (sign === '-' && size !== 0 ? -size : size);
const yes = (value: number): Parsed => ({ ok: true, value });
const no = (why: string): Parsed => ({ ok: false, code: 'not-a-number', why });

function like(unit: Unit): string {
  return unit === 'in' ? '1/32 or 1 1/8' : formatQuantity({ value: unit === 'turn' || unit === 'half-twist' ? 0.5 : 3, unit });
}

/** A length in inches as a fraction, to the nearest 1/`smallest` (halves away from zero). Throws RangeError unless the length is finite and `smallest` whole. */
// Example: formatInches(1.125) is '1 1/8'; formatInches(-3 / 16) is '-3/16'; formatInches(0.44, 8) is '1/2'.
export function formatInches(value: number, smallest = 64): string {
  must.formatInches.finite(value, 'the length');
  if (!(Number.isInteger(smallest) && smallest > 0)) throw must.formatInches.error(`the smallest part is 1/${smallest}; a whole number above 0 is needed`);
  const parts = Math.round(Math.abs(value) * smallest);
  if (parts === 0) return '0';
  const whole = Math.floor(parts / smallest);
  const over = parts % smallest;
  const common = gcd(over, smallest);
  const words = [...(whole > 0 ? [String(whole)] : []), ...(over > 0 ? [`${over / common}/${smallest / common}`] : [])];
  return (value < 0 ? '-' : '') + words.join(' ');
}

/** How fine the marks are where a unit is written in fractions. */
const MARKS: Partial<Record<Unit, number>> = { in: 64, turn: 16, 'half-twist': 8, 'half-twist-pair': 8, size: 8 };

/**
 * A quantity in words: 1/32 in, 2 half-twists, 58.5 lb, 1 half-twist pair. Fractions where the unit is
 * marked in them and the value lies on a mark; otherwise at most three decimals, so that 33.4 in stays 33.4 in.
 * Throws RangeError unless the value is finite.
 */
// Example: formatQuantity({ value: 0.5, unit: 'turn' }) is '1/2 turn'; formatQuantity({ value: 33.4, unit: 'in' }) is '33.4 in'.
export function formatQuantity(quantity: { readonly value: number; readonly unit: Unit }): string {
  const { value, unit } = quantity;
  must.formatQuantity.finite(value, 'the value');
  const marks = MARKS[unit] ?? NaN; // without marks nothing lies on one
  const onMark = Math.abs(value * marks - Math.round(value * marks)) < 0.02;
  const number = onMark ? formatInches(value, marks) : String(Number(value.toFixed(3)) || 0);
  const word = unitWord(unit, Number(value.toFixed(3)));
  return word === '' ? number : `${number} ${word}`;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
