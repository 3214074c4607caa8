// The arrows of a practice bow. Each pushes itself a little aside. What lies in the shaft turns with it when the nock is turned in the shaft; what lies
// in the nock does not, and goes with the nock. A shaft that is stiffer one way than across pushes twice as often round as it is turned.

import { predictTurns } from '../archery/nock-turn.ts';
import { sum } from '../maths/sum.ts';
import { grains, type Grains } from '../maths/units.ts';
import type { Random } from '../maths/random.ts';
import { between, happens, logNormal } from './chance.ts';
import { mirroredPush, NO_PUSH, together, type Push } from './departure.ts';
import { OFTEN } from './often.ts';

export const ARROW_FAULTS = ['bent', 'nock', 'insert'] as const;
export type ArrowFault = (typeof ARROW_FAULTS)[number];

export interface PracticeArrow {
  readonly number: string;
  readonly mass: Grains;
  /** In the shaft, its point or its vanes: turns with the shaft. Inches of rest. */
  readonly shaft: Push;
  /** In the nock: gone with a new one. */
  readonly nock: Push;
  /** How much farther it bends under the weight of the spine test than the set's middle shaft: thousandths of an inch. */
  readonly softer: number;
  readonly fault: ArrowFault | null;
}

/** What the parts of one arrow weigh (gr), and its shaft's length (in). */
export interface Parts {
  readonly shaftGrains: number; readonly length: number; readonly point: number; readonly insert: number; readonly nock: number; readonly vane: number;
}

export interface ArrowSet {
  readonly arrows: readonly PracticeArrow[];
  readonly vanes: 3 | 4;
  /** The share of what lies in a shaft that turns twice as fast: 0, or a half where uneven stiffness is at work. */
  readonly twice: 0 | 0.5;
  /** What a shaft does that is softer by a thousandth, inches of rest: the same way however its nock is turned, for it bends as the string pushes. */
  readonly bends: Push;
  readonly parts: Parts;
}

/** What an ordinary shaft or nock does, one standard deviation: 0.04 in of tear at 7 ft (assumed). */
const ORDINARY = 0.006;
/** What a bad one does, from and to: 0.7 to 1.1 in of tear (assumed: an arrow that any archer would notice). */
const BAD = [0.12, 0.18] as const;
/** Thousandths of an inch, one standard deviation: a set for hunting lies within 10 to 15 of its middle (common practice, from memory). */
const SOFTER = 6;
/** One group of shafts apart, 60 thousandths, tears 1/4 in more (assumed), give or take a factor; from a release aid shafts bend mostly up and down. */
const BENDS = { median: 1 / 4 / 6 / 60, spread: 0.5, aside: 0.3 } as const;
/** Grains; what a set for the target differs by (common practice: half a grain to a grain; for hunting 3 to 5). */
const MASS_SPREAD = 1.5;

/** What an arrow of these parts weighs, gr. */
// Example: massOf({ shaftGrains: 8.6, length: 28, point: 100, insert: 20, nock: 9, vane: 7 }, 3) is 390.8.
export const massOf = ({ shaftGrains, length, point, insert, nock, vane }: Parts, vanes: number): Grains =>
  grains(sum([shaftGrains * length, point, insert, nock, vanes * vane]));

export const partsBy = (chance: Random): Parts =>
  ({ shaftGrains: Math.round(between(chance, 86, 100)) / 10, length: 28 + Math.round(between(chance, 0, 4)) / 4, point: 100, insert: 20, nock: 9, vane: 7 });

/** A set as it comes: all arrows much alike. */
export function arrowsBy(chance: Random): ArrowSet {
  const [parts, twice, four, count] = [partsBy(chance), happens(chance, OFTEN.arrows.unevenShafts), happens(chance, OFTEN.arrows.fourVanes), Math.round(between(chance, 6, 12))];
  const vanes = four ? 4 : 3;
  const mass = massOf(parts, vanes);
  return { vanes, twice: twice ? 0.5 : 0, bends: NO_PUSH, parts, arrows: Array.from({ length: count }, (_, i) => arrowBy(chance, `${i + 1}`, mass)) };
}

const arrowBy = (chance: Random, number: string, mass: Grains): PracticeArrow => ({
  number, mass: grains(mass + MASS_SPREAD * chance.normal()), softer: 0, fault: null,
  shaft: { x: ORDINARY * chance.normal(), y: ORDINARY * chance.normal() }, nock: { x: (ORDINARY / 2) * chance.normal(), y: (ORDINARY / 2) * chance.normal() },
});

/** The same set, each shaft a little softer or stiffer than the next, on a bow that makes so much of it. */
export function withStiffness(chance: Random, set: ArrowSet): ArrowSet {
  const [size, aside, up] = [logNormal(chance, BENDS.median, BENDS.spread), chance.normal(), happens(chance, 1 / 2) ? 1 : -1];
  return { ...set, bends: { x: size * BENDS.aside * aside, y: size * up }, arrows: set.arrows.map((arrow) => ({ ...arrow, softer: SOFTER * chance.normal() })) };
}

/** The same set with one arrow gone bad. */
export function withBad(chance: Random, set: ArrowSet, number: string, fault: ArrowFault): ArrowSet {
  const [size, angle] = [between(chance, ...BAD), 2 * Math.PI * chance.uniform()];
  const push = { x: size * Math.cos(angle), y: size * Math.sin(angle) };
  const spoilt = (arrow: PracticeArrow): PracticeArrow =>
    (fault === 'nock' ? { ...arrow, fault, nock: together([arrow.nock, push]) } : { ...arrow, fault, shaft: together([arrow.shaft, push]) });
  return { ...set, arrows: set.arrows.map((arrow) => (arrow.number === number ? spoilt(arrow) : arrow)) };
}

/** How an arrow pushes itself with its nock turned by so many vanes, the nock its own or a new one. */
export function arrowPush(
  { vanes, twice, bends }: Pick<ArrowSet, 'vanes' | 'twice' | 'bends'>, { shaft, nock, softer }: Pick<PracticeArrow, 'shaft' | 'nock' | 'softer'>, turn: number, newNock: boolean,
): Push {
  const turned = predictTurns(NO_PUSH, shaft, vanes);
  const at = (n: number): Push => turned[((n % vanes) + vanes) % vanes] ?? shaft;
  const [once, again] = [at(turn), at(2 * turn)];
  const own = { x: (1 - twice) * once.x + twice * again.x, y: (1 - twice) * once.y + twice * again.y };
  return together([own, { x: softer * bends.x, y: softer * bends.y }, newNock ? NO_PUSH : nock]);
}

export const mirroredArrows = (set: ArrowSet): ArrowSet =>
  ({ ...set, bends: mirroredPush(set.bends), arrows: set.arrows.map((arrow) => ({ ...arrow, shaft: mirroredPush(arrow.shaft), nock: mirroredPush(arrow.nock) })) });
