// From how an arrow leaves to what paper or target shows. The room asks for a flight by this shape alone, so that a slow exact model and
// a quick one can stand in for each other: a bench that plays thousands of tunes flies by the table.

import { HAND_TO_POINT, tearFrom, type LaunchAxis, type Leaving } from '../archery/launch.ts';
import type { Point } from '../archery/shots.ts';
import { checks } from '../maths/check.ts';
import { inches, yards, yardsIn, type Feet, type Fps, type Yards } from '../maths/units.ts';
import type { Departure } from './departure.ts';

const must = checks('impact');

export const HEADS = ['field', 'fixed', 'mechanical', 'unfletched'] as const;
/** What flies: a field point, a broadhead with fixed blades or one that opens, or a field point on a shaft without vanes. */
export type Flying = (typeof HEADS)[number];

export interface Flight {
  /** Tear (in), tail less point, in paper at `distance` from the bow hand (ft). A fletched arrow with a field point. */
  readonly tear: (departure: Departure, speed: Fps, distance: Feet) => Point;
  /** Where it lands (in) at `distance` from the bow hand (yd), from where a field point lands that leaves quite straight at the speed that the sight was set with. */
  readonly impact: (departure: Departure, flying: Flying, speed: Fps, sighted: Fps, distance: Yards) => Point;
}

type At = readonly [number, number, number];

/**
 * Inches at 20, 30 and 40 yd for 1 degree, and for 1 rad/s, at 280 fps. Derived with a rigid arrow, that of launch.ts; the lift of blades that open is a
 * guess. Beyond 1 rad/s an arrow goes farther aside than in proportion, with blades or without vanes by a fifth: not in here.
 */
const ASIDE: Readonly<Record<Flying, { readonly angle: At; readonly rate: At }>> = {
  field: { angle: [0.179, 0.164, 0.171], rate: [1.698, 2.703, 3.474] },
  fixed: { angle: [0.788, 0.798, 0.95], rate: [4.755, 7.319, 9.489] },
  mechanical: { angle: [0.236, 0.255, 0.276], rate: [2.121, 3.271, 4.309] },
  unfletched: { angle: [0.598, 1.239, 2.256], rate: [4.951, 10.564, 16.429] },
};
const USUAL_SPEED = 280;
/**
 * Drop (in) of a level shot at 280 fps at these distances (derived, by the same arrow). Blades and bare shafts fall less, though blades brake: an arrow that is slow
 * to follow its way down flies nose up, and is carried.
 */
const DROP: Readonly<Record<Flying, At>> = {
  field: [9.135, 20.653, 37.037], fixed: [8.677, 19.872, 35.986], mechanical: [9.079, 20.588, 36.97], unfletched: [8.814, 19.633, 34.447],
};
const FARTHEST = 40;

/** From the bow hand to the point as it leaves the string. */
const TO_POINT = yardsIn(HAND_TO_POINT);

/** At a distance (yd), through nothing at 0 and these three (Lagrange). */
function along([at20, at30, at40]: At, distance: Yards): number {
  const d = distance / 10;
  return d * (at20 * (d - 3) * (d - 4) / 4 - at30 * (d - 2) * (d - 4) / 3 + at40 * (d - 2) * (d - 3) / 8);
}

const aside = ({ angle, rate }: Leaving, flying: Flying, slower: number, distance: Yards): number =>
  along(ASIDE[flying].angle, distance) * angle + along(ASIDE[flying].rate, distance) * slower * rate;

/** The rigid arrow of launch.ts, by its table: quick, and straight lines only. From 4.8 to 31.8 ft at paper, up to 40 yd at a target. */
// Example: byTable.tear(STRAIGHT, fps(280), feet(8.8)) is { x: 0, y: -0.085 }.
export const byTable: Flight = {
  tear: ({ side, height }, speed, distance) => {
    const on = (axis: LaunchAxis, leaving: Leaving): number => tearFrom(leaving, distance, axis, speed);
    return { x: on('side', side), y: on('height', height) };
  },
  impact: ({ side, height }, flying, speed, sighted, distance) => {
    must.impact.size(speed, "the arrow's speed");
    must.impact.size(sighted, 'the speed that the sight was set with');
    if (!(distance > TO_POINT && distance <= FARTHEST)) throw must.impact.error(`the distance is ${distance} yd; up to ${FARTHEST} are needed`);
    const flown = yards(distance - TO_POINT);
    const slower = USUAL_SPEED / speed;
    const falls = along(DROP.field, flown) * (USUAL_SPEED / sighted) ** 2 - along(DROP[flying], flown) * slower ** 2;
    return { x: inches(aside(side, flying, slower, flown)), y: inches(aside(height, flying, slower, flown) + falls) };
  },
};
