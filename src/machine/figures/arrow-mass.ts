// The mass of an arrow, from one place for all that hangs on it: as a scale told it, or else added up from its parts. What is
// held against a limit is the least that those parts may weigh; a sum that lacks a part is no mass at all.

import { leastMass, massOfParts, type ArrowParts } from '../../archery/arrow-parts.ts';
import { oneOf } from '../../maths/closed.ts';
import { grains, type Grains } from '../../maths/units.ts';
import type { Measure, MeasureOf } from '../measures.ts';
import { chosen, measured, notKnown, type Told } from '../told.ts';

/** Asked once the mass is not known: have it weighed, or add it up? */
export const MASS_WAY = 'mass-way';

/** What an arrow is added up from, in the order in which it is asked. */
export const PARTS = [
  'shaft-grains', 'shaft-length', 'point-grains', 'insert-grains', 'nock-grains', 'vane-count', 'vane-grains', 'wrap-grains',
] as const;
export type Part = (typeof PARTS)[number];
export const isPart = oneOf(PARTS);

export interface ArrowMass {
  readonly by: 'scale' | 'parts';
  /** The likeliest figure: for what an arrow carries, never for a limit. */
  readonly likely: Grains;
  /** What every limit is held against. */
  readonly least: Grains;
}

/** The mass in force; null where it is not known, or not every part is. */
export function arrowMass(state: Told): ArrowMass | null {
  const weighed = measured(state, 'arrow-mass');
  if (weighed !== undefined) return { by: 'scale', likely: weighed, least: weighed };
  const parts = arrowParts(state);
  return parts === null ? null : { by: 'parts', likely: massOfParts(parts), least: leastMass(parts) };
}

/** All parts, where the arrow is added up and not weighed; null where one of them is not told, or not known. */
export function arrowParts(state: Told): ArrowParts | null {
  if (!isAddedUp(state)) return null;
  const [shaft, length] = [part(state, 'shaft-grains'), part(state, 'shaft-length')];
  const [point, insert, nock, wrap] = [part(state, 'point-grains'), part(state, 'insert-grains'), part(state, 'nock-grains'), part(state, 'wrap-grains')];
  const count = part(state, 'vane-count');
  const each = count === 0 ? grains(0) : part(state, 'vane-grains');
  if (shaft === undefined || length === undefined || point === undefined || insert === undefined || nock === undefined) return null;
  if (wrap === undefined || count === undefined || each === undefined) return null;
  return { shaft, length, point, insert, nock, wrap, vanes: { count, each } };
}

/** The mass in force is "not known", and not only not asked yet. */
export const isNotWeighed = (state: Told): boolean => notKnown(state, 'arrow-mass');

/** And it is added up instead. */
export const isAddedUp = (state: Told): boolean => isNotWeighed(state) && chosen(state, MASS_WAY) === 'add-up';

/**
 * What is still to be answered until a mass that is not known is known, first one first: how to go about it, then each part; the
 * scale where a part is not known. Nothing where it is known, or not asked yet.
 */
export function openForMass(state: Told): readonly string[] {
  if (!isNotWeighed(state)) return [];
  const way = chosen(state, MASS_WAY);
  if (way === undefined) return [MASS_WAY];
  if (way !== 'add-up' || PARTS.some((id) => isOfNow(state, id) && notKnown(state, id))) return ['arrow-mass'];
  return PARTS.filter((id) => part(state, id) === undefined && !(id === 'vane-grains' && part(state, 'vane-count') === 0));
}

// Parts that were told before the mass was last asked for are of another arrow, as far as anybody knows.
const isOfNow = ({ answers }: Told, id: Part): boolean => (answers[id]?.seq ?? 0) >= (answers['arrow-mass']?.seq ?? Infinity);

const part = <P extends Part & Measure>(state: Told, id: P): MeasureOf<P> | undefined => (isOfNow(state, id) ? measured(state, id) : undefined);
