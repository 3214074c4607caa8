// What the shots say, in chances: at this setting alone, and along the line of the adjustment under work.

import { normalQuantile } from '../../maths/normal.ts';
import { bowsThatFit, type Answers, type Belief, type Reading } from '../../archery/bows-that-fit.ts';
import { LEAST, pooledOf, type Spread } from '../../archery/spread.ts';
import { mayBeDead } from '../../archery/may-be-dead.ts';
import type { Way } from '../../archery/truly-worse.ts';
import { fitLine, predict, priorFromBook, type Line, type SettingPoint, type SlopePrior } from '../../archery/response.ts';
import type { Axis, BookRow, Content, Knob, KnobId } from '../../content/types.ts';
import { chosen } from '../guards.ts';
import { settingsOf, type Shot, type ShotSet, type State } from '../state.ts';
import { carriedGains } from './carried.ts';
import type { Centre } from './centre.ts';
import { gaugeAt, gaugeOf, type Judged, type Tolerance } from './gauge.ts';
import { spreadOver } from './pooled.ts';
import { saysOf } from './gauge-paper.ts';
import { countingSets, currentSet, FIRST_DISTANCE, goodShots, on, otherAxis, settingKey, settingNow, shotsHere } from './sets.ts';

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

/** What is wanted on an axis of what is measured now, inches: on paper the middle of what content calls tuned. */
export function toleranceOn({ tolerance }: Content, state: State, axis: Axis): Tolerance {
  const { low, high } = tolerance[axis];
  return gaugeOf(state).impacts?.tolerance(axis, spreadOf(state)) ?? { low, high, aim: (low + high) / 2 };
}

/** What the shots at the present setting and distance show; null while they show nothing. */
export const readingHere = (state: State): Centre | null => gaugeOf(state).read(shotsHere(state), spreadOf(state).sd);

export interface AxisEvidence {
  readonly axis: Axis;
  readonly spread: Spread;
  /** Best estimate of the tear now on this axis, inches. */
  readonly mean: number;
  readonly se: number;
  /** The same by the shots here alone. */
  readonly meanHere: number;
  readonly shots: number;
  /** What that comes to: from the line where one is known; and the chance of being in tolerance by the shots here alone. */
  readonly says: Judged['says'];
  readonly within: number;
  readonly withinHere: number;
  readonly line: Line | null;
  /** All bows that fit, where paper is shot; null elsewhere. */
  readonly belief: Belief | null;
}

/** The evidence on one axis; null without a shot here. `knob` is the adjustment under work, if any. */
export function evidenceOn(content: Content, state: State, axis: Axis, knob: KnobId | null): AxisEvidence | null {
  const gauge = gaugeOf(state);
  const here = shotsHere(state);
  const spread = spreadOf(state);
  const centre = gauge.read(here, spread.sd);
  if (centre === null) return null;
  const shots = gauge.count(here);
  const moved = knob !== null && pointsOf(state, axis, knob).points.length > 0;
  const { impacts } = gauge;
  if (impacts === null) {
    const belief = beliefOn(content, state, axis, moved ? knob : null);
    const at = predict(belief.line, moved ? settingNow(state, knob) : 0);
    const { low, high } = toleranceOn(content, state, axis);
    const within = belief.within(moved ? settingNow(state, knob) : 0, low, high);
    const withinHere = belief.withinAlone(on(axis, centre.mean), on(axis, centre.count), low, high);
    return { axis, spread, mean: at.mean, se: at.sd, meanHere: on(axis, centre.mean), shots, within, says: saysOf(within, shots), withinHere, line: moved ? belief.line : null, belief };
  }
  const mean = on(axis, centre.mean);
  const se = spread.sd / Math.sqrt(on(axis, centre.count));
  const alone = gauge.judgeShots?.(here, spread) ?? impacts.judge(axis, mean, se, spread, shots);
  if (!moved) return { axis, spread, mean, se, meanHere: mean, shots, ...alone, withinHere: alone.within, line: null, belief: null };
  const line = lineOf(content, state, axis, knob);
  const at = predict(line, settingNow(state, knob));
  return { axis, spread, mean: at.mean, se: at.sd, meanHere: mean, shots, ...impacts.judge(axis, at.mean, at.sd, spread, shots), withinHere: alone.within, line, belief: null };
}

