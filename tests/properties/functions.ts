// Every exported function of src/maths and src/archery: what goes in and comes out of it, in which units, what a mirror turns, which lists have
// no order, and where a number that is none may stand. A function that is not here fails a test; what is written here drives all laws.

import * as arrowEnergy from '../../src/archery/arrow-energy.ts';
import * as arrowMass from '../../src/archery/arrow-mass.ts';
import * as arrowPartsOf from '../../src/archery/arrow-parts.ts';
import * as arrowRules from '../../src/archery/arrow-rules.ts';
import { screenArrows } from '../../src/archery/arrow-set.ts';
import * as before from '../../src/archery/bows-before.ts';
import { bowsLeft } from '../../src/archery/bows-left.ts';
import { bowsThatFit } from '../../src/archery/bows-that-fit.ts';
import * as bowFigures from '../../src/archery/bow-figures.ts';
import * as consistency from '../../src/archery/consistency.ts';
import { judgeDrift } from '../../src/archery/drift.ts';
import { unfletched, USUAL_ARROW } from '../../src/archery/flight/arrow.ts';
import { bodyOf } from '../../src/archery/flight/body.ts';
import { finLift } from '../../src/archery/flight/fins.ts';
import { flyThrough } from '../../src/archery/flight/fly.ts';
import { changeOf, type Motion } from '../../src/archery/flight/forces.ts';
import { fromPoint } from '../../src/archery/flight/from-hand.ts';
import { impactAt } from '../../src/archery/flight/impact.ts';
import { sightIn } from '../../src/archery/flight/sight-in.ts';
import { swingOf } from '../../src/archery/flight/swing.ts';
import { tearAt } from '../../src/archery/flight/tear.ts';
import { checkWorld, USUAL_WORLD } from '../../src/archery/flight/world.ts';
import * as impactAngle from '../../src/archery/impact-angle.ts';
import * as launchSpeed from '../../src/archery/launch-speed.ts';
import * as launch from '../../src/archery/launch.ts';
import * as nockTurn from '../../src/archery/nock-turn.ts';
import * as oneWay from '../../src/archery/one-way.ts';
import * as plumbLine from '../../src/archery/plumb-line.ts';
import * as dead from '../../src/archery/may-be-dead.ts';
import * as worse from '../../src/archery/truly-worse.ts';
import * as response from '../../src/archery/response.ts';
import { scatters } from '../../src/archery/scatters.ts';
import * as setIndex from '../../src/archery/set-index.ts';
import * as setRead from '../../src/archery/set-read.ts';
import * as shotGuards from '../../src/archery/shots.ts';
import * as spread from '../../src/archery/spread.ts';
import { squaresAround } from '../../src/archery/squares.ts';
import * as staticSpine from '../../src/archery/static-spine.ts';
import * as stiffness from '../../src/archery/stiffness.ts';
import { thirdRoundTells } from '../../src/archery/third-round.ts';
import * as tolerance from '../../src/archery/tolerance.ts';
import * as twoGroups from '../../src/archery/two-groups.ts';
import { widest } from '../../src/archery/widest.ts';
import { checks } from '../../src/maths/check.ts';
import * as closed from '../../src/maths/closed.ts';
import { convert } from '../../src/maths/convert.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import * as fractions from '../../src/maths/fractions.ts';
import { huberCentre } from '../../src/maths/huber.ts';
import * as normal from '../../src/maths/normal.ts';
import * as memo from '../../src/maths/once.ts';
import { seededRandom } from '../../src/maths/random.ts';
import * as student from '../../src/maths/student.ts';
import * as sums from '../../src/maths/sum.ts';
import * as unitWords from '../../src/maths/unit-words.ts';
import * as units from '../../src/maths/units.ts';
import { list, maybe, number, record, words, type Allowed, type Shape, type Side, type Unit } from './shape.ts';

/** Any function: how it is called is told by `args`. */
export type Any = (...args: never[]) => unknown;

export interface Entry {
  readonly fn: Any;
  readonly args: readonly Shape[];
  readonly gives: Shape;
  /** Brings arguments that were drawn singly into a state in which they can stand together. */
  readonly arrange?: (args: readonly unknown[]) => readonly unknown[];
  /** From the outcome and the arguments: what it says, where that is not plain to see, being a function or a place in a list. */
  readonly says?: Any;
  /** The outcome without the order that it takes over from what was told. */
  readonly inNoOrder?: Any;
  /** Base quantities whose size is built in, and how: counted in other units the function says something else. */
  readonly fixed?: Readonly<Record<string, string>>;
  /** Of those, sizes that may change together. */
  readonly together?: readonly Unit[];
  /** What is not the same on the other side, and why. */
  readonly oneSided?: Readonly<Partial<Record<Side, string>>>;
  /** Where a mirror changes more than signs: the arguments, who is asked then, and the outcome. */
  readonly reflects?: { readonly args?: (...args: never[]) => readonly unknown[]; readonly fn?: Any; readonly outcome?: Any };
  /** It takes as many times as long as the others, and is called so many times less often. */
  readonly slow?: number;
  /** In whose name it throws. */
  readonly speaksAs?: string;
}

// Base quantities. Inches and yards are counted apart, so that angles (milliradians) are lengths over distances.
const PURE: Unit = {};
const LENGTH: Unit = { length: 1 };
const AREA: Unit = { length: 2 };
const FAR: Unit = { far: 1 };
const ANGLE: Unit = { length: 1, far: -1 };
const MASS: Unit = { mass: 1 };
const FORCE: Unit = { force: 1 };
const SPEED: Unit = { speed: 1 };
const ENERGY: Unit = { mass: 1, speed: 2 };
const KNOB: Unit = { knob: 1 };
const SLOPE: Unit = { length: 1, knob: -1 };
const TILT: Unit = { tilt: 1 };
/** Lies between 0 and 1. */
const CHANCE: Unit = { chance: 0 };
/** Is never below 0. */
const atLeast0 = (of: Unit): Shape => number({ ...of, atLeast0: 0 }, 0, 1, 1);

