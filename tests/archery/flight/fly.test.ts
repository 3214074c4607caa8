// The flight itself: its laws, its accuracy, and what it refuses.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FIELD_POINT, FIXED_BLADES, unfletched, USUAL_ARROW } from '../../../src/archery/flight/arrow.ts';
import { FLIGHT_LIMITS, flyThrough, type Shot } from '../../../src/archery/flight/fly.ts';
import type { Motion } from '../../../src/archery/flight/forces.ts';
import { USUAL_WORLD } from '../../../src/archery/flight/world.ts';
import { FOOT, INCH } from '../../../src/maths/exact.ts';
import { degrees, feet, fps, grains, inches, radiansPerSecond } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { said } from '../said.ts';
import { after, must, PLAIN, printed, shotOf, slantAfter, usualBody } from './oracle.ts';

const within = (most: number): fc.Arbitrary<number> => fc.double({ min: -most, max: most, noNaN: true });
const leaving = fc.record({ angle: within(3).map(degrees), rate: within(2).map(radiansPerSecond) });
const arrows = fc.constantFrom(USUAL_ARROW, { ...USUAL_ARROW, head: FIXED_BLADES }, unfletched(USUAL_ARROW));
const shots: fc.Arbitrary<Shot> = fc.record({
  arrow: arrows, speed: within(80).map((by) => fps(270 + by)), side: leaving, height: leaving, bearing: within(2).map(degrees), elevation: within(2).map(degrees),
});
const distances = fc.double({ min: 1, max: 120, noNaN: true }).map(feet);
const RUNS = { numRuns: 40 };
const WEIGHTLESS = { ...USUAL_WORLD, gravity: 0 };

describe('laws of flight', () => {
  it('what is mirrored left to right flies mirrored, to the last bit', () => {
    fc.assert(fc.property(shots, distances, (shot, distance) => {
      const { side = { angle: degrees(0), rate: radiansPerSecond(0) }, bearing = degrees(0) } = shot;
      const other = { ...shot, side: { angle: degrees(-side.angle), rate: radiansPerSecond(-side.rate) }, bearing: degrees(-bearing) };
      const [one, two] = [flyThrough(must, shot, distance, USUAL_WORLD), flyThrough(must, other, distance, USUAL_WORLD)];
      for (const end of ['point', 'nock'] as const) expect({ ...two[end], x: 0 - two[end].x }).toEqual({ ...one[end], x: 0 + one[end].x });
    }), RUNS);
  });
  it('upside down as well, where nothing falls; and up is as sideways', () => {
    fc.assert(fc.property(arrows, leaving, distances, (arrow, launch, distance) => {
      const bySide = flyThrough(must, { arrow, speed: fps(280), side: launch }, distance, WEIGHTLESS).point;
      const up = flyThrough(must, { arrow, speed: fps(280), height: launch }, distance, WEIGHTLESS).point;
      expect([up.x, up.y, up.speed]).toEqual([bySide.y, bySide.x, bySide.speed]);
    }), RUNS);
  });
  it('nothing goes aside without a cause aside', () => {
    fc.assert(fc.property(shots, distances, ({ side: _side, bearing: _bearing, ...shot }, distance) => {
      const { point, nock } = flyThrough(must, shot, distance, USUAL_WORLD);
      expect([point.x, nock.x]).toEqual([0, 0]);
    }), RUNS);
  });
  it('small launches add up: twice as much goes twice as far aside', () => {
    const aside = (angle: number, rate: number): number => flyThrough(must, shotOf(USUAL_ARROW, angle, rate), feet(60), WEIGHTLESS).point.x;
    fc.assert(fc.property(within(1), within(1), (angle, rate) => {
      const [whole, parts] = [aside(angle / 1e5, rate / 1e5), (angle * aside(1e-5, 0)) + rate * aside(0, 1e-5)];
      expect(Math.abs(whole - parts)).toBeLessThan(1e-9);
    }), RUNS);
  });
});

