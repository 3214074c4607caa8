// An arrow added up from its parts: mass, balance point, and how far that lies ahead of the middle (FOC).
// Each part is a lump at its own middle; places are inches along the arrow from the nock's throat, as the standard for the
// balance point measures them. Sources: ASTM F1435 (balance point; its formula after a secondary page); the rest derived.

import { mustBePositive } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { grains, inches, type Grains, type GrainsPerInch, type Inches } from '../maths/units.ts';
import { percent, type Percent } from './bow-figures.ts';

/** Where the middles of the parts lie, inches: `point` ahead of the shaft's end, `insert` behind it, the others ahead of the nock's throat. */
export interface Places {
  readonly point: Inches;
  readonly insert: Inches;
  readonly nock: Inches;
  readonly pin: Inches;
  readonly vanes: Inches;
  readonly wrap: Inches;
}

/** From memory, of a screw-in point whose thread reaches back as far as its head reaches out, vanes of 2 in and a wrap of 4 in. */
export const USUAL_PLACES: Places = {
  point: inches(0), insert: inches(0.5), nock: inches(0.2), pin: inches(0.5), vanes: inches(2), wrap: inches(2.4),
};

export interface ArrowParts {
  /** From the nock's throat to the end of the shaft, point left out. */
  readonly length: Inches;
  readonly shaft: GrainsPerInch;
  readonly point?: Grains;
  /** Insert or outsert. */
  readonly insert?: Grains;
  readonly nock?: Grains;
  /** Pin or bushing that carries the nock. */
  readonly pin?: Grains;
  readonly vanes?: { readonly count: number; readonly each: Grains };
  readonly wrap?: Grains;
  /** Where something lies elsewhere than usual. */
  readonly places?: Partial<Places>;
}

interface Lump { readonly mass: number; readonly at: number }

/**
 * Mass, grains: the plain sum, with the shaft counted over the whole length. Makers' figures scatter: for a safety gate take leastMass.
 * Throws RangeError unless length and shaft are above 0, every part 0 or more, and the count of vanes a whole number.
 * Example: massOfParts({ length: inches(28.25), shaft: grainsPerInch(8.6), point: grains(100) }) is 342.95.
 */
export function massOfParts(parts: ArrowParts): Grains {
  return grains(sum(lumps('massOfParts', parts).map(({ mass }) => mass)));
}

/** A maker's figure against what is in the hand: 2 in 100, and half of the last digit that a shaft's 8.6 gr/in has (together under 3). */
const SHORT_SHARE = 0.03;
/** Shaft that the length counts and that is not there: the nock's throat stands so far behind the shaft's end at the most (in). */
const BEHIND_SHAFT = 0.5;

/**
 * Least mass, grains, that an arrow with these parts may have: what a safety gate rests on while nobody has weighed one. Taken off the plain
 * sum: half an inch of shaft, for the nock's throat stands behind it; and 3 in 100 of everything (from memory: makers' figures for
 * shafts scatter by some 2 in 100, points by 2 gr). Glue is never counted, and only adds. Throws RangeError as massOfParts does.
 * Example: leastMass({ length: inches(28.5), shaft: grainsPerInch(10), point: grains(100) }) is 368.6.
 */
export function leastMass(parts: ArrowParts): Grains {
  const plain = sum(lumps('leastMass', parts).map(({ mass }) => mass));
  return grains((1 - SHORT_SHARE) * (plain - parts.shaft * Math.min(BEHIND_SHAFT, parts.length)));
}

/** Balance point, inches from the nock's throat. Throws RangeError as massOfParts does, and on a place that is not a finite number. */
export function balanceOfParts(parts: ArrowParts): Inches {
  return inches(balance(lumps('balanceOfParts', parts)));
}

/**
 * How far the balance point lies ahead of the middle, in percent of the length: 100 (B - L / 2) / L. `length` and `balancePoint` are
 * both measured from the nock's throat; the length ends with the shaft. Throws RangeError unless both are above 0 and the arrow
 * balances on its shaft.
 * Example: foc(inches(28.5), inches(18)) is 13.16.
 */
export function foc(length: Inches, balancePoint: Inches): Percent {
  mustBePositive(length, "foc: the arrow's length");
  mustBePositive(balancePoint, 'foc: the balance point');
  if (balancePoint >= length) {
    throw new RangeError(`foc: the balance point is ${balancePoint} in and the length ${length}; measure both from the nock's throat`);
  }
  return focAt(length, balancePoint);
}

/** The same from the parts. Throws RangeError as balanceOfParts does. */
export function focOfParts(parts: ArrowParts): Percent {
  return focAt(parts.length, balance(lumps('focOfParts', parts)));
}

const focAt = (length: number, balancePoint: number): Percent => percent((100 * (balancePoint - length / 2)) / length);

const balance = (all: readonly Lump[]): number => sum(all.map(({ mass, at }) => mass * at)) / sum(all.map(({ mass }) => mass));

function lumps(caller: string, { length, shaft, point = grains(0), insert = grains(0), nock = grains(0), pin = grains(0), vanes, wrap = grains(0), places }: ArrowParts): readonly Lump[] {
  mustBePositive(length, `${caller}: the arrow's length`);
  mustBePositive(shaft, `${caller}: the shaft's mass for each inch`);
  const { count, each } = vanes ?? { count: 0, each: grains(0) };
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`${caller}: the count of vanes is ${count}; a whole number, 0 or more, is needed`);
  const at = { ...USUAL_PLACES, ...places };
  const parts = [
    { what: 'the point', mass: point, at: length + at.point },
    { what: 'the insert', mass: insert, at: length - at.insert },
    { what: 'the nock', mass: nock, at: at.nock },
    { what: 'the pin', mass: pin, at: at.pin },
    { what: 'a vane', mass: each, times: count, at: at.vanes },
    { what: 'the wrap', mass: wrap, at: at.wrap },
  ];
  for (const part of parts) {
    if (!(part.mass >= 0 && part.mass < Infinity)) throw new RangeError(`${caller}: ${part.what} weighs ${part.mass} gr; 0 or more is needed`);
    if (!Number.isFinite(part.at)) throw new RangeError(`${caller}: ${part.what} lies at ${part.at} in; a finite number is needed`);
  }
  return [{ mass: shaft * length, at: length / 2 }, ...parts.map(({ mass, times = 1, at: place }) => ({ mass: mass * times, at: place }))];
}