const side = { turns: 'side' } as const;
const height = { turns: 'height' } as const;
const known = { may: { Infinity: 'nothing is uncertain: the spread is known' } } as const;
const unknownYet = { may: { Infinity: 'nothing is known beforehand' } } as const;
const anyNumber = (why: string): { may: Allowed } => ({ may: { NaN: why, 'Infinity': why, '-Infinity': why } });
const bothEnds = (why: string): { may: Allowed } => ({ may: { 'Infinity': why, '-Infinity': why } });

/** One axis, whichever of the two. */
const tear = number(LENGTH, -2, 2, 1 / 16, side);
const size = number(LENGTH, 1 / 16, 2, 1 / 16);
const sd = number(LENGTH, 1 / 32, 1, 1 / 32);
const df = number(PURE, 0.5, 40, 0.5, known);
const dfBefore = number(PURE, 0.5, 40, 0.5);
const chance = number(CHANCE, 0, 1, 1 / 64);
const count = number(PURE, 0.5, 9, 0.25);
const whole = number(PURE, 0, 30, 1);
const point = record({ x: number(LENGTH, -2, 2, 1 / 16, side), y: number(LENGTH, -2, 2, 1 / 16, height) });
const shots = (least: number, most = 6): Shape => list(point, least, most);
const spreadOf = record({ sd, df });
const priorOf = record({ sd, df: dfBefore });
/** What comes out: as wide as it is, on so many degrees of freedom. */
const spreadFound = record({ sd: atLeast0(LENGTH), df: atLeast0(PURE) });
const twoGroupsOf = record({ a: shots(0, 5), b: shots(0, 5) });
const setting = number(KNOB, -8, 8, 1 / 2);
const line = record({
  intercept: tear, slope: number(SLOPE, -1, 1, 1 / 32, side), varIntercept: number(AREA, 0, 1, 1 / 64), varSlope: number({ length: 2, knob: -2 }, 1 / 64, 1, 1 / 64),
  cov: number({ length: 2, knob: -1 }, -1, 1, 1 / 16),
// Two figures vary together no more than each by itself.
}, (v) => ({ ...v, cov: (v['cov'] ?? 0) * Math.sqrt((v['varIntercept'] ?? 0) * (v['varSlope'] ?? 0)) }));
const lineFound = record({
  intercept: tear, slope: number(SLOPE, 0, 1, 1, side), varIntercept: atLeast0(AREA), varSlope: atLeast0({ length: 2, knob: -2 }),
  cov: number({ length: 2, knob: -1 }, 0, 1, 1),
});
const slopeBelief = record({ mean: number(SLOPE, -1, 1, 1 / 32, side), sd: number(SLOPE, 1 / 32, 1, 1 / 32, unknownYet) });
const settingPoint = record({ x: setting, mean: tear, count, group: number(PURE, 0, 2, 1) });
const waysToAnswer = list(record({ share: number(PURE, 1 / 64, 1, 1 / 64), about: number(SLOPE, -1, 1, 1 / 32, side), logSd: number(PURE, 1 / 8, 1, 1 / 8) }), 1, 3, 'in order');
const tearsRead = list(record({ x: setting, tear, group: number(PURE, 0, 2, 1), counts: number(PURE, 1 / 4, 1, 1 / 4) }), 1, 6, 'in order');
const distance = number(FAR, 10, 60, 5);
const plumbPoint = record({ distance, mean: number(LENGTH, -4, 4, 1 / 4, side), count });
const plumbPoints = list(plumbPoint, 2, 6);
const angleSpread = record({ sd: number(ANGLE, 1 / 4, 4, 1 / 4), df });
const groupCentre = record({ mean: tear, count });
const mass = number(MASS, 100, 700, 0.5);
const speed = number(SPEED, 150, 350, 1);
const force = number(FORCE, 40, 80, 0.5);
const part = maybe(number(MASS, 0, 150, 0.5), undefined);
const place = number(LENGTH, 0, 3, 1 / 8);
const arrowParts = record({
  length: number(LENGTH, 20, 33, 1 / 8), shaft: number({ mass: 1, length: -1 }, 4, 14, 1 / 8), point: part, insert: part, nock: part, pin: part,
  vanes: maybe(record({ count: number(PURE, 0, 6, 1), each: number(MASS, 0, 12, 0.25) }), undefined), wrap: part,
  places: record({ point: place, insert: place, nock: place, pin: place, vanes: place, wrap: place }),
});
const reading = record({ mass, speed });
const leaving = { angle: number(TILT, -3, 3, 1 / 8, side), rate: number(TILT, -3, 3, 1 / 8, side) };
const leavingErrors = record({ angle: number(TILT, 0.1, 2, 0.1), rate: number(TILT, 0.1, 2, 0.1) });
const paperDistance = number({ paper: 1 }, 5, 31, 0.25);
const anyUnit = words(...units.UNITS);
const word = words('steady', 'left', '', 'quarter turn');

