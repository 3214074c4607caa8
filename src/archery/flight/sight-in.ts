// How far up a shot must go to strike at the height from which it left: what a sight is set to with the arrow that is sighted in.

import { checks } from '../../maths/check.ts';
import { degrees, type Degrees, type Feet } from '../../maths/units.ts';
import { FLIGHT_LIMITS, flyThrough, type Shot } from './fly.ts';
import { USUAL_WORLD, type World } from './world.ts';

const must = checks('sightIn');

/** in. */
const CLOSE = 1e-9;
/** A flat shot takes three. */
const TRIES = 20;

/**
 * The elevation (degrees) at which this shot strikes level with where it left, at `distance` (ft, from the point as it leaves the string); the shot's own
 * is not looked at. By secants, the first along a straight line. Throws RangeError as tearAt does, and where no flat shot gets there.
 */
// Example: sightIn({ arrow: { length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, head: { nose: 0.35, drag: 0 } }, speed: 280 }, 60) is 0.6969.
export function sightIn(shot: Omit<Shot, 'elevation'>, distance: Feet, world: World = USUAL_WORLD): Degrees {
  const missAt = (elevation: Degrees): number => {
    if (!(Math.abs(elevation) <= FLIGHT_LIMITS.way)) throw must.sightIn.error(`this arrow is too slow for ${distance} ft; give a distance that a flat shot reaches`);
    return flyThrough(must.sightIn, { ...shot, elevation }, distance, world).point.y;
  };
  let [before, missBefore] = [degrees(0), missAt(degrees(0))];
  let now = degrees((-missBefore / (12 * distance) / Math.PI) * 180);
  for (let tries = 0; tries < TRIES; tries++) {
    const miss = missAt(now);
    if (Math.abs(miss) < CLOSE || miss === missBefore) break;
    [before, missBefore, now] = [now, miss, degrees(now - (miss * (now - before)) / (miss - missBefore))];
  }
  return now;
}
