// Lessons: for each a recipe that makes, from any seed, a bow with exactly one kind of trouble, in the hands of an honest archer. What a lesson is
// for is told by its name; which bow it is, only afterwards.

import { knobEntries, type Content, type KnobId } from '../content/types.ts';
import { checks } from '../maths/check.ts';
import type { Random } from '../maths/random.ts';
import { adjustmentBy, type Works } from './adjustment.ts';
import { HONEST, type PracticeArcher } from './archer.ts';
import { ARROW_FAULTS, withBad } from './arrows.ts';
import { A_LITTLE_HIGH, offBy, ownWorth, type PracticeBow } from './bow.ts';
import { between, chanceOf, eitherSide, oneOfThese } from './chance.ts';
import { deadlyBy } from './danger.ts';
import { TEAR_PER_INCH } from './departure.ts';
import type { Hardware } from './hardware.ts';
import { LESSONS, type Lesson } from './lesson-names.ts';
import { soundWorld, type World } from './world.ts';

const must = checks('lessonBow');

/** How a lesson is made: from a bow that is sound, with the chance of the lesson's seed. */
type Recipe = (seed: number, knobs: Content['knobs'], chance: Random) => World;

/** A rest with a screw, and an archer whose shots are rather steady: so that a lesson takes one evening, not three. */
const PLAIN: Partial<Hardware> = { rest: 'blade', restScale: 'fine-screw' };
const STEADY: PracticeArcher = { ...HONEST, noise: 0.7 };

const RECIPES: Readonly<Record<Lesson, Recipe>> = {
  // A rest too high or too low, and a yoke with too much in one leg: one after the other, each by itself.
  'two things wrong': (seed, knobs, chance) => {
    const world = quiet(soundWorld(seed, knobs, STEADY, { ...PLAIN, cams: 'yoke', press: 'trained' }));
    const works = worksAs(world, seed, knobs, { 'rest-height': ['as the book says', 1], 'yoke': ['as the book says', 1.2] });
    const [height, side] = [eitherSide(chance) * between(chance, 0.42, 0.5), eitherSide(chance) * between(chance, 0.42, 0.55)];
    return withBow(world, { adjustments: offBy(works, { 'rest-height': off(works, 'rest-height', height), 'yoke': off(works, 'yoke', side) }) });
  },
  // The bow needs nothing. The hand twists it, to one side now and to the other then, until it is relaxed.
  'it is the archer': (seed, knobs, chance) => quiet(soundWorld(seed, knobs, { ...STEADY, torque: { always: 0, spread: between(chance, 0.16, 0.2) } }, PLAIN)),
  // The bow needs nothing, and one arrow that it was not tuned with goes elsewhere.
  'one bad arrow': (seed, knobs, chance) => {
    const world = quiet(soundWorld(seed, knobs, { ...STEADY, shootsAll: true }, PLAIN));
    const others = world.set.arrows.length - TUNED_WITH;
    return { ...world, set: withBad(chance, world.set, `${TUNED_WITH + Math.ceil(between(chance, 0, 1) * others)}`, oneOfThese(chance, ARROW_FAULTS)) };
  },
  // A rest that stands off and answers the other way than the first guess; the maker's figure is not at hand, or it would tell.
  'the first guess is wrong': (seed, knobs, chance) => {
    const world = quiet(soundWorld(seed, knobs, STEADY, { ...PLAIN, cams: 'yoke', press: 'shop' }));
    const works = worksAs(world, seed, knobs, { 'rest-side': ['the other way', 2] });
    const optimum = off(works, 'rest-side', eitherSide(chance) * between(chance, 0.42, 0.48));
    return withBow(world, { adjustments: offBy(works, { 'rest-side': optimum }), measures: { ...world.bow.measures, centreShotFigure: null } });
  },
  'do not shoot this bow': (seed, knobs, chance) => withBow(soundWorld(seed, knobs, HONEST), { danger: deadlyBy(chance) }),
};
const TUNED_WITH = 3;

/** The bow of a lesson, by seed. Throws RangeError unless the seed is whole, 0 or more. */
export function lessonBow(lesson: Lesson, seed: number, knobs: Content['knobs']): World {
  must.lessonBow.whole(seed, 'the seed', 0);
  return { ...RECIPES[lesson](seed, knobs, chanceOf(seed, 'lesson', LESSONS.indexOf(lesson))), lesson };
}

const withBow = (world: World, bow: Partial<PracticeBow>): World => ({ ...world, bow: { ...world.bow, ...bow } });

/** Only the trouble of the lesson. */
const quiet = (world: World): World => withBow(world, { nuisance: A_LITTLE_HIGH });

/** The setting at which an adjustment would be right that makes a tear of this size (in, at 7 ft from the point). */
const off = (adjustments: PracticeBow['adjustments'], knob: 'rest-height' | 'rest-side' | 'yoke', tear: number): number =>
  tear / (TEAR_PER_INCH * ownWorth(knob === 'rest-height' ? 'height' : 'side', adjustments[knob]));

type Forced = Readonly<Partial<Record<KnobId, readonly [Works, number]>>>;

/** The bow's adjustments, some of them working as the lesson needs it. */
function worksAs({ bow }: World, seed: number, knobs: Content['knobs'], forced: Forced): PracticeBow['adjustments'] {
  const own = knobEntries(forced).map(([id, [works, gain]], nth) =>
    [id, adjustmentBy(chanceOf(seed, 'lesson', 50 + nth), knobs[id], bow.hardware, { works, gain })] as const);
  return { ...bow.adjustments, ...Object.fromEntries(own) };
}
