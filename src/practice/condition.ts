// What becomes of a practice bow while it is shot and moved: where its adjustments really stand, what was cured, how tired the archer is. Plain
// data, so that it can be kept; nobody at the bow sees it.

import { knobEntries } from '../content/types.ts';
import { sum } from '../maths/sum.ts';
import type { Settings } from './adjustment.ts';
import { SIDEWAYS } from './bow.ts';
import { chanceOf } from './chance.ts';
import type { World } from './world.ts';

export interface Condition {
  /** Where every adjustment really stands, against as found. */
  readonly settings: Settings;
  /** Shots so far, moves so far, and the shot after which the archer last rested. */
  readonly shots: number;
  readonly moves: number;
  readonly rested: number;
  /** What was found and put right. */
  readonly contactCured: boolean;
  readonly handRelaxed: boolean;
  readonly tightened: boolean;
  /** Arrows with a new nock, and arrows that are left out. */
  readonly newNocks: readonly string[];
  readonly leftOut: readonly string[];
}

export const AS_FOUND: Condition = {
  settings: {}, shots: 0, moves: 0, rested: 0, contactCured: false, handRelaxed: false, tightened: false, newNocks: [], leftOut: [],
};

/** A move of one adjustment by `change` of its unit: it ends a little beside, by the play in its screw, and never beyond its travel. */
export function moved(world: World, condition: Condition, knob: keyof Settings, change: number): Condition {
  const one = world.bow.adjustments[knob];
  const moves = condition.moves + 1;
  const from = condition.settings[knob] ?? 0;
  if (one === undefined) return { ...condition, moves, settings: { ...condition.settings, [knob]: sum([from, change]) } };
  const side = SIDEWAYS.includes(knob) ? world.side : 1;
  const play = one.play * side * chanceOf(world.seed, 'move', moves).normal();
  const to = Math.max(one.travel.low, Math.min(one.travel.high, sum([from, change, play])));
  return { ...condition, moves, settings: { ...condition.settings, [knob]: to } };
}

/** Where the adjustments stand for the next shot, with what has crept since: a part that is loose, a string that settles. */
export function standing({ bow: { loose, creep, adjustments } }: World, { settings, shots, tightened }: Condition): Settings {
  const crept = new Map(knobEntries(settings));
  const add = (knob: keyof Settings, by: number): unknown => crept.set(knob, sum([crept.get(knob) ?? 0, by]));
  if (loose !== null && !tightened) {
    add(loose.knob, loose.each * Math.max(0, shots - loose.from));
    // No screw goes farther than it is long.
    const travel = adjustments[loose.knob]?.travel;
    if (travel !== undefined) crept.set(loose.knob, Math.max(travel.low, Math.min(travel.high, crept.get(loose.knob) ?? 0)));
  }
  if (creep !== null) add('nock-height', creep.nock * (1 - Math.exp(-shots / creep.shots)));
  return Object.fromEntries(crept);
}
