// A careless archer: mostly answers as asked, and now and then anything at all. Every turn is decided by three numbers,
// so that a walk is a list of them and shrinks.

import { KNOBS, DIRECTIONS } from '../../src/content/types.ts';
import { CHANGED, type Ask, type Intent, type View } from '../../src/machine/types.ts';
import type { TestArcher } from '../tunes/archer.ts';

export interface Turn {
  /** 0..999: what kind of turn this is. */
  readonly roll: number;
  readonly pick: number;
  /** 0..99: how long it takes; most turns take a minute. */
  readonly pause: number;
}

export const MINUTE = 60_000;

/** Minutes, mostly; sometimes an hour, three, five, a night or four days. */
export function gapOf({ pause }: Turn): number {
  const long: Readonly<Record<number, number>> = { 94: 60, 95: 180, 96: 300, 97: 14 * 60, 98: 4 * 24 * 60, 99: 119 };
  return (long[pause] ?? 1) * MINUTE;
}

export type Move = { readonly kind: 'send'; readonly intent: Intent } | { readonly kind: 'killed' };

/** What this archer does now. `care` (0..1000) is how often the answer is a sensible one. */
export function moveOf(turn: Turn, view: View, archer: TestArcher, care: number): Move {
  const { roll, pick } = turn;
  if (roll < care) return send({ kind: 'answer', answer: sensible(view, archer) });
  const kinds: readonly (() => Move)[] = [
    () => send({ kind: 'answer', answer: anyValid(view.ask, pick) }),
    () => send({ kind: 'answer', answer: anyValid(view.ask, pick) }),
    () => send({ kind: 'answer', answer: anyValid(view.ask, pick) }),
    () => send({ kind: 'answer', answer: WRONG[pick % WRONG.length] }),
    () => send({ kind: 'back' }),
    () => send({ kind: 'back' }),
    () => send({ kind: 'back' }),
    () => send({ kind: 'back', to: pick % 120 }),
    () => send({ kind: 'keep' }),
    () => send({ kind: 'putBack' }),
    () => send({ kind: 'putBack', to: pick % 120 }),
    () => send({ kind: 'stop', words: WORDS[pick % WORDS.length] ?? '' }),
    () => send({ kind: 'note', note: WORDS[pick % WORDS.length] ?? '' }),
    () => send({ kind: 'moved', knob: KNOBS[pick % KNOBS.length] ?? 'yoke', direction: DIRECTIONS[(pick >> 4) % DIRECTIONS.length] ?? 'in', amount: AMOUNTS[(pick >> 8) % AMOUNTS.length] }),
    () => send({ kind: 'changed', what: CHANGED[pick % CHANGED.length] ?? 'other', note: 'x' }),
    () => ({ kind: 'killed' }),
  ];
  return (kinds[pick % kinds.length] ?? (() => send({ kind: 'back' })))();
}

const send = (intent: Intent): Move => ({ kind: 'send', intent });

function sensible(view: View, archer: TestArcher): unknown {
  const { ask } = view;
  if (ask === null) return 'nothing is asked';
  return archer.answer(view);
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
  'I heard a crack', 'pop-up rest fits', 'the string came off', 'someone in front', 'nothing much', 'dry fire', '', '   ', 'a\tb', 'stop', 'wind from the left', 'x'.repeat(2500), 'hurt my hand',
];
const AMOUNTS: readonly unknown[] = ['1/32', '1/16', 0.25, 1, '1/64', 0, -1, 'a bit', { value: 1, unit: 'mm' }, '1/2'];
