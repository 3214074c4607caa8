// Guards for numbers that come in: a NaN is stopped where it enters and never becomes a verdict.
// Every error begins with the name of the function that was called, then what is wrong, then what is needed: whoever reads it
// in a trace or a report knows where to look. So a function checks all that it hands on, and never throws in another's name.

import { tableOf } from './closed.ts';

/** What one function asks of its numbers. `what` names the number in the message. */
export interface Checks {
  /** A number at all; infinities pass. */
  readonly number: (value: number, what: string) => void;
  readonly finite: (value: number, what: string) => void;
  /** Finite, and so small that its powers and products stay finite too: whatever is measured at a bow. */
  readonly measure: (value: number, what: string) => void;
  /** Above 0; `Infinity` passes only where `orInfinite` is true. */
  readonly positive: (value: number, what: string, orInfinite?: boolean) => void;
  /** The same within the limits of a measure, neither so large nor so small that its powers run over. */
  readonly size: (value: number, what: string, orInfinite?: boolean) => void;
  /** Finite, 0 or above. */
  readonly notNegative: (value: number, what: string) => void;
  /** The same within the limits of a measure: whatever is measured and may be none. */
  readonly amount: (value: number, what: string) => void;
  /** A whole number, `least` or above. */
  readonly whole: (value: number, what: string, least: number) => void;
  /** From 0 to 1. */
  readonly chance: (p: number, what: string) => void;
  /** For all else: `throw must.fitLine.error('...')`. */
  readonly error: (reason: string) => RangeError;
}

const LARGEST = 1e30;
const SMALLEST = 1e-30;

/** The checks of the exported functions of a file, by name; what fails one of them is a RangeError. */
// Example: checks('f').f.positive(0, 'the length') throws 'f: the length is 0; a number above 0 is needed'.
export const checks = <const Name extends string>(...names: readonly Name[]): Readonly<Record<Name, Checks>> => tableOf(names, checksOf);

function checksOf(name: string): Checks {
  const error = (reason: string): RangeError => new RangeError(`${name}: ${reason}`);
  const unless = (right: boolean, what: string, value: number, needed: string): void => {
    if (!right) throw error(`${what} is ${value}; ${needed}`);
  };
  const finite: Checks['finite'] = (value, what) => unless(Number.isFinite(value), what, value, 'a finite number is needed');
  const measure: Checks['measure'] = (value, what) => {
    finite(value, what);
    unless(Math.abs(value) <= LARGEST, what, value, `a number up to ${LARGEST} is needed`);
  };
  const notNegative: Checks['notNegative'] = (value, what) => unless(value >= 0 && value < Infinity, what, value, 'a finite number, 0 or more, is needed');
  const positive: Checks['positive'] = (value, what, orInfinite = false) =>
    unless(value > 0 && (orInfinite || value < Infinity), what, value, 'a number above 0 is needed');
  return {
    error, finite, measure, notNegative, positive,
    number: (value, what) => unless(!Number.isNaN(value), what, value, 'a number is needed'),
    size: (value, what, orInfinite = false) => {
      positive(value, what, orInfinite);
      unless(value === Infinity || (value >= SMALLEST && value <= LARGEST), what, value, `a number from ${SMALLEST} to ${LARGEST} is needed`);
    },
    amount: (value, what) => {
      notNegative(value, what);
      measure(value, what);
    },
    whole: (value, what, least) => unless(Number.isInteger(value) && value >= least, what, value, `a whole number, ${least} or more, is needed`),
    chance: (p, what) => unless(p >= 0 && p <= 1, what, p, 'a chance lies between 0 and 1'),
  };
}
