// What pushes an arrow aside, and what takes that away again.

import { describe, expect, it } from 'vitest';
import { degrees, feet, fps, radiansPerSecond, yards } from '../../src/maths/units.ts';
import { HONEST, tiredness } from '../../src/practice/archer.ts';
import { arrowPush } from '../../src/practice/arrows.ts';
import { AS_FOUND, moved, standing, type Condition } from '../../src/practice/condition.ts';
import { departureOf, STRAIGHT, type Departure } from '../../src/practice/departure.ts';
import { byTable } from '../../src/practice/flight.ts';
import { read, shoot, tuningArrows, type Asked } from '../../src/practice/shoot.ts';
import { centreShot, soundWorld, type World } from '../../src/practice/world.ts';
import type { Point } from '../../src/archery/shots.ts';
import type { PracticeBow } from '../../src/practice/bow.ts';
import { fly } from '../archery/rigid-arrow.ts';
import { KNOBS } from './play.ts';

/** Nobody strays at all: what is left is the bow's. */
const STILL = { ...HONEST, noise: 0 };
const world = soundWorld(1, KNOBS, STILL, { cams: 'yoke' });
const withBow = (bow: Partial<PracticeBow>): World => ({ ...world, bow: { ...world.bow, ...bow } });
const AT_PAPER: Asked = { arrow: '1', nockTurn: 0, flying: 'field', at: { paper: feet(7) } };
const hole = (of: World, condition: Partial<Condition> = {}): Point => shoot(of, { ...AS_FOUND, ...condition }, AT_PAPER).hole;

describe('the table of flight', () => {
  it('tears 6 in for an inch of rest at 7 ft from the point: 3/16 in for 1/32 in (common practice)', () => {
    expect(byTable.tear(departureOf({ x: 1, y: 0 }), fps(280), feet(8.8)).x).toBeCloseTo(-6, 2);
    expect(byTable.tear(departureOf({ x: 1 / 32, y: 0 }), fps(280), feet(8.8)).x).toBeCloseTo(-3 / 16, 3);
  });

  // The rigid arrow of the tests is an independent one; small angles, so that its own curve does not count.
  it.each([[20, false], [30, false], [39, false], [20, true], [30, true], [39, true]])('lands like the rigid arrow at %i yd, blades %s', (distance, broadhead) => {
    const lands = (angle: number, rate: number): number => fly({ angle, rate, broadhead }, distance * 3 - 1.8).point;
    const leaves = (angle: number, rate: number): Departure => ({ ...STRAIGHT, side: { angle: degrees(angle), rate: radiansPerSecond(rate) } });
    for (const [angle, rate] of [[1, 0], [0, 1]] as const) {
      const told = byTable.impact(leaves(angle, rate), broadhead ? 'fixed' : 'field', fps(280), fps(280), yards(distance)).x;
      expect(Math.abs(told - lands(angle, rate))).toBeLessThan(0.02 + 0.01 * Math.abs(told));
    }
  });

  it('lets an arrow fall that is slower than the sight was set for', () => {
    const falls = (speed: number): number => byTable.impact(STRAIGHT, 'field', fps(speed), fps(280), yards(20)).y;
    expect(falls(280)).toBe(0);
    // Gravity's drop goes with the square of the flight's time: 2 % of it for 1 %. 19.4 yd of the 20 are flown.
    expect(falls(280 / 1.01)).toBeCloseTo(-9.135 * (19.4 / 20) ** 2 * 0.0201, 2);
    expect(() => byTable.impact(STRAIGHT, 'field', fps(280), fps(280), yards(50))).toThrow(RangeError);
  });

  it('carries blades higher than field points, as the rigid arrow does, though they brake', () => {
    for (const distance of [20, 30, 39]) {
      const drop = (broadhead: boolean): number => fly({ gravity: true, broadhead }, distance * 3 - 1.8).point;
      expect(Math.abs(byTable.impact(STRAIGHT, 'fixed', fps(280), fps(280), yards(distance)).y - (drop(true) - drop(false)))).toBeLessThan(0.02);
    }
  });
});

