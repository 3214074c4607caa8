// The tables of tears: by simulation, re-derived independently with a high-order integrator.

import { describe, expect, it } from 'vitest';
import { FIXED_BLADES, unfletched, USUAL_ARROW, type FlightArrow } from '../../../src/archery/flight/arrow.ts';
import { fromPoint } from '../../../src/archery/flight/from-hand.ts';
import { tearAt } from '../../../src/archery/flight/tear.ts';
import { USUAL_WORLD } from '../../../src/archery/flight/world.ts';
import { tearFrom } from '../../../src/archery/launch.ts';
import { degrees, feet, grains, inches, radiansPerSecond } from '../../../src/maths/units.ts';
import { fly } from '../rigid-arrow.ts';
import { said } from '../said.ts';
import { PLAIN, PLAIN_AIR, printed, shotOf, withVanes } from './oracle.ts';

const tear = (angle: number, rate: number, distance: number, arrow = USUAL_ARROW, speed = 280): number => tearAt(shotOf(arrow, angle, rate, speed), feet(distance)).x;
const BARE = unfletched(USUAL_ARROW);

describe('the tear of the usual arrow, by simulation', () => {
  it.each([
    [3, -0.447, -0.421], [5, -0.402, -0.583], [6, -0.376, -0.655], [7, -0.347, -0.721], [8, -0.316, -0.779],
    [10, -0.248, -0.874], [15, -0.058, -0.968], [18, 0.056, -0.928], [24, 0.251, -0.666], [30, 0.36, -0.248],
  ])('at %f ft from the point: %f in for 1 degree, %f in for 1 rad/s', (distance, angle, rate) => {
    printed(tear(1, 0, distance), angle, 3);
    printed(tear(0, 1, distance), rate, 3);
  });
  it('at 7 ft to four digits: -0.3471 and -0.7208', () => {
    printed(tear(1, 0, 7), -0.3471, 4);
    printed(tear(0, 1, 7), -0.7208, 4);
  });
  it.each([[7, -0.499, -0.864], [15, -0.508, -1.639]])('unfletched at %f ft: %f and %f', (distance, angle, rate) => {
    printed(tear(1, 0, distance, BARE), angle, 3);
    printed(tear(0, 1, distance, BARE), rate, 3);
  });
  it.each([[240, -0.347, -0.84], [280, -0.347, -0.721], [320, -0.347, -0.631]])('at 7 ft and %f fps: %f and %f', (speed, angle, rate) => {
    printed(tear(1, 0, 7, USUAL_ARROW, speed), angle, 3);
    printed(tear(0, 1, 7, USUAL_ARROW, speed), rate, 3);
  });
  it.each<[string, FlightArrow, number, number]>([
    ['vanes 0.4 in high', withVanes({ height: inches(0.4) }), -0.39, -0.76], ['vanes 0.6 in high', withVanes({ height: inches(0.6) }), -0.28, -0.66],
    ['a point of 150 gr', { ...USUAL_ARROW, point: grains(150) }, -0.35, -0.73],
    ['vanes that work to 0.6', withVanes({ efficiency: 0.6 }), -0.38, -0.75], ['vanes that work whole', withVanes({ efficiency: 1 }), -0.31, -0.69],
  ])('%s at 7 ft: %f and %f', (_name, arrow, angle, rate) => {
    printed(tear(1, 0, 7, arrow), angle, 2);
    printed(tear(0, 1, 7, arrow), rate, 2);
  });
});

describe('the tear otherwise', () => {
  it('signs: a nose to the right leaves its nock left, a nose up leaves it low', () => {
    expect(tear(1, 0, 7)).toBeLessThan(0);
    expect(tear(0, 1, 7)).toBeLessThan(0);
    const up = tearAt({ arrow: USUAL_ARROW, speed: shotOf(USUAL_ARROW, 0, 0).speed, height: { angle: degrees(1), rate: radiansPerSecond(1) } }, feet(7));
    expect(up.x).toBe(0);
    expect(up.y).toBeCloseTo(tear(1, 1, 7) + tearAt(shotOf(USUAL_ARROW, 0, 0), feet(7)).y, 2);
  });
  it.each([5.5, 7, 8.8, 12, 16])('%f ft from the bow hand: a model in one plane, written for the tests, says the same, and what reads tears back (launch.ts)', (hand) => {
    const distance = fromPoint(feet(hand), inches(28.5), inches(6.9));
    const { x, y } = tearAt(shotOf(USUAL_ARROW, 0.5, -0.4), distance);
    expect(Math.abs(x - fly({ angle: 0.5, rate: -0.4 }, distance).tear)).toBeLessThan(0.002);
    // It adds tears up, where the shaft's drag across goes with the square.
    expect(Math.abs(x - tearFrom({ angle: degrees(0.5), rate: radiansPerSecond(-0.4) }, feet(hand), 'side'))).toBeLessThan(0.007);
    expect(Math.abs(y - tearFrom({ angle: degrees(0), rate: radiansPerSecond(0) }, feet(hand), 'height'))).toBeLessThan(0.002);
  });
  it('blades in front let an arrow turn further: a larger tear by the same rate at 15 ft', () => {
    expect(tear(0, 1, 15, { ...USUAL_ARROW, head: FIXED_BLADES })).toBeLessThan(tear(0, 1, 15));
  });
  // Derived: where no air turns the arrow, both ends lie on a straight shaft that goes straight on.
  it.each([
    [0.5026, 0.25], [1.0052, 0.5], [2.0108, 1], [3.017, 1.5], [4.0241, 2],
  ])('without air an arrow of 28.5 in at %f degrees tears %f in (derived: its length times the sine)', (angle, inch) => {
    const still = tearAt(shotOf(PLAIN, angle, 0), feet(7), { ...PLAIN_AIR, density: 0, gravity: 0 });
    // The model takes an angle for its sine: 1 in 1000 at 4 degrees.
    expect(Math.abs(still.x + inch)).toBeLessThan(0.001 * inch);
  });
  it('without air a rate tears by what the arrow turns on its own length besides: 2 rad/s at 85 m/s are 0.98 degrees in 0.724 m (derived)', () => {
    const speed = 85 / 0.3048;
    const early = tearAt(shotOf(PLAIN, 0, 2, speed), feet(1e-9), { ...PLAIN_AIR, density: 0, gravity: 0 });
    // The nock stands where the arrow has turned to: its distance behind the balance point, 17.8382 in, times that angle.
    expect(early.x).toBeCloseTo(-17.8382 * (0.98 * Math.PI) / 180, 2);
  });
  it('steps of 1 and 4 ms differ by far less than 0.0014 in, the tear at 7 ft', () => {
    for (const [angle, rate] of [[1, 0], [0, 1], [2, -3]] as const) {
      const [coarse, fine] = [0.004, 0.001].map((step) => tearAt(shotOf(USUAL_ARROW, angle, rate), feet(7), { ...USUAL_WORLD, step }).x);
      expect(Math.abs((coarse ?? NaN) - (fine ?? NaN))).toBeLessThan(1e-5);
    }
  });
  it('throws in its own name', () => {
    expect(said(() => tearAt(shotOf(USUAL_ARROW, NaN, 0), feet(7)))).toBe('tearAt: the angle is NaN; -30 to 30 degrees are needed');
    expect(said(() => tearAt(shotOf(USUAL_ARROW, 0, 0), feet(301)))).toBe('tearAt: the distance is 301; 0 to 300 ft are needed');
  });
});
