// The list behind "all bows that fit": the tear where a bow was first shot, what one unit of the adjustment under work changes of it, and the
// spread of a shot, node by node on a grid; every reading crosses out those that do not fit it. Derived: Bayes' rule.
//
// Model: tear = c_j + g * x in group j; a group is all the shots while every other adjustment stood still. A reading has the spread of a
// shot around that, or four times as much with a chance of 6 %; it is rounded to 1/16 in, and nobody reads it closer than 0.03 in.
// Thousands of nodes are gone through for every shot, so they stand in columns and are gone through in plain loops.

import type { Checks } from '../maths/check.ts';
import { once } from '../maths/once.ts';
import { bowsBefore, checkAnswers, type Answers } from './bows-before.ts';
import { checkSpread, type Spread } from './shots.ts';

/** A tear (in) that was read with the adjustment at `x` (in its unit), in `group`; it counts as so many shots, at the most one. */
export interface Reading { readonly x: number; readonly tear: number; readonly group: number; readonly counts: number }

/** The bows that are left, of the group that was shot last. */
export interface BowsLeft {
  /** -1 where they are those of the mirrored readings: tears and settings are to be turned round; 0 where the readings are their own mirror, and so is what they say. */
  readonly side: 1 | -1 | 0;
  /** The group's first setting. */
  readonly at: number;
  /** How far a node's tear stands for those around it, in all. */
  readonly step: number;
  /** By bow: its tear at the group's first setting, what one unit changes of it, and its chance. Which spread it has makes no difference to a tear. */
  readonly tears: Float64Array;
  readonly gains: Float64Array;
  readonly chances: Float64Array;
  /** Spreads of one reading (in), and the chance of each. */
  readonly sds: readonly number[];
  readonly spreads: readonly number[];
}

/** Grid of the tear: its step as a share of the usual spread, and how far it reaches at least each way, in steps and in inches. */
const [STEP_SHARE, FEWEST_STEPS, LEAST_REACH] = [0.2, 65, 1.5];
/** Tears of up to a few inches are possible before anything is known: variance, in^2. */
const [WIDE_VARIANCE, FARTHEST] = [9, 600];
const [STRAYING, FOURFOLD] = [0.06, 4];
/** A bow is crossed out below this share of the likeliest: before the adjustment was moved, on its first move, and after it. */
const [DROP_LEVEL, DROP_ON_OPENING, DROP] = [1e-5, 1e-6, 1e-4];
/** Responses take turns at so many shifts, far apart from one to the next. */
const [SHIFTS, GOLDEN] = [12, 0.618034];
/** So many lists are kept for the next question: one shot more begins where the last one ended. */
const KEPT = 96;

/** What all lists of one adjustment and archer share. */
interface Table {
  readonly gains: Float64Array;
  /** Without a shift all nodes would lie on one lattice, and chances would jump from setting to setting. */
  readonly shifts: Float64Array;
  readonly sds: Float64Array;
  readonly step: number;
  readonly steps: number;
}

/** Possible bows, in columns: tear at the group's first setting, place of the response and of the spread in their tables, chance.
 *  By response, then by tear: bows that differ in their spread alone stand together. */
interface Nodes { readonly c: Float64Array; readonly g: Uint16Array; readonly s: Uint16Array; readonly w: Float64Array }

/** What is left after some readings. */
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

/**
 * The bows that these readings leave, told in the order in which they were shot. `answers` are the ways in which the adjustment may work, `spread` is
 * what is known beforehand of one reading (in). The same readings give the same list, as an object too.
 * Throws RangeError in the name that `by` carries on numbers that cannot be meant, without a reading, and where no way is given.
 */
