// Paper and broadheads speak of the same arrow: a tail off to one side points the blades to the other, and they fly there. Where the two
// disagree, contact, hand or heads are likelier than the rest.

import type { Axis, Content } from '../../content/types.ts';
import type { State } from '../state.ts';
import { centreOf } from './centre.ts';
import { paperSpreadOf, readingHere } from './evidence.ts';
import { gaugeOf } from './gauge.ts';
import { FIRST_DISTANCE, on, shotsFrom } from './sets.ts';

/** A tear nearer to the middle of what is called tuned (in), or one that may be luck, speaks against nothing. */
const SHOWS_FROM = 1 / 8;
const SURE = 1.96;

/** The tear on this axis that paper left at these settings, inches, where broadheads land to the side that it speaks against; null elsewhere. */
export function paperAgainst({ tolerance }: Content, state: State, axis: Axis): number | null {
  const heads = gaugeOf(state).of === 'broadheads' ? readingHere(state) : null;
  const shots = shotsFrom(state, FIRST_DISTANCE, 'paper');
  if (heads === null || shots.length === 0) return null;
  const { sd } = paperSpreadOf(state);
  const centre = centreOf(shots, sd);
  const tear = on(axis, centre.mean);
  const off = tear - (tolerance[axis].low + tolerance[axis].high) / 2;
  const shown = Math.abs(off) >= Math.max(SHOWS_FROM, (SURE * sd) / Math.sqrt(on(axis, centre.count)));
  return shown && Math.sign(off) === Math.sign(on(axis, heads.mean)) ? tear : null;
}
