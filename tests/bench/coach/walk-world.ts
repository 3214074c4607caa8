// The practice bows that whole tunes are played with: any bow by its number, with a rest that does not drop away, twelve arrows, and an archer who hunts
// with fixed blades. Beside them two worlds with one trouble each: an axis that no adjustment can mend, and vanes that touch. All invented.

import { knobEntries, type Axis, type Content } from '../../../src/content/types.ts';
import { grains } from '../../../src/maths/units.ts';
import { archerBy, type PracticeArcher } from '../../../src/practice/archer.ts';
import { arrowsBy, massOf, withStiffness, type ArrowSet } from '../../../src/practice/arrows.ts';
import { A_LITTLE_HIGH, type PracticeBow } from '../../../src/practice/bow.ts';
import { between, chanceOf, eitherSide, happens } from '../../../src/practice/chance.ts';
import { departureOf, inAll, TEAR_PER_INCH } from '../../../src/practice/departure.ts';
import { drifted } from '../../../src/practice/drifted.ts';
import { adjustmentsBy, beyondReachBy } from '../../../src/practice/faults.ts';
import type { Hardware } from '../../../src/practice/hardware.ts';
import { FRESH, type Memory } from '../../../src/practice/memory.ts';
import { outOfReach, reachOfOptimum, type Reach } from '../../../src/practice/reach.ts';
import { usualSpeed } from '../../../src/practice/shoot.ts';
import { bowByNumber, centreShot, FIGURE, soundWorld, type World } from '../../../src/practice/world.ts';
import { KINDS, type Kind } from './walk-caps.ts';

type Knobs = Content['knobs'];

const REST: Partial<Hardware> = { rest: 'blade', restScale: 'fine-screw' };
const HUNTS: Partial<PracticeArcher> = { use: 'hunting', heads: 'fixed', shootsAll: true };
const ARROWS = 12;

/** Bow `nth` of a seed has this number: what is printed of a bow can be played again. */
// Example: numberOf(901, 12) is 90100012.
export const numberOf = (seed: number, nth: number): number => MOST_OF_A_SEED * seed + nth;
const MOST_OF_A_SEED = 100_000;

export function anyBow(number: number, knobs: Knobs, fixed: Partial<Hardware> = {}): World {
  const { archer, set, bow, ...world } = bowByNumber(number, knobs);
  const hardware = { ...bow.hardware, ...REST, ...fixed };
  const adjustments = adjustmentsBy(number, knobs, hardware);
  const measures = { ...bow.measures, centreShot: centreShot(hardware.hand, FIGURE, adjustments['rest-side']?.optimum ?? 0) };
  return { ...world, archer: { ...archer, ...HUNTS }, set: twelve(number, set), bow: { ...bow, hardware, adjustments, measures } };
}

/** Of this kind, and nothing that a dealer must see. */
export const boundBow = (number: number, knobs: Knobs, kind: Kind): World => withBow(anyBow(number, knobs, KINDS[kind]), { danger: null });

/** The set filled up with sound arrows of the same parts. */
function twelve(number: number, set: ArrowSet): ArrowSet {
  const more = withStiffness(chanceOf(number, 'arrows', MORE), arrowsBy(chanceOf(number, 'arrows', 1)));
  const heavier = massOf(set.parts, set.vanes) - massOf(more.parts, more.vanes);
  const others = more.arrows.map((arrow) => ({ ...arrow, mass: grains(arrow.mass + heavier) }));
  return { ...set, arrows: [...set.arrows, ...others].slice(0, ARROWS).map((arrow, i) => ({ ...arrow, number: `${i + 1}` })) };
}

/** Draws of arrows beside a set's own. */
const MORE = 1000;