const INCHES = { length: 'the rounding of what is told (1/16 in) and the least spread (0.03 in) are built in' } as const;
const RIGID = {
  paper: 'the model knows its own distances', length: 'what gravity and bending leave in paper is built in',
  speed: 'the model flies at a speed that is built in', tilt: 'how tears and launches go together is built in',
} as const;
const launchKnown = record({ angle: number(TILT, 0.1, 2, 0.1, unknownYet), rate: number(TILT, 0.1, 2, 0.1, unknownYet) });
const paperTear = record({ distance: paperDistance, tear, error: number(LENGTH, 0.02, 0.5, 0.02) });
const FLOWN = {
  length: 'air and gravity have a size', mass: 'air and gravity have a size', speed: 'gravity has a size', tilt: 'shots are flat, slants small',
  paper: 'the arrow has a length, and gravity a size',
} as const;
/** Vanes carry more than blades, so that every arrow flies point first. */
const finsOf = (least: number, most: number): Readonly<Record<string, Shape>> => ({
  count: number(PURE, 2, 4, 1), height: number(LENGTH, least, most, 1 / 16), chord: number(LENGTH, 2 * least, 3 * most, 1 / 16), tip: number(LENGTH, 0, 1, 1 / 8),
  sweep: number(LENGTH, 0, 1, 1 / 8), efficiency: number(PURE, 0.75, 1, 1 / 8),
});
const coefficient = number(PURE, 0, 2, 1 / 8);
const flightArrow = record({
  length: number(LENGTH, 26, 31, 1 / 8), diameter: number(LENGTH, 0.1875, 0.3125, 1 / 64), drag: coefficient, shaft: number({ mass: 1, length: -1 }, 6, 12, 1 / 8),
  point: number(MASS, 75, 200, 5), nock: number(MASS, 5, 15, 1),
  vanes: record({ ...finsOf(7 / 16, 5 / 8), each: number(MASS, 3, 12, 1), ahead: number(LENGTH, 0.5, 1.5, 1 / 8), drag: coefficient }),
  places: record({ point: number(LENGTH, -1, 1, 1 / 8), insert: place, nock: place, pin: place, vanes: place, wrap: place }),
  head: record({
    nose: number(LENGTH, 0, 1, 1 / 8), drag: coefficient, blades: maybe(record({ ...finsOf(1 / 16, 3 / 16), behind: number(LENGTH, 0, 1, 1 / 8) }), undefined),
    lift: maybe(record({ slope: coefficient, behind: number(LENGTH, 0, 1, 1 / 8) }), undefined),
  }),
});
const world = record({ density: number(PURE, 0, 1.5, 1 / 8), gravity: number(PURE, 0, 10, 1 / 2), crossFlow: coefficient, step: number(PURE, 0.001, 0.008, 0.001) });
const turnOf = (turns: Side): Shape => record({ angle: number(TILT, -3, 3, 1 / 8, { turns }), rate: number(TILT, -3, 3, 1 / 8, { turns }) });
const shot = {
  arrow: flightArrow, speed, side: maybe(turnOf('side'), undefined), height: maybe(turnOf('height'), undefined),
  bearing: maybe(number(TILT, -2, 2, 1 / 8, side), undefined),
};
const anyShot = record({ ...shot, elevation: maybe(number(TILT, -2, 2, 1 / 8, height), undefined) });
const flightDistance = number({ paper: 1 }, 1, 40, 1);
const passageFound = record({ x: number(LENGTH, 0, 1, 1, side), y: number(LENGTH, 0, 1, 1, height), time: atLeast0(PURE), speed: atLeast0(SPEED) });
const falls = { fixed: FLOWN, oneSided: { height: 'gravity pulls one way' } } as const;
/** Turning and slanting, to one side and up. */
const ASKEW: Motion = { x: 0, speed: 80, side: { at: 0, speed: 1, turn: 0.02, turning: 1 }, height: { at: 0, speed: -1, turn: 0.01, turning: -2 } };
const WRITTEN = { length: 'a figure is written as it is', any: 'a figure is written as it is' } as const;
const GRAINS = { mass: 'which virtual masses are believable is built in' } as const;

/** Two arguments in rising order. */
const rising = (first: number, second: number) => (args: readonly unknown[]): readonly unknown[] => {
  const [a, b] = [args[first], args[second]];
  return typeof a === 'number' && typeof b === 'number' && a > b ? args.map((one, i) => (i === first ? b : i === second ? a : one)) : args;
};
const turned = (x: number): number => -x;
/** A line needs two distances: the first point is moved beyond all others. */
const twoDistances = ([points, ...rest]: readonly unknown[]): readonly unknown[] =>
  [Array.isArray(points) ? points.map((one: plumbLine.PlumbPoint, i) => (i === 0 ? { ...one, distance: one.distance + 60 } : one)) : points, ...rest];
/** Each arrow has a name of its own. */
function namedApart([arrows, ...rest]: readonly unknown[]): readonly unknown[] {
  return [Array.isArray(arrows) ? arrows.map((one: object, i) => ({ ...one, arrow: `arrow ${i}` })) : arrows, ...rest];
}
const asker = checks('asker').asker;

/** Marks that a number carries; each leaves it as it is. */
const BRANDS = [
  units.inches, units.feet, units.yards, units.pounds, units.grains, units.turns, units.mrad, units.fps, units.grainsPerInch, units.footPounds, units.degrees,
  units.radiansPerSecond, units.percent,
] as const;
const branded = number({ any: 1 }, -40, 40, 1 / 4, anyNumber('a brand changes no number: whatever works with it looks at it'));

const isSet = (value: unknown): value is { readonly arrows: readonly object[] } => typeof value === 'object' && value !== null && 'arrows' in value && Array.isArray(value.arrows);

