// Plain rules around the reading of a set of arrows: when it is not the arrows, and when one arrow that was shot again in turn
// with a reference is to blame.

import { checks } from '../maths/check.ts';
import { huberCentre } from '../maths/huber.ts';
import { checkPoint, checkPoints, checkSpread, type Point, type Spread } from './shots.ts';

const must = checks('tooManyOdd', 'blame');

/** More than a third of the set is odd, two arrows at least: then it is the bow or the batch, not the arrows (common practice).
 *  Throws RangeError unless both are whole and no more are odd than there are. */
// Example: tooManyOdd(2, 6) is false; tooManyOdd(3, 6) is true.
export function tooManyOdd(odd: number, of: number): boolean {
  must.tooManyOdd.whole(odd, 'the count of odd arrows', 0);
  must.tooManyOdd.whole(of, 'the count of arrows', 0);
  if (odd > of) throw must.tooManyOdd.error(`${odd} of ${of} arrows are odd; there cannot be more odd arrows than arrows`);
  return odd >= 2 && 3 * odd > of;
}

const SUSPECT_SHOTS = 3;
const REFERENCE_SHOTS = 2;
const NEAR = 1 / 4;
/** Every single shot lies at least so far the same way, as a share of the limit: a good arrow with one wild shot does not. */
const EACH = 1 / 2;

/**
 * A suspect shot again in turn with a reference arrow (inches; good shots, its first ones included). It is the arrow where its
 * centre lies further from the typical arrow than 1/4 in and two spreads, and all its shots lie that way. A reference whose own
 * centre is that far off says that the archer or the bow moved meanwhile: then nothing is said of the suspect.
 * null with fewer than three shots of the suspect or two of the reference. To ask of each single shot that it lies beyond
 * the limit would find an arrow that is 3 spreads off in 62 of 100 cases with three shots and in 44 with five; this rule finds it in
 * 92 and 88. A good arrow is blamed in fewer than 1 of 100, one with a wild shot (6 spreads) among three in 3; the reference is
 * wrongly said to have moved in 1 to 2 (all by simulation). Throws RangeError on numbers that cannot be meant.
 */
// Example: blame([{ x: 1, y: 0 }, { x: 1, y: 0.1 }, { x: 0.9, y: 0 }], [{ x: 0, y: 0 }, { x: 0.1, y: 0 }], { x: 0, y: 0 }, { sd: 0.2, df: 12 })
// is 'the arrow'.
export function blame(
  suspect: readonly Point[], reference: readonly Point[], typical: Point, spread: Spread,
): 'the arrow' | 'not the arrow' | 'reference moved' | null {
  checkSpread(must.blame, spread);
  checkPoint(must.blame, typical, "the typical arrow's tear");
  checkPoints(must.blame, [...suspect, ...reference], 'a tear');
  const [own, others] = [offsets(suspect, typical), offsets(reference, typical)];
  if (own.length < SUSPECT_SHOTS || others.length < REFERENCE_SHOTS) return null;
  const limit = Math.max(NEAR, 2 * spread.sd);
  if (size(centreOf(others, spread.sd)) > limit) return 'reference moved';
  const centre = centreOf(own, spread.sd);
  const far = size(centre);
  // Along the direction of the centre: that is what "the same way" means.
  const sameWay = own.every((shot) => shot.x * centre.x + shot.y * centre.y >= EACH * limit * far);
  return far > limit && sameWay ? 'the arrow' : 'not the arrow';
}

function offsets(shots: readonly Point[], typical: Point): readonly Point[] {
  return shots.map(({ x, y }) => ({ x: x - typical.x, y: y - typical.y }));
}

const centreOf = (shots: readonly Point[], sd: number): Point =>
  ({ x: huberCentre(shots.map((s) => s.x), sd).centre, y: huberCentre(shots.map((s) => s.y), sd).centre });

const size = (p: Point): number => Math.hypot(p.x, p.y);
