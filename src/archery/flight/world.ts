// What an arrow flies through, and in what steps it is reckoned.

import type { Checks } from '../../maths/check.ts';
import { GRAVITY } from '../../maths/exact.ts';

export interface World {
  /** Of the air, kg/m3. */
  readonly density: number;
  /** m/s2. */
  readonly gravity: number;
  /** Drag of a shaft across the air, on its length times its diameter. 0 leaves it out. */
  readonly crossFlow: number;
  /** Seconds from step to step. */
  readonly step: number;
}

/**
 * Air of about 20 degrees C by the sea; the drag of a long cylinder at the speeds at which air crosses a shaft (both from memory). Finer steps change no tear
 * and no impact by 2e-5 in.
 */
export const USUAL_WORLD: World = { density: 1.2, gravity: GRAVITY, crossFlow: 1.1, step: 0.004 };

/** Finer takes long, and coarser misses the swing. */
const STEPS = { finest: 0.0002, coarsest: 0.01 } as const;
const MOST = { density: 10, gravity: 100, crossFlow: 10 } as const;

/** Throws RangeError in the name that `must` carries unless nothing is below 0 or ten times as much as usual, and the step from 0.2 to 10 ms. */
// Example: checkWorld(checks('checkWorld').checkWorld, { density: 1.2, gravity: 9.8, crossFlow: 1.1, step: 1 }) throws
// 'checkWorld: the step is 1; a number from 0.0002 to 0.01 s is needed'.
export function checkWorld(must: Checks, { density, gravity, crossFlow, step }: World): void {
  for (const [what, value, most] of [
    ['the density of the air', density, MOST.density], ['gravity', gravity, MOST.gravity], ['the drag across the shaft', crossFlow, MOST.crossFlow],
  ] as const) {
    if (!(value >= 0 && value <= most)) throw must.error(`${what} is ${value}; a number from 0 to ${most} is needed`);
  }
  if (!(step >= STEPS.finest && step <= STEPS.coarsest)) throw must.error(`the step is ${step}; a number from ${STEPS.finest} to ${STEPS.coarsest} s is needed`);
}
