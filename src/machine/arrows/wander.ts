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

/** Each arrow's own centre needs two shots; fewer references in all tell nothing. */
const FEWEST = 6;
/** The newest of them, as many as the limits of scatter know. */
const MOST = 12;
/** A drift by luck in at most one set of a hundred, both axes together. */
const DRIFT_LEVEL = 1 - 0.01 / 4;

/** How the reference shots of the rounds wander beyond luck; null where they hold still, or are too few to tell. */
export function watchersWander(state: State): Wander | null {
  const shots = ownCentred(roundShots(state).filter((shot) => shot.good && shot.reference)).slice(-MOST);
  if (shots.length < FEWEST) return null;
  const spread = paperSpreadOf(state);
  const { kind, pair } = judgeConsistency(shots, spread);
  if (kind === 'inconsistent') return { kind: 'scatter', size: pair };
  const half = Math.floor(shots.length / 2);
  const [early, late] = [meanOf(shots.slice(0, half)), meanOf(shots.slice(half))];
  const limit = studentQuantile(DRIFT_LEVEL, spread.df) * spread.sd * Math.sqrt(1 / half + 1 / (shots.length - half));
  const size = Math.hypot(late.x - early.x, late.y - early.y);
  return Math.max(Math.abs(late.x - early.x), Math.abs(late.y - early.y)) > limit ? { kind: 'drift', size } : null;
}

// Tuning arrows differ a little among themselves: each shot is told from its own arrow's centre, and widened by what that costs.
function ownCentred(shots: readonly ArrowShot[]): readonly Tear[] {
  const own = (arrow: string): readonly Tear[] => shots.flatMap((shot) => (shot.arrow === arrow && shot.tear !== null ? [shot.tear] : []));
  return shots.flatMap(({ arrow, tear }) => {
    const all = own(arrow);
    if (tear === null || all.length < 2) return [];
    const centre = meanOf(all);
    const widened = Math.sqrt(all.length / (all.length - 1));
    return [{ x: (tear.x - centre.x) * widened, y: (tear.y - centre.y) * widened }];
  });
}

const meanOf = (tears: readonly Tear[]): Tear => ({
  x: tears.reduce((sum, tear) => sum + tear.x, 0) / Math.max(1, tears.length),
  y: tears.reduce((sum, tear) => sum + tear.y, 0) / Math.max(1, tears.length),
});
