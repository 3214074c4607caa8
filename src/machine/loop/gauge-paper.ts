// Paper close to the bow: the tear is tail minus point, and zero is wanted.

import type { Feet } from '../../maths/units.ts';
import { pooledSpread, USUAL_PRIOR } from '../../archery/spread.ts';
import type { State } from '../state.ts';
import { carriedSpread } from './carried.ts';
import { centreOf } from './centre.ts';
import type { Gauge, Judged } from './gauge-shape.ts';
import { FIRST_DISTANCE, goodShots } from './sets.ts';

export const SURE = 0.95;
export const NEAR = 0.45;
export const MOST_SHOTS = 9;
/** "In tolerance" is said from this chance on; who had shots for a first look and more is let off a little for each one more. */
const [IN_FROM, FIRST_LOOK, LESS_A_SHOT] = [0.97, 4, 0.003];

/** What a chance of being in tolerance comes to after so many shots at this setting. */
export function saysOf(within: number, shots: number): Judged['says'] {
  if (within >= IN_FROM - LESS_A_SHOT * Math.max(0, shots - FIRST_LOOK)) return 'in';
  if (within < NEAR) return 'out';
  return shots < MOST_SHOTS ? 'more' : 'open';
}

export function paperGauge(state: State, distance: Feet): Gauge {
  const prior = carriedSpread(state) ?? USUAL_PRIOR;
  return {
    of: 'paper', distance, prior,
    axes: ['height', 'side'],
    first: 3, again: 2, most: MOST_SHOTS, enough: 2,
    doubtful: 6, impacts: null,
    next: (taken) => taken + 1,
    count: (shots) => shots.length,
    whole: () => true,
    read: (shots, sd) => (shots.length === 0 ? null : centreOf(shots, sd)),
    // Moves are decided at the first distance alone.
    comparable: (set) => (set.distance === FIRST_DISTANCE ? goodShots(set) : []),
    spread: (sets) => pooledSpread(sets.map(goodShots).filter((shots) => shots.length > 0), prior),
    perTear: { ratio: 1, unsure: 0, wrongSide: 1 / 2 },
  };
}
