// Where an arrow strikes, when, and how fast it is by then.

import { checks } from '../../maths/check.ts';
import type { Feet } from '../../maths/units.ts';
import { flyThrough, type Passage, type Shot } from './fly.ts';
import { USUAL_WORLD, type World } from './world.ts';

const must = checks('impactAt');

/**
 * Where the point strikes at `distance` (ft, from the point as it leaves the string), in inches from straight ahead and level, to the right and up above 0;
 * a level shot falls by -y. With it the time (s) and the speed left (fps). Throws RangeError as tearAt does.
 */
// Example: impactAt({ arrow: { length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, head: { nose: 0.35, drag: 0 } }, speed: 280 }, 60)
// is { x: 0, y: -8.878, time: 0.21758, speed: 271.68 }.
export function impactAt(shot: Shot, distance: Feet, world: World = USUAL_WORLD): Passage {
  return flyThrough(must.impactAt, shot, distance, world).point;
}
