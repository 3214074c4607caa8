// What the shots say, in chances: at this setting alone, and along the line of the adjustment under work.

import { normalQuantile } from '../../maths/normal.ts';
import type { Spread } from '../../archery/spread.ts';
import { mayBeDead } from '../../archery/may-be-dead.ts';
import type { Way } from '../../archery/truly-worse.ts';
import { fitLine, predict, priorFromBook, type Line, type SettingPoint, type SlopePrior } from '../../archery/response.ts';
import type { Axis, BookRow, Content, Knob, KnobId } from '../../content/types.ts';
import { chosen } from '../guards.ts';
import type { Shot, State } from '../state.ts';
import { carriedGains } from './carried.ts';
import type { Centre } from './centre.ts';
import { gaugeAt, gaugeOf, type Judged, type Tolerance } from './gauge.ts';
import { spreadOver } from './pooled.ts';
import { countingSets, FIRST_DISTANCE, on, settingKey, settingNow, shotsHere } from './sets.ts';

/** The spread of one shot at what is measured now, from every set of it that counts; `without` leaves one set out. */
export const spreadOf = (state: State, without?: number): Spread =>
  spreadOver(gaugeOf(state), countingSets(state).filter((set) => set.id !== without));

/** The spread of one tear in paper, whatever is shot now: it is the archer's own, kept for the record and for the next tune. */
export const paperSpreadOf = (state: State): Spread => spreadOver(gaugeAt(state, 'paper', FIRST_DISTANCE), countingSets(state, 'paper'));

/** As it was really shot: every set of this epoch, scattered ones too, until a cause is found and a new epoch begins. */
export function spreadAsShot(state: State): Spread {
  const gauge = gaugeOf(state);
  return spreadOver(gauge, state.sets.filter((set) => set.of === gauge.of && set.epoch === state.notes.epoch));
}

/** What is wanted on an axis of what is measured now, inches. */
export const toleranceOn = (state: State, axis: Axis): Tolerance => gaugeOf(state).tolerance(axis, spreadOf(state));

/** What the shots at the present setting and distance show; null while they show nothing. */
export const readingHere = (state: State): Centre | null => gaugeOf(state).read(shotsHere(state), spreadOf(state).sd);

export interface AxisEvidence {
  readonly axis: Axis;
  readonly spread: Spread;
  /** Best estimate of the tear now on this axis, inches. */
  readonly mean: number;
  readonly se: number;
  readonly shots: number;
  /** What that comes to: from the line where one is known; and the chance of being in tolerance by the shots here alone. */
  readonly says: Judged['says'];
  readonly within: number;
  readonly withinHere: number;
  readonly line: Line | null;
}

/** The evidence on one axis; null without a shot here. `knob` is the adjustment under work, if any. */
export function evidenceOn(content: Content, state: State, axis: Axis, knob: KnobId | null): AxisEvidence | null {
  const gauge = gaugeOf(state);
  const here = shotsHere(state);
  const spread = spreadOf(state);
  const centre = gauge.read(here, spread.sd);
  if (centre === null) return null;
  const shots = gauge.count(here);
  const mean = on(axis, centre.mean);
  const se = spread.sd / Math.sqrt(on(axis, centre.count));
  const alone = gauge.judgeShots?.(here, spread) ?? gauge.judge(axis, mean, se, spread, shots);
  if (knob === null || pointsOf(state, axis, knob).points.length === 0) {
    return { axis, spread, mean, se, shots, ...alone, withinHere: alone.within, line: null };
  }
  const line = lineOf(content, state, axis, knob);
  const at = predict(line, settingNow(state, knob));
  return { axis, spread, mean: at.mean, se: at.sd, shots, ...gauge.judge(axis, at.mean, at.sd, spread, shots), withinHere: alone.within, line };
}

/** The response line of a knob for the group of settings that the bow is in now. */
export function lineOf(content: Content, state: State, axis: Axis, knob: KnobId): Line {
  const { points, group } = pointsOf(state, axis, knob);
  return fitLine(points, spreadOf(state).sd, priorOf(content, state, knob), group);
}

/** A point of a line, and how many good shots it was made of. */
export interface TriedPoint extends SettingPoint { readonly shots: number }

