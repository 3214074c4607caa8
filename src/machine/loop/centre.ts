// Where shots that all show the same thing lie, so that a far one counts only partly.

import { huberCentre } from '../../maths/huber.ts';
import type { Tear } from '../types.ts';

/** Best estimate in inches, and on each axis how many full shots it is worth: its error is spread / sqrt(count). */
export interface Centre { readonly mean: Tear; readonly count: Tear }

export function centreOf(shots: readonly Tear[], sd: number): Centre {
  const x = huberCentre(shots.map((s) => s.x), sd);
  const y = huberCentre(shots.map((s) => s.y), sd);
  return { mean: { x: x.centre, y: y.centre }, count: { x: x.count, y: y.count } };
}
