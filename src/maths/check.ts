// Guards for numbers that come in: a NaN is stopped where it enters and never becomes a verdict.

/** Throws RangeError unless `value` is a number (infinities pass). `what` names it in the message. */
export function mustBeNumber(value: number, what: string): void {
  if (Number.isNaN(value)) throw new RangeError(`${what} is not a number (NaN); look at where it was worked out`);
}

/** Throws RangeError unless `value` is a finite number. */
export function mustBeFinite(value: number, what: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${what} is ${value}; a finite number is needed`);
}

/** Throws RangeError unless `value` is above zero; `Infinity` passes only where `orInfinite` is true. */
export function mustBePositive(value: number, what: string, orInfinite = false): void {
  if (value > 0 && (orInfinite || value < Infinity)) return;
  throw new RangeError(`${what} is ${value}; a number above 0 is needed`);
}

/** Throws RangeError unless 0 <= p <= 1. */
export function mustBeChance(p: number, what: string): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${what} is ${p}; a chance lies between 0 and 1`);
}
