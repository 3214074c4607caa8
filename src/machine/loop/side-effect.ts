// What an adjustment does on the axis that it is not made for. Most do next to nothing there, so it is told only where the shots leave
// no doubt of its side, and where it is large enough to matter; and it is learned like any answer of the bow.

import { fitLine } from '../../archery/response.ts';
import type { Axis, Content, KnobId } from '../../content/types.ts';
import { studentCdf } from '../../maths/student.ts';
import type { State } from '../state.ts';
import type { Gain } from '../types.ts';
import { carriedBesides } from './carried.ts';
import { pointsOf, spreadOf, toleranceOn } from './evidence.ts';
import { gaugeOf } from './gauge.ts';
import { otherAxis, settingNow } from './sets.ts';

/** What one normal step usually does to the tail on the other axis, inches: one standard deviation, around nothing (a guess). */
const USUAL = 1 / 10;
/** And where it plainly does something: how large that may be. What is usual would make it too small. */
const WHERE_IT_DOES = 1 / 4;
/** Smaller than this, nobody needs to know of it: inches, and half of what is in tolerance. */
const MATTERS = 1 / 8;
/**
 * Chance of its side from which it is told. By simulation, where one change in ten has such an effect: of those that are told 90 in
 * 100 are there, by three to five shots at either setting (with 0.975 and no belief beforehand 64); a quarter of what is there is told.
 */
const SURE = 0.99;

export interface SideEffect extends Gain {
  readonly axis: Axis;
  /** What it has come to since the adjustment stood where its first set was shot, inches. */
  readonly change: number;
  /** True where it is beyond doubt, and large enough to be told. */
  readonly told: boolean;
}

/** What the shots at all settings of a knob show of the other axis; null where that is not seen, or it was shot at one setting alone. */
export function sideEffectOf(content: Content, state: State, id: KnobId): SideEffect | null {
  const { axis: own, first } = content.knobs[id];
  const gauge = gaugeOf(state);
  if (own === 'none' || !gauge.axes.includes(otherAxis(own))) return null;
  const axis = otherAxis(own);
  const { points, group } = pointsOf(state, axis, id);
  const [begun] = points.filter((point) => point.group === group);
  if (begun === undefined || points.every((point) => point.x === begun.x)) return null;
  const spread = spreadOf(state);
  const fit = (usual: number): Gain => {
    const { mean, sd } = knownBesides(state, id) ?? { mean: 0, sd: usual / first };
    const { ratio } = gauge.perTear;
    const { slope, varSlope } = fitLine(points, spread.sd, { mean: mean * ratio, sd: sd * Math.abs(ratio) }, group);
    return { mean: slope, sd: Math.sqrt(varSlope) };
  };
  const [doubtful, { mean, sd }] = [fit(USUAL), fit(WHERE_IT_DOES)];
  const moved = settingNow(state, id) - begun.x;
  const { low, high } = toleranceOn(content, state, axis);
  const told = Math.abs(doubtful.mean * moved) >= Math.max(MATTERS, (high - low) / 4) && studentCdf(Math.abs(doubtful.mean) / doubtful.sd, spread.df) >= SURE;
  return { axis, mean, sd, change: mean * moved + 0, told };
}

/** What is known of it before the shots that are looked at now: from an earlier tune, and away from paper from paper. Inches of tear per unit. */
export function knownBesides(state: State, id: KnobId): Gain | undefined {
  const carried = carriedBesides(state)[id];
  return gaugeOf(state).of === 'paper' ? carried : (state.notes.besides[id] ?? carried);
}

/** What one unit of a knob is expected to do on the other axis, inches of what is measured now; null where that is not learned, or not seen. */
export function expectedBesides(state: State, id: KnobId, on: Axis): Gain | null {
  const known = state.notes.besides[id] ?? carriedBesides(state)[id];
  const { axes, perTear: { ratio } } = gaugeOf(state);
  return known === undefined || !axes.includes(on) ? null : { mean: known.mean * ratio, sd: known.sd * Math.abs(ratio) };
}
