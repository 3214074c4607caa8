// The hole that an arrow leaves in paper: its point goes through first, its nock some 8 ms later and, where it turns or flies askew, elsewhere.

import { checks } from '../../maths/check.ts';
import type { Feet } from '../../maths/units.ts';
import type { Point } from '../shots.ts';
import { flyThrough, type Shot } from './fly.ts';
import { USUAL_WORLD, type World } from './world.ts';

const must = checks('tearAt');

/**
 * The tear (in): where the nock goes through less where the point does, to the right and up above 0. The paper stands at `distance` (ft) from where the
 * point is as the arrow leaves the string. Throws RangeError on figures that cannot be meant, beyond FLIGHT_LIMITS, and of an arrow that turns round.
 */
// Example: tearAt({ arrow: { length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, head: { nose: 0.35, drag: 0 } }, speed: 280,
// side: { angle: 1, rate: 1 } }, 7) is { x: -1.3208, y: -0.0934 }.
export function tearAt(shot: Shot, distance: Feet, world: World = USUAL_WORLD): Point {
  const { point, nock } = flyThrough(must.tearAt, shot, distance, world);
  return { x: nock.x - point.x, y: nock.y - point.y };
}
