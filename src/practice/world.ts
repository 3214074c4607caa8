// A practice bow, its archer and its arrows as one: all that is true and hidden. From a seed alone, and the same each time.
// It is invented: it teaches how a tune is gone about, and says nothing of any real bow.

import { knobEntries, type Content } from '../content/types.ts';
import { FOOT, FOOT_POUND, GRAIN } from '../maths/exact.ts';
import { footPounds, grains } from '../maths/units.ts';
import type { Random } from '../maths/random.ts';
import { mirroredAdjustment, type Settings } from './adjustment.ts';
import { archerBy, mirroredArcher, type PracticeArcher } from './archer.ts';
import { ARROW_FAULTS, arrowsBy, massOf, mirroredArrows, withBad, withStiffness, type ArrowSet } from './arrows.ts';
import { contactBy, creepBy, looseBy, SIDEWAYS, nuisanceBy, soundAdjustments, type PracticeBow } from './bow.ts';
import { between, chanceOf, happens, oneOfThese } from './chance.ts';
import { deadlyBy, mendableBy } from './danger.ts';
import { mirroredDeparture, mirroredPush } from './departure.ts';
import { adjustmentsBy } from './faults.ts';
import { hardwareBy, type Hardware } from './hardware.ts';
import type { Lesson } from './lesson-names.ts';
import { OFTEN } from './often.ts';

export interface World {
  /** True of everything that is made here: whoever keeps or shows it can say so. */
  readonly practice: true;
  readonly seed: number;
  readonly lesson: Lesson | null;
  /** -1 where this is the mirror of a bow: its luck goes to the other side, too. */
  readonly side: 1 | -1;
  readonly bow: PracticeBow;
  readonly archer: PracticeArcher;
  readonly set: ArrowSet;
}

/** The bow of this number, as anybody may bring it; `knobs` is content's. Throws RangeError unless the number is whole, 0 or more. */
export function bowByNumber(number: number, knobs: Content['knobs']): World {
  const hardware = hardwareBy(chanceOf(number, 'bow'));
  const chance = chanceOf(number, 'bow', TROUBLES);
  const adjustments = adjustmentsBy(number, knobs, hardware);
  const set = setBy(number);
  const [nuisance, contact, loose, creep] = [nuisanceBy(chance), contactBy(chance), looseBy(chance), creepBy(chance)];
  const [touches, loosens, settles] = [happens(chance, OFTEN.bow.contact), happens(chance, OFTEN.bow.loose), happens(chance, OFTEN.bow.creep)];
  const danger = chanceOf(number, 'danger');
  const [deadly, mendable] = [deadlyBy(danger), mendableBy(danger)];
  const [isDeadly, isMendable] = [happens(danger, OFTEN.bow.deadly), happens(danger, OFTEN.bow.mendable)];
  return {
    practice: true, seed: number, lesson: null, side: 1, set, archer: archerBy(chanceOf(number, 'archer')),
    bow: {
      hardware, adjustments, nuisance, contact: touches ? contact : null, loose: loosens ? loose : null, creep: settles ? creep : null,
      danger: isDeadly ? deadly : isMendable ? mendable : null,
      ...figuresBy(chance, hardware, adjustments['rest-side']?.optimum ?? 0, set),
    },
  };
}
const TROUBLES = 200;

/** A bow with nothing wrong at all, to make a lesson of; `hardware` says what it is built of where that matters. */
export function soundWorld(seed: number, knobs: Content['knobs'], archer: PracticeArcher, fixed: Partial<Hardware> = {}): World {
  const hardware = { ...hardwareBy(chanceOf(seed, 'bow')), ...fixed };
  const set = withStiffness(chanceOf(seed, 'arrows', STIFFNESS), arrowsBy(chanceOf(seed, 'arrows')));
  return {
    practice: true, seed, lesson: null, side: 1, set, archer,
    bow: {
      hardware, adjustments: soundAdjustments(seed, knobs, hardware), nuisance: nuisanceBy(chanceOf(seed, 'bow', TROUBLES)),
      contact: null, loose: null, creep: null, danger: null, ...figuresBy(chanceOf(seed, 'bow', TROUBLES + 1), hardware, 0, set),
    },
  };
}

