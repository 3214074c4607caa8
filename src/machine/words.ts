// Content's sentences with their holes filled, and numbers as an archer reads them.

import type { Axis, Content, Direction, Knob } from '../content/types.ts';
import { fill } from '../content/fill.ts';
import { formatQuantity } from '../maths/fractions.ts';
import type { Quantity, Tear } from './types.ts';

/** A sentence of content by its id. Content that lacks it is caught by lint; here it is a mistake in the program. */
export function phrase(content: Content, id: string, holes: Readonly<Record<string, string | number>> = {}): string {
  const sentence = content.phrases[id];
  if (sentence === undefined) throw new RangeError(`content/phrases.yaml has no "${id}"`);
  return fill(sentence, holes);
}

/** `0.44 high, 0.42 left`, in hundredths of an inch: for means, which are no readings of a ruler. */
export function tearInWords(tear: Tear): string {
  return `${sideInWords(tear.y, 'high', 'low')}, ${sideInWords(tear.x, 'right', 'left')}`;
}

/** `digits` 2 for paper, 1 for impacts, which nobody reads closer than a quarter of an inch. */
export function sideInWords(value: number, plus: string, minus: string, digits: 1 | 2 = 2): string {
  const size = Math.abs(value).toFixed(digits);
  return Number(size) === 0 ? `level (${size})` : `${size} in ${value > 0 ? plus : minus}`;
}

/** Which way something went, and how far: `0.20 in to the left`, `0.20 in lower`. */
export function shiftInWords(axis: Axis, change: number, digits: 1 | 2 = 2): string {
  const [plus, minus] = axis === 'height' ? ['higher', 'lower'] : ['to the right', 'to the left'];
  return `${Math.abs(change).toFixed(digits)} in ${change > 0 ? plus : minus}`;
}

/** `to the right`, `up`. */
export const shortSide = (axis: Axis, value: number): string =>
  (axis === 'height' ? (value > 0 ? 'up' : 'down') : `to the ${value > 0 ? 'right' : 'left'}`);

/** Impacts are told to a tenth of an inch: `2.2 in low, 0.3 in right`. */
export function differenceInWords({ x, y }: Tear): string {
  const part = (value: number, plus: string, minus: string): string => `${Math.abs(value).toFixed(1)} in ${value > 0 ? plus : minus}`;
  const parts = [...(Math.abs(y) < 0.05 ? [] : [part(y, 'high', 'low')]), ...(Math.abs(x) < 0.05 ? [] : [part(x, 'right', 'left')])];
  return parts.length === 0 ? 'at the same place' : parts.join(', ');
}

export const amountInWords = (quantity: Quantity): string => formatQuantity(quantity);

export const directionOf = (knob: Knob, delta: number): Direction => (delta > 0 ? knob.plus : knob.minus);
export const headlineOf = (knob: Knob, delta: number): string => (delta > 0 ? knob.words.plus : knob.words.minus);

/** A knob's setting against where it began: `1/32 in up`, or the word for untouched. */
export const settingInWords = (content: Content, knob: Knob, value: number): string =>
  value === 0 ? phrase(content, 'record-as-found') : `${amountInWords({ value: Math.abs(value), unit: knob.unit })} ${knob.unit === 'half-twist-pair' ? `into the ${directionOf(knob, value)} leg` : directionOf(knob, value)}`;

/** `heightAgain` -> `height-again`: places of the machine as ids of content. */
export const idOfPlace = (place: string): string => place.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
