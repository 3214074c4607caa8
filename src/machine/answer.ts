// Any written form of an answer -> its canonical form, against the ask that stands. One reader for all faces.
// A refusal names what is wrong and what to write instead, and takes nothing.

import type { ErrorCode } from '../errors.ts';
import { formatQuantity, parseQuantity } from '../maths/fractions.ts';
import { convert } from '../maths/convert.ts';
import { unitWord } from '../maths/unit-words.ts';
import { UNITS, type Unit } from '../maths/units.ts';
import type { Answer, Ask, Quantity } from './types.ts';
import { MAX_IMPACT, MAX_TEAR, parseShots } from './answer-shots.ts';

export type Parsed = { readonly ok: true; readonly answer: Answer } | { readonly ok: false; readonly code: ErrorCode; readonly message: string };

export const MAX_TEXT = 2000;

const refuse = (code: ErrorCode, message: string): Parsed => ({ ok: false, code, message });
const take = (answer: Answer): Parsed => ({ ok: true, answer });

export function parseAnswer(ask: Ask, raw: unknown): Parsed {
  const text = typeof raw === 'string' ? raw.trim() : null;
  if (text !== null) {
    const bad = refuseText(ask, text);
    if (bad !== null) return bad;
    // "unknown" may be an option of its own ("which cams?"): then it is that.
    if (/^(not known|unknown|not sure|don't know|dont know)$/i.test(text) && !(ask.kind === 'choice' && pick(ask, text) !== null)) {
      if (ask.unknown === true) return take({ kind: 'not known' });
      if (ask.kind !== 'text') return refuse('not-known-not-taken', `"not known" is no answer here. ${hint(ask)}`);
    }
  }
  if (raw === null || raw === undefined) return refuse('empty', `Nothing was entered. ${hint(ask)}`);
  switch (ask.kind) {
    case 'choice':
      return parseChoice(ask, text ?? raw);
    case 'number':
      return parseNumber(ask, text ?? raw);
    case 'confirm':
      return parseConfirm(text ?? raw);
    case 'text':
      return text === null ? refuse('unreadable', 'Write it as plain text.') : take({ kind: 'text', value: text });
    case 'amount':
      return parseAmount(ask, text ?? raw);
    case 'tear':
      return parseShots(text ?? raw, MAX_TEAR);
    case 'impact':
      return parseShots(text ?? raw, MAX_IMPACT);
  }
}

/** What may be written here, in one short sentence. */
export function hint(ask: Ask): string {
  switch (ask.kind) {
    case 'choice':
      return `Choose ${ask.many === true ? 'from' : 'one of'}: ${ask.options.map((o) => o.value).join(', ')}.`;
    case 'number':
      return `Write a number from ${range(ask)}.`;
    case 'confirm':
      return 'Answer yes or no.';
    case 'text':
      return 'Write a few words.';
    case 'amount':
      return `Answer "as told", "not now", "another", "at its end", or how far it was really moved, like ${formatQuantity({ value: ask.unit === 'in' ? 1 / 32 : ask.unit === 'count' ? 1 : 1 / 2, unit: ask.unit })}.`;
    case 'tear':
    case 'impact':
      return 'Write it like "high 1/2 left 1/8", or x and y like "-0.1 0.5" (right and high are plus).';
  }
}

/** `5 to 120 lb`, `0 to 12 turns`, `0 to 4`. */
const range = ({ min, max, unit }: { readonly min: number; readonly max: number; readonly unit: Unit }): string => `${min} to ${max} ${unitWord(unit, 2)}`.trim();

/** A reason as a sentence: the readers of numbers give them without capital and stop. */
export const asSentence = (why: string): string => `${why.charAt(0).toUpperCase()}${why.slice(1)}${/[.?!]$/.test(why) ? '' : '.'}`;

/** What turns the direction of a line, breaks it or is half a character: it would make a record read otherwise than written. */
export const UNSEEN = /[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\p{Cs}]/u;

function refuseText(ask: Ask, text: string): Parsed | null {
  if (text.length === 0) return refuse('empty', `Nothing was entered. ${hint(ask)}`);
  if (text.length > MAX_TEXT) return refuse('too-long', `That is ${text.length} characters; at most ${MAX_TEXT} can be kept. Write it shorter.`);
  if (/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/.test(text) || UNSEEN.test(text)) return refuse('unreadable', 'That has control characters in it. Write plain text.');
  return null;
}

function parseChoice(ask: Extract<Ask, { kind: 'choice' }>, raw: unknown): Parsed {
  const many = ask.many === true;
  const parts = Array.isArray(raw) ? raw : many && typeof raw === 'string' && pick(ask, raw) === null ? raw.split(/\s*,\s*/) : [raw];
  if (parts.length === 0) return refuse('empty', `Nothing was chosen. ${hint(ask)}`);
  if (parts.length > 1 && !many) return refuse('not-an-option', `Only one can be chosen. ${hint(ask)}`);
  const values: string[] = [];
  for (const part of parts) {
    const value = pick(ask, part);
    if (value === null) return refuse('not-an-option', `${shown(part)} is not among the answers. ${hint(ask)}`);
    if (!values.includes(value)) values.push(value);
  }
  const whole = ask.options.find((o) => o.pass === true)?.value;
  if (many && values.length > 1 && whole !== undefined && values.includes(whole)) {
    return refuse('not-an-option', 'Either all are true, or name the ones that are not.');
  }
  return take({ kind: 'choice', values });
}

function pick(ask: Extract<Ask, { kind: 'choice' }>, part: unknown): string | null {
  if (typeof part === 'number') return ask.options[part - 1]?.value ?? null;
  if (typeof part !== 'string') return null;
  const wanted = part.trim().toLowerCase();
  const exact = ask.options.find((o) => o.value.toLowerCase() === wanted) ?? ask.options.find((o) => o.label.toLowerCase() === wanted);
  if (exact !== undefined) return exact.value;
  return /^\d{1,2}$/.test(wanted) ? (ask.options[Number(wanted) - 1]?.value ?? null) : null;
}

function parseNumber(ask: Extract<Ask, { kind: 'number' }>, raw: unknown): Parsed {
  const read = readQuantity(raw, ask.unit);
  if (!read.ok) return refuse(read.code, `${asSentence(read.why)} It can be from ${range(ask)}.`);
  if (read.value < ask.min || read.value > ask.max) {
    return refuse('out-of-range', `${inWords(read.value, ask.unit)} is outside ${range(ask)}. Look again, then write it.`);
  }
  // Of arrows, vanes or axle ends there are no halves.
  if (ask.unit === 'count' && !Number.isInteger(read.value)) return refuse('not-a-number', `${inWords(read.value, ask.unit)} is no whole number. It can be from ${range(ask)}.`);
  return take({ kind: 'number', value: read.value });
}

/** A key that stuck makes sixty digits, which say nothing that can be read. */
const inWords = (value: number, unit: Unit): string => (Math.abs(value) >= 1e6 ? 'That number' : `${Math.round(value * 1000) / 1000} ${unitWord(unit, value)}`.trim());

type Read = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly code: ErrorCode; readonly why: string };