/** All bows that fit what paper showed on an axis, along one adjustment; or at this setting alone. Asked for where there are shots. */
export function beliefOn(content: Content, state: State, axis: Axis, knob: KnobId | null): Belief {
  const answers = knob === null ? [{ share: 1, about: null }] : answersOf(content, state, knob);
  return bowsThatFit(answers, usualOn(state, axis), knob === null ? here(state, axis) : readingsOf(state, axis, knob));
}

const here = (state: State, axis: Axis): readonly Reading[] => shotsHere(state).map((shot) => ({ x: 0, tear: on(axis, shot), group: 0, counts: 1 }));

/** Every reading of a knob's line, that of the present group last; in each as they were shot. */
function readingsOf(state: State, axis: Axis, knob: KnobId): readonly Reading[] {
  const gauge = gaugeOf(state);
  const groups: string[] = [];
  const all = countingSets(state).flatMap((set) => {
    const group = indexIn(groups, groupOf(set, knob));
    return gauge.comparable(set).map((shot) => ({ x: set.settings[knob] ?? 0, tear: on(axis, shot), group }));
  });
  const present = indexIn(groups, groupNow(state, knob));
  const [others, own] = [all.filter(({ group }) => group !== present), all.filter(({ group }) => group === present)];
  // A setting that is not exactly where it was told: all shots there share that error, so each one more counts less.
  const wide = settingVariance(state, knob);
  const times = new Map<string, number>();
  return [...others.toSorted((a, b) => a.group - b.group), ...own].map((one) => {
    const key = `${one.group}|${one.x}`;
    const n = (times.get(key) ?? 0) + 1;
    times.set(key, n);
    const worth = (shots: number): number => (shots === 0 ? 0 : 1 / (1 / shots + wide));
    return { ...one, counts: worth(n) - worth(n - 1) };
  });
}

/** Spread of one reading on an axis before it was read there: what the other axis showed in all earlier sets, and what is usual. */
function usualOn(state: State, axis: Axis): Spread {
  const { prior } = gaugeOf(state);
  const set = currentSet(state);
  const groups = countingSets(state).filter(({ id }) => id !== set?.id)
    .map((one) => goodShots(one).map((shot) => on(otherAxis(axis), shot))).filter((tears) => tears.length > 1);
  // What is known beforehand is known of both axes together, and counts here once.
  return pooledOf(groups, { sd: prior.sd, df: prior.df / 2 }, LEAST);
}

/** The response line of a knob for the group of settings that the bow is in now. */
export function lineOf(content: Content, state: State, axis: Axis, knob: KnobId): Line {
  const { points, group } = pointsOf(state, axis, knob);
  if (gaugeOf(state).of === 'paper' && points.some((point) => point.group === group)) return beliefOn(content, state, axis, knob).line;
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
    const group = indexIn(groups, groupOf(set, knob));
    const x = set.settings[knob] ?? 0;
    const key = `${group}|${x}`;
    const cell = cells.get(key) ?? { x, group, shots: [] };
    cell.shots.push(...shots);
    cells.set(key, cell);
  }
  const group = indexIn(groups, groupNow(state, knob));
  const points = [...cells.values()].flatMap(({ x, group: g, shots }) => {
    const centre = gauge.read(shots, sd);
    return centre === null ? [] : [{ x, mean: on(axis, centre.mean), count: settingCount(state, knob, on(axis, centre.count), sd), group: g, shots: gauge.count(shots) }];
  });
  return { points, group };
}

// A rest that is moved by a loosened bolt is not set exactly where it was told: its points weigh as if fewer shots were taken.
const SETTING_ERROR = 1 / 128;
const REST_GAIN = 6;

const settingCount = (state: State, knob: KnobId, count: number, sd: number): number => 1 / (1 / count + settingVariance(state, knob, sd));

