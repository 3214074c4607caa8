// What the shots say, in chances: at this setting alone, and along the line of the adjustment under work.

import { huberCentre } from '../../maths/huber.ts';
import { normalQuantile } from '../../maths/normal.ts';
import { pooledSpread, USUAL_PRIOR, type Spread } from '../../archery/spread.ts';
import { chanceWithin } from '../../archery/tolerance.ts';
import { fitLine, predict, priorFromBook, type Line, type SettingPoint, type SlopePrior } from '../../archery/response.ts';
import type { Axis, Content, KnobId } from '../../content/types.ts';
import { chosen } from '../guards.ts';
import { carriedBy, type Shot, type State } from '../state.ts';
import type { Tear } from '../types.ts';
import { countingSets, FIRST_DISTANCE, goodShots, on, settingKey, settingNow, shotsHere, TOLERANCE } from './sets.ts';

/** This archer's spread, from every set that counts, both axes; `without` leaves one set out. */
export function spreadOf(state: State, without?: number): Spread {
  const groups = countingSets(state).filter((set) => set.id !== without).map(goodShots).filter((shots) => shots.length > 0);
  return pooledSpread(groups, carriedSpread(state) ?? USUAL_PRIOR);
}

/** As it was really shot: every set of this epoch, scattered ones too, until a cause is found and a new epoch begins. */
export function spreadAsShot(state: State): Spread {
  const groups = state.sets.filter((set) => set.epoch === state.notes.epoch).map(goodShots).filter((shots) => shots.length > 0);
  return pooledSpread(groups, carriedSpread(state) ?? USUAL_PRIOR);
}

function carriedSpread(state: State): Spread | null {
  return carriedBy(state)?.spread ?? null;
}

export interface Centre { readonly mean: Tear; readonly count: Tear }

export function centreOf(shots: readonly Shot[], sd: number): Centre {
  const x = huberCentre(shots.map((s) => s.x), sd);
  const y = huberCentre(shots.map((s) => s.y), sd);
  return { mean: { x: x.centre, y: y.centre }, count: { x: x.count, y: y.count } };
}

export interface AxisEvidence {
  readonly axis: Axis;
  readonly spread: Spread;
  /** Best estimate of the tear now on this axis, inches. */
  readonly mean: number;
  readonly se: number;
  readonly shots: number;
  /** Chance of being in tolerance: from the line where one is known, and from the shots here alone. */
  readonly within: number;
  readonly withinHere: number;
  readonly line: Line | null;
}

/** The evidence on one axis; null without a shot here. `knob` is the adjustment under work, if any. */
export function evidenceOn(content: Content, state: State, axis: Axis, knob: KnobId | null): AxisEvidence | null {
  const shots = shotsHere(state);
  if (shots.length === 0) return null;
  const spread = spreadOf(state);
  const centre = centreOf(shots, spread.sd);
  const mean = on(axis, centre.mean);
  const se = spread.sd / Math.sqrt(on(axis, centre.count));
  const { low, high } = TOLERANCE[axis];
  const withinHere = chanceWithin(mean, se, spread.df, low, high);
  if (knob === null || state.notes.distance !== FIRST_DISTANCE) {
    return { axis, spread, mean, se, shots: shots.length, within: withinHere, withinHere, line: null };
  }
  const line = lineOf(content, state, axis, knob);
  const at = predict(line, settingNow(state, knob));
  const within = chanceWithin(at.mean, at.sd, spread.df, low, high);
  return { axis, spread, mean: at.mean, se: at.sd, shots: shots.length, within, withinHere, line };
}

/** The response line of a knob for the group of settings that the bow is in now. */
export function lineOf(content: Content, state: State, axis: Axis, knob: KnobId): Line {
  const { points, group } = pointsOf(state, axis, knob);
  return fitLine(points, spreadOf(state).sd, priorOf(content, state, knob), group);
}

/** Settings tried for a knob, as points of its line: one per setting, epoch and position of all other knobs. */
export function pointsOf(state: State, axis: Axis, knob: KnobId): { readonly points: readonly SettingPoint[]; readonly group: number } {
  const sd = spreadOf(state).sd;
  const groups: string[] = [];
  const cells = new Map<string, { x: number; group: number; shots: Shot[] }>();
  for (const set of countingSets(state)) {
    if (set.distance !== FIRST_DISTANCE || goodShots(set).length === 0) continue;
    const group = indexIn(groups, `${set.epoch}|${settingKey(set.settings, knob)}`);
    const x = set.settings[knob] ?? 0;
    const key = `${group}|${x}`;
    const cell = cells.get(key) ?? { x, group, shots: [] };
    cell.shots.push(...goodShots(set));
    cells.set(key, cell);
  }
  const here: Partial<Record<KnobId, number>> = {};
  for (const move of state.moves) here[move.knob] = settingNow(state, move.knob);
  const group = indexIn(groups, `${state.notes.epoch}|${settingKey(here, knob)}`);
  const points = [...cells.values()].map(({ x, group: g, shots }) => {
    const centre = centreOf(shots, sd);
    return { x, mean: on(axis, centre.mean), count: settingCount(state, knob, on(axis, centre.count), sd), group: g };
  });
  return { points, group };
}

// A rest that is moved by a loosened bolt is not set exactly where it was told: its points weigh as if fewer shots were taken.
const SETTING_ERROR = 1 / 128;
const REST_GAIN = 6;

function settingCount(state: State, knob: KnobId, count: number, sd: number): number {
  const coarse = (knob === 'rest-height' || knob === 'rest-side') && chosen(state, 'rest-scale') === 'coarse';
  return coarse ? 1 / (1 / count + (SETTING_ERROR * REST_GAIN / sd) ** 2) : count;
}

function indexIn(list: string[], key: string): number {
  const found = list.indexOf(key);
  return found >= 0 ? found : list.push(key) - 1;
}

/** What is believed of a knob before this bow has answered: an earlier tune's gain, else the book's. Inches per unit. */
export function priorOf(content: Content, state: State, knob: KnobId): SlopePrior {
  const carried = state.notes.forgetBefore === 0 ? carriedBy(state)?.gains[knob] : undefined;
  if (carried !== undefined) return carried;
  const { book, wrongSign, plausible } = content.knobs[knob];
  // No book: a side that is hardly more than a guess, as unsure as content says, and a size that is plausible.
  if (book === null) return { mean: -normalQuantile(1 - wrongSign) * plausible, sd: plausible };
  return priorFromBook(book.change / book.per, wrongSign);
}
