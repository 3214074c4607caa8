// Between the archer's distances, which count from the bow hand, and those of the flight model, which count from the point as it leaves the string.

import { checks } from '../../maths/check.ts';
import { feet, inches, type Feet, type Inches } from '../../maths/units.ts';

const must = checks('fromPoint');

/** in; common practice. */
const USUAL_BRACE = inches(7);

/**
 * Distance (ft) from the point of an arrow of this length (in) as it leaves the string, of what stands at `fromHand` (ft) from the bow hand: the string is at
 * brace height (in) behind the hand then. Throws RangeError unless all are above 0 and it stands beyond the point.
 */
// Example: fromPoint(8.8, 28.5) is 7.008; fromPoint(20, 28, 6) is 18.167.
export function fromPoint(fromHand: Feet, length: Inches, brace: Inches = USUAL_BRACE): Feet {
  must.fromPoint.size(fromHand, 'the distance from the bow hand');
  must.fromPoint.size(length, "the arrow's length");
  must.fromPoint.size(brace, 'the brace height');
  const beyond = fromHand - (length - brace) / 12;
  if (!(beyond > 0)) throw must.fromPoint.error(`${fromHand} ft from the bow hand is nearer than the point of the arrow; give a distance beyond it`);
  return feet(beyond);
}
