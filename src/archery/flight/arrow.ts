// An arrow as the flight model wants it: what weighs, and what the air gets hold of. It is as long as from its nock's throat to its point.
// The figures of the usual arrow and its heads are typical of hunting arrows, not measured on one.

import { grains, grainsPerInch, inches, type Grains, type Inches } from '../../maths/units.ts';
import type { ArrowParts } from '../arrow-parts.ts';
import type { Fins } from './fins.ts';

/** Vanes, `each` of so many grains, that end `ahead` of the nock's throat. What they brake goes with their area, on the shaft's section. */
export interface Vanes extends Fins { readonly each: Grains; readonly ahead: Inches; readonly drag: number }

/** What is at the front, besides its mass. */
export interface Head {
  /** Its nose pushes across so far behind the tip: at 0.466 of a rounded head's length, at 0.666 of a pointed one's (Barrowman, from memory). */
  readonly nose: Inches;
  /** What it brakes beyond a field point, on the shaft's section. */
  readonly drag: number;
  /** Blades that stand fast and begin `behind` the tip. */
  readonly blades?: Fins & { readonly behind: Inches };
  /** What else pushes across by radian of slant, on the shaft's section, so far behind the tip. */
  readonly lift?: { readonly slope: number; readonly behind: Inches };
}

/** ArrowParts with vanes that have a shape, a diameter and a head. */
export interface FlightArrow extends ArrowParts {
  readonly diameter: Inches;
  /** Of the shaft with a field point and no vanes, on its section. */
  readonly drag: number;
  readonly vanes?: Vanes;
  readonly head: Head;
}

export const FIELD_POINT: Head = { nose: inches(0.35), drag: 0 };
/** Three fixed blades of 1.1 in, 0.44 in out of the shaft. Common practice in size; what they brake is a guess. */
export const FIXED_BLADES: Head = {
  ...FIELD_POINT, drag: 0.7, blades: { count: 3, height: inches(0.44), chord: inches(1.1), tip: inches(0), sweep: inches(1.1), behind: inches(0.217) },
};
/** Blades that lie folded in flight: both figures are guesses. */
export const MECHANICAL: Head = { ...FIELD_POINT, drag: 0.2, lift: { slope: 3, behind: inches(0.5) } };

/**
 * A hunting arrow of 395 gr with 11 percent FOC. Sizes are common practice; where its parts weigh and its vanes end is assumed, to the last digit so that it is
 * the arrow of the tables that it is tested by. It brakes by 2.2 in all: a guess near what was measured on smaller arrows, 1.56 with small vanes and 2.05
 * with large ones (Proceedings 2020, 49(1), 56, doi 10.3390/proceedings2020049056, read).
 */
export const USUAL_ARROW: FlightArrow = {
  length: inches(28.5), diameter: inches(0.246), drag: 1.5, shaft: grainsPerInch(8.6), point: grains(100), insert: grains(20), nock: grains(9),
  vanes: { count: 3, each: grains(7), height: inches(0.48), chord: inches(2.1), tip: inches(0.9), sweep: inches(0.9), ahead: inches(1.045), drag: 0.7 },
  places: { point: inches(-0.6), insert: inches(1.3), nock: inches(0.25), vanes: inches(2.19) },
  head: FIELD_POINT,
};

/** The same shaft with nothing on its tail, as it is shot to see what vanes hide. */
// Example: unfletched({ length: 28, vanes: { count: 3 } }) is { length: 28 }.
export function unfletched(arrow: FlightArrow): FlightArrow {
  const { vanes: _vanes, ...shaft } = arrow;
  return shaft;
}