function setBy(number: number): ArrowSet {
  const chance = chanceOf(number, 'arrows');
  const set = withStiffness(chanceOf(number, 'arrows', STIFFNESS), arrowsBy(chance));
  const [bad, which, fault] = [happens(chance, OFTEN.arrows.oneBad), Math.ceil(chance.uniform() * set.arrows.length), oneOfThese(chance, ARROW_FAULTS)];
  return bad ? withBad(chance, set, `${Math.max(1, which)}`, fault) : set;
}
/** Beside the draws of a set. */
const STIFFNESS = 2;

/** A bow of 280 fps or near it (assumed), for an arrow of this mass; its virtual mass is about that of a light string (from memory). */
const VIRTUAL_MASS = grains(100);

function figuresBy(chance: Random, { hand }: Hardware, restOptimum: number, { parts, vanes }: ArrowSet): Pick<PracticeBow, 'measures' | 'throws'> {
  const ratedWeight = happens(chance, OFTEN.bow.sixtyPounds) ? 60 : 70;
  const boltsOut = Math.round(between(chance, 0, 8)) / 4;
  const [known, speed] = [happens(chance, OFTEN.bow.figureKnown), between(chance, 265, 295)];
  const [below, axles, brace, nock] = [between(chance, 0, 3), between(chance, 30, 36), between(chance, 6, 7.5), oneOfThese(chance, [1 / 16, 3 / 32, 1 / 8])];
  const mass = massOf(parts, vanes);
  return {
    measures: {
      ratedWeight, boltsOut, boltLimit: 4, peakWeight: Math.round(ratedWeight - below), axleToAxle: inEighths(axles), braceHeight: inEighths(brace), nockHeight: nock,
      centreShot: centreShot(hand, FIGURE, restOptimum), centreShotFigure: known ? FIGURE : null, shaftAhead: 1.25,
    },
    throws: { virtualMass: VIRTUAL_MASS, energy: footPounds(((mass + VIRTUAL_MASS) * GRAIN * (speed * FOOT) ** 2) / 2 / FOOT_POUND) },
  };
}
const inEighths = (inches: number): number => Math.round(inches * 8) / 8;
/** A usual centre shot, inches (common practice). */
export const FIGURE = 13 / 16;

/**
 * What the tape reads from riser to shaft, to 1/32 in, where the rest would have to go right by `optimum` to stand at the figure: the riser is right of the arrow
 * for a right-handed archer.
 */
// Example: centreShot('right', 0.8125, 0.0625) is 0.875.
export const centreShot = (hand: Hardware['hand'], figure: number, optimum: number): number =>
  Math.round((figure + (hand === 'right' ? optimum : -optimum)) * 32) / 32;

/** The same bow in the hands of a mirrored archer: every shot goes to the other side, exactly. */
export function mirrored(world: World): World {
  const { bow, side } = world;
  const { hardware, contact, loose } = bow;
  const sideways = (id: string): boolean => SIDEWAYS.some((one) => one === id);
  return {
    ...world, side: side === 1 ? -1 : 1, archer: mirroredArcher(world.archer), set: mirroredArrows(world.set),
    bow: {
      ...bow,
      hardware: { ...hardware, hand: hardware.hand === 'right' ? 'left' : 'right' },
      adjustments: Object.fromEntries(knobEntries(bow.adjustments).map(([id, one]) => [id, mirroredAdjustment(one, sideways(id))])),
      nuisance: mirroredDeparture(bow.nuisance),
      contact: contact === null ? null : { ...contact, push: mirroredPush(contact.push) },
      loose: loose === null ? null : { ...loose, each: sideways(loose.knob) ? -loose.each : loose.each },
    },
  };
}

/** Settings seen in the mirror. */
export const mirroredSettings = (settings: Settings): Settings =>
  Object.fromEntries(knobEntries(settings).map(([id, value]) => [id, SIDEWAYS.includes(id) ? 0 - value : value]));
