// How an arrow leaves the bow, on both axes, and what an inch of anything at the bow does to it.
//
// All that pushes an arrow aside (a rest that is off, a bent shaft, a hand that twists) is told in one measure: by how many inches a rest would
// have to stand off to do as much. x is to the right, y up. So an arrow, a cable and a hand can be held against each other.

import type { Point } from '../archery/shots.ts';
import type { Leaving } from '../archery/launch.ts';
import { sum } from '../maths/sum.ts';
import { degrees, radiansPerSecond } from '../maths/units.ts';

/** Inches of rest, x right and y up. */
export type Push = Point;

/** Angle and rate of the nose on each axis, right and up above 0. */
export interface Departure { readonly side: Leaving; readonly height: Leaving }

/**
 * What one inch of rest off its right place does. The angle is that of the string's line over an arrow of 28.5 in (1 / 28.5 rad); the rate is
 * chosen so that both together tear 6 in of paper at 7 ft from the point, which is 3/16 in for 1/32 in (common practice).
 */
export const PER_INCH: Leaving = { angle: degrees(2.01), rate: radiansPerSecond(7.35) };
/** That tear, inches for an inch. */
export const TEAR_PER_INCH = 6;

export const NO_PUSH: Push = { x: 0, y: 0 };
export const STRAIGHT: Departure = { side: { angle: degrees(0), rate: radiansPerSecond(0) }, height: { angle: degrees(0), rate: radiansPerSecond(0) } };

/** All pushes together; in whatever order they are given, and mirrored exactly. */
// Example: together([{ x: 1, y: 0 }, { x: 0, y: 2 }]) is { x: 1, y: 2 }.
export const together = (pushes: readonly Push[]): Push => ({ x: sum(pushes.map(({ x }) => x)), y: sum(pushes.map(({ y }) => y)) });

const leaving = (inches: number): Leaving => ({ angle: degrees(PER_INCH.angle * inches), rate: radiansPerSecond(PER_INCH.rate * inches) });

/** How an arrow leaves under this push. */
// Example: departureOf({ x: 0.1, y: 0 }).side is { angle: 0.201, rate: 0.735 }.
export const departureOf = ({ x, y }: Push): Departure => ({ side: leaving(x), height: leaving(y) });

const added = (all: readonly Leaving[]): Leaving =>
  ({ angle: degrees(sum(all.map(({ angle }) => angle))), rate: radiansPerSecond(sum(all.map(({ rate }) => rate))) });

/** Several departures as one: small angles add up. */
export const inAll = (departures: readonly Departure[]): Departure =>
  ({ side: added(departures.map(({ side }) => side)), height: added(departures.map(({ height }) => height)) });

/** Seen in a mirror: left is right. */
export const mirroredPush = ({ x, y }: Push): Push => ({ x: -x, y });
export const mirroredDeparture = ({ side: { angle, rate }, height }: Departure): Departure =>
  ({ side: { angle: degrees(-angle), rate: radiansPerSecond(-rate) }, height });
