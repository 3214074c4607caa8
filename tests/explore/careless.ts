// Archers who do anything: careless, contradictory, tired, hurried. Every turn is one number, so that a walk is a list of
// numbers and shrinks.

import { KNOBS, DIRECTIONS } from '../../src/content/types.ts';
import { CHANGED, type Ask, type Intent, type View } from '../../src/machine/types.ts';
import type { TestArcher } from '../tunes/archer.ts';

export interface Turn {
  /** 0..999: what kind of turn this is. */
  readonly roll: number;
  /** 0..16383: which of that kind. */
  readonly pick: number;
  /** 0..99: how long it takes; most turns take a minute. */
  readonly pause: number;
}

const [ROLLS, PICKS, PAUSES] = [1000, 16_384, 100];
/** The largest number that a turn is made from. */
export const MOST_TURN = ROLLS * PICKS * PAUSES - 1;

export const turnOf = (n: number): Turn => ({ roll: n % ROLLS, pick: Math.floor(n / ROLLS) % PICKS, pause: Math.floor(n / (ROLLS * PICKS)) % PAUSES });

type Deed = 'any' | 'wrong' | 'back' | 'back to' | 'keep' | 'put back' | 'put back to' | 'stop' | 'note' | 'moved' | 'changed' | 'killed' | 'missed' | 'misses' | 'first' | 'not now' | 'unknown' | 'fails';

/** How an archer goes about it: how often the sensible answer is given (of 1000), and what is done else, in shares. */
export interface Temper {
  readonly name: string;
  readonly care: number;
  readonly deeds: Readonly<Partial<Record<Deed, number>>>;
  /** How often (of 100) a turn takes long. */
  readonly pauses: number;
}

export const TEMPERS: readonly Temper[] = [
  { name: 'careful', care: 970, pauses: 2, deeds: { 'any': 3, 'back': 2, 'put back': 2, 'stop': 1, 'note': 1, 'moved': 1, 'changed': 1, 'killed': 2, 'unknown': 1 } },
  { name: 'careless', care: 800, pauses: 6, deeds: { 'any': 4, 'wrong': 2, 'back': 3, 'back to': 1, 'keep': 1, 'put back': 1, 'put back to': 1, 'stop': 1, 'note': 1, 'moved': 1, 'changed': 1, 'killed': 1, 'unknown': 1 } },
  { name: 'contradictory', care: 780, pauses: 2, deeds: { 'any': 3, 'back': 6, 'back to': 6, 'keep': 2, 'put back': 3, 'put back to': 3, 'moved': 4, 'changed': 1, 'not now': 2, 'stop': 1 } },
  { name: 'tired', care: 850, pauses: 12, deeds: { 'missed': 6, 'any': 2, 'unknown': 3, 'not now': 2, 'note': 1, 'stop': 1, 'back': 1, 'killed': 2 } },
  { name: 'unlucky', care: 840, pauses: 3, deeds: { 'fails': 8, 'unknown': 2, 'stop': 6, 'back': 3, 'back to': 1, 'changed': 1, 'killed': 1, 'missed': 1 } },
  // Every other arrow leaves no hole; all else is answered as it is.
  { name: 'wild', care: 450, pauses: 1, deeds: { 'misses': 16, 'back': 1, 'back to': 1, 'killed': 1, 'put back': 1 } },
  { name: 'hurried', care: 700, pauses: 0, deeds: { 'first': 10, 'wrong': 3, 'not now': 3, 'keep': 1, 'put back': 1, 'moved': 1, 'killed': 1 } },
];

const MINUTE = 60_000;
const LONG = [60, 119, 121, 180, 245, 300, 14 * 60, 4 * 24 * 60];

/** Milliseconds: a minute mostly, half a minute for who hurries; sometimes an hour, three, five, a night or four days. */
export function gapOf({ pause, pick }: Turn, temper: Temper): number {
  if (pause < temper.pauses) return (LONG[pick % LONG.length] ?? 1) * MINUTE;
  return temper.pauses === 0 ? MINUTE / 4 : MINUTE;
}

export type Move = { readonly kind: 'send'; readonly intent: Intent } | { readonly kind: 'killed' };

/** What this archer does now. */
export function moveOf(turn: Turn, view: View, archer: TestArcher, temper: Temper, points: () => readonly number[]): Move {
  const { roll, pick } = turn;
  // Who opens an earlier answer means to change it.
  if (view.ask?.correcting !== undefined && pick % 2 === 0) return answer(anyValid(view.ask, pick >> 1));
  if (roll < temper.care) return send({ kind: 'answer', answer: view.ask === null ? 'nothing is asked' : archer.answer(view) });
  const shares = Object.entries(temper.deeds) as [Deed, number][];
  const total = shares.reduce((sum, [, share]) => sum + share, 0);
  let at = (roll - temper.care + pick) % total;
  for (const [deed, share] of shares) {
    if (at < share && deed === 'misses' && view.ask !== null && !isShot(view.ask)) return answer(archer.answer(view));
    if (at < share) return doneAs(deed, pick, view, points);
    at -= share;
  }
  return send({ kind: 'back' });
}

