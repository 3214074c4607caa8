// A list of all bows that the one in hand may be: the tear where it was first shot, what one unit of the adjustment under work changes of it, and the
// spread of a shot. Every reading crosses out those that do not fit it. A list, because a response may be to the other side or none at all,
// and a shot may have gone astray: no normal belief says that. Derived: Bayes' rule, node by node, on a grid.
//
// Model: tear = c_j + g * x in group j; a group is all the shots while every other adjustment stood still. A reading has the spread of a
// shot around that, or four times as much with a chance of 6 %; it is rounded to 1/16 in, and nobody reads it closer than 0.03 in.

import { checks } from '../maths/check.ts';
import { normalCdf } from '../maths/normal.ts';
import { bowsBefore, checkAnswers, type Answers } from './bows-before.ts';
import type { Line } from './response.ts';
import { checkSpread, type Spread } from './shots.ts';

export type { Answers } from './bows-before.ts';

const must = checks('bowsThatFit');

/** A tear (in) that was read with the adjustment at `x` (in its unit), in `group`; it counts as so many shots, at the most one. */
export interface Reading { readonly x: number; readonly tear: number; readonly group: number; readonly counts: number }

/** What all bows that fit say together, of the group that was shot last. Settings in the adjustment's unit, tears in inches. */
export interface Belief {
  /** Chance that the tear at a setting lies between the two. */
  readonly within: (x: number, low: number, high: number) => number;
  /** Chance that the tear at one setting lies further from `target` than at another, by more than `by`. */
  readonly further: (now: number, before: number, target: number, by: number) => number;
  /** Chance that no setting from `lo` to `hi` brings the tear between `low` and `high`. */
  readonly outOfReach: (lo: number, hi: number, low: number, high: number) => number;
  /** By shots of one setting alone: their middle, and how many full shots it rests on. */
  readonly withinAlone: (mean: number, count: number, low: number, high: number) => number;
  /** Means and variances of all bows that fit. */
  readonly line: Line;
  /** Chance that the response is to the other side than the line's. */
  readonly otherSide: number;
  /** Spread of one reading. */
  readonly sd: number;
}

/** Grid of the tear: its step as a share of the usual spread, and how far it reaches at least each way, in steps and in inches. */
const [STEP_SHARE, FEWEST_STEPS, LEAST_REACH] = [0.2, 65, 1.5];
/** Tears of up to a few inches are possible before anything is known: variance, in^2. */
const [WIDE_VARIANCE, FARTHEST] = [9, 600];
const [STRAYING, FOURFOLD] = [0.06, 4];
/** A bow is crossed out below this share of the likeliest: before the adjustment was moved, on its first move, and after it. */
const [DROP_LEVEL, DROP_ON_OPENING, DROP] = [1e-5, 1e-6, 1e-4];
const GOLDEN = 0.618034;
/** So many beliefs are kept for the next question: one shot more begins where the last one ended. */
const KEPT = 96;

/** What all beliefs of one adjustment and archer share. */
interface Table {
  readonly gains: Float64Array;
  /** Without a shift all nodes would lie on one lattice, and chances would jump from setting to setting. */
  readonly shifts: Float64Array;
  readonly sds: Float64Array;
  readonly step: number;
  readonly steps: number;
}

/** Possible bows, in columns since there are thousands: tear at the group's first setting, place of the response and of the spread in their tables, chance. */
interface Nodes { readonly c: Float64Array; readonly g: Uint16Array; readonly s: Uint16Array; readonly w: Float64Array }

/** What is believed after some readings. */
interface Stage {
  readonly table: Table;
  /** Mirrored readings are thought through as the ones that they mirror, so that both say the same to the last digit. 0 until one lies off zero. */
  readonly side: 1 | -1 | 0;
  /** Chance of each response with each spread (responses by row), from all earlier groups. */
  readonly shares: Float64Array;
  /** The group under way, its first setting, and the first tear there. */
  readonly group: number;
  readonly at: number;
  readonly middle: number;
  /** How well each tear fits with each spread (spreads by row), while that setting alone was shot; null before a shot, and after another setting. */
  readonly level: Float64Array | null;
  readonly nodes: Nodes | null;
}

const stages = new Map<string, Stage>();
/** One turn asks for the same belief many times. */
const beliefs = new WeakMap<Stage, Belief>();

/**
 * All bows that fit these readings, told in the order in which they were shot; the last one's group is the one that is asked of. `answers` are the
 * ways in which the adjustment may work, `spread` is what is known beforehand of one reading (in).
 * Throws RangeError on numbers that cannot be meant, without a reading, and where no way is given.
 */
