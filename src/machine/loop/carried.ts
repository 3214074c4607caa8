// What an earlier tune of this bow and archer hands over, as long as it still holds.

import type { Spread } from '../../archery/spread.ts';
import { carriedBy, type State } from '../state.ts';
import type { Carried } from '../types.ts';

/** Null for a new bow, and once a string, rest, release or arrow was replaced. */
export const carriedNow = (state: State): Carried | null => (state.notes.forgetCarried ? null : carriedBy(state));

export const carriedSpread = (state: State): Spread | null => carriedNow(state)?.spread ?? null;
