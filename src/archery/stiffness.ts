// How stiff a shaft acts, compared with now, once it is cut, carries another point, or the bow is turned up or down. A side and a
// rough size only. Never a choice of shaft: that is the shaft maker's chart.
// Sizes are shares of one step of such a chart. From memory: an inch of length is up to half a step, 25 gr of point are like
// 3 to 5 lb of draw weight, a full turn of both limb bolts is 2 to 4 lb, and 5 lb is about one step.
// Derived, as a second opinion: common steps (.500, .400, .340, .300, .250) are 13 to 22 percent of stiffness each, and 7.5 lb at 50 to 70 lb.

import { mustBeFinite, mustBePositive } from '../maths/check.ts';
import type { Grains, Inches, Turns } from '../maths/units.ts';

export interface Stiffness {
  readonly acts: 'stiffer' | 'weaker';
  /** Least and most, in steps of a shaft maker's chart. */
  readonly steps: { readonly low: number; readonly high: number };
}

const POUNDS_A_STEP = { low: 5, high: 7.5 } as const;
/** Steps of deflection in charts as natural logarithms: ln(.340 / .300) and ln(.500 / .400). */
const STEP = { low: Math.log(0.34 / 0.3), high: Math.log(0.5 / 0.4) } as const;
/** Stiffness goes with length as a column that is pushed (square) to a beam that is bent (cube). */
const POWER = { low: 2, high: 3 } as const;

/**
 * A cut of `cut` inches off a shaft of `length` inches acts stiffer. From memory up to half a step for an inch; derived from a column and a beam
 * 0.3 to 0.9: the wider of the two is given. Throws RangeError unless the cut is above 0 and shorter than the shaft.
 */
export function cutShift(length: Inches, cut: Inches): Stiffness {
  mustBePositive(length, "cutShift: the shaft's length");
  mustBePositive(cut, 'cutShift: the cut');
  if (cut >= length) throw new RangeError(`cutShift: the cut is ${cut} in and the shaft ${length}; the cut is shorter than the shaft`);
  const stiffer = Math.log(length / (length - cut));
  return { acts: 'stiffer', steps: { low: (POWER.low * stiffer) / STEP.high, high: (POWER.high * stiffer) / STEP.low } };
}

const POINT_POUNDS = { low: 3 / 25, high: 5 / 25 } as const;

/** A point (or insert) heavier by `heavier` grains acts weaker, a lighter one (below 0) stiffer; null for no change. Throws RangeError unless finite. */
export function pointShift(heavier: Grains): Stiffness | null {
  mustBeFinite(heavier, 'pointShift: the change of the point');
  return likePounds(heavier, POINT_POUNDS);
}

const BOLT_POUNDS = { low: 2, high: 4 } as const;

/** Both limb bolts turned in by `inward` turns: the shaft acts weaker; out (below 0) stiffer; null for no change. Throws RangeError unless finite. */
export function boltShift(inward: Turns): Stiffness | null {
  mustBeFinite(inward, 'boltShift: the turns');
  return likePounds(inward, BOLT_POUNDS);
}

function likePounds(change: number, pounds: { readonly low: number; readonly high: number }): Stiffness | null {
  if (change === 0) return null;
  const size = Math.abs(change);
  return {
    acts: change > 0 ? 'weaker' : 'stiffer',
    steps: { low: (size * pounds.low) / POUNDS_A_STEP.high, high: (size * pounds.high) / POUNDS_A_STEP.low },
  };
}
