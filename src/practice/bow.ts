// A practice bow: its hardware, the truth about each of its adjustments, what a look at it finds, and what else is wrong with it.
// All invented. Nothing here claims to be like any bow that was ever built.

import { knobEntries, type Axis, type Content, type KnobId } from '../content/types.ts';
import type { Leaving } from '../archery/launch.ts';
import type { Throw } from '../archery/launch-speed.ts';
import { sum } from '../maths/sum.ts';
import type { Random } from '../maths/random.ts';
import { degrees, radiansPerSecond } from '../maths/units.ts';
import { adjustmentBy, type Adjustment, type Settings } from './adjustment.ts';
import { between, chanceOf, eitherSide, oneOfThese } from './chance.ts';
import { departureOf, inAll, together, type Departure, type Push } from './departure.ts';
import type { Danger } from './danger.ts';
import { adjustmentsOf, type Hardware } from './hardware.ts';

/** What tape and scale read on the bow as found. lb, turns and in. */
export interface Measures {
  readonly ratedWeight: number;
  readonly peakWeight: number;
  readonly boltsOut: number;
  readonly boltLimit: number;
  readonly axleToAxle: number;
  readonly braceHeight: number;
  readonly nockHeight: number;
  /** Riser to shaft, and what the maker says it should be; null where nobody has the sheet. */
  readonly centreShot: number;
  readonly centreShotFigure: number | null;
  readonly shaftAhead: number;
}

/** Vanes or shaft touch on some shots: how often, and how far that pushes the tail, until it is found and cured. */
export interface Contact { readonly often: number; readonly push: Push }
/** From this shot on an adjustment creeps with every shot, by so much of its unit, until it is found and tightened. */
export interface Loose { readonly knob: KnobId; readonly from: number; readonly each: number }
/** A string that settles: the nocking point ends so far off (in), most of the way after so many shots. */
export interface Creep { readonly nock: number; readonly shots: number }

export interface PracticeBow {
  readonly hardware: Hardware;
  readonly adjustments: Readonly<Partial<Record<KnobId, Adjustment>>>;
  /** What no adjustment is the cause of. */
  readonly nuisance: Departure;
  readonly creep: Creep | null;
  readonly contact: Contact | null;
  readonly loose: Loose | null;
  readonly danger: Danger | null;
  readonly measures: Measures;
  /** What it gives to an arrow. */
  readonly throws: Throw;
}

/** All adjustments of this bow, right as found; each by a draw of its own. */
export const soundAdjustments = (seed: number, knobs: Content['knobs'], hardware: Hardware): PracticeBow['adjustments'] =>
  Object.fromEntries(adjustmentsOf(hardware.cams).map((id, nth) => [id, adjustmentBy(chanceOf(seed, 'bow', nth + 1), knobs[id], hardware)]));

/** The same with some of them standing off: the settings at which each would be right. */
export const offBy = (adjustments: PracticeBow['adjustments'], optimum: Settings): PracticeBow['adjustments'] =>
  Object.fromEntries(knobEntries(adjustments).map(([id, one]) => [id, { ...one, optimum: optimum[id] ?? one.optimum }]));

/** What one unit of it does on this axis, inches of rest. */
export const ownWorth = (axis: Axis | 'none', one: Adjustment | undefined): number => (axis === 'side' ? one?.worth.x : one?.worth.y) ?? 0;

/** What the bow itself does to an arrow at these settings, in inches of rest: every adjustment that does not stand where it should. */
export function pushOf({ adjustments }: Pick<PracticeBow, 'adjustments'>, settings: Settings): Push {
  const entries = knobEntries(adjustments);
  const carriers = entries.filter(([by, { carries }]) => Object.keys(carries).length > 0 && (settings[by] ?? 0) !== 0);
  return together(entries.map(([id, { worth, optimum }]) => {
    const off = sum([settings[id] ?? 0, ...carriers.map(([by, { carries }]) => (carries[id] ?? 0) * (settings[by] ?? 0)), -optimum]);
    return { x: worth.x * off, y: worth.y * off };
  }));
}

/** How the bow sends off an arrow that is quite alike all others, from a quiet hand. */
export const bowDeparture = (bow: Pick<PracticeBow, 'adjustments' | 'nuisance'>, settings: Settings): Departure =>
  inAll([departureOf(pushOf(bow, settings)), bow.nuisance]);

/** How a bow is left that is in order: gravity alone tears 0.07 in low at 7 ft, and a little high is the safe side. 1/16 in high, then. */
export const A_LITTLE_HIGH: Departure = departureOf({ x: 0, y: -1 / 40 });

/** The same, and what else is left of a launch when all adjustments are right (assumed: 0.3 degrees and 0.15 rad/s, one standard deviation). */
export const nuisanceBy = (chance: Random): Departure => inAll([A_LITTLE_HIGH, { side: leftOver(chance), height: leftOver(chance) }]);
const leftOver = (chance: Random): Leaving => ({ angle: degrees(0.3 * chance.normal()), rate: radiansPerSecond(0.15 * chance.normal()) });

export const contactBy = (chance: Random): Contact => {
  const size = between(chance, 0.08, 0.2);
  return { often: between(chance, 0.3, 0.8), push: { x: size * chance.normal(), y: -size } };
};
export const looseBy = (chance: Random): Loose => {
  const [knob, from] = [oneOfThese(chance, ['rest-height', 'rest-side'] as const), Math.round(between(chance, 3, 25))];
  return { knob, from, each: eitherSide(chance) * between(chance, 1 / 512, 1 / 128) };
};
export const creepBy = (chance: Random): Creep => ({ nock: -between(chance, 1 / 128, 1 / 40), shots: between(chance, 30, 90) });

/** Adjustments that go to the other side in a mirror. */
export const SIDEWAYS: readonly KnobId[] = ['rest-side', 'yoke', 'cam-spacers', 'cam-screw'];
