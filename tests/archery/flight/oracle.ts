// What the flight model is held against: a small slant by formula, and its equations of motion solved by another method of far higher order.

import { expect } from 'vitest';
import { USUAL_ARROW, type FlightArrow, type Vanes } from '../../../src/archery/flight/arrow.ts';
import { bodyOf, type Body } from '../../../src/archery/flight/body.ts';
import type { Shot } from '../../../src/archery/flight/fly.ts';
import { changeOf, type Motion } from '../../../src/archery/flight/forces.ts';
import { USUAL_WORLD, type World } from '../../../src/archery/flight/world.ts';
import { checks } from '../../../src/maths/check.ts';
import { degrees, fps, grains, grainsPerInch, inches, radiansPerSecond } from '../../../src/maths/units.ts';

export const must = checks('oracle').oracle;
export const usualBody = (): Body => bodyOf(must, USUAL_ARROW);

/**
 * Slant (in units of the first, rad or degrees) after `time` s at a steady speed (m/s), for small slants: a damped swing. Derived: the equations of motion
 * without the shaft's drag across, which vanishes with the slant, and without the slowing down. `swirl` is the share of its turning that the way takes over,
 * because a turning arrow lifts: half of 1 in 100, and mostly left out.
 */
export function slantAfter(body: Body, speed: number, time: number, slant: number, turning: number, swirl = 0): number {
  const lift = (USUAL_WORLD.density * speed ** 2 * body.section) / 2;
  const giving = (lift * (body.slope - body.drag)) / (body.mass * speed);
  const braking = (lift * body.damping) / (speed * body.inertia);
  const fading = (braking + giving) / 2;
  const swinging = Math.sqrt(((1 - swirl) * lift * body.lever) / body.inertia + braking * giving - fading ** 2);
  const phase = swinging * time;
  return Math.exp(-fading * time) * (slant * Math.cos(phase) + (((1 - swirl) * turning + (fading - giving) * slant) / swinging) * Math.sin(phase));
}

const listed = ({ x, speed, side, height }: Motion): number[] =>
  [x, speed, side.at, side.speed, side.turn, side.turning, height.at, height.speed, height.turn, height.turning];
const motionOf = ([x = NaN, speed = NaN, a = NaN, b = NaN, c = NaN, d = NaN, e = NaN, f = NaN, g = NaN, h = NaN]: readonly number[]): Motion =>
  ({ x, speed, side: { at: a, speed: b, turn: c, turning: d }, height: { at: e, speed: f, turn: g, turning: h } });

/** Steps of the modified midpoint rule; what they leave is a series in the square of the step, of which the first six terms are cancelled. */
const PARTS = [2, 4, 6, 8, 10, 12];

/** A motion after `time` s, by extrapolation (Gragg's method, order 12), in steps of 4 ms. */
export function after(body: Body, start: Motion, time: number, world: World = USUAL_WORLD): Motion {
  const change = changeOf(body, world);
  const by = (now: readonly number[]): number[] => listed(change(motionOf(now)));
  const moved = (now: readonly number[], way: readonly number[], step: number): number[] => now.map((value, i) => value + step * (way[i] ?? NaN));
  const steps = Math.max(1, Math.ceil(time / 0.004));
  let now = listed(start);
  for (let i = 0; i < steps; i++) {
    const whole = time / steps;
    const rough = PARTS.map((parts) => {
      const step = whole / parts;
      let [before, here] = [now, moved(now, by(now), step)];
      for (let part = 1; part < parts; part++) [before, here] = [here, moved(before, by(here), 2 * step)];
      const end = moved(before, by(here), 2 * step);
      return end.map((value, j) => (value + 2 * (here[j] ?? NaN) + (before[j] ?? NaN)) / 4);
    });
    now = now.map((_, j) => extrapolated(rough.map((one) => one[j] ?? NaN)));
  }
  return motionOf(now);
}

/** Neville: at a step of 0, from values at steps 1 / PARTS. */
function extrapolated(values: readonly number[]): number {
  let row = [...values];
  for (let order = 1; order < values.length; order++) {
    row = row.slice(1).map((finer, i) => finer + (finer - (row[i] ?? NaN)) / (((PARTS[i + order] ?? NaN) / (PARTS[i] ?? NaN)) ** 2 - 1));
  }
  return row[0] ?? NaN;
}

/** The same arrow with other vanes. */
export const withVanes = (change: Partial<Vanes>): FlightArrow => ({ ...USUAL_ARROW, vanes: { ...VANES, ...change } });
const VANES = { count: 3, each: grains(7), height: inches(0.48), chord: inches(2.1), tip: inches(0.9), sweep: inches(0.9), ahead: inches(1.045), drag: 0.7 };

/** Degrees and rad/s to the right. */
export const shotOf = (arrow: FlightArrow, angle: number, rate: number, speed = 280): Shot =>
  ({ arrow, speed: fps(speed), side: { angle: degrees(angle), rate: radiansPerSecond(rate) } });

/**
 * An arrow of 395.25 gr with vanes of 2 in, for the closed forms: nose and vanes alone push it, nothing brakes it along its way. Invented; what is
 * derived from it was worked out by an independent program.
 */
export const PLAIN: FlightArrow = {
  length: inches(28.5), diameter: inches(6 / 25.4), drag: 0, shaft: grainsPerInch(8.5), point: grains(125), nock: grains(10),
  // The vanes' centre lies 2 in from the throat.
  vanes: {
    count: 3, each: grains(6), height: inches(0.5), chord: inches(2), tip: inches(25 / 25.4), sweep: inches(25.8 / 25.4), efficiency: 1,
    ahead: inches(0.8376893), drag: 0,
  },
  places: { point: inches(0), nock: inches(0), vanes: inches(2) },
  head: { nose: inches(20 / 25.4), drag: 0 },
};
/** Air of the standard atmosphere at sea level (from memory), and no drag across the shaft. */
export const PLAIN_AIR: World = { ...USUAL_WORLD, density: 1.225, crossFlow: 0 };

/** Half of the last digit that is printed, and a tenth of that for where the parts of the usual arrow weigh, which is assumed. */
export const printed = (found: number, figure: number, digits: number): void =>
  expect(Math.abs(found - figure), `${found}, printed ${figure}`).toBeLessThanOrEqual(0.55 * 10 ** -digits);
