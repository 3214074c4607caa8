// Whether shooting every arrow once more can still tell something. Two rounds of a set that shows no difference between its arrows say
// already what three would; a third is worth its shots where the arrows may differ, or where one of them is under suspicion.

import { checks } from '../maths/check.ts';
import { oneWay } from './one-way.ts';
import { screenArrows, type ArrowShots } from './arrow-set.ts';
import { checkPoints, checkPrior, type Spread } from './shots.ts';

const must = checks('thirdRoundTells');

/** Arrows that differ by nothing give a chance below this in so many of a hundred sets: then the third round is shot for nothing. */
const MAY_DIFFER = 0.3;
/** So many spreads from the typical arrow, an arrow is under suspicion. */
const SUSPECT = 2;

/**
 * After two rounds, two shots of each arrow or more (inches); `prior` is the archer's own spread at this paper, df per axis. True where
 * the arrows' centres differ by more than luck would in seven of ten like sets (F, both axes pooled), or where any arrow lies more than
 * two spreads from the typical one. By simulation with six and twelve arrows: 63 to 74 of 100 sets of like arrows are spared the third
 * round, 28 to 42 where arrows truly differ by half a spread. An arrow 4 spreads off is found as often as by three rounds always (in
 * less than 1 of 300 sets not), one 2.5 off in 34 to 42 of 100 where three rounds always find it in at most 0.6 more.
 * Throws RangeError on no shots at all, or on a number that cannot be meant.
 */
// Example: thirdRoundTells([{ arrow: 'a', shots: [{ x: 0, y: 0 }, { x: 0.1, y: 0 }] }, { arrow: 'b', shots: [{ x: 0, y: 0.1 }, { x: 0.1, y: 0 }] }],
// { sd: 0.1, df: 8 }) is false.
export function thirdRoundTells(set: readonly ArrowShots[], prior: Spread): boolean {
  checkPrior(must.thirdRoundTells, prior);
  for (const { shots } of set) checkPoints(must.thirdRoundTells, shots, 'a tear');
  if (set.every(({ shots }) => shots.length === 0)) throw must.thirdRoundTells.error('no arrow has a shot; shoot each arrow twice first');
  const among = oneWay((['x', 'y'] as const).map((axis) => set.map(({ shots }) => shots.map((shot) => shot[axis]))));
  if (among !== null && among.p < MAY_DIFFER) return true;
  const { arrows, spread } = screenArrows(set, prior);
  return arrows.some(({ away }) => away > SUSPECT * spread.sd);
}
