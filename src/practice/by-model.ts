// The exact flight of the practice bow: every arrow flown by the rigid-arrow model, step by step, with all that its table leaves out: how far aside a large
// push really goes, and how the two axes meet. A tear takes a tenth of a millisecond, an impact one or two.

import { FIXED_BLADES, MECHANICAL, unfletched, USUAL_ARROW, type FlightArrow } from '../archery/flight/arrow.ts';
import { fromPoint } from '../archery/flight/from-hand.ts';
import { impactAt } from '../archery/flight/impact.ts';
import { sightIn } from '../archery/flight/sight-in.ts';
import { tearAt } from '../archery/flight/tear.ts';
import { feetIn, type Degrees, type Fps, type Yards } from '../maths/units.ts';
import type { Flight, Flying } from './flight.ts';

const ARROWS: Readonly<Record<Flying, FlightArrow>> = {
  field: USUAL_ARROW, fixed: { ...USUAL_ARROW, head: FIXED_BLADES }, mechanical: { ...USUAL_ARROW, head: MECHANICAL }, unfletched: unfletched(USUAL_ARROW),
};

/** The rigid arrow itself. Throws RangeError where the model cannot fly it. */
// Example: byModel().tear(STRAIGHT, fps(280), feet(8.8)) is { x: 0, y: -0.085 }.
export function byModel(): Flight {
  // The sight is set once for each distance: worked out when it is first asked for.
  const sights = new Map<string, Degrees>();
  const sightFor = (speed: Fps, distance: Yards): Degrees => {
    const name = `${speed} ${distance}`;
    const set = sights.get(name) ?? sightIn({ arrow: USUAL_ARROW, speed }, fromHand(distance));
    sights.set(name, set);
    return set;
  };
  return {
    tear: (departure, speed, distance) => tearAt({ arrow: USUAL_ARROW, speed, ...departure }, fromPoint(distance, USUAL_ARROW.length)),
    impact: (departure, flying, speed, sighted, distance) => {
      const { x, y } = impactAt({ arrow: ARROWS[flying], speed, elevation: sightFor(sighted, distance), ...departure }, fromHand(distance));
      return { x, y };
    },
  };
}

const fromHand = (distance: Yards) => fromPoint(feetIn(distance), USUAL_ARROW.length);
