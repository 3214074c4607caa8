// Closed forms of flat flight that no other file here holds: a shaft without vanes before it turns, where paper tells the truth, what a little more speed does.
// All derived, and worked out here from the arrow's own mass and shape; the flight itself is the program's, or its forces by a method of order 12.

import { describe, expect, it } from 'vitest';
import { unfletched, USUAL_ARROW } from '../../../src/archery/flight/arrow.ts';
import { bodyOf } from '../../../src/archery/flight/body.ts';
import { impactAt } from '../../../src/archery/flight/impact.ts';
import type { Motion } from '../../../src/archery/flight/forces.ts';
import { FOOT, INCH } from '../../../src/maths/exact.ts';
import { feet } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { after, must, PLAIN, PLAIN_AIR, shotOf } from './oracle.ts';

const SPEED = 85;
const DEGREE = Math.PI / 180;
const BARE = unfletched(PLAIN);
const body = bodyOf(must, BARE);
const WEIGHTLESS = { ...PLAIN_AIR, gravity: 0 };
const leaving = (angle: number): Motion => ({
  x: 0, speed: SPEED, side: { at: 0, speed: 0, turn: angle * DEGREE, turning: 0 }, height: { at: 0, speed: 0, turn: 0, turning: 0 },
});
/** The balance point's way aside (m) after x metres: nothing brakes this arrow along its way. */
const aside = (angle: number, x: number, world = WEIGHTLESS, of = body): number => after(of, leaving(angle), x / SPEED, world).side.at;
/** A slant that stays as it is pushes evenly: half of the push by mass, by the square of the way. */
const even = (angle: number, x: number, slope: number): number => (0.5 * PLAIN_AIR.density * body.section * slope * angle * DEGREE * x ** 2) / (2 * body.mass);

describe('a shaft without vanes, before it turns', () => {
  it.each([0.5, 1, 2])('at 1 degree goes aside by the square of its way, over %f m: half of density, section and the nose\'s slope of 2, by twice the mass', (x) => {
    near(aside(1, x), even(1, x, 2), 0.005);
  });
  it('its point goes farther, for its nose turns it away as well: by the moment of that push', () => {
    for (const metres of [1, 2, 3]) {
      const point = impactAt(shotOf(BARE, 1, 0, SPEED / FOOT), feet(metres / FOOT), WEIGHTLESS).x * INCH;
      const turned = (even(1, metres, 2) * body.mass * body.toTip * -body.lever) / (2 * body.inertia);
      near(point - body.toTip * DEGREE, even(1, metres, 2) + turned, 0.01);
    }
  });
  it('the drag across its shaft is as much again, and goes with the square of the slant: 1.1 on length times diameter', () => {
    const across = { ...WEIGHTLESS, crossFlow: 1.1 };
    const own = (angle: number): number => aside(angle, 1, across) - aside(angle, 1);
    const square = (0.25 * PLAIN_AIR.density * body.diameter * 28.5 * INCH * 1.1 * DEGREE ** 2) / body.mass;
    near(own(1), square, 0.01);
    near(own(2), 4 * square, 0.01);
    // Comparable at a degree or two: so twice the angle goes more than twice as far aside, and no angle can be read from it.
    expect(own(1) / aside(1, 1)).toBeGreaterThan(1);
    expect(own(1) / aside(1, 1)).toBeLessThan(2);
  });
  it('goes to the same side as with vanes, but farther the farther it is shot: with vanes an angle leaves it beside itself', () => {
    const at = (arrow: typeof USUAL_ARROW, yards: number): number => impactAt(shotOf(arrow, 1, 0), feet(3 * yards)).x;
    const gaps = [5, 10, 20, 40].map((yards) => at(unfletched(USUAL_ARROW), yards) - at(USUAL_ARROW, yards));
    expect(gaps.every((gap, i) => gap > (gaps[i - 1] ?? 0))).toBe(true);
  });
});

describe('where paper tells the truth', () => {
  const fletched = bodyOf(must, PLAIN);
  const left = (x: number): number => {
    const { side, speed } = after(fletched, leaving(1), x / SPEED, WEIGHTLESS);
    return (side.turn - side.speed / speed) / DEGREE;
  };
  it('with a swing of about 18 m, 77 to 87 in 100 of an angle are left at 1.5 to 2 m, less the few that have faded', () => {
    expect(left(1.5)).toBeGreaterThan(0.8);
    expect(left(1.5)).toBeLessThan(0.87);
    expect(left(2)).toBeGreaterThan(0.7);
    expect(left(2)).toBeLessThan(0.77);
    // The cosine alone, without the little that has faded by then.
    near(left(2) * Math.exp(2 / 27.7), Math.cos((2 * Math.PI * 2) / 18.35), 0.08);
  });
  it('and none at 4 to 5 m, a quarter of a swing: a clean hole that is none', () => {
    expect(left(4)).toBeGreaterThan(0);
    expect(left(5)).toBeLessThan(0);
  });
});

it('a shot that is 1 in 100 faster strikes higher by twice its drop times that', () => {
  const drop = (share: number): number => -impactAt(shotOf(USUAL_ARROW, 0, 0, 280 * share), feet(60)).y;
  near((drop(1) - drop(1.001)) / 0.001, 2 * drop(1), 0.01);
});
