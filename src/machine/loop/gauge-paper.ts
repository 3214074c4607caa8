// Paper close to the bow: the tear is tail minus point, and zero is wanted.

import { pooledSpread, USUAL_PRIOR, type Spread } from '../../archery/spread.ts';
import type { State } from '../state.ts';
import { carriedSpread } from './carried.ts';
import { centreOf } from './centre.ts';
import type { Gauge } from './gauge-shape.ts';
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

export const paperGauge = (state: State): Gauge => ({
  of: 'paper',
  axes: ['height', 'side'],
  first: 3, again: 2, most: MOST_SHOTS, enough: 2,
  sure: SURE, near: NEAR, far: FAR, cheap: CHEAP_SHOTS,
  next: (taken) => taken + 1,
  count: (shots) => shots.length,
  whole: () => true,
  read: (shots, sd) => (shots.length === 0 ? null : centreOf(shots, sd)),
  // Moves are decided at the first distance alone.
  comparable: (set) => (set.distance === FIRST_DISTANCE ? goodShots(set) : []),
  spread: (sets) => paperSpread(state, sets.map(goodShots)),
  tolerance: (axis) => TOLERANCE[axis],
  perTear: { ratio: 1, unsure: 0, wrongSide: 1 / 2 },
});

export const paperSpread = (state: State, groups: readonly (readonly { readonly x: number; readonly y: number }[])[]): Spread =>
  pooledSpread(groups.filter((shots) => shots.length > 0), carriedSpread(state) ?? USUAL_PRIOR);
