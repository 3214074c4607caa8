// Which way and how far: the response line aims, content's caps and limits cut. Mirrored tears give mirrored moves.

import type { Belief } from '../../archery/bows-that-fit.ts';
import { bestSetting, chanceWrongSign, predict, type Line } from '../../archery/response.ts';
import type { Axis, Content } from '../../content/types.ts';
import { chosen } from '../guards.ts';
import { tidy, type State } from '../state.ts';
import type { Rung } from './ladder.ts';
import { beliefOn, lineOf, pointsOf, toleranceOn } from './evidence.ts';
import { gaugeOf, type Tolerance } from './gauge.ts';
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
  const tolerance = toleranceOn(content, state, axis);
  const { aim } = tolerance;
  const onPaper = gaugeOf(state).of === 'paper';
  const from = settingNow(state, rung.knob);
  const { points, group } = pointsOf(state, axis, rung.knob);
  const tried = points.filter((p) => p.group === group).map((p) => p.x);
  const off = predict(line, from).mean - aim;
  const belief = onPaper && tried.length > 0 ? beliefOn(content, state, axis, rung.knob) : null;
  const moved = tried.some((x) => x !== from) || state.moves.some((m) => m.knob === rung.knob);
  const trial = rung.trial || (belief?.otherSide ?? wrongWay(line)) >= TRIAL_FROM || (!moved && rung.knob === 'yoke' && leanSpeaksAgainst(state, off));
  const far = knob.firstWhenFar !== null && Math.abs(off) > knob.firstWhenFar.over;
  // At distance a small step shows large, and impacts say less than tears how far is far: the normal step at most.
  const cap = !onPaper ? knob.first : moved ? knob.later : far && !trial ? (knob.firstWhenFar?.step ?? knob.first) : knob.first;

  const best = belief === null || trial ? null : likeliest(belief, rung, from, tolerance);
  const wish = (best ?? bestSetting(line, aim)) - from;
  if (wish === 0) return null;
  // A trial takes its normal step: less could not be told from luck, more is not earned yet.
  const wanted = trial ? Math.sign(wish) * knob.first : wish;
  const capped = clamp(wanted, -cap, cap);
  const steps = Math.sign(capped) * Math.max(1, Math.round(Math.abs(capped) / rung.smallest));
  const lo = Math.min(rung.lo, from);
  const hi = Math.max(rung.hi, from);
  const reached = tidy(inside(from + steps * rung.smallest, lo, hi, rung.smallest, from));
  const to = belief === null || trial || moved ? reached : cautious(belief, from, reached, rung.smallest, aim);
  return to === from || Math.sign(to - from) !== Math.sign(wish) ? null : { from, to, trial, line };
}

/** A top that leans left carries string and tail to the right: with a tail to the left of what is wanted, lean and tear disagree. */
function leanSpeaksAgainst(state: State, off: number): boolean {
  const lean = chosen(state, 'lean');
  return (lean === 'leans-left' && off < 0) || (lean === 'leans-right' && off > 0);
}

/** Chance that the slope has the other sign than the one believed. */
export const wrongWay = (line: Line): number => chanceWrongSign(line, line.slope < 0 ? -1 : 1);

/** Moves aim at the middle: at so much of the tolerance. */
const MIDDLE = 0.6;
/** Where no setting promises more than this, the line leads. */
const PROMISES = 0.02;

/** The setting of the travel that most likely brings the tear to the middle of the tolerance; null where none is likely to. */
function likeliest(belief: Belief, { lo, hi, smallest }: Rung, from: number, { low, high, aim }: Tolerance): number | null {
  const inMiddle = (x: number): number => belief.within(x, aim + MIDDLE * (low - aim), aim + MIDDLE * (high - aim));
  let [best, most] = [from, inMiddle(from)];
  // Nearest first, so that of two that are as good the nearer is taken.
  const farthest = Math.max(hi - from, from - lo);
  for (let k = 1; k * smallest <= farthest + 1e-9; k++) {
    for (const x of [from - k * smallest, from + k * smallest]) {
      const chance = x < lo - 1e-9 || x > hi + 1e-9 ? 0 : inMiddle(x);
      if (chance > most + 1e-12) [best, most] = [x, chance];
    }
  }
  return most < PROMISES ? null : best;
}

/** A first move may be worse than where it began by so much (in), with this chance beside that of the other side. */
const [WORSE_BY, EXCURSION] = [1 / 8, 0.04];

/** A first move as long as it may be without too great a chance of making it worse; one step at least. */
function cautious(belief: Belief, from: number, reached: number, smallest: number, aim: number): number {
  const way = Math.sign(reached - from);
  let to = reached;
  while (Math.abs(to - from) > smallest + 1e-9 && belief.further(to, from, aim, WORSE_BY) > belief.otherSide + EXCURSION) to = tidy(to - way * smallest);
  return to;
}

const clamp = (value: number, lo: number, hi: number): number => Math.min(hi, Math.max(lo, value));

// The nearest setting inside the limits that is a whole number of smallest steps away from where the knob stands.
function inside(wish: number, lo: number, hi: number, smallest: number, from: number): number {
  let to = wish;
  while (to < lo - 1e-9) to += smallest;
  while (to > hi + 1e-9) to -= smallest;
  return to < lo - 1e-9 ? from : to;
}
