// The invented bows of the bench, and the worlds that they live in: one adjustment of unknown response. All of it is assumed; the worlds beside the
// nominal one are there to see what breaks where the assumptions are wrong. Never evidence about real bows.
//
// Tears in inches on one axis; an adjustment in whole steps from where the bow was found: tear = bend(start + response * setting).

import { seededRandom } from '../../../src/maths/random.ts';

export interface World {
  readonly about: string;
  /** Of a response, as a share of the book's: median, and spread of its logarithm. */
  readonly median: number; readonly logSd: number;
  readonly wrongSide: number; readonly dead: number;
  /** Spread of a shot as a share of the usual; shots that stray fourfold. */
  readonly noise: number; readonly strays: number;
  /** How far a setting is off from what was told, steps (standard deviation). */
  readonly settingError: number;
  /** What becomes of a tear that would be a straight line. */
  readonly bend: (tear: number) => number;
  /** What the book says of one step, inches; steps of travel each way; inches of travel of one step. */
  readonly book: number; readonly reach: number; readonly stepInches: number;
}

const straight = (tear: number): number => tear;

/** 3/16 in of tear for 1/32 in, in steps of 1/64 in, 3/8 in each way. */
const NOMINAL: World = {
  about: 'as assumed', median: 1, logSd: 0.55, wrongSide: 0.05, dead: 0.05, noise: 1, strays: 0.05, settingError: 0,
  bend: straight, book: 3 / 32, reach: 24, stepInches: 1 / 64,
};

/** Responses whose highest tenth is ten times the lowest: log(10) over the distance between the two in standard deviations. */
const TENFOLD = Math.log(10) / (2 * 1.281552);

export const WORLDS = {
  'nominal': NOMINAL,
  'noise-1.75': { ...NOMINAL, about: 'shots spread 1.75 times as wide', noise: 1.75 },
  'gains-2.5': { ...NOMINAL, about: 'responses 2.5 times the book', median: 2.5 },
  'gains-0.4': { ...NOMINAL, about: 'responses 0.4 times the book', median: 0.4 },
  'gain-spread': { ...NOMINAL, about: 'responses spread tenfold', logSd: TENFOLD },
  'wrong-sign': { ...NOMINAL, about: 'a quarter answers to the other side', wrongSide: 0.25 },
  'dead': { ...NOMINAL, about: 'a quarter does not answer', dead: 0.25 },
  'fliers': { ...NOMINAL, about: '15 of 100 shots stray', strays: 0.15 },
  'setting-error': { ...NOMINAL, about: 'settings are off by 0.7 of a step', settingError: 0.7 },
  'flat': { ...NOMINAL, about: 'a response that is flat near the optimum', bend: flat },
  'saturating': { ...NOMINAL, about: 'a tear that grows ever less', bend: saturating },
  'coarse': { ...NOMINAL, about: '1/4 in of tear a step, six steps each way', book: 1 / 4, reach: 6, stepInches: 1 / 16 },
} as const satisfies Readonly<Record<string, World>>;

export type WorldName = keyof typeof WORLDS;

/** Half as steep within this of the optimum, inches. */
const FLAT_WITHIN = 1 / 4;
function flat(tear: number): number {
  const size = Math.abs(tear);
  return Math.sign(tear) * (size < FLAT_WITHIN ? size / 2 : size - FLAT_WITHIN / 2);
}

/** No tear is larger than this, inches. */
const LARGEST_TEAR = 1;
function saturating(tear: number): number {
  return LARGEST_TEAR * Math.tanh(tear / LARGEST_TEAR);
}

export interface KnobBow {
  /** The tear as found, before it is bent; what one step changes of it; spread of one shot, inches. */
  readonly start: number; readonly response: number; readonly sd: number;
  /** Of its luck: the same shots for every rule. */
  readonly seed: number;
}

const [SMALLEST_TEAR, LARGEST_START] = [0.4, 1.75];
const USUAL_SD = { median: 0.2, logSd: 0.3 };
/** More bows than anybody asks for of one seed. */
const APART = 1_000_003;

/** The bow of this number: as many draws for each, so that worlds differ in what they change alone. */
export function knobBow(world: World, seed: number, number: number): KnobBow {
  const random = seededRandom(APART * seed + number);
  const side = random.uniform() < 0.5 ? -1 : 1;
  const start = side * (SMALLEST_TEAR + (LARGEST_START - SMALLEST_TEAR) * random.uniform());
  const kind = random.uniform();
  const size = world.book * world.median * Math.exp(world.logSd * random.normal());
  const response = kind < world.dead ? 0 : kind < world.dead + world.wrongSide ? -size : size;
  const sd = world.noise * USUAL_SD.median * Math.exp(USUAL_SD.logSd * random.normal());
  return { start, response, sd, seed: APART * seed + number };
}

/** Tuned is so far from where the tear is wanted: both inches. */
export interface Wanted { readonly aim: number; readonly within: number }

/** Could this adjustment do it at all? */
export function isFixable(world: World, bow: KnobBow, { aim, within }: Wanted): boolean {
  for (let x = -world.reach; x <= world.reach; x++) {
    if (Math.abs(world.bend(bow.start + bow.response * x) - aim) <= within) return true;
  }
  return false;
}
