// What moves an arrow, by hand on a body of round figures.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FIXED_BLADES, MECHANICAL, unfletched, USUAL_ARROW } from '../../../src/archery/flight/arrow.ts';
import { bodyOf, type Body } from '../../../src/archery/flight/body.ts';
import { changeOf, type Across, type Motion } from '../../../src/archery/flight/forces.ts';
import { USUAL_WORLD, type World } from '../../../src/archery/flight/world.ts';
import { must, withVanes } from './oracle.ts';

const BODY: Body = {
  mass: 2, inertia: 4, toTip: 1, toNock: 1, diameter: 0.5, section: 0.25, drag: 8, slope: 16, lever: 4, damping: 2, strips: [-0.5, 0.5], strip: 1,
};
const WORLD: World = { ...USUAL_WORLD, density: 0.02, gravity: 0, crossFlow: 0 };
const REST: Across = { at: 0, speed: 0, turn: 0, turning: 0 };
/** At 100 m/s half the density times the square of the speed is 100; on the section 25. */
const motion = (side: Partial<Across>, height: Partial<Across> = {}): Motion =>
  ({ x: 7, speed: 100, side: { ...REST, ...side }, height: { ...REST, ...height } });

describe('the change of a motion, by hand', () => {
  it('straight on it is only braked: 25 N on the section, by 8, of 2 kg', () => {
    const still = { at: 0, speed: 0, turn: 0, turning: -0 };
    expect(changeOf(BODY, WORLD)(motion({}))).toEqual({ x: 100, speed: -100, side: still, height: still });
  });
  it('a slant of 0.01 pushes by 16 and turns back by 4; the drag along the turned body pulls the other way', () => {
    const { side, height } = changeOf(BODY, WORLD)(motion({ turn: 0.01 }));
    expect(side.speed).toBeCloseTo((25 * 0.16 - 25 * 8 * 0.01) / 2, 12);
    expect(side.turning).toBeCloseTo((-25 * 4 * 0.01) / 4, 12);
    expect(height.speed).toBe(0);
  });
  it('going aside is a slant the other way, of the speed onwards, without drag across', () => {
    const { side } = changeOf(BODY, WORLD)(motion({ speed: 0.001 }));
    expect(side.at).toBe(0.001);
    expect(side.speed).toBeCloseTo((-25 * 16 * 1e-5) / 2, 9);
    expect(side.turning).toBeCloseTo((25 * 4 * 1e-5) / 4, 9);
  });
  it('turning meets the air too: by the way it turns in the time of a metre', () => {
    const { side } = changeOf(BODY, WORLD)(motion({ turning: 2 }));
    expect(side.turn).toBe(2);
    expect(side.speed).toBeCloseTo((25 * 4 * 0.02) / 2, 12);
    expect(side.turning).toBeCloseTo((-25 * 2 * 0.02) / 4, 12);
  });
  it('the shaft is braked across by the square: two pieces of half a square metre, at 100 N/m2', () => {
    const across = { ...WORLD, crossFlow: 2 };
    const [with0, without] = [across, WORLD].map((world) => changeOf(BODY, world)(motion({ turn: 0.1 })));
    expect((with0?.side.speed ?? NaN) - (without?.side.speed ?? NaN)).toBeCloseTo((2 * 2 * 100 * 0.5 * 0.1 ** 2) / 2, 12);
    expect(with0?.side.turning).toBeCloseTo(without?.side.turning ?? NaN, 12);
    // Turning about its middle its ends meet the air by 0.05 either way.
    const [turning, plain] = [across, WORLD].map((world) => changeOf(BODY, world)(motion({ turning: 10 })));
    expect((turning?.side.turning ?? NaN) - (plain?.side.turning ?? NaN)).toBeCloseTo((-2 * 2 * 100 * 0.5 * 0.05 ** 2 * 0.5) / 4, 12);
    expect(turning?.side.speed).toBeCloseTo(plain?.side.speed ?? NaN, 12);
  });
  it('and by the slant of both axes together: 3 and 4 are 5', () => {
    const across = { ...WORLD, crossFlow: 2 };
    const [both, none] = [across, WORLD].map((world) => changeOf(BODY, world)(motion({ turn: 0.03 }, { turn: 0.04 })));
    expect((both?.side.speed ?? NaN) - (none?.side.speed ?? NaN)).toBeCloseTo((2 * 2 * 100 * 0.5 * 0.05 * 0.03) / 2, 12);
    expect((both?.height.speed ?? NaN) - (none?.height.speed ?? NaN)).toBeCloseTo((2 * 2 * 100 * 0.5 * 0.05 * 0.04) / 2, 12);
  });
  it('up is as sideways, but for what falls', () => {
    const launch = { speed: 1, turn: 0.02, turning: -3 };
    const world = { ...WORLD, crossFlow: 1, gravity: 9 };
    const [side, up] = [changeOf(BODY, world)(motion(launch)), changeOf(BODY, world)(motion({}, launch))];
    expect(up.height).toEqual({ ...side.side, speed: side.side.speed - 9 });
    expect(side.height.speed).toBe(-9);
    expect(up.speed).toBe(side.speed);
  });
});

describe('the energy of moving and turning', () => {
  const within = (most: number): fc.Arbitrary<number> => fc.double({ min: -most, max: most, noNaN: true });
  const across: fc.Arbitrary<Across> = fc.record({ at: within(1), speed: within(4), turn: within(0.05), turning: within(4) });
  const bodies = [
    USUAL_ARROW, { ...USUAL_ARROW, head: FIXED_BLADES }, { ...USUAL_ARROW, head: MECHANICAL }, unfletched(USUAL_ARROW), withVanes({ efficiency: 1 }),
  ].map((arrow) => bodyOf(must, arrow));
  it('never grows while nothing falls, however an arrow slants and turns, up to 3 degrees and 4 rad/s on each axis', () => {
    fc.assert(fc.property(fc.constantFrom(...bodies), fc.double({ min: 60, max: 120, noNaN: true }), across, across, (body, speed, side, height) => {
      const by = changeOf(body, { ...USUAL_WORLD, gravity: 0 })({ x: 0, speed, side, height });
      const moving = body.mass * (speed * by.speed + side.speed * by.side.speed + height.speed * by.height.speed);
      const turning = body.inertia * (side.turning * by.side.turning + height.turning * by.height.turning);
      expect(moving + turning).toBeLessThan(0);
    }), { numRuns: 300 });
  });
  it('without air it stays as it is, and falling takes it from height', () => {
    fc.assert(fc.property(across, across, (side, height) => {
      const by = changeOf(bodyOf(must, USUAL_ARROW), { ...USUAL_WORLD, density: 0, gravity: 9 })({ x: 0, speed: 80, side, height });
      expect([by.speed, by.side.speed, by.height.speed, by.side.turning, by.height.turning].map((one) => one + 0)).toEqual([0, 0, -9, 0, 0]);
    }));
  });
});