/** Nothing wrong but what the caller adds, in the hands of the usual archer, whose hand is quiet. */
function plainBow(number: number, knobs: Knobs): World {
  const archer: PracticeArcher = { ...archerBy(chanceOf(number, 'archer')), ...HUNTS, torque: null };
  const world = soundWorld(number, knobs, archer, REST);
  return { ...world, set: twelve(number, world.set), bow: { ...world.bow, nuisance: A_LITTLE_HIGH } };
}

const withBow = (world: World, bow: Partial<PracticeBow>): World => ({ ...world, bow: { ...world.bow, ...bow } });
/** Draws of this file: no lesson is numbered so high. */
const WALK = 1000;

/** Tears of the axis that cannot be mended, inches at 7 ft. */
const UNFIXABLE = [0.5, 1] as const;

/** Nothing that can be moved does anything on one axis, and that axis is off. */
export function unfixableBow(number: number, knobs: Knobs): { readonly world: World; readonly axis: Axis } {
  const chance = chanceOf(number, 'lesson', WALK);
  const axis: Axis = happens(chance, 1 / 2) ? 'height' : 'side';
  const push = (eitherSide(chance) * between(chance, ...UNFIXABLE)) / TEAR_PER_INCH;
  const world = plainBow(number, knobs);
  const dead = Object.entries(world.bow.adjustments).map(([id, one]) =>
    [id, { ...one, works: 'not at all' as const, worth: axis === 'side' ? { x: 0, y: one.worth.y } : { x: one.worth.x, y: 0 } }] as const);
  const nuisance = inAll([world.bow.nuisance, departureOf(axis === 'side' ? { x: push, y: 0 } : { x: 0, y: push })]);
  return { axis, world: withBow(world, { adjustments: Object.fromEntries(dead), nuisance }) };
}

/** One axis stands off, and every screw of it ends too early or answers too weakly. Null where, by truth, something still reaches it. */
export function beyondBow(number: number, knobs: Knobs): { readonly world: World; readonly axis: Axis; readonly why: Reach } | null {
  const plain = plainBow(number, knobs);
  const { hardware } = plain.bow;
  const adjustments = beyondReachBy(chanceOf(number, 'lesson', WALK + 2), knobs, hardware, plain.bow.adjustments);
  const measures = { ...plain.bow.measures, centreShot: centreShot(hardware.hand, FIGURE, adjustments['rest-side']?.optimum ?? 0) };
  const world = withBow(plain, { adjustments, measures });
  const [axis] = outOfReach(world.bow, usualSpeed(world));
  const why = knobEntries(adjustments).map(([id, one]) => reachOfOptimum(world.bow, id, one)).find((reach) => reach !== 'within reach');
  return axis === undefined || why === undefined ? null : { world, axis, why };
}

/** Vanes that touch on so many shots, and push the tail by at least so many standard deviations of this archer's shots; 0.18 in at the usual noise. */
const TOUCHES = { often: 0.4, from: 6, to: 8, sd: 0.18 } as const;

export function contactBow(number: number, knobs: Knobs): World {
  const chance = chanceOf(number, 'lesson', WALK + 1);
  const world = plainBow(number, knobs);
  const size = (between(chance, TOUCHES.from, TOUCHES.to) * TOUCHES.sd * world.archer.noise) / TEAR_PER_INCH;
  // Onto the rest and away from it, never straight down: from half of a right angle on.
  const angle = Math.PI * between(chance, 1 / 4, 3 / 4);
  return withBow(world, { contact: { often: TOUCHES.often, push: { x: size * Math.cos(angle), y: -size * Math.sin(angle) } } });
}

/** The same archer's next tune of the same bow: a quarter drifted, something else off; what was put right stays so. */
export function nextTune(world: World, { condition, mended }: Memory, knobs: Knobs): { readonly world: World; readonly memory: Memory } {
  const { contactCured, handRelaxed, tightened, newNocks, leftOut } = condition;
  return { world: drifted(world, knobs), memory: { ...FRESH, mended, condition: { ...FRESH.condition, contactCured, handRelaxed, tightened, newNocks, leftOut } } };
}
