// What no longer stands once the bow is set otherwise than when it was said.

import { NOT_REACHED } from './notes.ts';
import { AXES, type Axis, type Content, type KnobId } from '../content/types.ts';
import { chapterOf } from './agenda.ts';
import { ladderFor } from './loop/ladder.ts';
import { withoutAxis } from './loop/results.ts';
import { subjectOf } from './loop/sets.ts';
import type { LoopNotes } from './notes.ts';
import type { State } from './state.ts';

/** Work on cables and limbs changes both; everything else the axis that it is made for. */
export const axesOf = (content: Content, knob: KnobId): readonly Axis[] => {
  const { axis } = content.knobs[knob];
  return axis === 'none' || CABLES.includes(knob) ? AXES : [axis];
};

const CABLES: readonly KnobId[] = ['yoke', 'cam-spacers', 'cam-screw', 'cam-sync'];
export const isCableWork = (knob: KnobId): boolean => CABLES.includes(knob);

/**
 * Notes in which nothing is said any more of the axes that this adjustment touches, so that the walk judges them again.
 * While broadheads are shot only what they showed: the word about paper was about paper, and the record says that it was
 * moved since. Otherwise both, and broadheads are shot again whole: they are compared on top of what paper left.
 */
export function voided(content: Content, state: State, knob: KnobId): Partial<LoopNotes> {
  const { notes } = state;
  const touched = axesOf(content, knob);
  const without = (results: LoopNotes['axis']): LoopNotes['axis'] => touched.reduce(withoutAxis, withoutScatter(results));
  const offeredFor = Object.fromEntries(Object.entries(notes.offeredFor).filter(([axis]) => !touched.some((one) => one === axis)));
  const broad = { broadAxis: without(notes.broadAxis), broadReached: NOT_REACHED };
  if (chapterOf(state) === 'broadheads' && subjectOf(state) === 'broadheads') return { ...broad, offeredFor };
  const notForTheShop = touched.filter((axis) => notes.axis[axis]?.result === 'cannot').map((axis) => ladderFor(content, state, axis).shop);
  return {
    axis: without(notes.axis), secondDistance: null, offeredFor, broadAxis: {}, broadReached: NOT_REACHED,
    shop: notes.shop.filter((note) => !notForTheShop.includes(note)),
  };
}

// "Shots scatter" was said of the archer at another setting: with a fresh set it may be otherwise.
const withoutScatter = (results: LoopNotes['axis']): LoopNotes['axis'] =>
  Object.fromEntries(Object.entries(results).filter(([, end]) => end.result !== 'inconsistent'));

/**
 * An adjustment that came to its limit after the point that the bow is brought back to has its travel again, so it is open
 * again; and one time worse does not count twice. One that showed no response stays closed, for it does nothing wherever
 * it stands; so does one that was worse on both sides, for it stood at its best.
 */
export function openAgain(state: State, knob: KnobId, from: number): Partial<LoopNotes> {
  const { ended, worse } = state.notes;
  if (ended[knob] !== 'limit' || (worse[knob] ?? 0) >= 2) return {};
  const since = state.facts.some((fact) => fact.seq >= from && fact.decided.findings.some((f) => f.kind === 'knob' && f.knob === knob && f.result === 'limit'));
  if (!since) return {};
  const { [knob]: _closed, ...others } = ended;
  const { [knob]: _once, ...otherWorse } = worse;
  return { ended: others, worse: otherWorse };
}