describe('how exactly', () => {
  const start = (angle: number, rate: number): Motion => ({
    x: -usualBody().toTip, speed: 280 * FOOT, side: { at: 0, speed: 0, turn: (angle * Math.PI) / 180, turning: rate }, height: { at: 0, speed: 0, turn: 0, turning: 0 },
  });
  it('it agrees with a method of order 12 to 2e-5 in, when the point is where it is asked for', () => {
    const body = usualBody();
    for (const [angle, rate, distance] of [[1, 0, 7], [0, 1, 15], [2, -1, 60], [-3, 3, 120]] as const) {
      const { point } = flyThrough(must, shotOf(USUAL_ARROW, angle, rate), feet(distance), USUAL_WORLD);
      const { x, side, height } = after(body, start(angle, rate), point.time);
      expect(x + body.toTip).toBeCloseTo(distance * FOOT, 6);
      expect(Math.abs((side.at + body.toTip * side.turn) / INCH - point.x)).toBeLessThan(2e-5);
      expect(Math.abs((height.at + body.toTip * height.turn) / INCH - point.y)).toBeLessThan(2e-5);
    }
  });
  it('halving the step changes it by a sixteenth as much each time', () => {
    const at = (step: number): number => flyThrough(must, shotOf(USUAL_ARROW, 2, 2), feet(120), { ...USUAL_WORLD, step }).point.x;
    const [eight, four, two] = [at(0.008), at(0.004), at(0.002)];
    expect(Math.abs(four - two)).toBeLessThan(1e-5);
    expect(Math.abs(four - two)).toBeLessThan(Math.abs(eight - four) / 8);
  });
  // By simulation: the formula at the time at which the arrow has come so far, and a launch of 0.005 rad, counted by the degree.
  it.each([[5, 0.8836, 0.8829], [10, 0.6097, 0.6088], [20, -0.1466, -0.1431]])('after %i ft a degree is %f by formula, %f when flown', (distance, formula, flown) => {
    const body = usualBody();
    const slowing = (2 * body.mass) / (USUAL_WORLD.density * body.drag * body.section);
    const time = (slowing / (280 * FOOT)) * Math.expm1((distance * FOOT) / slowing);
    printed(slantAfter(body, 280 * FOOT, time, 1, 0), formula, 4);
    const { speed, side } = after(body, start(0.005 * (180 / Math.PI), 0), time, WEIGHTLESS);
    // To 1 in 2000: the slant at which it was flown is worked back from the figures.
    expect(Math.abs((side.turn - side.speed / speed) / 0.005 - flown)).toBeLessThan(5e-4);
  });
  it('without drag of any kind a small slant is the formula, to 1 in 10,000 of the swing', () => {
    const [body, coasting] = [{ ...usualBody(), drag: 0 }, { ...WEIGHTLESS, crossFlow: 0 }];
    const swirl = (USUAL_WORLD.density * body.section * body.lever) / (2 * body.mass);
    for (const [angle, rate] of [[0.01, 0], [0, 0.01], [0.01, -0.01]] as const) {
      for (const time of [0.01, 0.05, 0.2, 0.4]) {
        const [{ speed, side }, turn] = [after(body, start(angle, rate), time, coasting), (angle * Math.PI) / 180];
        const off = side.turn - side.speed / speed - slantAfter(body, 280 * FOOT, time, turn, rate, swirl);
        expect(Math.abs(off)).toBeLessThan(1e-4 * Math.hypot(turn, rate / 24.8));
      }
    }
  });
});

describe('where it begins', () => {
  it('the point leaves straight ahead of the string, out to the side that the nose is turned to', () => {
    const { point, nock } = flyThrough(must, shotOf(USUAL_ARROW, 2, 0), feet(0), USUAL_WORLD);
    near(point.x, (usualBody().toTip / INCH) * ((2 * Math.PI) / 180), 1e-9);
    expect([point.y, point.time]).toEqual([0, 0]);
    near(point.speed, 280, 1e-12);
    near(nock.time, 28.5 / 12 / 280, 2e-3);
  });
  it('bearing and elevation turn the whole shot about its balance point: by the tangent where nothing pulls or brakes', () => {
    const { point } = flyThrough(must, { ...shotOf(PLAIN, 0, 0), bearing: degrees(2), elevation: degrees(-1) }, feet(60), { ...WEIGHTLESS, density: 0 });
    const far = 720 + 28.5 - 17.8382;
    near(point.x, far * Math.tan((2 * Math.PI) / 180), 5e-4);
    near(point.y, -far * Math.tan((1 * Math.PI) / 180), 1e-3);
    near(point.speed, 280, 1e-12);
  });
});

