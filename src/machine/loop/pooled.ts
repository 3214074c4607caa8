// The spread over sets of shots, worked out once: one turn asks for the same ones many times, and so does the next turn until
// another shot is made. Sets never change, so what names them names all of their shots.

import type { Spread } from '../../archery/spread.ts';
import { once } from '../../maths/once.ts';
import type { ShotSet } from '../state.ts';
import type { Gauge } from './gauge-shape.ts';
import { goodShots } from './sets.ts';

let last = 0;
const nameOf = once((_set: ShotSet) => `${++last}`);
/** Kept with the newest of the sets, and forgotten with it. */
const spreadsTo = once((_newest: ShotSet) => new Map<string, Spread>());

/** `gauge.spread` of these sets; sets without a good shot say nothing. */
export function spreadOver(gauge: Gauge, sets: readonly ShotSet[]): Spread {
  const shot = sets.filter((set) => goodShots(set).length > 0);
  const newest = shot.at(-1);
  if (newest === undefined) return gauge.spread(shot);
  const { of, distance, prior } = gauge;
  const spreads = spreadsTo(newest);
  const key = `${of} ${distance} ${prior.sd} ${prior.df} ${shot.map(nameOf).join()}`;
  const spread = spreads.get(key) ?? gauge.spread(shot);
  spreads.set(key, spread);
  return spread;
}
