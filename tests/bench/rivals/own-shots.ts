// What a rule makes of the shots alone: the centre of a setting, and the spread over all settings, on one axis.
//
//   s^2 = (3 * 0.20^2 + sum of w * d^2) / (3 + sum of (shots - 1)),  d from the setting's Huber centre, w the shot's Huber weight

import { chanceWithin } from '../../../src/archery/tolerance.ts';
import { huberCentre } from '../../../src/maths/huber.ts';
import { sum } from '../../../src/maths/sum.ts';
import type { Tried } from './one-knob.ts';

/** Before anything is known of the archer, inches and degrees of freedom. */
const USUAL = { sd: 0.2, df: 3 };
/** Three readings told alike are common. */
const LEAST = 0.03;
/** Of a reading told to the nearest 1/16 in (derived: width / sqrt 12). */
const ROUNDING = 1 / 16 / Math.sqrt(12);

export interface Seen {
  readonly sd: number;
  readonly df: number;
  readonly points: readonly { readonly x: number; readonly mean: number; readonly count: number }[];
}

export function seenSoFar(tried: Tried): Seen {
  const groups = [...tried.bySetting];
  const df = USUAL.df + sum(groups.map(([, shots]) => shots.length - 1));
  let { sd } = USUAL;
  for (let pass = 0; pass < 2; pass++) {
    const squares = groups.map(([, shots]) => {
      const { centre, weights } = huberCentre(shots, sd);
      return sum(shots.map((y, i) => (weights[i] ?? 0) * (y - centre) ** 2));
    });
    sd = Math.max(LEAST, Math.hypot(Math.sqrt((USUAL.df * USUAL.sd ** 2 + sum(squares)) / df), ROUNDING));
  }
  return { sd, df, points: groups.map(([x, shots]) => ({ x, ...centreOf(shots, sd) })) };
}

export function centreOf(shots: readonly number[], sd: number): { readonly mean: number; readonly count: number } {
  const { centre, count } = huberCentre(shots, sd);
  return { mean: centre, count };
}

/** Chance of being in tolerance by the shots at one setting alone; 0 without a shot there. */
export function chanceByShots({ sd, df, points }: Seen, setting: number, within: number): number {
  const here = points.find(({ x }) => x === setting);
  return here === undefined ? 0 : chanceWithin(here.mean, sd / Math.sqrt(here.count), df, -within, within);
}
