import { describe, expect, it } from 'vitest';
import { USUAL_ARROW } from '../../../src/archery/flight/arrow.ts';
import { impactAt } from '../../../src/archery/flight/impact.ts';
import { sightIn } from '../../../src/archery/flight/sight-in.ts';
import { USUAL_WORLD } from '../../../src/archery/flight/world.ts';
import { degrees, feet, radiansPerSecond } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { said } from '../said.ts';
import { shotOf } from './oracle.ts';

const LEVEL = shotOf(USUAL_ARROW, 0, 0);

describe('sighting in', () => {
  it.each([5, 15, 60, 120, 180, 300])('at %i ft the shot strikes level with where it left, to 1e-9 in', (distance) => {
    const elevation = sightIn(LEVEL, feet(distance));
    expect(Math.abs(impactAt({ ...LEVEL, elevation }, feet(distance)).y)).toBeLessThan(1e-9);
  });
  it('takes the launch as it is, to whatever side and height the nose is turned', () => {
    const askew = { ...shotOf(USUAL_ARROW, 1, 1), height: { angle: degrees(-2), rate: radiansPerSecond(3) }, bearing: degrees(1) };
    expect(Math.abs(impactAt({ ...askew, elevation: sightIn(askew, feet(60)) }, feet(60)).y)).toBeLessThan(1e-9);
  });
  it('is the drop as an angle, for a flat shot: 9.14 in over 20 yd and the way from the balance point (by simulation, the drop)', () => {
    near((sightIn(LEVEL, feet(60)) * Math.PI) / 180, 9.14 / (720 + 11.1), 5e-3);
  });
  it('without air it is half of the arc sine of g x over v squared (the parabola), all counted from the balance point', () => {
    const still = { ...USUAL_WORLD, density: 0 };
    const [x, v, ahead] = [120 * 0.3048, 280 * 0.3048, 11.0982 * 0.0254];
    const rise = (angle: number): number => (x * Math.tan(angle)) - (9.80665 * x ** 2) / (2 * (v * Math.cos(angle)) ** 2) + ahead * angle;
    expect(Math.abs(rise((sightIn(LEVEL, feet(120), still) * Math.PI) / 180))).toBeLessThan(1e-6);
  });
  it('finds 0 where nothing falls, and below where the way is blown up by its own lift', () => {
    expect(sightIn(LEVEL, feet(60), { ...USUAL_WORLD, gravity: 0 })).toBeCloseTo(0, 12);
    expect(sightIn({ ...LEVEL, height: { angle: degrees(0), rate: radiansPerSecond(20) } }, feet(60))).toBeLessThan(0);
  });
  it('throws in its own name, and where no flat shot gets so far', () => {
    expect(said(() => sightIn(shotOf(USUAL_ARROW, 0, 0, 110), feet(300)))).toBe('sightIn: this arrow is too slow for 300 ft; give a distance that a flat shot reaches');
    expect(said(() => sightIn(LEVEL, feet(NaN)))).toBe('sightIn: the distance is NaN; 0 to 300 ft are needed');
  });
});