// Example: bowsThatFit([{ share: 1, about: 0.1, logSd: 0.6 }], { sd: 0.2, df: 3 }, [{ x: 0, tear: 1, group: 0, counts: 1 },
// { x: -7, tear: 0.5, group: 0, counts: 1 }]).line.slope is 0.0797.
export function bowsThatFit(answers: readonly Answers[], spread: Spread, readings: readonly Reading[]): Belief {
  checkSpread(must.bowsThatFit, spread);
  checkAnswers(must.bowsThatFit, answers);
  for (const { x, tear, group, counts } of readings) {
    must.bowsThatFit.measure(x, 'a setting');
    must.bowsThatFit.measure(tear, 'a tear');
    must.bowsThatFit.finite(group, 'a group');
    must.bowsThatFit.size(counts, 'what a reading counts');
  }
  if (readings.length === 0) throw must.bowsThatFit.error('without a reading every bow fits; give at least one');
  const stage = stageAfter(answers, spread, readings);
  const belief = beliefs.get(stage) ?? beliefOf(stage);
  beliefs.set(stage, belief);
  return belief;
}

// What is believed follows from what was read alone: the newest beliefs are kept by that, and the oldest forgotten.
function stageAfter(answers: readonly Answers[], spread: Spread, readings: readonly Reading[]): Stage {
  const root = `${spread.sd} ${spread.df} ${JSON.stringify(answers)}`;
  const keys: string[] = [];
  for (const { x, tear, group, counts } of readings) keys.push(`${keys.at(-1) ?? root}|${x} ${tear} ${group} ${counts}`);
  let known = readings.length;
  let stage: Stage | undefined;
  while (known > 0 && (stage = stages.get(keys[known - 1] ?? '')) === undefined) known--;
  stage ??= atFirst(answers, spread);
  for (const reading of readings.slice(known)) {
    stage = seen(stage, reading);
    stages.set(keys[known++] ?? '', stage);
    if (stages.size > KEPT) for (const oldest of stages.keys()) { stages.delete(oldest); break; }
  }
  return stage;
}

function atFirst(answers: readonly Answers[], spread: Spread): Stage {
  const { gains, sds, shares } = bowsBefore(answers, spread);
  const step = STEP_SHARE * Math.max(spread.sd, ...sds.slice(0, 1));
  const table: Table = {
    gains: Float64Array.from(gains), sds: Float64Array.from(sds), step,
    steps: Math.max(FEWEST_STEPS, Math.ceil(LEAST_REACH / step)),
    shifts: Float64Array.from(gains, (_, j) => (gains.length === 1 ? 0 : step * ((GOLDEN * (j + 1)) % 1 - 0.5))),
  };
  return { table, side: 0, shares: Float64Array.from(shares), group: NaN, at: 0, middle: 0, level: null, nodes: null };
}

function seen(before: Stage, { x, tear, group, counts }: Reading): Stage {
  // While all tears are zero the first setting beside another says which of two mirrored bows it is.
  const sign = tear !== 0 ? tear : before.group === group ? x - before.at : 0;
  const side = before.side === 0 && sign !== 0 ? (sign < 0 ? -1 : 1) : before.side;
  const y = (side === 0 ? 1 : side) * tear;
  if (before.group !== group) return { ...before, ...begun(before, y, counts), side, group, at: x, middle: y, nodes: null };
  const { table, level } = before;
  if (level !== null && x === before.at) return { ...before, side, level: levelAfter(table, level, before.middle, y, counts) };
  const { c, g, s, w } = before.nodes ?? opened(before);
  const u = (side === 0 ? 1 : side) * (x - before.at);
  const fits = w.map((weight, i) => weight * likelihood(y - (c[i] ?? 0) - (table.gains[g[i] ?? 0] ?? 0) * u, table.sds[s[i] ?? 0] ?? 1, counts));
  return { ...before, side, level: null, nodes: kept({ c, g, s, w: fits }, DROP) };
}

// What earlier groups say of response and spread is kept; their tears are of another bow.
function begun(before: Stage, y: number, counts: number): Pick<Stage, 'shares' | 'level'> {
  const { table } = before;
  const rows = 2 * table.steps + 1;
  const level = new Float64Array(table.sds.length * rows);
  for (let s = 0, k = 0; s < table.sds.length; s++) {
    for (let i = 0; i < rows; i++, k++) level[k] = Math.exp(-Math.min(FARTHEST, ((y + table.step * (i - table.steps)) ** 2) / (2 * WIDE_VARIANCE)));
  }
  return { shares: sharesNow(before), level: levelAfter(table, level, y, y, counts) };
}