/** Variance of what a setting shows that comes of how it was set, as a share of one shot's. */
function settingVariance(state: State, knob: KnobId, sd = spreadOf(state).sd): number {
  const coarse = (knob === 'rest-height' || knob === 'rest-side') && chosen(state, 'rest-scale') === 'coarse';
  return coarse ? (SETTING_ERROR * REST_GAIN * Math.abs(gaugeOf(state).perTear.ratio) / sd) ** 2 : 0;
}

/** What shots along one adjustment must share to be of one line: the epoch, and where all other adjustments stand. */
const groupOf = ({ epoch, settings }: Pick<ShotSet, 'epoch' | 'settings'>, knob: KnobId): string => `${epoch}|${settingKey(settings, knob)}`;
const groupNow = ({ notes: { epoch }, moves }: State, knob: KnobId): string => groupOf({ epoch, settings: settingsOf(moves) }, knob);

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

/** In which ways a knob may work on impacts, and how likely each is beforehand: by what was learned; else as the book says, to the other side, or not at all. */
export function waysOf(content: Content, state: State, knob: KnobId): readonly Way[] {
  const { perTear: { ratio, unsure, wrongSide } } = gaugeOf(state);
  if (state.notes.learned[knob] !== undefined || carriedGains(state)[knob] !== undefined) return [{ share: 1, slope: priorOf(content, state, knob) }];
  const { size, wrongSign, dead } = guessOf(content, state, knob);
  const slope = (sign: 1 | -1): Way['slope'] => ({ mean: sign * size * ratio, sd: Math.abs(size * ratio) * Math.hypot(AROUND, unsure) });
  const wrong = Math.min(wrongSign, wrongSide);
  return [{ share: dead, slope: null }, { share: (1 - dead) * (1 - wrong), slope: slope(1) }, { share: (1 - dead) * wrong, slope: slope(-1) }];
}

/** From one tune to the next a response drifts by about this share (strings creep, seasons change), and so often something was changed that nobody tells. */
const [DRIFT, CHANGED] = [0.25, 0.05];

/** The same for the list of all bows: as it was learned in an earlier tune; else to the book's side, to the other one, or not at all. */
function answersOf(content: Content, state: State, knob: KnobId): readonly Answers[] {
  const carried = carriedGains(state)[knob];
  const learned: readonly Answers[] = carried === undefined ? [] : [{ share: 1 - CHANGED, mean: carried.mean, sd: Math.hypot(carried.sd, DRIFT * carried.mean) }];
  const left = carried === undefined ? 1 : CHANGED;
  const { size, wrongSign, dead } = guessOf(content, state, knob);
  const ways: readonly Answers[] = [
    { share: left * (1 - dead) * (1 - wrongSign), about: size, logSd: AROUND }, { share: left * (1 - dead) * wrongSign, about: -size, logSd: AROUND }, { share: left * dead, about: null },
  ];
  return [...learned, ...ways.filter(({ share }) => share > 0)];
}

/** How much one unit does by the book, inches of tear; where no book says it, what is plausible, to a side that is hardly more than a guess. */
function guessOf(content: Content, state: State, knob: KnobId): Pick<Knob, 'wrongSign' | 'dead'> & { readonly size: number } {
  const { book, wrongSign, dead } = bookOf(content.knobs[knob], state);
  return { size: book === null ? -content.knobs[knob].plausible : book.change / book.per, wrongSign, dead };
}

/** What the book says of an adjustment on this bow: the first of its rows that fits its cams and its rest, else what is said of all. */
export function bookOf({ book, books, wrongSign, dead }: Knob, state: State): Pick<Knob, 'book' | 'wrongSign' | 'dead'> {
  const fits = (values: BookRow['cams'], step: string): boolean => values === 'any' || values.includes(chosen(state, step) ?? 'unknown');
  const row = books.find(({ cams, rest }) => fits(cams, 'cams') && fits(rest, 'rest'));
  return row === undefined ? { book, wrongSign, dead } : { book: row, wrongSign: row.wrongSign, dead: row.dead };
}
