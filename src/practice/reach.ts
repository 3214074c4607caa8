// Whether a practice bow can be brought into tolerance at all by what its archer may move: inside each adjustment's travel, and inside content's limits. Where it
// cannot, "this adjustment cannot" and a note for the shop are the right end.

import { AXES, knobEntries, type Axis, type KnobId } from '../content/types.ts';
import { sum } from '../maths/sum.ts';
import { feet, type Fps } from '../maths/units.ts';
import type { Adjustment, Span } from './adjustment.ts';
import { bowDeparture, ownWorth, type PracticeBow } from './bow.ts';
import { departureOf, STRAIGHT } from './departure.ts';
import { byTable } from './flight.ts';

/** What is in order at paper, in: 1/4 to each side, 1/8 low to 1/4 high (common practice; gravity alone reads low, and a little high is safe). */
export const IN_ORDER: Readonly<Record<Axis, Span>> = { height: { low: -1 / 8, high: 1 / 4 }, side: { low: -1 / 4, high: 1 / 4 } };
/** Paper is first shot from here. */
const PAPER = feet(7);
/** The nocking point stands level to so far above (in; common practice). */
const NOCK_ABOVE = 1 / 4;
/** What an archer is never sent to. */
const FOR_A_SHOP: readonly KnobId[] = ['cam-sync', 'limb-bolts'];

/** How far the archer may move this adjustment, from as found: by its screw, by its limit, in a press only with one at hand. */
export function roomOf({ hardware, measures }: PracticeBow, id: KnobId, one: Adjustment): Span {
  if (FOR_A_SHOP.includes(id) || (one.press && hardware.press !== 'trained')) return { low: 0, high: 0 };
  const { low, high } = limitsOf(measures, hardware.hand, id, one.limit);
  return { low: Math.max(one.travel.low, low), high: Math.min(one.travel.high, high) };
}

function limitsOf({ centreShot, centreShotFigure, nockHeight }: PracticeBow['measures'], hand: 'left' | 'right', id: KnobId, limit: number): Span {
  if (id === 'nock-height') return { low: Math.max(-limit, -nockHeight), high: Math.min(limit, NOCK_ABOVE - nockHeight) };
  if (id !== 'rest-side' || centreShotFigure === null) return { low: -limit, high: limit };
  const figure = (centreShot - centreShotFigure) * (hand === 'right' ? 1 : -1);
  return { low: figure - limit, high: figure + limit };
}

/** Tears (in) on this axis that the archer can reach, with what is loose, touches or twists put right. */
export function reachOf(bow: PracticeBow, speed: Fps, axis: Axis): Span {
  const on = axis === 'side' ? 'x' : 'y';
  const asFound = byTable.tear(bowDeparture(bow, {}), speed, PAPER)[on];
  const perInch = byTable.tear(departureOf({ x: 1, y: 1 }), speed, PAPER)[on] - byTable.tear(STRAIGHT, speed, PAPER)[on];
  const spans = knobEntries(bow.adjustments).map(([id, one]) => {
    const { low, high } = roomOf(bow, id, one);
    const ends = [low, high].map((setting) => perInch * ownWorth(axis, one) * setting);
    return { low: Math.min(...ends), high: Math.max(...ends) };
  });
  return { low: asFound + sum(spans.map(({ low }) => low)), high: asFound + sum(spans.map(({ high }) => high)) };
}

/** The axes that no adjustment of this archer's can bring into tolerance. */
export const outOfReach = (bow: PracticeBow, speed: Fps): readonly Axis[] => AXES.filter((axis) => {
  const { low, high } = reachOf(bow, speed, axis);
  return low > IN_ORDER[axis].high || high < IN_ORDER[axis].low;
});

export const REACHES = ['within reach', 'its travel ends first', 'its limit comes first'] as const;
export type Reach = (typeof REACHES)[number];

/** Whether an adjustment can be brought to where it should stand; where it cannot, what it comes to first on its way there. */
export function reachOfOptimum({ measures, hardware }: PracticeBow, id: KnobId, { optimum, travel, limit }: Adjustment): Reach {
  const towards = ({ low, high }: Span): number => (optimum < 0 ? -low : high);
  const [screw, limits] = [towards(travel), towards(limitsOf(measures, hardware.hand, id, limit))];
  if (Math.abs(optimum) <= Math.min(screw, limits)) return 'within reach';
  return screw < limits ? 'its travel ends first' : 'its limit comes first';
}