describe('a bow', () => {
  it('moves the tail to where the rest goes not, and back with it', () => {
    const asFound = hole(world);
    expect(hole(world, { settings: { 'rest-side': 1 / 32 } }).x < asFound.x).toBe((world.bow.adjustments['rest-side']?.worth.x ?? 0) > 0);
    expect(hole(world, { settings: { 'rest-side': 0 } })).toEqual(asFound);
  });

  it('takes timing and nock along with its yoke', () => {
    const yoke = world.bow.adjustments.yoke;
    expect(Object.keys(yoke?.carries ?? {}).toSorted()).toEqual(['cam-sync', 'nock-height']);
    const still = withBow({ adjustments: { ...world.bow.adjustments, ...(yoke === undefined ? {} : { yoke: { ...yoke, carries: {} } }) } });
    expect(hole(world, { settings: { yoke: 2 } }).y).not.toBeCloseTo(hole(still, { settings: { yoke: 2 } }).y, 4);
  });

  it('ends a little beside where it is moved, and never beyond its travel', () => {
    const rest = world.bow.adjustments['rest-side'];
    const to = moved(world, AS_FOUND, 'rest-side', 1 / 32).settings['rest-side'] ?? NaN;
    expect(Math.abs(to - 1 / 32)).toBeLessThan(4 * (rest?.play ?? 0));
    expect(to).not.toBe(1 / 32);
    expect(moved(world, AS_FOUND, 'rest-side', 5).settings['rest-side']).toBe(rest?.travel.high);
    // The next move has luck of its own: back is not quite back.
    const back = moved(world, moved(world, AS_FOUND, 'rest-side', 1 / 32), 'rest-side', -1 / 32);
    expect(back.settings['rest-side']).not.toBe(0);
  });

  it('touches on some shots until that is cured', () => {
    const touching = withBow({ contact: { often: 0.5, push: { x: 0.1, y: 0 } } });
    const shots = Array.from({ length: 40 }, (_, shots) => shoot(touching, { ...AS_FOUND, shots }, AT_PAPER));
    const touched = shots.filter(({ contact }) => contact);
    expect(touched.length).toBeGreaterThan(5);
    expect(touched.length).toBeLessThan(35);
    const clear = hole(world);
    for (const { contact, hole: { x } } of shots) expect(x < clear.x - 0.4).toBe(contact);
    for (const shots of Array(40).keys()) expect(hole(touching, { shots, contactCured: true })).toEqual(hole(world, { shots }));
  });

  it('creeps: a part that is loose until it is tightened, a string until it has settled', () => {
    const loose = withBow({ loose: { knob: 'rest-height', from: 10, each: 1 / 256 } });
    expect(standing(loose, { ...AS_FOUND, shots: 10 })['rest-height']).toBe(0);
    expect(standing(loose, { ...AS_FOUND, shots: 26 })['rest-height']).toBe(1 / 16);
    expect(standing(loose, { ...AS_FOUND, shots: 26, tightened: true })['rest-height']).toBeUndefined();
    const settling = withBow({ creep: { nock: -1 / 32, shots: 50 } });
    expect(standing(settling, { ...AS_FOUND, shots: 0 })['nock-height']).toBe(0);
    expect(standing(settling, { ...AS_FOUND, shots: 500 })['nock-height']).toBeCloseTo(-1 / 32, 4);
  });
});

describe('an archer', () => {
  it('twists the bow until the hand is relaxed', () => {
    const twisting = { ...world, archer: { ...STILL, torque: { always: 0.05, spread: 0 } } };
    expect(hole(twisting).x).toBeLessThan(hole(world).x - 0.2);
    expect(hole(twisting, { handRelaxed: true })).toEqual(hole(world));
  });

  it('strays farther once tired, up to twice as far, and not after a rest', () => {
    const tiring = { ...HONEST, tires: { from: 40, each: 0.015 } };
    expect([0, 40, 60, 500].map((shots) => tiredness(tiring, shots))).toEqual([1, 1, 1.3, 2]);
  });

  it('reads by the marks of a rule, calls before looking, and finds no hole beyond what can be read', () => {
    const at = { paper: feet(7) };
    const reads = (x: number, y: number, called: 'good' | 'bad' = 'good') =>
      read(world, AS_FOUND, { hole: { x, y }, arrow: '1', departure: STRAIGHT, called, flier: false, contact: false }, at);
    expect(reads(0.3, -0.3)).toEqual({ x: 5 / 16, y: -5 / 16 });
    expect(reads(-0.01, 0.01)).toEqual({ x: 0, y: 0 });
    expect(reads(0.3, 0, 'bad')).toEqual({ x: 5 / 16, y: 0, called: 'bad' });
    expect(reads(4.2, 0)).toEqual({ missed: true });
  });
});

describe('arrows', () => {
  const bent = { shaft: { x: 0, y: 0.1 }, nock: { x: 0.02, y: 0 }, softer: 0 };
  const bends = { x: 0, y: 0.001 };
  it('turn their own error with the shaft, clockwise from behind; what is in the nock stays', () => {
    const at = (turn: number, vanes: 3 | 4, twice: 0 | 0.5, newNock = false) => arrowPush({ vanes, twice, bends }, bent, turn, newNock);
    expect(at(0, 4, 0)).toEqual({ x: 0.02, y: 0.1 });
    expect(at(1, 4, 0)).toEqual({ x: 0.1 + 0.02, y: 0 });
    expect(at(2, 4, 0)).toEqual({ x: 0.02, y: -0.1 });
    expect(at(1, 4, 0, true)).toEqual({ x: 0.1, y: 0 });
    // Half of it turning twice as fast: at half a turn of a shaft of four the two halves take each other away.
    expect(at(2, 4, 0.5, true).y).toBeCloseTo(0, 12);
    // With three vanes twice one turn is one turn back.
    expect(at(1, 3, 0.5, true)).toEqual({ x: 0, y: expect.closeTo(-0.05, 12) });
  });

  it('are three for tuning, in turn, without those that are left out', () => {
    expect(tuningArrows(world, { leftOut: ['2'] }).map(({ number }) => number)).toEqual(['1', '3', '4']);
    expect([1, 2, 3, 4].map((shots) => shoot(world, { ...AS_FOUND, shots }, { ...AT_PAPER, arrow: null }).arrow)).toEqual(['3', '1', '2', '3']);
    expect(() => shoot(world, AS_FOUND, { ...AT_PAPER, arrow: '99' })).toThrow(RangeError);
  });
});

describe('centre shot', () => {
  it('grows where the rest must go towards the riser: right of it for a right-handed archer', () => {
    expect([centreShot('right', 13 / 16, 1 / 16), centreShot('left', 13 / 16, 1 / 16)]).toEqual([7 / 8, 3 / 4]);
  });
});
