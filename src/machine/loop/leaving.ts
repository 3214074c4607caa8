// What the tears at both close distances show of how the arrow leaves: with its tail off to one side, or turning. A tear mixes the two, and near
// distances mix them much alike, so most often they cannot be told apart: then that is said. Nothing is ever moved for it.

import { broadheadsApart, launchFrom, type Launch, type PaperTear } from '../../archery/launch.ts';
import type { Axis, Content } from '../../content/types.ts';
import { inches, type Feet } from '../../maths/units.ts';
import type { Shot, State } from '../state.ts';
import { phrase, shortSide } from '../words.ts';
import { centreOf } from './centre.ts';
import { paperSpreadOf } from './evidence.ts';
import { tunedAxes } from './results.ts';
import { FIRST_DISTANCE, on, SECOND_DISTANCE, shotsFrom } from './sets.ts';

/** From so many standard errors on a side is told: of those told, 98 in 100 are right, with other vanes too (by simulation). */
const SURE = 1.96;
/** One in ten lies beyond. */
const ALLOWS = 1.645;

interface Leaving { readonly axis: Axis; readonly launch: Launch; readonly angle: number; readonly rate: number }

/** The shots from a distance that are to be looked at, and the axes: those that are tuned. */
export interface Looked { readonly axes: readonly Axis[]; readonly from: (distance: Feet) => readonly Shot[] }

const looked = (state: State): Looked => ({ axes: tunedAxes(state), from: (distance) => shotsFrom(state, distance, 'paper') });

/** Of each axis; `angle` and `rate` in their standard errors. None where nothing was shot from one of these distances. */
function leavings(state: State, { axes, from }: Looked, distances: readonly Feet[]): readonly Leaving[] {
  const { sd } = paperSpreadOf(state);
  const sets = distances.flatMap((distance) => {
    const shots = from(distance);
    return shots.length === 0 ? [] : [{ distance, centre: centreOf(shots, sd) }];
  });
  if (sets.length < distances.length) return [];
  return axes.map((axis) => {
    const tears = sets.map(({ distance, centre }): PaperTear => ({ distance, tear: inches(on(axis, centre.mean)), error: inches(sd / Math.sqrt(on(axis, centre.count))) }));
    const launch = launchFrom(tears, axis);
    return { axis, launch, angle: launch.angle / launch.errors.angle, rate: launch.rate / launch.errors.rate };
  });
}

type Shown = Leaving & { readonly kind: 'angle' | 'turning' | 'both' };

/** The axis that shows most of it; null where the two distances do not tell the two apart. */
function mostShown(all: readonly Leaving[]): Shown | null {
  const told = all.flatMap((one): Shown[] => {
    const [angle, rate] = [Math.abs(one.angle) >= SURE, Math.abs(one.rate) >= SURE];
    return angle || rate ? [{ ...one, kind: angle && rate ? 'both' : angle ? 'angle' : 'turning' }] : [];
  });
  const most = ({ angle, rate }: Leaving): number => Math.max(Math.abs(angle), Math.abs(rate));
  return told.toSorted((a, b) => most(b) - most(a))[0] ?? null;
}

/** One sentence on what the two distances show, or that they are too near one another to show it; none where one was not shot. */
export const leavingInWords = (content: Content, state: State): readonly string[] => inWords(content, state, looked(state), 'leaving');

/** The same for the record, of these axes and shots. */
export const leavingInShort = (content: Content, state: State, of: Looked): readonly string[] => inWords(content, state, of, 'record-leaving');

function inWords(content: Content, state: State, of: Looked, id: 'leaving' | 'record-leaving'): readonly string[] {
  const all = leavings(state, of, [FIRST_DISTANCE, SECOND_DISTANCE]);
  if (all.length === 0) return [];
  const shown = mostShown(all);
  const distances = { near: FIRST_DISTANCE, far: SECOND_DISTANCE };
  if (shown === null) return [phrase(content, `${id}-open`, distances)];
  const side = (value: number): string => shortSide(shown.axis, value);
  return [phrase(content, `${id}-${shown.kind}`, { ...distances, angle: side(shown.angle), rate: side(shown.rate) })];
}

/** How far apart (in) fixed-blade broadheads and field points may still land at 20 yd by what was shot at paper, on the axis that leaves more open; null where nothing was. */
export function stillApart(state: State): number | null {
  const both = leavings(state, looked(state), [FIRST_DISTANCE, SECOND_DISTANCE]);
  const all = both.length > 0 ? both : leavings(state, looked(state), [FIRST_DISTANCE]);
  if (all.length === 0) return null;
  return Math.max(...all.map(({ launch }) => {
    const { apart, errorInAll } = broadheadsApart(launch);
    return Math.abs(apart) + ALLOWS * errorInAll;
  }));
}