// Example: bowsLeft(checks('bowsLeft').bowsLeft, [{ share: 1, about: null }], { sd: 0.2, df: 3 }, [{ x: 0, tear: 1, group: 0, counts: 1 }]).gains.every((gain) => gain === 0) is true.
export function bowsLeft(by: Checks, answers: readonly Answers[], spread: Spread, readings: readonly Reading[]): BowsLeft {
  checkSpread(by, spread);
  checkAnswers(by, answers);
  for (const { x, tear, group, counts } of readings) {
    by.measure(x, 'a setting');
    by.measure(tear, 'a tear');
    by.finite(group, 'a group');
    by.size(counts, 'what a reading counts');
  }
  if (readings.length === 0) throw by.error('without a reading every bow fits; give at least one');
  return listOf(stageAfter(answers, spread, readings));
}

// What is left follows from what was read alone: the newest lists are kept by that, and the oldest forgotten.
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
    shifts: Float64Array.from(gains, (_, j) => (gains.length === 1 ? 0 : step * ((GOLDEN * ((j % SHIFTS) + 1)) % 1 - 0.5))),
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
  const nodes = nodesOf(before);
  return { ...before, side, level: null, nodes: kept({ ...nodes, w: fitting(table, nodes, (side === 0 ? 1 : side) * (x - before.at), y, counts) }, DROP) };
}

