// Which way and how far: the response line aims, content's caps and limits cut. Mirrored tears give mirrored moves.

import { bestSetting, chanceWrongSign, predict, type Line } from '../../archery/response.ts';
import type { Axis, Content } from '../../content/types.ts';
import { tidy, type State } from '../state.ts';
import type { Rung } from './ladder.ts';
import { lineOf, pointsOf, toleranceOn } from './evidence.ts';
import { gaugeOf } from './gauge.ts';
import { settingNow } from './sets.ts';

export interface Sized {
  readonly from: number;
  readonly to: number;
  readonly trial: boolean;
  readonly line: Line;
}

/** A side that is wrong with this chance or more is only ever tried, not told. */
export const TRIAL_FROM = 0.2;

/** The next setting of a rung's knob; null where no step inside its limits promises anything. */
export function sizeMove(content: Content, state: State, axis: Axis, rung: Rung): Sized | null {
  const knob = content.knobs[rung.knob];
  const line = lineOf(content, state, axis, rung.knob);
  const { aim } = toleranceOn(state, axis);
  const onPaper = gaugeOf(state).of === 'paper';
  const from = settingNow(state, rung.knob);
  const { points, group } = pointsOf(state, axis, rung.knob);
  const tried = points.filter((p) => p.group === group).map((p) => p.x);
  const off = predict(line, from).mean - aim;
  const trial = rung.trial || wrongWay(line) >= TRIAL_FROM;
  const moved = tried.some((x) => x !== from) || state.moves.some((m) => m.knob === rung.knob);
  const far = knob.firstWhenFar !== null && Math.abs(off) > knob.firstWhenFar.over;
  // At distance a small step shows large, and impacts say less than tears how far is far: the normal step at most.
  const cap = !onPaper ? knob.first : moved ? knob.later : far && !trial ? (knob.firstWhenFar?.step ?? knob.first) : knob.first;

  const wish = bestSetting(line, aim) - from;
  // A trial takes its normal step: less could not be told from luck, more is not earned yet.
  const wanted = trial ? Math.sign(wish) * knob.first : wish;
  const capped = clamp(wanted, -cap, cap);
  const steps = Math.sign(capped) * Math.max(1, Math.round(Math.abs(capped) / rung.smallest));
  const lo = Math.min(rung.lo, from);
  const hi = Math.max(rung.hi, from);
  const to = tidy(inside(from + steps * rung.smallest, lo, hi, rung.smallest, from));
  return to === from || Math.sign(to - from) !== Math.sign(wish) ? null : { from, to, trial, line };
}

/** Chance that the slope has the other sign than the one believed. */
export const wrongWay = (line: Line): number => chanceWrongSign(line, line.slope < 0 ? -1 : 1);

const clamp = (value: number, lo: number, hi: number): number => Math.min(hi, Math.max(lo, value));

// The nearest setting inside the limits that is a whole number of smallest steps away from where the knob stands.
function inside(wish: number, lo: number, hi: number, smallest: number, from: number): number {
  let to = wish;
  while (to < lo - 1e-9) to += smallest;
  while (to > hi + 1e-9) to -= smallest;
  return to < lo - 1e-9 ? from : to;
}