export const FUNCTIONS: readonly Entry[] = [
  // ---- src/maths
  { fn: checks, args: [words('a name')], gives: word, says: () => 'what its checks throw is told in tests/maths/check.test.ts' },
  { fn: closed.oneOf, args: [words(['a', 'b'])], gives: word, says: (is: (one: unknown) => boolean) => [is('a'), is('c')] },
  { fn: closed.namesOf, args: [words({ a: 1, b: 2 })], gives: word },
  { fn: closed.tableOf, args: [words(['a', 'b']), words((name: string) => name.length)], gives: word },
  { fn: memo.once, args: [words((one: object) => [one])], gives: word, says: (of: (one: object) => unknown) => { const key = {}; return of(key) === of(key); } },
  { fn: memo.onceForBoth, args: [words((a: object, b: object) => [a, b])], gives: word, says: (of: (a: object, b: object) => unknown) => { const key = {}; return of(key, key) === of(key, key); } },
  { fn: convert, args: [number({ any: 1 }, -40, 40, 1 / 8, side), anyUnit, anyUnit], gives: maybe(number({ any: 1 }, 0, 1, 1, side), null) },
  { fn: fAbove, args: [number(PURE, 0, 40, 1 / 8, { may: { Infinity: 'nothing lies above it' } }), dfBefore, df], gives: chance },
  { fn: fractions.parseQuantity, args: [words('1/32', '-1 1/8', '58.5 lb', 'half', ''), anyUnit], gives: word },
  { fn: fractions.formatInches, args: [number(LENGTH, -40, 40, 1 / 64), words(undefined, 16, 64)], gives: word, fixed: WRITTEN },
  { fn: fractions.formatInches, args: [words(0.5), number(PURE, 1, 64, 1)], gives: word },
  { fn: fractions.formatQuantity, args: [record({ value: number({ any: 1 }, -40, 40, 1 / 64), unit: anyUnit })], gives: word, fixed: WRITTEN },
  {
    fn: huberCentre, args: [list(tear, 1, 8), sd, maybe(number(PURE, 0.5, 3, 1 / 8), undefined)],
    gives: record({ centre: tear, count: atLeast0(PURE), weights: list(chance, 0, 9) }),
    inNoOrder: ({ weights, ...rest }: { weights: readonly number[] }) => ({ ...rest, weights: weights.toSorted((a, b) => a - b) }),
  },
  { fn: normal.normalCdf, args: [number(PURE, -9, 9, 1 / 8, bothEnds('nothing, or all, lies below it'))], gives: chance },
  { fn: normal.normalQuantile, args: [chance], gives: number(PURE, 0, 1, 1) },
  {
    fn: seededRandom, args: [number(PURE, -99, 99, 1)], gives: list(number(PURE, 0, 1, 1), 2, 2, 'in order'),
    says: (random: { uniform(): number; normal(): number }) => [random.uniform(), random.normal()],
  },
  { fn: student.studentCdf, args: [number(PURE, -40, 40, 1 / 8, bothEnds('nothing, or all, lies below it')), df], gives: chance },
  { fn: student.studentQuantile, args: [chance, df], gives: number(PURE, 0, 1, 1) },
  { fn: sums.sum, args: [list(tear, 0, 9)], gives: tear },
  { fn: sums.median, args: [list(tear, 1, 9)], gives: tear },
  { fn: unitWords.unitFromWord, args: [words('inch', 'lbs', 'pair', 'cubit')], gives: word },
  {
    fn: unitWords.unitWord,
    args: [anyUnit, number({ any: 1 }, -3, 3, 1 / 4, anyNumber('a word, not a figure: what writes the figure beside it looks at it'))], gives: word,
    fixed: WRITTEN,
  },
  { fn: units.inUnit, args: [branded, anyUnit], gives: number({ any: 1 }, 0, 1, 1) },
  ...BRANDS.map((fn) => ({ fn, args: [branded], gives: number({ any: 1 }, 0, 1, 1) })),
  { fn: units.feetIn, args: [branded], gives: number({ any: 1 }, 0, 1, 1) },
  { fn: units.yardsIn, args: [branded], gives: number({ any: 1 }, 0, 1, 1) },

  // ---- src/archery: the arrow and the bow
  { fn: arrowEnergy.kineticEnergy, args: [mass, speed], gives: record({ footPounds: atLeast0(ENERGY), joules: atLeast0(ENERGY) }) },
  {
    fn: arrowEnergy.momentum, args: [mass, speed],
    gives: record({ slugFeetPerSecond: atLeast0({ mass: 1, speed: 1 }), newtonSeconds: atLeast0({ mass: 1, speed: 1 }) }),
  },
  { fn: arrowMass.grainsPerPound, args: [mass, force], gives: atLeast0({ mass: 1, force: -1 }) },
  { fn: arrowMass.worstGrainsPerPound, args: [mass, force, number(FORCE, 0, 5, 0.25)], gives: atLeast0({ mass: 1, force: -1 }) },
  { fn: arrowPartsOf.massOfParts, args: [arrowParts], gives: atLeast0(MASS) },
  { fn: arrowPartsOf.leastMass, args: [arrowParts], gives: atLeast0(MASS), fixed: { length: 'half an inch of the length is no shaft' } },
  { fn: arrowPartsOf.balanceOfParts, args: [arrowParts], gives: number(LENGTH, 0, 1, 1) },
  { fn: arrowPartsOf.foc, args: [number(LENGTH, 24, 33, 1 / 8), number(LENGTH, 10, 23, 1 / 8)], gives: number(PURE, 0, 1, 1) },
  { fn: arrowPartsOf.focOfParts, args: [arrowParts], gives: number(PURE, 0, 1, 1) },
  {
    fn: arrowPartsOf.massProperties, args: [words(asker), arrowParts], speaksAs: 'asker',
    gives: record({ mass: atLeast0(MASS), balance: number(LENGTH, 0, 1, 1), inertia: atLeast0({ mass: 1, length: 2 }) }),
  },
  { fn: bowFigures.letOff, args: [force, number(FORCE, 5, 40, 0.5)], gives: atLeast0(PURE) },
  { fn: bowFigures.holdingWeight, args: [force, number(PURE, 0, 99, 1)], gives: atLeast0(FORCE) },
  { fn: bowFigures.drawLength, args: [number(LENGTH, 20, 32, 1 / 4)], gives: atLeast0(LENGTH), fixed: { length: '1 3/4 in are added' } },
  { fn: bowFigures.ratingArrow, args: [force], gives: atLeast0(FORCE) },
  { fn: launchSpeed.speedFor, args: [record({ energy: number(ENERGY, 20, 120, 0.5), virtualMass: number(MASS, 0, 250, 1) }), mass], gives: atLeast0(SPEED) },
  {
    fn: launchSpeed.throwFrom, args: [reading, reading, maybe(number(PURE, 0, 0.05, 0.005), undefined)], fixed: GRAINS,
    gives: record({ energy: atLeast0(ENERGY), virtualMass: atLeast0(MASS), low: atLeast0(MASS), high: atLeast0(MASS) }),
  },
  {
    fn: launchSpeed.speedRange, args: [list(reading, 1, 3), mass, maybe(number(PURE, 0, 0.05, 0.005), undefined)],
    gives: record({ low: atLeast0(SPEED), high: atLeast0(SPEED) }), fixed: GRAINS,
  },
  {
    fn: launchSpeed.speedFromRating,
    args: [
      record({ speed, peak: force, draw: number(LENGTH, 26, 32, 0.25) }),
      record({ peak: force, draw: number(LENGTH, 24, 32, 0.25), brace: number(LENGTH, 5, 8, 0.25), mass }),
    ],
    gives: record({ low: atLeast0(SPEED), high: atLeast0(SPEED) }),
    fixed: { ...GRAINS, force: '5 gr a pound are built in', length: '1 3/4 in of the draw length are no way of the string' },
  },
  { fn: staticSpine.amoDeflection, args: [size], gives: atLeast0(LENGTH) },
  { fn: staticSpine.astmDeflection, args: [size], gives: atLeast0(LENGTH) },
  { fn: staticSpine.amoPounds, args: [size], gives: atLeast0({ length: -1 }) },
  { fn: staticSpine.bendingStiffness, args: [size], gives: record({ poundInchesSquared: atLeast0({ length: -1 }), newtonMetresSquared: atLeast0({ length: -1 }) }) },
  {
    fn: stiffness.cutShift, args: [number(LENGTH, 24, 33, 1 / 8), number(LENGTH, 1 / 8, 4, 1 / 8)],
    gives: record({ acts: word, steps: record({ low: atLeast0(PURE), high: atLeast0(PURE) }) }),
  },
  { fn: stiffness.pointShift, args: [number(MASS, -100, 100, 5)], gives: record({ acts: word, steps: record({ low: atLeast0(MASS), high: atLeast0(MASS) }) }) },
  { fn: stiffness.boltShift, args: [number(KNOB, -4, 4, 1 / 4)], gives: record({ acts: word, steps: record({ low: atLeast0(KNOB), high: atLeast0(KNOB) }) }) },
  ...(['side', 'height'] as const).flatMap((axis): readonly Entry[] => {
    const oneSided = axis === 'height' ? { oneSided: { side: 'gravity pulls one way' } } as const : {};
    return [
      {
        fn: launch.launchFrom,
        args: [list(paperTear, 1, 4), words(axis), maybe(speed, undefined), maybe(launchKnown, undefined)],
        gives: record({ ...leaving, errors: record({ angle: atLeast0(TILT), rate: atLeast0(TILT) }), correlation: number(PURE, -1, 1, 1), known: word }),
        fixed: RIGID, ...oneSided,
      },
      { fn: launch.tearFrom, args: [record(leaving), paperDistance, words(axis), maybe(speed, undefined)], gives: tear, fixed: RIGID, ...oneSided },
    ];
  }),
  {
    fn: launch.broadheadsApart, args: [record({ ...leaving, errors: leavingErrors, correlation: number(PURE, -1, 1, 1 / 8) }), maybe(speed, undefined)],
    gives: record({ apart: number(TILT, 0, 1, 1, side), error: atLeast0(TILT), errorInAll: atLeast0(TILT) }), fixed: { speed: RIGID.speed },
  },

  // ---- src/archery/flight
  { fn: unfletched, args: [words(USUAL_ARROW)], gives: word, says: (arrow: object) => 'vanes' in arrow },
  {
    fn: finLift, args: [words(asker), record(finsOf(1 / 16, 5 / 8)), size], speaksAs: 'asker',
    gives: record({ slope: atLeast0(PURE), centre: number(LENGTH, 0, 1, 1) }),
  },
  {
    fn: bodyOf, args: [words(asker), flightArrow], speaksAs: 'asker',
    gives: record({
      mass: atLeast0(MASS), inertia: atLeast0({ mass: 1, length: 2 }), toTip: number(LENGTH, 0, 1, 1), toNock: number(LENGTH, 0, 1, 1), diameter: atLeast0(LENGTH),
      section: atLeast0(AREA), drag: atLeast0(PURE), slope: atLeast0(PURE), lever: number(LENGTH, 0, 1, 1), damping: atLeast0(AREA),
      strips: list(number(LENGTH, 0, 1, 1), 0, 99, 'in order'), strip: atLeast0(LENGTH),
    }),
  },
  { fn: checkWorld, args: [words(asker), world], gives: word, speaksAs: 'asker' },
  {
    fn: changeOf, args: [words(bodyOf(asker, USUAL_ARROW)), words(USUAL_WORLD)], gives: list(number(PURE, 0, 1, 1), 10, 10, 'in order'),
    says: (change: (now: Motion) => Motion) => {
      const { x, speed: slower, side: one, height: other } = change(ASKEW);
      return [x, slower, ...Object.values(one), ...Object.values(other)];
    },
  },
  { fn: flyThrough, args: [words(asker), anyShot, flightDistance, world], gives: record({ point: passageFound, nock: passageFound }), speaksAs: 'asker', ...falls },
  { fn: tearAt, args: [anyShot, flightDistance, maybe(world, undefined)], gives: point, ...falls },
  { fn: impactAt, args: [anyShot, flightDistance, maybe(world, undefined)], gives: passageFound, ...falls },
  { fn: sightIn, args: [record(shot), flightDistance, maybe(world, undefined)], gives: number(TILT, 0, 1, 1), ...falls },
  {
    fn: swingOf, args: [flightArrow, maybe(world, undefined)], fixed: FLOWN,
    gives: record({
      margin: number(LENGTH, 0, 1, 1),
      swings: maybe(record({ wavelength: atLeast0({ paper: 1 }), decay: atLeast0({ paper: 1 }), damping: atLeast0(PURE) }), null),
    }),
  },
  {
    fn: fromPoint, args: [number({ paper: 1 }, 5, 60, 0.5), number(LENGTH, 24, 32, 1 / 8), maybe(number(LENGTH, 5, 8, 1 / 4), undefined)],
    gives: atLeast0({ paper: 1 }),
    fixed: { paper: 'feet and inches are taken together', length: 'feet and inches are taken together' },
  },

  // ---- src/archery: shots
  { fn: shotGuards.checkPoint, args: [words(asker), point, words('a tear')], gives: word, speaksAs: 'asker' },
  { fn: shotGuards.checkPoints, args: [words(asker), shots(0), words('a tear')], gives: word, speaksAs: 'asker' },
  { fn: shotGuards.checkSpread, args: [words(asker), spreadOf], gives: word, speaksAs: 'asker' },
  { fn: shotGuards.checkPrior, args: [words(asker), priorOf], gives: word, speaksAs: 'asker' },
  { fn: arrowRules.tooManyOdd, args: [whole, whole], arrange: rising(0, 1), gives: word },
  { fn: arrowRules.blame, args: [shots(0, 5), shots(0, 4), point, spreadOf], gives: word, fixed: { length: 'a quarter of an inch is built in' } },
  {
    fn: screenArrows, args: [list(record({ arrow: words('1', '2', '3', '4'), shots: shots(1, 4) }), 1, 5), priorOf], fixed: INCHES,
    gives: record({
      typical: point, spread: spreadFound, betweenSd: atLeast0(LENGTH),
      arrows: list(record({ arrow: word, mean: point, count: atLeast0(PURE), away: atLeast0(LENGTH), effect: point, odd: word, atLeast: number(LENGTH, 0, 1, 1) }), 0, 9),
    }),
    inNoOrder: ({ arrows, ...rest }: { arrows: readonly unknown[] }) => ({ ...rest, arrows: arrows.toSorted((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1)) }),
  },
  {
    fn: consistency.pairLimits, args: [number(PURE, 3, 12, 1), number(PURE, 2, 40, 0.5, known)],
    gives: record({ pair95: atLeast0(PURE), pair99: atLeast0(PURE), oddOut95: atLeast0(PURE), oddOut99: atLeast0(PURE) }),
  },
  {
    fn: consistency.judgeConsistency, args: [shots(0, 13), record({ sd, df: number(PURE, 2, 40, 0.5, known) }), words(3, 4, undefined)],
    gives: record({ kind: word, pair: atLeast0(LENGTH), limit: atLeast0(LENGTH), odd: point }),
    says: ({ odd, ...rest }: { odd: number | null }, all: readonly unknown[]) => ({ ...rest, odd: odd === null ? null : all[odd] }),
  },
  { fn: consistency.changesDirection, args: [shots(0), spreadOf], gives: word, fixed: { length: 'half an inch is built in' } },
  {
    fn: widest, args: [shots(0, 7)], gives: record({ pair: atLeast0(LENGTH), oddOut: atLeast0(LENGTH), odd: point }),
    says: ({ odd, ...rest }: { odd: number | null }, all: readonly unknown[]) => ({ ...rest, odd: odd === null ? null : all[odd] }),
  },
  { fn: squaresAround, args: [shots(0)], gives: record({ squares: atLeast0(AREA), df: atLeast0(PURE) }) },
  { fn: spread.pooledSpread, args: [list(shots(0, 4), 0, 4), maybe(priorOf, undefined)], gives: spreadFound, fixed: INCHES },
  { fn: spread.pooledOf, args: [list(list(tear, 1, 5), 0, 4), priorOf, number(LENGTH, 1 / 64, 1 / 4, 1 / 64)], gives: spreadFound },
  { fn: spread.carriedPrior, args: [spreadOf], gives: spreadFound, fixed: INCHES },
  { fn: impactAngle.milliradians, args: [tear, distance], gives: number(ANGLE, 0, 1, 1, side) },
  { fn: impactAngle.inchesAt, args: [number(ANGLE, -4, 4, 1 / 8, side), distance], gives: tear },
  {
    fn: impactAngle.margin, args: [sd, distance], gives: atLeast0(LENGTH), fixed: { length: '1 mrad is the least', far: '1 mrad is the least' },
    together: [{ length: 1, far: 1 }],
  },
  { fn: impactAngle.dragShare, args: [number(FAR, 0, 90, 5)], gives: number(LENGTH, 0, 1, 1), fixed: { far: 'what blades brake is reckoned for one arrow' } },
  { fn: oneWay.betweenVariance, args: [list(list(groupCentre, 0, 5), 0, 2), number(AREA, 1 / 64, 1, 1 / 64)], gives: atLeast0(AREA) },
  { fn: oneWay.shrinkFactor, args: [number(AREA, 0, 4, 1 / 16), number(AREA, 1 / 64, 1, 1 / 64), count], gives: chance },
  {
    fn: oneWay.oneWay, args: [list(list(list(tear, 0, 4), 0, 4), 0, 2)],
    gives: record({ within: atLeast0(AREA), withinDf: atLeast0(PURE), between: atLeast0(AREA), f: atLeast0(PURE), p: chance }),
  },
  { fn: scatters, args: [list(twoGroupsOf, 0, 3)], gives: word, fixed: { length: 'what is told to a quarter of an inch is no closer than that' } },
  { fn: twoGroups.difference, args: [twoGroupsOf, sd], gives: record({ mean: point, count: record({ x: atLeast0(PURE), y: atLeast0(PURE) }) }) },
  { fn: twoGroups.pairSpread, args: [list(twoGroupsOf, 0, 3), priorOf], gives: spreadFound, fixed: INCHES },
  { fn: twoGroups.judgeDifference, args: [tear, count, spreadOf, tear, size], gives: record({ verdict: word, within: chance, beyond: chance }) },
  { fn: twoGroups.largestNotExcluded, args: [tear, count, spreadOf, tear], gives: atLeast0(LENGTH) },
  {
    fn: plumbLine.fitPlumb, arrange: twoDistances, args: [plumbPoints, angleSpread],
    gives: record({ slope: number(ANGLE, 0, 1, 1, side), se: atLeast0(ANGLE), mean: number(LENGTH, 0, 1, 1, side), meanSe: atLeast0(LENGTH) }),
    says: ({ slope, se, at }: plumbLine.PlumbFit, points: readonly plumbLine.PlumbPoint[]) => {
      const { mean, se: meanSe } = at(1.5 * Math.max(...points.map((p) => p.distance)));
      return { slope, se, mean, meanSe };
    },
  },
  {
    fn: plumbLine.judgePlumb, arrange: twoDistances, args: [plumbPoints, angleSpread, size],
    gives: record({ verdict: word, drift: number(LENGTH, 0, 1, 1, side), within: chance, beyond: chance }),
  },
  {
    fn: plumbLine.judgePlumb, arrange: twoDistances, args: [plumbPoints, angleSpread],
    gives: record({ verdict: word, drift: number(LENGTH, 0, 1, 1, side), within: chance, beyond: chance }),
    fixed: { length: '1 mrad is the least margin', far: '1 mrad is the least margin' }, together: [{ length: 1, far: 1 }],
  },
  { fn: plumbLine.bends, args: [plumbPoints, angleSpread], gives: word },
  {
    fn: plumbLine.plumbSpread,
    args: [
      list(record({ distance, x: number(LENGTH, -4, 4, 1 / 8, side), set: maybe(number(PURE, 1, 2, 1), undefined) }), 0, 9),
      record({ sd: number(ANGLE, 1 / 4, 4, 1 / 4), df: dfBefore }),
    ],
    gives: record({ sd: atLeast0(ANGLE), df: atLeast0(PURE) }),
    fixed: { length: '0.07 mrad is the least spread', far: '0.07 mrad is the least spread' }, together: [{ length: 1, far: 1 }],
  },
  {
    fn: nockTurn.predictTurns, args: [point, point, number(PURE, 1, 6, 1)], gives: list(point, 1, 6, 'in order'),
    // In a mirror the shaft is turned the other way.
    reflects: { outcome: ([found, ...others]: readonly unknown[]) => [found, ...others.toReversed()] },
  },
  {
    fn: nockTurn.nextTurn,
    args: [list(point, 1, 5, 'in order'), list(number(PURE, 0, 4, 1, anyNumber('no turn has that number: none is left out for it')), 0, 3), point],
    gives: word,
  },
  {
    fn: nockTurn.judgeTurn,
    args: [record({ predicted: point, shots: shots(1, 4), before: point, countBefore: count, target: point, spread: spreadOf, limit: size })],
    gives: word,
  },
  {
    fn: nockTurn.bestTurn, args: [list(record({ turn: number(PURE, 0, 5, 1), shots: shots(1, 4) }), 1, 4), point, spreadOf], gives: word,
  },
  {
    fn: setIndex.indexSet, arrange: namedApart,
    args: [
      list(record({ arrow: words('a'), effect: point, unsure: number(LENGTH, 0, 1, 1 / 16), ways: number(PURE, 1, 4, 1) }), 2, 4),
      record({ tear: point, unsure: number(LENGTH, 0, 1, 1 / 16) }),
    ],
    gives: record({
      turns: list(record({ arrow: word, by: number(PURE, 0, 1, 1, { turns: 'either' }), round: word }), 0, 9),
      common: point, before: atLeast0(LENGTH), after: atLeast0(LENGTH),
    }),
    inNoOrder: ({ turns, ...rest }: setIndex.SetIndex) => ({ ...rest, turns: turns.toSorted((a, b) => (a.arrow < b.arrow ? -1 : 1)) }),
    // As far as it is turned clockwise or the other way; half round is neither.
    says: ({ turns, ...rest }: setIndex.SetIndex, arrows: readonly setIndex.ArrowToIndex[]) => ({
      ...rest,
      turns: turns.map(({ arrow, turn }, i) => {
        const ways = arrows[i]?.ways ?? 1;
        return { arrow, by: 2 * turn === ways ? 0 : 2 * turn > ways ? turn - ways : turn, round: 2 * turn === ways };
      }),
    }),
  },
  {
    fn: thirdRoundTells, args: [list(record({ arrow: words('1', '2', '3', '4'), shots: shots(1, 4) }), 1, 5), priorOf], fixed: INCHES, gives: word,
  },
  {
    fn: judgeDrift, args: [list(list(record({ at: number(PURE, 0, 36, 1), tear: point }), 0, 4), 0, 5)], gives: record({ size: atLeast0(LENGTH), drifts: word }),
    fixed: { length: 'nobody shoots closer than 0.03 in' },
  },
  {
    fn: setIndex.worthTurning, args: [record({ before: number(LENGTH, 0, 1, 1 / 64), after: number(LENGTH, 0, 1, 1 / 64) })], gives: word,
    fixed: { length: 'a scatter below 1/16 in cannot be read' },
  },
  {
    fn: setIndex.staysTurned, args: [list(record({ stood: point, foretold: point, seen: point }), 1, 5), record({ before: size, after: size })], gives: word,
  },
  { fn: setRead.trulyDiffer, args: [list(record({ arrow: words('1', '2', '3', '4'), shots: shots(1, 4) }), 0, 5)], gives: word },
  {
    fn: setRead.indexRead, args: [record({ typical: point, spread: spreadOf, betweenSd: size, arrows: list(record({ effect: point, count }), 0, 5) }), number(PURE, 1, 6, 1)],
    arrange: ([set, ways]) => [isSet(set) ? { ...set, arrows: set.arrows.map((one, i) => ({ ...one, arrow: `${i}` })) } : set, ways],
    gives: record({ before: atLeast0(LENGTH), after: atLeast0(LENGTH) }), says: ({ before, after }: setIndex.SetIndex) => ({ before, after }),
  },
  {
    fn: tolerance.chanceWithin,
    args: [tear, sd, df, number(LENGTH, -2, 2, 1 / 16, bothEnds('open on that side')), number(LENGTH, -2, 2, 1 / 16, bothEnds('open on that side'))],
    arrange: rising(3, 4), gives: chance,
    reflects: { args: (mean: number, se: number, n: number, low: number, high: number) => [-mean, se, n, -high, -low] },
  },
  {
    fn: tolerance.chanceAbove, args: [tear, sd, df, number(LENGTH, -2, 2, 1 / 16, { ...side, ...bothEnds('open on that side') })], gives: chance,
    reflects: { fn: tolerance.chanceBelow },
  },
  {
    fn: tolerance.chanceBelow, args: [tear, sd, df, number(LENGTH, -2, 2, 1 / 16, { ...side, ...bothEnds('open on that side') })], gives: chance,
    reflects: { fn: tolerance.chanceAbove },
  },
  {
    fn: response.fitLine, args: [list(settingPoint, 0, 6), sd, slopeBelief, number(PURE, 0, 2, 1)], gives: lineFound,
    fixed: { length: 'tears of up to a few inches are expected beforehand' },
  },
  { fn: response.checkSettings, args: [words(asker), list(settingPoint, 0, 6)], gives: word, speaksAs: 'asker' },
  { fn: response.predict, args: [line, setting], gives: record({ mean: tear, sd: atLeast0(LENGTH) }) },
  { fn: response.bestSetting, args: [line, maybe(tear, undefined)], gives: number(KNOB, 0, 1, 1) },
  { fn: response.chanceWorse, args: [line, setting, setting, maybe(tear, undefined)], gives: chance },
  { fn: response.chanceWrongSign, args: [line, number(PURE, 0, 1, 1, { ...side, among: [-1, 1] })], gives: chance },
  {
    fn: response.chanceNotReachable, args: [line, setting, setting, tear, tear, df], gives: chance, arrange: rising(3, 4),
    reflects: {
      args: ({ intercept, slope, ...rest }: response.Line, lo: number, hi: number, low: number, high: number, n: number) =>
        [{ ...rest, intercept: turned(intercept), slope: turned(slope) }, lo, hi, turned(high), turned(low), n],
    },
  },
  {
    fn: response.priorFromBook, args: [number(SLOPE, 1 / 32, 1, 1 / 32, side), number(PURE, 1 / 64, 31 / 64, 1 / 64)],
    gives: record({ mean: number(SLOPE, 0, 1, 1, side), sd: atLeast0(SLOPE) }),
  },
  {
    fn: worse.chanceTrulyWorse,
    args: [list(settingPoint, 0, 6), number(PURE, 0, 2, 1), spreadOf, list(record({ share: number(PURE, 1 / 64, 1, 1 / 64), slope: maybe(record({ mean: number(SLOPE, -1, 1, 1 / 32, side), sd: number(SLOPE, 1 / 32, 1, 1 / 32) }), null) }), 1, 4), setting, setting, maybe(tear, undefined)],
    gives: chance,
    fixed: { length: 'tears of up to a few inches are expected beforehand' },
  },
  { fn: before.checkAnswers, args: [words(asker), waysToAnswer], gives: word, speaksAs: 'asker' },
  {
    fn: before.bowsBefore, args: [waysToAnswer, spreadOf],
    gives: record({ gains: list(number(SLOPE, -1, 1, 1, side), 1, 69, 'in order'), sds: list(atLeast0(LENGTH), 9, 9, 'in order'), shares: list(chance, 9, 621, 'in order') }),
    fixed: { length: 'nobody reads a tear closer than to so many inches' },
  },
  {
    fn: bowsLeft, args: [words(asker), waysToAnswer, spreadOf, tearsRead], speaksAs: 'asker', slow: 4,
    // Its tears and gains are those of one of two mirrored bows; what it comes to is asked of bowsThatFit.
    says: ({ chances, spreads, sds }: ReturnType<typeof bowsLeft>) => ({ all: chances.reduce((a, b) => a + b, 0), one: spreads.reduce((a, b) => a + b, 0), sds }),
    gives: record({ all: number(PURE, 1, 1, 1), one: number(PURE, 1, 1, 1), sds: list(atLeast0(LENGTH), 9, 9, 'in order') }),
    fixed: { length: 'nobody reads a tear closer than to so many inches' },
  },
  {
    fn: bowsThatFit, args: [waysToAnswer, spreadOf, tearsRead], slow: 4,
    // What it is asked: at two settings, by tolerances that a mirror leaves alone.
    says: (belief: ReturnType<typeof bowsThatFit>) => ({
      within: belief.within(1, -1 / 4, 1 / 4), further: belief.further(2, 0, 0, 1 / 8), outOfReach: belief.outOfReach(-8, 8, -1 / 4, 1 / 4),
      alone: belief.withinAlone(0, 3, -1 / 4, 1 / 4), otherSide: belief.otherSide, sd: belief.sd, line: belief.line,
    }),
    gives: record({ within: chance, further: chance, outOfReach: chance, alone: chance, otherSide: chance, sd: atLeast0(LENGTH), line: lineFound }),
    fixed: { length: 'nobody reads a tear closer than to so many inches', knob: 'it is asked of certain settings' },
  },
  {
    fn: dead.mayBeDead, args: [record({ mean: number(SLOPE, -8, 8, 1 / 32, side), sd: number(SLOPE, 1 / 32, 8, 1 / 32) }), number(PURE, 0, 63 / 64, 1 / 64)],
    gives: record({ mean: number(SLOPE, -8, 8, 1, side), sd: atLeast0(SLOPE) }),
  },
];

/** The same for an outcome whatever the order in which its fields were made. */
function keyOf(one: unknown): string {
  return JSON.stringify(one);
}
