// What is true of a practice bow in a condition: where its shots go on average, with no luck in them. Nobody at the bow sees it.

import type { Axis } from '../../../src/content/types.ts';
import type { Tear } from '../../../src/machine/types.ts';
import { speedFor } from '../../../src/archery/launch-speed.ts';
import { feet, type Yards } from '../../../src/maths/units.ts';
import { arrowPush, massOf } from '../../../src/practice/arrows.ts';
import { bowDeparture } from '../../../src/practice/bow.ts';
import { standing, type Condition } from '../../../src/practice/condition.ts';
import { departureOf, inAll, NO_PUSH, together, type Departure, type Push } from '../../../src/practice/departure.ts';
import { byTable } from '../../../src/practice/flight.ts';
import { IN_ORDER } from '../../../src/practice/reach.ts';
import { tuningArrows } from '../../../src/practice/shoot.ts';
import type { World } from '../../../src/practice/world.ts';

/** Paper is first shot from here. */
const PAPER = feet(7);

const share = ({ x, y }: Push, of: number): Push => ({ x: of * x, y: of * y });

/** The mean of all shots with the tuning arrows: bow, hand, what touches, and the arrows themselves. */
function meanDeparture(world: World, condition: Condition): Departure {
  const { bow, archer, set } = world;
  const arrows = tuningArrows(world, condition);
  const hand = archer.torque === null || condition.handRelaxed ? 0 : archer.torque.always;
  const touches = bow.contact === null || condition.contactCured ? NO_PUSH : share(bow.contact.push, bow.contact.often);
  const own = together(arrows.map((arrow) => arrowPush(set, arrow, 0, condition.newNocks.includes(arrow.number))));
  return inAll([bowDeparture(bow, standing(world, condition)), departureOf(together([{ x: hand, y: 0 }, touches, share(own, 1 / Math.max(1, arrows.length))]))]);
}

const speedOf = ({ bow, set }: World) => speedFor(bow.throws, massOf(set.parts, set.vanes));

/** The mean tear in paper, inches. */
export const meanTear = (world: World, condition: Condition): Tear => byTable.tear(meanDeparture(world, condition), speedOf(world), PAPER);

/** From the field points to the broadheads at this distance, inches. */
export function meanApart(world: World, condition: Condition, distance: Yards): Tear {
  const [departure, speed] = [meanDeparture(world, condition), speedOf(world)];
  const [field, fixed] = (['field', 'fixed'] as const).map((flying) => byTable.impact(departure, flying, speed, speed, distance));
  return { x: (fixed?.x ?? 0) - (field?.x ?? 0), y: (fixed?.y ?? 0) - (field?.y ?? 0) };
}

export const onAxis = (axis: Axis, { x, y }: Tear): number => (axis === 'side' ? x : y);

/** What the walk calls tuned at paper, by its own words. */
export const isInTolerance = (axis: Axis, tear: Tear): boolean => onAxis(axis, tear) >= IN_ORDER[axis].low && onAxis(axis, tear) <= IN_ORDER[axis].high;