/** The chances of nodes after a tear at `u` units from the group's first setting, not yet adding up to 1. */
function fitting({ gains, sds }: Table, { c, g, s, w }: Nodes, u: number, y: number, counts: number): Float64Array {
  const fits = new Float64Array(w.length);
  for (let i = 0; i < w.length; i++) fits[i] = (w[i] ?? 0) * likelihood(y - (c[i] ?? 0) - (gains[g[i] ?? 0] ?? 0) * u, sds[s[i] ?? 0] ?? 1, counts);
  return fits;
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
    const { g, s, w } = nodes;
    for (let i = 0; i < w.length; i++) {
      const k = (g[i] ?? 0) * sds.length + (s[i] ?? 0);
      now[k] = (now[k] ?? 0) + (w[i] ?? 0);
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
  for (let s = 0, k = 0; s < sds.length; s++) {
    for (let i = 0; i < rows; i++, k++) {
      const before = level[k] ?? 0;
      if (before === 0) continue;
      const fit = before * likelihood(y - middle - step * (i - steps), sds[s] ?? 1, counts);
      after[k] = fit;
      most = Math.max(most, fit);
    }
  }
  for (let k = 0; k < after.length; k++) after[k] = (after[k] ?? 0) < DROP_LEVEL * most ? 0 : (after[k] ?? 0) / most;
  return after;
}

/** Every bow that fits at all. The first shot after a move begins with what was listed before it. */
const nodesOf = once((stage: Stage): Nodes => stage.nodes ?? opened(stage));

/** Every tear with every response and spread, while one setting alone was shot. */
function opened({ table: { gains, shifts, sds, step, steps }, shares, level, middle }: Stage): Nodes {
  const rows = 2 * steps + 1;
  const fits = Array.from(shifts.slice(0, SHIFTS), (shift) => fitsBeside(level ?? new Float64Array(0), rows, shift / step));
  const all = emptyNodes(gains.length * Math.max(...fits.map(howMany)));
  let [n, most] = [0, 0];
  for (let g = 0; g < gains.length; g++) {
    const [shift, fit] = [shifts[g] ?? 0, fits[g % SHIFTS] ?? new Float64Array(0)];
    for (let i = 0; i < rows; i++) {
      for (let s = 0, k = i; k < fit.length; s++, k += rows) {
        const weight = (shares[g * sds.length + s] ?? 0) * (fit[k] ?? 0);
        // What is dropped beside the likeliest so far is dropped beside the likeliest of all.
        if (weight <= DROP_ON_OPENING * most) continue;
        most = Math.max(most, weight);
        all.c[n] = middle + step * (i - steps) + shift;
        all.g[n] = g;
        all.s[n] = s;
        all.w[n++] = weight;
      }
    }
  }
  return kept({ ...all, w: all.w.subarray(0, n) }, DROP_ON_OPENING);
}

function howMany(fits: Float64Array): number {
  let n = 0;
  for (let k = 0; k < fits.length; k++) if (fits[k] !== 0) n++;
  return n;
}

/** How well tears fit that lie so large a part of a step beside the rows: between two rows along the logarithm, as a normal belief runs there. */
function fitsBeside(level: Float64Array, rows: number, part: number): Float64Array {
  if (part === 0) return level;
  const [way, share, fits] = [part < 0 ? -1 : 1, Math.abs(part), new Float64Array(level.length)];
  for (let k = 0; k < level.length; k++) {
    const here = level[k] ?? 0;
    if (here === 0) continue;
    const next = (k % rows) + way;
    const beside = next < 0 || next >= rows ? 0 : level[k + way] ?? 0;
    if (beside > 0) fits[k] = here ** (1 - share) * beside ** share;
  }
  return fits;
}

function likelihood(off: number, sd: number, counts: number): number {
  const r = Math.min(60, Math.abs(off / sd));
  const fit = ((1 - STRAYING) * Math.exp(-(r * r) / 2) + (STRAYING / FOURFOLD) * Math.exp(-(r * r) / (2 * FOURFOLD ** 2)) + 1e-9) / sd;
  return counts === 1 ? fit : fit ** counts;
}

const emptyNodes = (size: number): Nodes => ({ c: new Float64Array(size), g: new Uint16Array(size), s: new Uint16Array(size), w: new Float64Array(size) });

/** Without those that are next to impossible; chances add up to 1. */
function kept({ c, g, s, w }: Nodes, drop: number): Nodes {
  let most = 0;
  for (let i = 0; i < w.length; i++) most = Math.max(most, w[i] ?? 0);
  let size = 0;
  for (let i = 0; i < w.length; i++) if ((w[i] ?? 0) > drop * most) size++;
  const left = emptyNodes(size);
  for (let i = 0, n = 0; i < w.length; i++) {
    if ((w[i] ?? 0) <= drop * most) continue;
    [left.c[n], left.g[n], left.s[n], left.w[n]] = [c[i] ?? 0, g[i] ?? 0, s[i] ?? 0, w[i] ?? 0];
    n++;
  }
  return { ...left, w: normalised(left.w) };
}

function normalised(weights: Float64Array): Float64Array {
  let all = 0;
  for (let i = 0; i < weights.length; i++) all += weights[i] ?? 0;
  const shares = new Float64Array(weights.length);
  for (let i = 0; i < weights.length; i++) shares[i] = (weights[i] ?? 0) / all;
  return shares;
}

/** One turn asks for the same list many times. */
const listOf = once((stage: Stage): BowsLeft => {
  const { table: { gains, sds, step }, side, at } = stage;
  const shares = sharesNow(stage);
  return {
    side, at, step,
    ...whateverSpread(nodesOf(stage), gains),
    sds: Array.from(sds), spreads: Array.from(sds, (_, s) => shares.reduce((sum, share, k) => (k % sds.length === s ? sum + share : sum), 0)),
  };
});

/** Bows that differ in their spread alone are one; nodes stand in that order. */
function whateverSpread({ c, g, w }: Nodes, gains: Float64Array): Pick<BowsLeft, 'tears' | 'gains' | 'chances'> {
  const [tears, responses, chances] = [new Float64Array(c.length), new Float64Array(c.length), new Float64Array(c.length)];
  let n = -1;
  for (let i = 0; i < c.length; i++) {
    if (i === 0 || c[i] !== c[i - 1] || g[i] !== g[i - 1]) {
      n++;
      tears[n] = c[i] ?? 0;
      responses[n] = gains[g[i] ?? 0] ?? 0;
    }
    chances[n] = (chances[n] ?? 0) + (w[i] ?? 0);
  }
  return { tears: tears.subarray(0, n + 1), gains: responses.subarray(0, n + 1), chances: chances.subarray(0, n + 1) };
}