function sharesNow({ table: { gains, sds, steps }, shares, level, nodes }: Stage): Float64Array {
  const now = new Float64Array(gains.length * sds.length);
  if (nodes !== null) {
    for (const [i, weight] of nodes.w.entries()) {
      const k = (nodes.g[i] ?? 0) * sds.length + (nodes.s[i] ?? 0);
      now[k] = (now[k] ?? 0) + weight;
    }
    return normalised(now);
  }
  if (level === null) return shares;
  const rows = 2 * steps + 1;
  for (let s = 0; s < sds.length; s++) {
    let fits = 0;
    for (let i = 0; i < rows; i++) fits += level[s * rows + i] ?? 0;
    for (let g = 0; g < gains.length; g++) now[g * sds.length + s] = (shares[g * sds.length + s] ?? 0) * fits;
  }
  return normalised(now);
}

function levelAfter({ sds, step, steps }: Table, level: Float64Array, middle: number, y: number, counts: number): Float64Array {
  const rows = 2 * steps + 1;
  const after = new Float64Array(level.length);
  let most = 0;
  for (let k = 0; k < level.length; k++) {
    const before = level[k] ?? 0;
    if (before === 0) continue;
    const fit = before * likelihood(y - middle - step * ((k % rows) - steps), sds[Math.floor(k / rows)] ?? 1, counts);
    after[k] = fit;
    most = Math.max(most, fit);
  }
  for (let k = 0; k < after.length; k++) after[k] = (after[k] ?? 0) < DROP_LEVEL * most ? 0 : (after[k] ?? 0) / most;
  return after;
}

/** Every tear with every response and spread. */
function opened({ table: { gains, shifts, sds, step, steps }, shares, level, middle }: Stage): Nodes {
  const rows = 2 * steps + 1;
  const fits = fitsBeside(level, rows);
  const size = level === null ? 0 : level.length;
  const all = emptyNodes(size * gains.length);
  let n = 0;
  for (let g = 0; g < gains.length; g++) {
    for (let k = 0; k < size; k++) {
      const fit = fits(k, (shifts[g] ?? 0) / step);
      if (fit === 0) continue;
      const s = Math.floor(k / rows);
      all.c[n] = middle + step * ((k % rows) - steps) + (shifts[g] ?? 0);
      all.g[n] = g;
      all.s[n] = s;
      all.w[n++] = (shares[g * sds.length + s] ?? 0) * fit;
    }
  }
  return kept(all, DROP_ON_OPENING);
}

/** How well a tear fits that lies so large a part of a step beside a row: between two rows along the logarithm, as a normal belief runs there. */
function fitsBeside(level: Float64Array | null, rows: number): (k: number, part: number) => number {
  const logs = (level ?? new Float64Array(0)).map(Math.log);
  return (k, part) => {
    const next = part < 0 ? k - 1 : k + 1;
    if (part === 0 || Math.floor(next / rows) !== Math.floor(k / rows)) return part === 0 ? level?.[k] ?? 0 : 0;
    const share = Math.abs(part);
    return Math.exp((1 - share) * (logs[k] ?? -Infinity) + share * (logs[next] ?? -Infinity));
  };
}

function likelihood(off: number, sd: number, counts: number): number {
  const r = Math.min(60, Math.abs(off / sd));
  const fit = ((1 - STRAYING) * Math.exp(-(r * r) / 2) + (STRAYING / FOURFOLD) * Math.exp(-(r * r) / (2 * FOURFOLD ** 2)) + 1e-9) / sd;
  return counts === 1 ? fit : fit ** counts;
}

const emptyNodes = (size: number): Nodes => ({ c: new Float64Array(size), g: new Uint16Array(size), s: new Uint16Array(size), w: new Float64Array(size) });

/** Without those that are next to impossible; chances add up to 1. */
function kept({ c, g, s, w }: Nodes, drop: number): Nodes {
  const least = drop * w.reduce((a, b) => Math.max(a, b), 0);
  const stays: number[] = [];
  for (let i = 0; i < w.length; i++) if ((w[i] ?? 0) > least) stays.push(i);
  const left = emptyNodes(stays.length);
  for (const [n, i] of stays.entries()) [left.c[n], left.g[n], left.s[n], left.w[n]] = [c[i] ?? 0, g[i] ?? 0, s[i] ?? 0, w[i] ?? 0];
  return { ...left, w: normalised(left.w) };
}

