// How stiff a shaft acts against how it acts now, once it is cut, carries another point, or the limb bolts are turned. A side and a
// rough size, never a choice of shaft: for that the shaft maker's chart stands. The size is a share of one step of such a chart.
//
// Two opinions go into each range. From memory (common practice, soft): an inch of length is up to half a step; 25 gr of point are like
// 3 to 5 lb of draw weight; a full turn of both bolts is 2 to 4 lb; 5 lb are a step.
// Derived: the deflections .500, .400, .340, .300, .250 that shafts are sold with (from memory) differ by 13 to 22 in 100 of stiffness from one to the next.
// A shaft that is pushed yields like a column, whose stiffness goes with the square of the length, and one that is bent like a beam, with the cube: an inch
// off 28 is 0.3 to 0.9 of a step. The push goes with the draw weight, so a step is 7.5 to 13 lb at 60 lb, and with the share of the
// arrow's mass ahead of the middle, so 25 gr of point are like 3 lb.

import { checks } from '../maths/check.ts';
import type { Grains, Inches, Turns } from '../maths/units.ts';

const must = checks('cutShift', 'pointShift', 'boltShift');

export interface Stiffness {
  readonly acts: 'stiffer' | 'weaker';
  /** The least and the most that it may be, in steps of a shaft maker's chart; both above 0. */
  readonly steps: { readonly low: number; readonly high: number };
}

/** A step as the logarithm of a deflection: from .340 to .300, and from .500 to .400. */
const STEP = { low: Math.log(0.34 / 0.3), high: Math.log(0.5 / 0.4) } as const;
/** Of the length in its stiffness: a column, and a beam. */
const POWER = { low: 2, high: 3 } as const;
/** A step as draw weight: from memory, and derived. */
const STEP_POUNDS = { low: 5, high: 10 } as const;
const POUNDS_A_GRAIN = { low: 3 / 25, high: 5 / 25 } as const;
/** Of draw weight, for a full turn of both bolts. */
export const POUNDS_A_TURN = { low: 2, high: 4 } as const;

/** A shaft of `length` inches that is cut by `cut` inches acts stiffer. Throws RangeError unless both are above 0 and something is left. */
// Example: cutShift(28, 1) is { acts: 'stiffer', steps: { low: 0.33, high: 0.87 } }.
export function cutShift(length: Inches, cut: Inches): Stiffness {
  must.cutShift.size(length, "the shaft's length");
  must.cutShift.size(cut, 'the cut');
  if (cut >= length) throw must.cutShift.error(`the cut is ${cut} in of a shaft of ${length} in; nothing would be left`);
  const shorter = Math.log(length / (length - cut));
  return { acts: 'stiffer', steps: { low: (POWER.low * shorter) / STEP.high, high: (POWER.high * shorter) / STEP.low } };
}

/** With a point, head or insert heavier by `heavier` grains a shaft acts weaker, with a lighter one (below 0) stiffer; null where nothing changes.
 *  Throws RangeError unless finite. */
// Example: pointShift(25) is { acts: 'weaker', steps: { low: 0.3, high: 1.0 } }.
export function pointShift(heavier: Grains): Stiffness | null {
  must.pointShift.measure(heavier, 'the change of the point');
  return likeDrawWeight(heavier, POUNDS_A_GRAIN);
}

/** With both limb bolts turned in by `inward` turns each a shaft acts weaker, for the bow pushes harder; turned out (below 0) stiffer; null where
 *  nothing changes. Throws RangeError unless finite. */
// Example: boltShift(-0.5) is { acts: 'stiffer', steps: { low: 0.1, high: 0.4 } }.
export function boltShift(inward: Turns): Stiffness | null {
  must.boltShift.measure(inward, 'the turn of both bolts');
  return likeDrawWeight(inward, POUNDS_A_TURN);
}

function likeDrawWeight(change: number, pounds: { readonly low: number; readonly high: number }): Stiffness | null {
  if (change === 0) return null;
  const size = Math.abs(change);
  return { acts: change > 0 ? 'weaker' : 'stiffer', steps: { low: (size * pounds.low) / STEP_POUNDS.high, high: (size * pounds.high) / STEP_POUNDS.low } };
}