/** Settings tried for a knob, as points of its line: one per setting, epoch and position of all other knobs. */
export function pointsOf(state: State, axis: Axis, knob: KnobId): { readonly points: readonly TriedPoint[]; readonly group: number } {
  const gauge = gaugeOf(state);
  const sd = spreadOf(state).sd;
  const groups: string[] = [];
  const cells = new Map<string, { x: number; group: number; shots: Shot[] }>();
  for (const set of countingSets(state)) {
    const shots = gauge.comparable(set);
    if (shots.length === 0) continue;
    const group = indexIn(groups, `${set.epoch}|${settingKey(set.settings, knob)}`);
    const x = set.settings[knob] ?? 0;
    const key = `${group}|${x}`;
    const cell = cells.get(key) ?? { x, group, shots: [] };
    cell.shots.push(...shots);
    cells.set(key, cell);
  }
  const here: Partial<Record<KnobId, number>> = {};
  for (const move of state.moves) here[move.knob] = settingNow(state, move.knob);
  const group = indexIn(groups, `${state.notes.epoch}|${settingKey(here, knob)}`);
  const points = [...cells.values()].flatMap(({ x, group: g, shots }) => {
    const centre = gauge.read(shots, sd);
    return centre === null ? [] : [{ x, mean: on(axis, centre.mean), count: settingCount(state, knob, on(axis, centre.count), sd), group: g, shots: gauge.count(shots) }];
  });
  return { points, group };
}

// A rest that is moved by a loosened bolt is not set exactly where it was told: its points weigh as if fewer shots were taken.
const SETTING_ERROR = 1 / 128;
const REST_GAIN = 6;

function settingCount(state: State, knob: KnobId, count: number, sd: number): number {
  const coarse = (knob === 'rest-height' || knob === 'rest-side') && chosen(state, 'rest-scale') === 'coarse';
  const gain = REST_GAIN * Math.abs(gaugeOf(state).perTear.ratio);
  return coarse ? 1 / (1 / count + (SETTING_ERROR * gain / sd) ** 2) : count;
}

function indexIn(list: string[], key: string): number {
  const found = list.indexOf(key);
  return found >= 0 ? found : list.push(key) - 1;
}

/** What is believed of a knob before this bow has answered, inches of what is measured now for one unit of the knob. */
export function priorOf(content: Content, state: State, knob: KnobId): SlopePrior {
  const { of, perTear: { ratio, unsure, wrongSide } } = gaugeOf(state);
  // What paper taught about this very bow comes before what the book says of all.
  const { mean, sd } = (of === 'paper' ? undefined : state.notes.learned[knob]) ?? priorOnPaper(content, state, knob, wrongSide);
  return { mean: mean * ratio, sd: Math.abs(ratio) * Math.hypot(sd, unsure * mean) };
}

/** An earlier tune's gain, else the book's. Inches of tear per unit. */
function priorOnPaper(content: Content, state: State, knob: KnobId, wrongSide: number): SlopePrior {
  const carried = carriedGains(state)[knob];
  if (carried !== undefined) return carried;
  const { book, wrongSign, dead } = bookOf(content.knobs[knob], state);
  const { plausible } = content.knobs[knob];
  // No book: a side that is hardly more than a guess, as unsure as content says, and a size that is plausible.
  const alive = book === null ? { mean: -normalQuantile(1 - wrongSign) * plausible, sd: plausible } : priorFromBook(book.change / book.per, Math.min(wrongSign, wrongSide));
  return mayBeDead(alive, dead);
}

/** Size of a response around what the book says, as a share: one standard deviation. */
const AROUND = 0.6;

/** In which ways a knob may work here, and how likely each is beforehand: by what was learned; else as the book says, to the other side, or not at all. */
export function waysOf(content: Content, state: State, knob: KnobId): readonly Way[] {
  const { of, perTear: { ratio, unsure, wrongSide } } = gaugeOf(state);
  if ((of !== 'paper' && state.notes.learned[knob] !== undefined) || carriedGains(state)[knob] !== undefined) return [{ share: 1, slope: priorOf(content, state, knob) }];
  const { book, wrongSign, dead } = bookOf(content.knobs[knob], state);
  const size = book === null ? -content.knobs[knob].plausible : book.change / book.per;
  const slope = (sign: 1 | -1): Way['slope'] => ({ mean: sign * size * ratio, sd: Math.abs(size * ratio) * Math.hypot(AROUND, unsure) });
  const wrong = Math.min(wrongSign, wrongSide);
  return [{ share: dead, slope: null }, { share: (1 - dead) * (1 - wrong), slope: slope(1) }, { share: (1 - dead) * wrong, slope: slope(-1) }];
}

/** What the book says of an adjustment on this bow: the first of its rows that fits its cams and its rest, else what is said of all. */
export function bookOf({ book, books, wrongSign, dead }: Knob, state: State): Pick<Knob, 'book' | 'wrongSign' | 'dead'> {
  const fits = (values: BookRow['cams'], step: string): boolean => values === 'any' || values.includes(chosen(state, step) ?? 'unknown');
  const row = books.find(({ cams, rest }) => fits(cams, 'cams') && fits(rest, 'rest'));
  return row === undefined ? { book, wrongSign, dead } : { book: row, wrongSign: row.wrongSign, dead: row.dead };
}
