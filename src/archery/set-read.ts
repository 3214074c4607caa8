// A set of arrows as it was read from its shots (arrow-set.ts), made ready for turning all its nocks (set-index.ts).

import { checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { MEDIAN_COST, type ArrowSet, type ArrowShots } from './arrow-set.ts';
import { oneWay, shrinkFactor } from './one-way.ts';
import { indexSet, type SetIndex } from './set-index.ts';
import { checkPoints, checkSpread } from './shots.ts';

const must = checks('trulyDiffer', 'indexRead');

/** So seldom at the most do arrows that are alike look as different by luck. */
const PROVEN = 0.01;

/**
 * Whether arrows truly differ from each other, by all their shots (inches; F, both axes pooled): those that do not stand out one by one, where
 * single odd ones are a matter of their own. By simulation with twelve arrows, three shots each, of which three are bent and left out: 1 of
 * 100 sets where the others are alike, 14 to 17 where they truly differ by half a spread of a shot.
 * Throws RangeError on a shot that is not a finite number.
 */
// Example: trulyDiffer([{ arrow: 'a', shots: [{ x: 0, y: 0 }, { x: 0.1, y: 0.1 }] }, { arrow: 'b', shots: [{ x: 2, y: 2 }, { x: 2.1, y: 2.1 }] }]) is true.
export function trulyDiffer(arrows: readonly ArrowShots[]): boolean {
  for (const { shots } of arrows) checkPoints(must.trulyDiffer, shots, 'a tear');
  const among = oneWay((['x', 'y'] as const).map((axis) => arrows.map(({ shots }) => shots.map((shot) => shot[axis]))));
  return among !== null && among.p < PROVEN;
}

/**
 * How to turn the nocks of a set that was read, all with as many ways round; with what is unsure in each arrow's error and in the typical tear.
 * null for fewer than two arrows. Throws RangeError on a number that cannot be meant.
 */
// Example: indexRead({ typical: { x: 0, y: 0 }, spread: { sd: 0.1, df: 30 }, betweenSd: 0, arrows: [] }, 3) is null.
export function indexRead({ typical, spread, betweenSd, arrows }: ArrowSet, ways: number): SetIndex | null {
  checkSpread(must.indexRead, spread);
  must.indexRead.amount(betweenSd, 'how much the arrows differ');
  must.indexRead.whole(ways, 'the ways round of a nock', 1);
  checkPoints(must.indexRead, [typical, ...arrows.map(({ effect }) => effect)], 'a tear');
  for (const { count } of arrows) must.indexRead.size(count, 'the count of shots');
  if (arrows.length < 2) return null;
  const [between, luck] = [betweenSd ** 2, spread.sd ** 2];
  const inMiddle = (MEDIAN_COST * sum(arrows.map(({ count }) => between + luck / count))) / arrows.length ** 2;
  return indexSet(
    arrows.map(({ arrow, effect, count }) => ({ arrow, effect, ways, unsure: Math.sqrt((shrinkFactor(between, luck, count) * luck) / count) })),
    { tear: typical, unsure: Math.sqrt(inMiddle) },
  );
}