/** A number in `unit`, from a number, a string as archers write it, or `{value, unit}`. */
export function readQuantity(raw: unknown, unit: Unit): Read {
  if (typeof raw === 'number') return Number.isFinite(raw) ? { ok: true, value: raw } : { ok: false, code: 'not-a-number', why: 'That is not a number.' };
  if (typeof raw === 'string') return parseQuantity(raw, unit);
  if (typeof raw === 'object' && raw !== null && 'value' in raw) {
    const given = 'unit' in raw ? raw.unit : unit;
    const from = UNITS.find((u) => u === given);
    if (from === undefined) return { ok: false, code: 'not-a-number', why: `${shown(given)} is not a unit known here.` };
    const value = readQuantity(raw.value, from);
    if (!value.ok) return value;
    const converted = convert(value.value, from, unit);
    return converted === null ? { ok: false, code: 'not-a-number', why: `"${from}" cannot be turned into ${unitWord(unit, 2) || 'a count'}.` } : { ok: true, value: converted };
  }
  return { ok: false, code: 'not-a-number', why: `${shown(raw)} is not a number.` };
}

function parseConfirm(raw: unknown): Parsed {
  if (typeof raw === 'boolean') return take({ kind: 'confirm', value: raw });
  if (typeof raw === 'string') {
    if (/^(y|yes|true|done)$/i.test(raw)) return take({ kind: 'confirm', value: true });
    if (/^(n|no|false|not yet)$/i.test(raw)) return take({ kind: 'confirm', value: false });
  }
  return refuse('not-a-confirm', `${shown(raw)} is neither yes nor no. Answer yes or no.`);
}

function parseAmount(ask: Extract<Ask, { kind: 'amount' }>, raw: unknown): Parsed {
  if (typeof raw === 'string') {
    if (/^(as told|told|done|yes|y)$/i.test(raw)) return take({ kind: 'moved', moved: 'as told' });
    if (/^(not now|no|n|later)$/i.test(raw)) return take({ kind: 'moved', moved: 'not now' });
    if (/^(another|another one|other)$/i.test(raw)) return take({ kind: 'moved', moved: 'another' });
    if (/^(at its end|at the end|no further|it goes no further)$/i.test(raw)) return take({ kind: 'moved', moved: 'at its end' });
  }
  const read = readQuantity(raw, ask.unit);
  if (!read.ok) return refuse('not-an-amount', `${asSentence(read.why)} ${hint(ask)}`);
  if (Math.abs(read.value) > ask.max) return refuse('out-of-range', `${inWords(read.value, ask.unit)} is more than this adjustment can move (${formatQuantity({ value: ask.max, unit: ask.unit })}). Look again, then write it.`);
  if (read.value === 0) return take({ kind: 'moved', moved: 'not now' });
  const moved: Quantity = { value: read.value, unit: ask.unit };
  return take({ kind: 'moved', moved });
}

/** What was given, in quotes and on one line. Never throws: a value that JSON cannot hold is named by its type. */
export const shown = (value: unknown): string => {
  const text = written(value).replace(/\s+/g, ' ');
  return `"${text.length > 40 ? `${text.slice(0, 40)}...` : text}"`;
};

function written(value: unknown): string {
  if (typeof value === 'string') return value;
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    return typeof value;
  }
}
