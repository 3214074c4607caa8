// A shot as reported: `high 1/2 left 1/8`, `-0.1 0.5` (x y), {x, y}, missed, called bad; or a list of them.

import type { ErrorCode } from '../errors.ts';
import { parseQuantity } from '../maths/fractions.ts';
import type { Answer, ShotAnswer } from './types.ts';

/** A tear beyond this is no tear but a slip of the pen, or a bow that is not to be tuned by knobs. */
export const MAX_TEAR = 4;
/** An arrow further than this from its own dot has hit another one's, or the figure is wrong. */
export const MAX_IMPACT = 24;
export const MAX_SHOTS_AT_ONCE = 12;

type Parsed<T> = { readonly ok: true; readonly answer: T } | { readonly ok: false; readonly code: ErrorCode; readonly message: string };

const HOW = 'Write it like "high 1/2 left 1/8", or x and y like "-0.1 0.5" (right and high are plus).';
const no = (code: ErrorCode, message: string): Parsed<never> => ({ ok: false, code, message });
const unread = (most: number): Parsed<never> => no('not-a-tear', `That is not read as ${most === MAX_IMPACT ? 'an impact' : 'a tear'}. ${HOW}`);

/** `most` is the largest figure (in) that is taken on one axis: MAX_TEAR at paper, MAX_IMPACT at a target. */
export function parseShots(raw: unknown, most: number): Parsed<Answer> {
  const parts: readonly unknown[] = Array.isArray(raw) ? raw : typeof raw === 'string' ? raw.split(/\s*;\s*/) : [raw];
  if (parts.length === 0) return no('empty', `No shot was entered. ${HOW}`);
  if (parts.length > MAX_SHOTS_AT_ONCE) return no('too-long', `That is ${parts.length} shots; at most ${MAX_SHOTS_AT_ONCE} are taken at once. Write one set at a time.`);
  const shots: ShotAnswer[] = [];
  for (const part of parts) {
    const shot = parseShot(part, most);
    if (!shot.ok) return shot;
    shots.push(shot.answer);
  }
  return { ok: true, answer: { kind: 'shots', shots } };
}

function parseShot(raw: unknown, most: number): Parsed<ShotAnswer> {
  if (typeof raw === 'string') return parseWords(raw.trim(), most);
  if (typeof raw !== 'object' || raw === null) return no('not-a-tear', `A shot needs two figures. ${HOW}`);
  if ('missed' in raw && raw.missed === true) return { ok: true, answer: { missed: true } };
  if (!('x' in raw) || !('y' in raw)) return no('not-a-tear', `A shot needs x and y. ${HOW}`);
  const x = readFigure(raw.x);
  const y = readFigure(raw.y);
  if (x === null || y === null) return no('not-a-tear', `x and y must be numbers in inches. ${HOW}`);
  const called = 'called' in raw ? raw.called : 'good';
  if (called !== 'good' && called !== 'bad') return no('not-a-tear', 'A shot is called "good" or "bad".');
  return shotOf(x, y, called === 'bad', most);
}

function parseWords(text: string, most: number): Parsed<ShotAnswer> {
  if (/^(missed|miss|missed the (?:paper|target))$/i.test(text)) return { ok: true, answer: { missed: true } };
  const bad = /^(called )?bad[\s,:]+/i.exec(text);
  const rest = text.slice(bad?.[0].length ?? 0).replace(/^(called )?good[\s,:]+/i, '');
  if (/^(clean|bullet hole|none|round|on the dot|dot)$/i.test(rest)) return shotOf(0, 0, bad !== null, most);
  const words = fromWords(rest, most);
  if (words !== null) return words.ok ? shotOf(words.answer.x, words.answer.y, bad !== null, most) : words;
  const figures = rest.split(/(?:\s*,\s+|\s+|\s*\/\s+)/).filter((part) => part !== '');
  if (figures.length === 2) {
    const x = readFigure(figures[0]);
    const y = readFigure(figures[1]);
    if (x !== null && y !== null) return shotOf(x, y, bad !== null, most);
  }
  return unread(most);
}

const SIDES: Readonly<Record<string, { axis: 'x' | 'y'; sign: 1 | -1 }>> = {
  high: { axis: 'y', sign: 1 }, up: { axis: 'y', sign: 1 }, h: { axis: 'y', sign: 1 },
  low: { axis: 'y', sign: -1 }, down: { axis: 'y', sign: -1 }, lo: { axis: 'y', sign: -1 },
  right: { axis: 'x', sign: 1 }, r: { axis: 'x', sign: 1 },
  left: { axis: 'x', sign: -1 }, l: { axis: 'x', sign: -1 },
};

// Null where the text names no side at all (then it may be two figures).
function fromWords(text: string, most: number): Parsed<{ x: number; y: number }> | null {
  const pieces = text.toLowerCase().match(/\b(high|up|low|lo|down|left|right|h|l|r)\b/g);
  if (pieces === null) return null;
  const found: { x?: number; y?: number } = {};
  // Either "high 1/2 left 1/8" or "1/2 high, 1/8 left": the side stands before or after its figure throughout.
  const sideFirst = /^\s*(high|up|low|lo|down|left|right|h|l|r)\b/i.test(text);
  const pattern = sideFirst
    ? /\b(high|up|low|lo|down|left|right|h|l|r)\b\s*([^a-z]*(?:in\b|inch(?:es)?\b|mm\b|cm\b)?)/gi
    : /([^a-z]+(?:in\b|inch(?:es)?\b|mm\b|cm\b)?)\s*\b(high|up|low|lo|down|left|right|h|l|r)\b/gi;
  for (const match of text.matchAll(pattern)) {
    const [sideWord, figureText] = sideFirst ? [match[1], match[2]] : [match[2], match[1]];
    const side = SIDES[(sideWord ?? '').toLowerCase()];
    const figure = parseQuantity((figureText ?? '').replace(/[,;]+\s*$/, '').replace(/^[\s,;]+/, '').trim(), 'in');
    if (side === undefined || !figure.ok) return no('not-a-tear', `The figure for "${sideWord ?? ''}" is missing or not read. ${HOW}`);
    if (figure.value < 0) return no('not-a-tear', `Leave out the minus sign where a side is named. ${HOW}`);
    if (found[side.axis] !== undefined) return no('not-a-tear', `Two figures are given for the same axis. ${HOW}`);
    found[side.axis] = side.sign * figure.value;
  }
  // A figure beside a word that is no side ("wright 1") is never dropped in silence.
  if (Object.keys(found).length !== pieces.length || /\d/.test(text.replace(pattern, ' '))) return unread(most);
  return { ok: true, answer: { x: found.x ?? 0, y: found.y ?? 0 } };
}

function readFigure(raw: unknown): number | null {
  if (typeof raw === 'number') return Number.isFinite(raw) ? raw : null;
  if (typeof raw !== 'string') return null;
  const read = parseQuantity(raw, 'in');
  return read.ok ? read.value : null;
}

function shotOf(x: number, y: number, bad: boolean, most: number): Parsed<ShotAnswer> {
  if (Math.abs(x) > most || Math.abs(y) > most) {
    if (most === MAX_IMPACT) return no('too-large-tear', `More than ${MAX_IMPACT} in from its own dot is asked again: was it another dot? Down a plumb line leave out how low. An arrow that left the target is "missed".`);
    return no('too-large-tear', `A tear of more than ${MAX_TEAR} in is asked again: measure from the point hole to where the slits of the vanes meet. If it truly is more: "missed".`);
  }
  return { ok: true, answer: { x: x + 0, y: y + 0, ...(bad ? { called: 'bad' as const } : {}) } };
}
