// The references watch the archer: the same arrows should make the same tears from the first shot to the last. Where they
// do not, by more than luck, no arrow is blamed.

import { judgeConsistency } from '../../archery/consistency.ts';
import { studentQuantile } from '../../maths/student.ts';
import { paperSpreadOf } from '../loop/evidence.ts';
import type { State } from '../state.ts';
import type { Tear } from '../types.ts';
import { roundShots, type ArrowShot } from './shots.ts';

export interface Wander {
  /** `scatter`: they lie too far apart. `drift`: the later ones lie elsewhere than the earlier ones. */
  readonly kind: 'scatter' | 'drift';
  /** How far, inches. */
  readonly size: number;
}

/** Fewer references than this tell nothing. */
const FEWEST = 6;
/** The newest of them, as many as the limits of scatter know. */
const MOST = 12;
/** A drift by luck in at most one set of a hundred, both axes together. */
const DRIFT_LEVEL = 1 - 0.01 / 4;

interface Watched {
  /** Which shot of the rounds it was, counted from the arrow's own middle one. */
  readonly at: number;
  /** Its tear from its own arrow's centre, inches: tuning arrows differ a little among themselves. */
  readonly off: Tear;
  readonly of: number;
}

/** How the reference shots of the rounds wander beyond luck; null where they hold still, or are too few to tell. */
export function watchersWander(state: State): Wander | null {
  const shots = roundShots(state).filter((shot) => shot.good);
  const watched = fromOwnCentre(shots);
  if (watched.length < FEWEST) return null;
  const { sd, df } = paperSpreadOf(state);
  const square = watched.reduce((sum, { at }) => sum + at ** 2, 0);
  const slope = (axis: 'x' | 'y'): number => watched.reduce((sum, { at, off }) => sum + at * off[axis], 0) / square;
  const limit = (studentQuantile(DRIFT_LEVEL, df) * sd) / Math.sqrt(square);
  const [x, y] = [slope('x'), slope('y')];
  if (Math.max(Math.abs(x), Math.abs(y)) > limit) return { kind: 'drift', size: Math.hypot(x, y) * (shots.length - 1) };
  // Taken from a centre of their own few shots they lie closer than they were shot.
  const asShot = watched.slice(-MOST).map(({ off, of }) => scaled(off, Math.sqrt(of / (of - 1))));
  const { kind, pair } = judgeConsistency(asShot, { sd, df });
  return kind === 'inconsistent' ? { kind: 'scatter', size: pair } : null;
}

function fromOwnCentre(shots: readonly ArrowShot[]): readonly Watched[] {
  const references = shots.flatMap(({ arrow, reference, tear }, at) => (reference && tear !== null ? [{ arrow, tear, at }] : []));
  return references.flatMap(({ arrow, tear, at }): readonly Watched[] => {
    const own = references.filter((one) => one.arrow === arrow);
    if (own.length < 2) return [];
    const mean = (value: (one: (typeof own)[number]) => number): number => own.reduce((sum, one) => sum + value(one), 0) / own.length;
    return [{ at: at - mean((one) => one.at), off: { x: tear.x - mean((one) => one.tear.x), y: tear.y - mean((one) => one.tear.y) }, of: own.length }];
  });
}

const scaled = ({ x, y }: Tear, by: number): Tear => ({ x: x * by, y: y * by });