function doneAs(deed: Deed, pick: number, { ask, seq }: View, points: () => readonly number[]): Move {
  switch (deed) {
    case 'any': return answer(anyValid(ask, pick));
    case 'wrong': return answer(WRONG[pick % WRONG.length]);
    case 'back': return send({ kind: 'back' });
    case 'back to': return send({ kind: 'back', to: pick % (seq + 2) });
    case 'keep': return send({ kind: 'keep' });
    case 'put back': return send({ kind: 'putBack' });
    case 'put back to': {
      const known = points();
      return send({ kind: 'putBack', to: (pick % 3 === 0 ? undefined : known[pick % known.length]) ?? pick % (seq + 2) });
    }
    case 'stop': return send({ kind: 'stop', words: WORDS[pick % WORDS.length] ?? '' });
    case 'note': return send({ kind: 'note', note: WORDS[pick % WORDS.length] ?? '' });
    case 'moved': return send({ kind: 'moved', knob: KNOBS[pick % KNOBS.length] ?? 'yoke', direction: DIRECTIONS[(pick >> 4) % DIRECTIONS.length] ?? 'in', amount: AMOUNTS[(pick >> 8) % AMOUNTS.length] });
    case 'changed': return send({ kind: 'changed', what: CHANGED[pick % CHANGED.length] ?? 'other', note: 'x' });
    case 'killed': return { kind: 'killed' };
    case 'missed': return answer(isShot(ask) ? (pick % 3 === 0 ? { missed: true } : { x: 0.5, y: -0.5, called: 'bad' }) : anyValid(ask, pick));
    case 'misses': return answer({ missed: true });
    case 'first': return answer(firstOf(ask));
    case 'not now': return answer(ask?.kind === 'amount' ? (pick % 3 === 0 ? 'another' : pick % 7 === 1 ? 'at its end' : 'not now') : anyValid(ask, pick));
    case 'fails': return answer(failing(ask, pick));
    case 'unknown': return answer(ask?.unknown === true ? 'not known' : anyValid(ask, pick));
  }
}

const isShot = (ask: Ask | null): boolean => ask?.kind === 'tear' || ask?.kind === 'impact';
const answer = (given: unknown): Move => send({ kind: 'answer', answer: given });
const send = (intent: Intent): Move => ({ kind: 'send', intent });

/** What somebody types who reads nothing. */
function firstOf(ask: Ask | null): unknown {
  switch (ask?.kind) {
    case undefined: return '';
    case 'choice': return ask.options[0]?.value;
    case 'number': return ask.min;
    case 'confirm': return true;
    case 'text': return 'x';
    case 'amount': return 'as told';
    default: return { x: 0, y: 0 };
  }
}

/** What is found is not in order. */
function failing(ask: Ask | null, pick: number): unknown {
  if (ask?.kind === 'choice') {
    const bad = ask.options.filter((option) => option.pass !== true);
    return (bad[pick % bad.length] ?? ask.options[0])?.value;
  }
  if (ask?.kind === 'number') return pick % 2 === 0 ? ask.min : ask.max;
  return ask?.kind === 'confirm' ? false : anyValid(ask, pick);
}

/** Some answer that the ask takes, whether it makes sense or not. */
export function anyValid(ask: Ask | null, pick: number): unknown {
  if (ask === null) return 'nothing is asked';
  if (ask.unknown === true && pick % 7 === 0) return 'not known';
  const part = (n: number): number => ((pick * 2654435761) % 4294967296) / 4294967296 * n;
  switch (ask.kind) {
    case 'choice': {
      const option = ask.options[pick % ask.options.length]?.value;
      const other = ask.options[(pick >> 3) % ask.options.length]?.value;
      return ask.many === true && pick % 5 === 0 ? [option, other] : option;
    }
    case 'number': {
      const value = ask.min + part(ask.max - ask.min);
      return pick % 3 === 0 ? Math.round(value) : pick % 3 === 1 ? Math.round(value * 16) / 16 : ask.pass?.min ?? value;
    }
    case 'confirm':
      return pick % 2 === 0;
    case 'text':
      return 'The dealer in town looked at all of it today and found nothing';
    case 'amount':
      return pick % 3 === 0 ? (pick % 2 === 0 ? 'not now' : 'another') : pick % 3 === 1 ? 'as told' : Math.round(part(ask.max) * 64) / 64;
    default: {
      const shot = { x: Math.round((part(4) - 2) * 16) / 16, y: Math.round((part(3) - 1.5) * 16) / 16 };
      const shots = [shot, { missed: true }, { ...shot, called: 'bad' }, [shot, { x: shot.y, y: shot.x }, shot]];
      return shots[pick % shots.length];
    }
  }
}

/** Nothing of this is an answer anywhere (but some of it is heard as a stop word). */
const WRONG: readonly unknown[] = [
  '', null, undefined, {}, [], 'high', '1/0', '9999', -1e9, NaN, 'perhaps', { x: 1 }, { value: 1, unit: 'furlong' }, [[]], true, 'not known', 'a'.repeat(3000), '\u0007', 'it cracked',
];
const WORDS: readonly string[] = [
  'it cracked', 'pop-up rest fits', 'the string came off', 'someone is in front', 'nothing much', 'dry fire', '', '   ', 'a\tb', 'stop', 'wind from the left', 'x'.repeat(2500), 'I am hurt',
];
const AMOUNTS: readonly unknown[] = ['1/32', '1/16', 0.25, 1, '1/64', 0, -1, 'a bit', { value: 1, unit: 'mm' }, '1/2'];
