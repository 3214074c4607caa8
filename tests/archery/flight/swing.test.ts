// The swing of an arrow. The table: by simulation, re-derived independently with a high-order integrator.

import { describe, expect, it } from 'vitest';
import { FIXED_BLADES, MECHANICAL, unfletched, USUAL_ARROW, type FlightArrow } from '../../../src/archery/flight/arrow.ts';
import { bodyOf } from '../../../src/archery/flight/body.ts';
import { swingOf } from '../../../src/archery/flight/swing.ts';
import { USUAL_WORLD } from '../../../src/archery/flight/world.ts';
import { FOOT, INCH } from '../../../src/maths/exact.ts';
import { grains, inches } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { said } from '../said.ts';
import { must, PLAIN, PLAIN_AIR, printed, withVanes } from './oracle.ts';

const swings = (arrow: FlightArrow, world = USUAL_WORLD): { wavelength: number; decay: number; damping: number } => {
  const { swings: found } = swingOf(arrow, world);
  if (found === null) throw new Error('it does not swing');
  return { wavelength: found.wavelength * FOOT, decay: found.decay * FOOT, damping: found.damping };
};
const BLADED = { ...USUAL_ARROW, head: FIXED_BLADES };

describe('the swing of the usual arrow', () => {
  it('with a field point: margin 12.8 in, a swing of 21.6 m, down to 1/e in 38.9 m, damping 0.088', () => {
    printed(swingOf(USUAL_ARROW).margin, 12.8, 1);
    printed(swings(USUAL_ARROW).wavelength, 21.6, 1);
    printed(swings(USUAL_ARROW).decay, 38.9, 1);
    printed(swings(USUAL_ARROW).damping, 0.088, 3);
    printed(swingOf(USUAL_ARROW).swings?.wavelength ?? NaN, 71, 0);
  });
  it('with fixed blades: 4.0 in, 30.4 m, 27.7 m, 0.172', () => {
    printed(swingOf(BLADED).margin, 4, 1);
    printed(swings(BLADED).wavelength, 30.4, 1);
    printed(swings(BLADED).decay, 27.7, 1);
    printed(swings(BLADED).damping, 0.172, 3);
  });
  it('without vanes its pushes act 9.9 in ahead of the balance point, and nothing turns it back', () => {
    printed(swingOf(unfletched(USUAL_ARROW)).margin, -9.9, 1);
    expect(swingOf(unfletched(USUAL_ARROW)).swings).toBeNull();
  });
  it('at 280 fps a spring of 1.016 N m by radian, 24.8 rad/s', () => {
    const { lever, section, inertia } = bodyOf(must, USUAL_ARROW);
    const spring = (USUAL_WORLD.density * (280 * FOOT) ** 2 * section * lever) / 2;
    printed(spring, 1.016, 3);
    printed(Math.sqrt(spring / inertia), 24.8, 1);
    printed(inertia * 1000, 1.65, 3);
  });
  it.each<[string, FlightArrow, number]>([
    ['vanes 0.4 in high', withVanes({ height: inches(0.4) }), 25.9], ['vanes 0.6 in high', withVanes({ height: inches(0.6) }), 17.4],
    ['a point of 150 gr', { ...USUAL_ARROW, point: grains(150) }, 21.9], ['vanes that work to 0.6', withVanes({ efficiency: 0.6 }), 25.3],
    ['vanes that work whole', withVanes({ efficiency: 1 }), 19.2],
  ])('%s: %s m', (_name, arrow, wavelength) => printed(swings(arrow).wavelength, wavelength, 1));
  it('folded blades lie between a field point and fixed ones', () => {
    const folded = swingOf({ ...USUAL_ARROW, head: MECHANICAL }).margin;
    expect(folded).toBeLessThan(swingOf(USUAL_ARROW).margin);
    expect(folded).toBeGreaterThan(swingOf(BLADED).margin);
  });
});

// Derived, and checked against an integration by a separate program.
describe('against the closed forms', () => {
  it('arm 0.36194 m, a swing of 18.35 m, down to 1/e in 27.7 m, radius of gyration squared over the arm 0.18681 m', () => {
    const { mass, inertia, section, slope, lever, damping } = bodyOf(must, PLAIN);
    const arm = swingOf(PLAIN).margin * INCH;
    near(arm, 0.36194, 1e-4);
    near(inertia / (mass * arm), 0.18681, 1e-4);
    near(swings(PLAIN, PLAIN_AIR).wavelength, 18.35, 1e-3);
    near(swings(PLAIN, PLAIN_AIR).decay, 27.7, 2e-3);
    near(swings(PLAIN, PLAIN_AIR).wavelength, 2 * Math.PI * Math.sqrt((2 * inertia) / (1.225 * section * slope * arm)), 1e-12);
    near(swings(PLAIN, PLAIN_AIR).decay, 4 / (1.225 * section * (slope / mass + damping / inertia)), 1e-12);
    near(lever / slope, arm, 1e-12);
  });
  it('blades move the centre of all pushes forward by their share times their way from it, and nothing else', () => {
    const [plain, bladed] = [bodyOf(must, USUAL_ARROW), bodyOf(must, BLADED)];
    const share = (bladed.slope - plain.slope) / bladed.slope;
    const blades = (bladed.lever - plain.lever) / (bladed.slope - plain.slope);
    near(swingOf(BLADED).margin * INCH, plain.lever / plain.slope - share * (plain.lever / plain.slope - blades), 1e-12);
    // 14.3 by radian, 0.8 in behind the tip (by simulation, its figures).
    printed(bladed.slope - plain.slope, 14.3, 1);
    printed((blades + bladed.toTip) / INCH, 0.8, 1);
  });
  it('twice the air is a swing shorter by the root of 2, at half the decay', () => {
    const thick = { ...USUAL_WORLD, density: 2 * USUAL_WORLD.density };
    near(swings(USUAL_ARROW).wavelength / swings(USUAL_ARROW, thick).wavelength, Math.SQRT2, 1e-12);
    near(swings(USUAL_ARROW).decay / swings(USUAL_ARROW, thick).decay, 2, 1e-12);
  });
  it('no air, no swing', () => expect(swingOf(USUAL_ARROW, { ...USUAL_WORLD, density: 0 }).swings).toBeNull());
  it('what is braked more than it is lifted, and damped less, grows: it is said not to swing', () => {
    expect(swingOf({ ...USUAL_ARROW, drag: 1e6 }).swings).toBeNull();
  });
  it('throws in its own name', () => {
    expect(said(() => swingOf({ ...USUAL_ARROW, diameter: inches(0) }))).toBe("swingOf: the shaft's diameter is 0; a number above 0 is needed");
    expect(said(() => swingOf(USUAL_ARROW, { ...USUAL_WORLD, density: -1 }))).toBe('swingOf: the density of the air is -1; a number from 0 to 10 is needed');
  });
});
