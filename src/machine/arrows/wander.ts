// The archer is watched, too: the same arrows should make the same tears from the first shot to the last. Where the references scatter,
// or all arrows drift, by more than luck, no arrow is blamed.

import { judgeConsistency } from '../../archery/consistency.ts';
import { judgeDrift } from '../../archery/drift.ts';
import { paperSpreadOf } from '../loop/evidence.ts';
import type { State } from '../state.ts';
import type { Tear } from '../types.ts';
import { roundShots, type ArrowShot } from './shots.ts';

export interface Wander {
  /** `scatter`: the references lie too far apart. `drift`: the later shots lie elsewhere than the earlier ones. */
  readonly kind: 'scatter' | 'drift';
  /** How far, inches. */
  readonly size: number;
}

/** Fewer references than this tell nothing. */
const FEWEST = 6;
/** The newest of them, as many as the limits of scatter know. */
const MOST = 12;

interface Watched {
  /** Its tear from its own arrow's centre, inches: tuning arrows differ a little among themselves. */
  readonly off: Tear;
  readonly of: number;
}

/** How the shots of the rounds wander beyond luck; null where they hold still, or are too few to tell. */
export function watchersWander(state: State): Wander | null {
  const shots = roundShots(state).filter((shot) => shot.good);
  const watched = fromOwnCentre(shots);
  if (watched.length < FEWEST) return null;
  const turns = inTurn(shots);
  const drift = judgeDrift([...new Set(turns.map(({ arrow }) => arrow))].map((arrow) => turns.filter((shot) => shot.arrow === arrow)));
  if (drift?.drifts === true) return { kind: 'drift', size: drift.size };
  // Taken from a centre of their own few shots they lie closer than they were shot.
  const asShot = watched.slice(-MOST).map(({ off, of }) => scaled(off, Math.sqrt(of / (of - 1))));
  const { kind, pair } = judgeConsistency(asShot, paperSpreadOf(state));
  return kind === 'inconsistent' ? { kind: 'scatter', size: pair } : null;
}

const inTurn = (shots: readonly ArrowShot[]): readonly { readonly arrow: string; readonly at: number; readonly tear: Tear }[] =>
  shots.flatMap(({ arrow, tear }, at) => (tear === null ? [] : [{ arrow, at, tear }]));

function fromOwnCentre(shots: readonly ArrowShot[]): readonly Watched[] {
  const references = shots.flatMap(({ arrow, reference, tear }) => (reference && tear !== null ? [{ arrow, tear }] : []));
  return references.flatMap(({ arrow, tear }): readonly Watched[] => {
    const own = references.filter((one) => one.arrow === arrow);
    if (own.length < 2) return [];
    const mean = (value: (one: (typeof own)[number]) => number): number => own.reduce((sum, one) => sum + value(one), 0) / own.length;
    return [{ off: { x: tear.x - mean((one) => one.tear.x), y: tear.y - mean((one) => one.tear.y) }, of: own.length }];
  });
}

const scaled = ({ x, y }: Tear, by: number): Tear => ({ x: x * by, y: y * by });