function normalised(weights: Float64Array): Float64Array {
  const all = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / all);
}

/** Of all bows that fit: tear at the group's first setting, response, chance. Which spread each has makes no difference to a tear. */
function flat(stage: Stage): { readonly c: Float64Array; readonly gain: Float64Array; readonly w: Float64Array } {
  const { gains } = stage.table;
  const { c, g, w } = stage.nodes ?? kept(merged(stage), DROP_ON_OPENING);
  return { c, gain: Float64Array.from(g, (one) => gains[one] ?? 0), w };
}

/** Every tear with every response, whatever the spread. */
function merged({ table: { gains, shifts, sds, step, steps }, shares, level, middle }: Stage): Nodes {
  const rows = 2 * steps + 1;
  const fits = fitsBeside(level, rows);
  const all = emptyNodes(gains.length * rows);
  for (let g = 0, n = 0; g < gains.length; g++) {
    for (let i = 0; i < rows; i++, n++) {
      all.c[n] = middle + step * (i - steps) + (shifts[g] ?? 0);
      all.g[n] = g;
      let weight = 0;
      for (let s = 0; s < sds.length; s++) weight += (shares[g * sds.length + s] ?? 0) * fits(s * rows + i, (shifts[g] ?? 0) / step);
      all.w[n] = weight;
    }
  }
  return all;
}

function beliefOf(stage: Stage): Belief {
  const { table: { sds, step }, at } = stage;
  const side = stage.side === 0 ? 1 : stage.side;
  const { c, gain, w } = flat(stage);
  const total = (value: (c: number, gain: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < w.length; i++) sum += (w[i] ?? 0) * value(c[i] ?? 0, gain[i] ?? 0);
    return sum;
  };
  // Chances add up to 1 but for the last digit.
  const chance = (value: (c: number, gain: number) => number): number => Math.min(1, total(value));
  const from = (x: number): number => side * (x - at);
  // Low and high, or high and low, of what was mirrored.
  const between = (low: number, high: number): readonly [number, number] => (side === 1 ? [low, high] : [-high, -low]);
  const shares = sharesNow(stage);
  const spreads = Array.from(sds, (_, s) => shares.reduce((sum, share, k) => (k % sds.length === s ? sum + share : sum), 0));
  const [middle, slope] = [total((tear) => tear), total((_, one) => one)];
  const [varMiddle, varSlope] = [total((tear) => (tear - middle) ** 2), total((_, one) => (one - slope) ** 2)];
  const covAt = total((tear, one) => (tear - middle) * (one - slope));
  // From the group's first setting to 0.
  const u = from(0);
  const line: Line = {
    intercept: side * (middle + slope * u) + 0, slope, varSlope,
    varIntercept: Math.max(0, varMiddle + 2 * u * covAt + u * u * varSlope), cov: side * (covAt + u * varSlope) + 0,
  };
  return {
    line,
    otherSide: chance((_, one) => (one * slope < 0 ? 1 : 0)),
    sd: Math.sqrt(spreads.reduce((sum, chance, s) => sum + chance * (sds[s] ?? 0) ** 2, 0)),
    within: (x, low, high) => {
      const [[a, b], far] = [between(low, high), from(x)];
      // A node stands for all tears of its step.
      return chance((tear, one) => {
        const t = tear + one * far;
        return Math.max(0, Math.min(t + step / 2, b) - Math.max(t - step / 2, a)) / step;
      });
    },
    further: (now, before, target, by) => {
      const [here, there] = [from(now), from(before)];
      return chance((tear, one) => (Math.abs(tear + one * here - side * target) > Math.abs(tear + one * there - side * target) + by ? 1 : 0));
    },
    outOfReach: (lo, hi, low, high) => {
      const [[a, b], first, last] = [between(low, high), from(lo), from(hi)];
      return chance((tear, one) => (Math.min(tear + one * first, tear + one * last) > b || Math.max(tear + one * first, tear + one * last) < a ? 1 : 0));
    },
    withinAlone: (mean, count, low, high) => Math.min(1, spreads.reduce((sum, chance, s) => {
      const width = (sds[s] ?? 1) / Math.sqrt(count);
      return sum + chance * (normalCdf((high - mean) / width) - normalCdf((low - mean) / width));
    }, 0)),
  };
}
