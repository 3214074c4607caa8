// An arrow added up from its parts: mass, balance point, and how far that lies ahead of the middle (FOC, percent).
// Every part is a lump at its own middle. Places are inches along the arrow from the throat of the nock (the bottom of its groove),
// whence the standard measures, and an arrow is as long as from there to the end of the shaft, its point left out.
// Sources: ASTM F1435 (balance point; its formula read on a secondary page); the rest derived, or from memory where it says so.

import { checks, type Checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { grains, inches, inUnit, percent, type Grains, type GrainsPerInch, type Inches, type Measured, type Percent } from '../maths/units.ts';

const must = checks('massOfParts', 'leastMass', 'balanceOfParts', 'foc', 'focOfParts');

/** Where the middles of the parts lie: `point` ahead of the shaft's end, `insert` behind it, the others ahead of the nock's throat. */
export interface Places {
  readonly point: Inches;
  readonly insert: Inches;
  readonly nock: Inches;
  readonly pin: Inches;
  readonly vanes: Inches;
  readonly wrap: Inches;
}

/** From memory: a screw-in point whose thread reaches as far back as its head reaches out, vanes of 2 in, a wrap of 4 in. */
export const USUAL_PLACES: Places = {
  point: inches(0), insert: inches(0.5), nock: inches(0.2), pin: inches(0.5), vanes: inches(2), wrap: inches(2.4),
};

/** What is not there is left out. */
export interface ArrowParts {
  readonly length: Inches;
  readonly shaft: GrainsPerInch;
  readonly point?: Grains;
  /** Insert or outsert. */
  readonly insert?: Grains;
  readonly nock?: Grains;
  /** Pin or bushing under the nock. */
  readonly pin?: Grains;
  readonly vanes?: { readonly count: number; readonly each: Grains };
  readonly wrap?: Grains;
  /** Where something lies elsewhere than usual. */
  readonly places?: Partial<Places>;
}

/**
 * Mass, grains: the plain sum, the shaft counted over the whole length. Never for a safety gate: that takes leastMass. Throws RangeError unless length
 * and shaft are above 0, every part 0 or more, the count of vanes a whole number and every place finite.
 */
// Example: massOfParts({ length: 28.25, shaft: 8.6, point: 100, insert: 20, nock: 9, vanes: { count: 3, each: 7 } }) is 392.95.
export function massOfParts(parts: ArrowParts): Grains {
  return grains(massOf(lumpsOf(must.massOfParts, parts)));
}

/** So much less may be in the hand than the makers' figures say. */
const SHORT = 0.03;
/** The throat of a nock stands behind the end of the tube; so much of the length is no shaft, at the most (in). */
const NO_SHAFT = 0.5;

/**
 * Least mass, grains, that an arrow of these parts may have: a safety gate rests on this one while nobody has weighed the arrow. Taken off
 * the plain sum: half an inch of shaft, and then 3 in 100. Derived, from figures from memory: shafts differ from the maker's mass for
 * an inch by 2 in 100, and its last digit hides 0.05 of 5 to 13 gr, 1 in 100 at the most; points and broadheads differ by 2 gr in 100.
 * All of it is taken as too light at once. Glue is not counted and can only add. Throws RangeError as massOfParts does.
 */
// Example: leastMass({ length: 28.5, shaft: 10, point: 100 }) is 368.6.
export function leastMass(parts: ArrowParts): Grains {
  const plain = massOf(lumpsOf(must.leastMass, parts));
  return grains((1 - SHORT) * (plain - parts.shaft * Math.min(NO_SHAFT, parts.length)));
}

/** Balance point, inches from the nock's throat, of the parts. Throws RangeError as massOfParts does. */
// Example: balanceOfParts({ length: 28, shaft: 10, point: 120, places: { point: 0 } }) is 18.2.
export function balanceOfParts(parts: ArrowParts): Inches {
  return inches(balanceOf(lumpsOf(must.balanceOfParts, parts)));
}

/**
 * How far ahead of its middle an arrow balances, in percent of its length: 100 (B - L / 2) / L, with the length L and the balance point B
 * both measured (in) from the nock's throat, without the point. Throws RangeError unless both are above 0 and B lies on the shaft.
 */
// Example: foc(28.5, 18) is 13.158.
export function foc(length: Inches, balance: Inches): Percent {
  must.foc.size(length, "the arrow's length");
  must.foc.size(balance, 'the balance point');
  if (balance >= length) throw must.foc.error(`the balance point is at ${balance} in, the shaft ends at ${length} in; measure both from the nock's throat`);
  return focAt(length, balance);
}

/**
 * The same from the parts, percent. Good to 0.6 where the parts lie as usual: a point's middle 1/4 in off is 0.2.
 * Throws RangeError as massOfParts does.
 */
// Example: focOfParts({ length: 28, shaft: 10, point: 120, places: { point: 0 } }) is 15.
export function focOfParts(parts: ArrowParts): Percent {
  return focAt(parts.length, balanceOf(lumpsOf(must.focOfParts, parts)));
}

/** What an arrow's flight hangs on. The moment of inertia is that of a turn end over end, about the balance point. */
export interface MassProperties { readonly mass: Grains; readonly balance: Inches; readonly inertia: Measured<'gr in2'> }

/** Mass, balance point and moment of inertia together. Throws RangeError in the name that `must` carries as massOfParts does. */
// Example: massProperties(checks('massProperties').massProperties, { length: 28, shaft: 10, point: 120, places: { point: 0 } })
// is { mass: 400, balance: 18.2, inertia: 34757.3 }.
export function massProperties(must: Checks, parts: ArrowParts): MassProperties {
  const lumps = lumpsOf(must, parts);
  const balance = balanceOf(lumps);
  return {
    mass: grains(massOf(lumps)),
    balance: inches(balance),
    inertia: inUnit(sum(lumps.map(({ mass, at, own = 0 }) => mass * (at - balance) ** 2 + own)), 'gr in2'),
  };
}

/** `own` is its moment of inertia about its own middle, gr in2: 0 for what is short. */
interface Lump { readonly mass: number; readonly at: number; readonly own?: number }

const massOf = (lumps: readonly Lump[]): number => sum(lumps.map(({ mass }) => mass));
const balanceOf = (lumps: readonly Lump[]): number => sum(lumps.map(({ mass, at }) => mass * at)) / massOf(lumps);
const focAt = (length: number, balance: number): Percent => percent((100 * (balance - length / 2)) / length);

function lumpsOf(by: Checks, parts: ArrowParts): readonly Lump[] {
  const { length, shaft, vanes } = parts;
  by.size(length, "the arrow's length");
  by.size(shaft, "the shaft's mass for an inch");
  const count = vanes?.count ?? 0;
  by.whole(count, 'the count of vanes', 0);
  const places = { ...USUAL_PLACES, ...parts.places };
  const lump = (what: string, mass: Grains = grains(0), at: number): Lump => {
    by.amount(mass, `the mass of ${what}`);
    by.measure(at, `the place of ${what}`);
    return { mass, at };
  };
  const vane = lump('a vane', vanes?.each, places.vanes);
  return [
    { mass: shaft * length, at: length / 2, own: (shaft * length ** 3) / 12 },
    lump('the point', parts.point, length + places.point),
    lump('the insert', parts.insert, length - places.insert),
    lump('the nock', parts.nock, places.nock),
    lump('the pin', parts.pin, places.pin),
    { mass: count * vane.mass, at: vane.at },
    lump('the wrap', parts.wrap, places.wrap),
  ];
}
