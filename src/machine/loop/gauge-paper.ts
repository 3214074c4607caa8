// Paper close to the bow: the tear is tail minus point, and zero is wanted.

import type { Feet } from '../../maths/units.ts';
import { pooledSpread, USUAL_PRIOR, type Spread } from '../../archery/spread.ts';
import { chanceWithin } from '../../archery/tolerance.ts';
import type { Axis } from '../../content/types.ts';
import type { State } from '../state.ts';
import { carriedSpread } from './carried.ts';
import { centreOf } from './centre.ts';
import type { Gauge, Judged } from './gauge-shape.ts';
import { FIRST_DISTANCE, goodShots } from './sets.ts';

/** "Tuned" per axis, inches. Gravity alone reads a little low, and a little high is safe for the vanes. */
export const TOLERANCE = {
  height: { low: -1 / 8, high: 1 / 4, aim: 1 / 16 },
  side: { low: -1 / 4, high: 1 / 4, aim: 0 },
} as const;

export const SURE = 0.95;
export const NEAR = 0.45;
const FAR = 0.1;
const CHEAP_SHOTS = 5;
export const MOST_SHOTS = 9;

function judge(axis: Axis, mean: number, se: number, { df }: Spread, shots: number): Judged {
  const { low, high } = TOLERANCE[axis];
  const within = chanceWithin(mean, se, df, low, high);
  const more = (within >= NEAR && shots < MOST_SHOTS) || (within > FAR && shots < CHEAP_SHOTS);
  return { within, says: within >= SURE ? 'in' : more ? 'more' : within >= NEAR ? 'open' : 'out' };
}

export function paperGauge(state: State, distance: Feet): Gauge {
  const prior = carriedSpread(state) ?? USUAL_PRIOR;
  return {
    of: 'paper', distance, prior,
    axes: ['height', 'side'],
    first: 3, again: 2, most: MOST_SHOTS, enough: 2,
    doubtful: 6, judge,
    next: (taken) => taken + 1,
    count: (shots) => shots.length,
    whole: () => true,
    read: (shots, sd) => (shots.length === 0 ? null : centreOf(shots, sd)),
    // Moves are decided at the first distance alone.
    comparable: (set) => (set.distance === FIRST_DISTANCE ? goodShots(set) : []),
    spread: (sets) => pooledSpread(sets.map(goodShots).filter((shots) => shots.length > 0), prior),
    tolerance: (axis) => TOLERANCE[axis],
    perTear: { ratio: 1, unsure: 0, wrongSide: 1 / 2 },
  };
}