describe('refuses in the name that it is handed', () => {
  const refusal = (change: Partial<Shot>, distance = 20): string =>
    said(() => flyThrough(must, { ...shotOf(USUAL_ARROW, 0, 0), ...change }, feet(distance), USUAL_WORLD));
  it('what is beyond its limits', () => {
    expect(FLIGHT_LIMITS).toEqual({ slowest: 50, fastest: 500, farthest: 300, angle: 30, rate: 30, way: 15 });
    for (const bad of [49, 501, NaN, Infinity]) expect(refusal({ speed: fps(bad) })).toBe(`oracle: the arrow's speed is ${bad}; 50 to 500 fps are needed`);
    for (const bad of [-1, 301, NaN]) expect(refusal({}, bad)).toBe(`oracle: the distance is ${bad}; 0 to 300 ft are needed`);
    for (const bad of [31, -31, NaN]) {
      for (const axis of ['side', 'height'] as const) {
        expect(refusal({ [axis]: { angle: degrees(bad), rate: radiansPerSecond(0) } })).toBe(`oracle: the angle is ${bad}; -30 to 30 degrees are needed`);
        expect(refusal({ [axis]: { angle: degrees(0), rate: radiansPerSecond(bad) } })).toBe(`oracle: the rate is ${bad}; -30 to 30 rad/s are needed`);
      }
    }
    for (const bad of [15.1, -16, NaN]) {
      expect(refusal({ bearing: degrees(bad) })).toBe(`oracle: the bearing is ${bad}; -15 to 15 degrees are needed`);
      expect(refusal({ elevation: degrees(bad) })).toBe(`oracle: the elevation is ${bad}; -15 to 15 degrees are needed`);
    }
  });
  it('without air: an arrow that spins past a right angle, and one that falls faster than it flies', () => {
    const word = /^oracle: the arrow does not fly so far: it turns round, stops or only falls; /;
    const still = (shot: Shot, distance: number): string => said(() => flyThrough(must, shot, feet(distance), { ...USUAL_WORLD, density: 0 }));
    // 30 rad/s at 280 fps are a right angle after 14.7 ft of the nock's way, 2.4 ft of it the arrow's own length (by hand).
    expect(still(shotOf(USUAL_ARROW, 0, 30), 15)).toMatch(word);
    expect(still(shotOf(USUAL_ARROW, 0, -30), 15)).toMatch(word);
    expect(still(shotOf(USUAL_ARROW, 0, 30), 11)).toBe('no error');
    // 50 fps are fallen by after 1.55 s, 77.7 ft on (by hand).
    expect(still(shotOf(USUAL_ARROW, 0, 0, 50), 80)).toMatch(word);
    expect(still(shotOf(USUAL_ARROW, 0, 0, 50), 73)).toBe('no error');
  });
  it('an arrow that turns round, or stops, on its way', () => {
    const word = 'oracle: the arrow does not fly so far: it turns round, stops or only falls; give it a launch, or parts, that let it fly';
    const bladed = { ...USUAL_ARROW, head: { ...FIELD_POINT, lift: { slope: 300, behind: inches(0) } } };
    expect(refusal({ arrow: bladed, side: { angle: degrees(1), rate: radiansPerSecond(1) } }, 200)).toBe(word);
    expect(refusal({ arrow: bladed, height: { angle: degrees(1), rate: radiansPerSecond(1) } }, 200)).toBe(word);
    expect(refusal({ arrow: { ...USUAL_ARROW, drag: 1e5 } }, 300)).toBe(word);
    expect(refusal({ arrow: { ...USUAL_ARROW, diameter: inches(1e20), point: grains(1) } })).toBe(word);
  });
});
