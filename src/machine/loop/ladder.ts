// Which adjustment next: the first rung of this bow's ladder that is not done with. Order is content; this only walks it.

import type { Axis, Content, KnobId, LadderRule } from '../../content/types.ts';
import { chosen, measured, pressAtHand } from '../guards.ts';
import { tidy, type State } from '../state.ts';
import { settingsBefore } from '../undo.ts';
import { settingNow, subjectOf } from './sets.ts';

export interface Rung {
  readonly knob: KnobId;
  /** Limits of the setting against the baseline, in the knob's unit. */
  readonly lo: number;
  readonly hi: number;
  readonly trial: boolean;
  readonly smallest: number;
}

/** The ladder for this bow and axis; the last rule of content must fit any bow (lint holds it to that). */
export function ladderFor(content: Content, state: State, axis: Axis): LadderRule {
  // Without the maker's words on moving the cams, a bow with screws is one whose cams are not known.
  const told = chosen(state, 'cams') ?? 'unknown';
  const cams = told === 'screw-adjust' && chosen(state, 'cam-range') === 'not-known' ? 'unknown' : told;
  const press = pressAtHand(state);
  const fits = (rule: LadderRule): boolean =>
    rule.axis === axis && (rule.cams === 'any' || rule.cams.includes(cams)) && (rule.press === 'any' || rule.press.includes(press));
  const rule = content.ladders.find(fits);
  if (rule === undefined) throw new RangeError(`content/ladders.yaml has no rule for ${axis}, ${cams}, press ${press}`);
  return rule;
}

/** The rung under work; null when all are used up. */
export function rungNow(content: Content, state: State, axis: Axis): Rung | null {
  for (const { knob: id, soft, trial } of ladderFor(content, state, axis).rungs) {
    if (state.notes.ended[id] !== undefined) continue;
    const knob = content.knobs[id];
    const reach = soft ?? knob.soft;
    const begin = knob.from === 'maker' ? offsetFromMaker(state) : 0;
    // With broadheads the travel counts from where paper left it, inside what no tune goes beyond.
    const from = subjectOf(state) === 'broadheads' ? homeOf(state, id) : -begin;
    const lo = Math.max(from - reach, -knob.hard - begin);
    const hi = Math.min(from + reach, knob.hard - begin);
    return { knob: id, lo, hi, trial: trial === true, smallest: smallestStep(state, id, knob.smallest) };
  }
  return null;
}

/** A rest without a fine screw cannot be set closer than this, inches. */
const COARSE_REST = 1 / 32;

const smallestStep = (state: State, knob: KnobId, smallest: number): number =>
  (knob === 'rest-height' || knob === 'rest-side') && chosen(state, 'rest-scale') !== 'fine-screw' ? Math.max(smallest, COARSE_REST) : smallest;

/**
 * How far right of the maker's centre-shot figure the rest stood where the ledger is at zero, inches; 0 where it is not known.
 * Centre shot is measured from the riser to the shaft: the riser is right of the arrow for a right-handed archer. Measured anew
 * it is the truth: what the ledger said then was already in it.
 */
export function offsetFromMaker(state: State): number {
  const here = measured(state, 'centre-shot');
  const figure = measured(state, 'centre-shot-figure');
  if (here === undefined || figure === undefined) return 0;
  const at = state.answers['centre-shot']?.seq ?? 0;
  const moved = settingsBefore(state, at)['rest-side'] ?? 0;
  return tidy((chosen(state, 'hand') === 'left' ? here - figure : figure - here) - moved);
}

/** Rest further than this from the maker's figure goes back there first, whatever the tear says. Inches. */
export const OFF_FIGURE = 1 / 16;

/** Where a knob that does nothing goes back to: where the chapter began, or the maker's figure where the rest was brought there first. */
export function homeOf(state: State, knob: KnobId): number {
  if (subjectOf(state) === 'broadheads') {
    // A knob that was never moved stands at 0 in the settings of that set, whatever was done since.
    // Where the bow was brought back to paper in between, the chapter began anew after it.
    const before = state.sets.findLastIndex((set) => set.of !== 'broadheads' && set.shots.length > 0);
    const first = state.sets.slice(before + 1).find((set) => set.of === 'broadheads');
    return first === undefined ? settingNow(state, knob) : (first.settings[knob] ?? 0);
  }
  const begun = offsetFromMaker(state);
  return knob === 'rest-side' && Math.abs(begun) > OFF_FIGURE + 1e-9 ? tidy(-begun) : 0;
}

/** How far right of the maker's figure the rest stands now. */
export const restOffset = (state: State): number => offsetFromMaker(state) + settingNow(state, 'rest-side');
