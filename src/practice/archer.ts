// Whoever shoots a practice bow: how far one shot strays from the next, what is called, what is read from the hole, what is moved, what is
// found when it is looked for. Sizes are assumed where no source is named.

import type { Random } from '../maths/random.ts';
import { degrees, radiansPerSecond } from '../maths/units.ts';
import type { Leaving } from '../archery/launch.ts';
import { between, happens, logNormal } from './chance.ts';
import { OFTEN } from './often.ts';

/** One shot of an ordinary archer, a standard deviation on each axis: tears of 0.18 in at 7 ft from the point (derived by launch.ts). */
export const SHOT_NOISE: Leaving = { angle: degrees(0.25), rate: radiansPerSecond(0.22) };
/** Where the archer aims, milliradians on each axis, one standard deviation. */
export const AIM_NOISE = 1.2;

export interface PracticeArcher {
  /** How far a shot strays, against SHOT_NOISE. */
  readonly noise: number;
  /** How often a shot fails, how much farther it strays then, and how often that is called before the hole is looked at. */
  readonly fliers: { readonly often: number; readonly times: number; readonly called: number };
  /** How often a good shot is called bad. */
  readonly callsGood: number;
  /** From so many shots on each strays farther by this share, up to twice as far, until the archer has rested. */
  readonly tires: { readonly from: number; readonly each: number };
  /** What the bow hand does, inches of rest to the right: always, and from shot to shot. Gone once the hand is relaxed. */
  readonly torque: { readonly always: number; readonly spread: number } | null;
  readonly reads: {
    /** To this mark (in) at paper and at the target, after an error of this spread at paper. */
    readonly paper: number; readonly target: number; readonly error: number;
    /** How often a sheet is read from behind: left for right. */
    readonly mirrored: number;
  };
  /** How often an adjustment is moved by a step too many or too few, and how often that is seen and told. */
  readonly wrongAmount: { readonly often: number; readonly told: number };
  /** How often something is found that is there and is looked for. */
  readonly finds: number;
  readonly use: 'target' | 'hunting';
  readonly heads: 'fixed' | 'mechanical' | 'never';
  /** Whether every arrow of the set is shot. */
  readonly shootsAll: boolean;
}

/** Reads by the 1/16 in, calls every failed shot, moves what is told and finds what is there. */
export const HONEST: PracticeArcher = {
  noise: 1,
  fliers: { often: 0, times: 4, called: 1 }, callsGood: 0,
  tires: { from: 40, each: 0 },
  torque: null,
  reads: { paper: 1 / 16, target: 1 / 4, error: 0, mirrored: 0 },
  wrongAmount: { often: 0, told: 1 },
  finds: 1,
  use: 'target', heads: 'never', shootsAll: false,
};

/** An archer as anybody may be. */
export function archerBy(chance: Random): PracticeArcher {
  const { archer } = OFTEN;
  const [noise, twists, always, spread] = [logNormal(chance, 1, 0.3), happens(chance, archer.twists), 0.04 * chance.normal(), between(chance, 0.01, 0.04)];
  const [fromBehind, hunts] = [happens(chance, archer.readsFromBehind), happens(chance, archer.hunts)];
  const [opens, all] = [happens(chance, archer.bladesThatOpen), happens(chance, archer.shootsAll)];
  return {
    noise,
    fliers: { often: archer.fails, times: 4, called: archer.callsIt }, callsGood: archer.callsGood,
    tires: { from: 40, each: 0.015 },
    torque: twists ? { always, spread } : null,
    reads: { paper: 1 / 16, target: 1 / 4, error: 1 / 50, mirrored: fromBehind ? archer.fromBehind : 0 },
    wrongAmount: { often: archer.wrongAmount, told: archer.wrongTold },
    finds: archer.finds,
    use: hunts ? 'hunting' : 'target', heads: !hunts ? 'never' : opens ? 'mechanical' : 'fixed', shootsAll: all,
  };
}

/** How much farther a shot strays than the first of the day. */
// Example: tiredness(HONEST, 100) is 1.
export const tiredness = ({ tires: { from, each } }: PracticeArcher, sinceRest: number): number => Math.min(2, 1 + each * Math.max(0, sinceRest - from));

export const mirroredArcher = (archer: PracticeArcher): PracticeArcher =>
  (archer.torque === null ? archer : { ...archer, torque: { ...archer.torque, always: 0 - archer.torque.always } });
