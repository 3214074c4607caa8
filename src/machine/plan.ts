// What is to be shot next: with which arrow, head and shaft, from where, and how many of how many were taken.
// One source for the question that is asked and for the tag that the answer's shots are kept with.

import { feetIn, yards, yardsIn, type Feet } from '../maths/units.ts';
import type { Quantity, ShotPlan } from './types.ts';
import type { SetKind, ShotTag } from './notes.ts';
import { taken } from './loop/gauge.ts';
import { currentSet, goodShots } from './loop/sets.ts';
import { arrowPlan } from './arrows/plan.ts';
import { PLUMB_YARDS } from './loop/gauge-plumb.ts';
import type { Shot, State } from './state.ts';

/** Any tuning arrow, as it is: what is shot at paper. */
export const PLAIN: ShotTag = { shaft: 'fletched', head: 'field', arrow: null, nockTurn: 0 };

/** The next shot's tag and the count of the set; `already` are shots of the same answer that come before it. */
function nextShot(state: State, already: readonly ShotTag[] = []): ShotTag {
  const set = currentSet(state);
  const tags = [...(set === null ? [] : goodShots(set)).map((shot: Shot) => shot.tag ?? PLAIN), ...already];
  switch (state.notes.of) {
    case 'broadheads':
      return { ...PLAIN, head: fewer(tags, (tag) => tag.head === 'broadhead') ? 'broadhead' : 'field' };
    case 'unfletched':
      return { ...PLAIN, shaft: fewer(tags, (tag) => tag.shaft === 'unfletched') ? 'unfletched' : 'fletched' };
    case 'plumb':
      return { ...PLAIN, distance: leastShot(tags) };
    case 'arrows':
      return arrowPlan(state, already)?.tag ?? PLAIN;
    case 'paper':
      return PLAIN;
  }
}

// In turn, so that what drifts (light, arm, sight) drifts for both alike: broadhead or unfletched first where both have as many.
function fewer(tags: readonly ShotTag[], second: (tag: ShotTag) => boolean): boolean {
  const b = tags.filter(second).length;
  return b <= tags.length - b;
}

/** The distance with the fewest shots so far, the nearest first. */
function leastShot(tags: readonly ShotTag[]): Feet {
  const counts = PLUMB_YARDS.map((each) => tags.filter((tag) => tag.distance === feetIn(yards(each))).length);
  return feetIn(yards(PLUMB_YARDS[counts.indexOf(Math.min(...counts))] ?? PLUMB_YARDS[0]));
}

/** Tags for the shots of one answer, in order. */
export function tagsFor(state: State, count: number): readonly ShotTag[] {
  const tags: ShotTag[] = [];
  while (tags.length < count) tags.push(nextShot(state, tags));
  return tags;
}

/** Paper is told in feet, everything farther off in yards. */
export const distanceOf = (of: SetKind, distance: Feet): Quantity =>
  (of === 'paper' || of === 'arrows' ? { value: distance, unit: 'ft' } : { value: yardsIn(distance), unit: 'yd' });

/** Told by where it landed, from its own dot, and not by a tear. */
export const isImpact = (of: SetKind): boolean => of !== 'paper' && of !== 'arrows';

/** The plan of the standing shot, as data for the question. */
export function planOf(state: State): ShotPlan {
  const { shaft, head, arrow, nockTurn, distance } = nextShot(state);
  return {
    distance: distanceOf(state.notes.of, distance ?? state.notes.distance), shaft, head, arrow, nockTurn,
    shots: { taken: taken(state), wanted: state.notes.wanted },
  };
}
