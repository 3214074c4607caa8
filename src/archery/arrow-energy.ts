// What an arrow carries: energy and momentum from its mass and speed, in SI units by exact definitions and in the trade's.
// Source: NIST SP 811, appendix B.8 (units); the rest derived.
//
// Charts divide grains times speed squared by 450240 for the energy, and grains times speed by 225400 for the momentum. Two values of gravity
// are at work there (32.16 and 32.2 ft/s2, rounded by hand long ago); by the exact definitions the two are 450436.7 and 225218.3. Such
// a chart says 0.04 % too much energy and 0.08 % too little momentum: nothing that an archer could feel, but one arrow has one gravity.

import { checks } from '../maths/check.ts';
import { FOOT, FOOT_POUND, GRAIN, POUND_FORCE } from '../maths/exact.ts';
import { footPounds, inUnit, type FootPounds, type Fps, type Grains, type Measured } from '../maths/units.ts';

const must = checks('kineticEnergy', 'momentum');

export interface Energy { readonly footPounds: FootPounds; readonly joules: Measured<'J'> }

/** Kinetic energy, ft lbf and J. Throws RangeError unless mass (gr) and speed (fps) are above 0. */
// Example: kineticEnergy(350, 300) is { footPounds: 69.932, joules: 94.815 }.
export function kineticEnergy(mass: Grains, speed: Fps): Energy {
  must.kineticEnergy.size(mass, "the arrow's mass");
  must.kineticEnergy.size(speed, "the arrow's speed");
  const joules = (mass * GRAIN * (speed * FOOT) ** 2) / 2;
  return { footPounds: footPounds(joules / FOOT_POUND), joules: inUnit(joules, 'J') };
}

/** A slug foot a second is a pound of force acting for a second. */
export interface Momentum { readonly slugFeetPerSecond: Measured<'slug ft/s'>; readonly newtonSeconds: Measured<'N s'> }

/** Momentum, slug ft/s and N s (which is kg m/s). Throws RangeError unless mass (gr) and speed (fps) are above 0. */
// Example: momentum(350, 300) is { slugFeetPerSecond: 0.46621, newtonSeconds: 2.07382 }.
export function momentum(mass: Grains, speed: Fps): Momentum {
  must.momentum.size(mass, "the arrow's mass");
  must.momentum.size(speed, "the arrow's speed");
  const newtonSeconds = mass * GRAIN * speed * FOOT;
  return { slugFeetPerSecond: inUnit(newtonSeconds / POUND_FORCE, 'slug ft/s'), newtonSeconds: inUnit(newtonSeconds, 'N s') };
}
