// How an arrow straightens itself: it swings about its way like a pendulum, over a distance that is its own whatever its speed, and less each time.
// Source: derived, for small slants: a spring (lift at the fins), its damping, and the way that gives with each push. The shaft's own drag across
// is left out, for it vanishes with the slant.

import { checks } from '../../maths/check.ts';
import { FOOT, INCH } from '../../maths/exact.ts';
import { feet, inches, type Feet, type Inches } from '../../maths/units.ts';
import type { FlightArrow } from './arrow.ts';
import { bodyOf } from './body.ts';
import { checkWorld, USUAL_WORLD, type World } from './world.ts';

const must = checks('swingOf');

export interface Swing {
  /** How far behind the balance point all that pushes across acts, in: below 0 the arrow would rather fly nock first. */
  readonly margin: Inches;
  /** How far it flies on one full swing, and until a swing has fallen to 1/e; its damping, where 1 just stops all swinging. null where nothing turns it back. */
  readonly swings: { readonly wavelength: Feet; readonly decay: Feet; readonly damping: number } | null;
}

/** Of a small swing. Throws RangeError on figures that cannot be meant. */
// Example: swingOf({ length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, vanes: { count: 3, each: 7, height: 0.5, chord: 2, tip: 1, sweep: 1, ahead: 1,
// drag: 0.7 }, head: { nose: 0.35, drag: 0 } }) is { margin: 12.777, swings: { wavelength: 65.48, decay: 111.92, damping: 0.0928 } };
// swingOf({ length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, head: { nose: 0.35, drag: 0 } }).swings is null.
export function swingOf(arrow: FlightArrow, world: World = USUAL_WORLD): Swing {
  checkWorld(must.swingOf, world);
  const { mass, inertia, section, drag, slope, lever, damping } = bodyOf(must.swingOf, arrow);
  const margin = inches(lever / slope / INCH);
  // By metres of way, not seconds, so that the speed falls out.
  const air = (world.density * section) / 2;
  const spring = (air * lever) / inertia;
  const giving = (air * (slope - drag)) / mass;
  const braking = (air * damping) / inertia;
  const fading = (braking + giving) / 2;
  const stiffness = spring + braking * giving;
  if (!(spring > 0 && stiffness > 0 && fading > 0)) return { margin, swings: null };
  const wavelength = feet((2 * Math.PI) / Math.sqrt(spring) / FOOT);
  return { margin, swings: { wavelength, decay: feet(1 / fading / FOOT), damping: fading / Math.sqrt(stiffness) } };
}
