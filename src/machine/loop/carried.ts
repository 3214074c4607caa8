// What an earlier tune hands over, as long as it still holds: the spread is the archer's, the gains are the bow's.

import type { Spread } from '../../archery/spread.ts';
import { pickedBow, type Picked } from '../known-bow.ts';
import type { State } from '../state.ts';
import type { Carried } from '../types.ts';

/** Nothing holds for a new bow, nor once a string, rest, release or arrow was replaced, whether told at the start or later. */
function holding(state: State): Picked | null {
  const picked = state.notes.forgetCarried ? null : pickedBow(state);
  return picked === null || picked.as === 'replaced' ? null : picked;
}

export function carriedSpread(state: State): Spread | null {
  const picked = holding(state);
  return picked?.as === 'same' ? picked.carried.spread : null;
}

/** Inches of tear for one unit of each knob, as learned. */
export const carriedGains = (state: State): Carried['gains'] => holding(state)?.carried.gains ?? {};

/** The same on the axis that a knob is not made for. */
export const carriedBesides = (state: State): Carried['gains'] => holding(state)?.carried.besides ?? {};
