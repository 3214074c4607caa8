// Turning the nock of one arrow. An arrow's own error turns with its shaft: it does not become smaller, it only points another
// way. So a turn can be foretold from the shots at the first one, and it helps where it points against what is common to all
// arrows; with a common tear of zero all turns are alike. What the picture leaves out (an uneven shaft, how the nock sits)
// makes real turns differ from it: foretell, check with two shots, and try the rest where the foretelling fails.
// All tears in inches, x right, y high. `target` is the tear aimed at: zero, or the typical arrow's. Give the same to all.
//
// By simulation (three vanes, own error of 1.5 spreads, common tear of 1), staying as found where that is foretold to be best: the best
// turn is picked in 75 of 100 cases for 4.6 shots in all, where every turn twice picks it in 72 for 6. Where the picture is
// quite wrong: in 63 for 5.0 against 70 for 6.

import { checks, type Checks } from '../maths/check.ts';
import { huberCentre } from '../maths/huber.ts';
import { sum } from '../maths/sum.ts';
import { checkPoint, checkPoints, checkSpread, type Point, type Spread } from './shots.ts';
import { shrinkFactor } from './one-way.ts';

const must = checks('predictTurns', 'nextTurn', 'judgeTurn', 'bestTurn');

/**
 * The tear to expect at each turn from 0 (as found) to positions - 1. One turn is the shaft turned clockwise by one vane, seen from
 * behind: an error that was high points to the right after a quarter turn. `effect` is the arrow's own error, already shrunk
 * (arrow-set.ts). Throws RangeError unless `positions` is a whole number from 1 to 360.
 */
// Example: predictTurns({ x: 1, y: 0 }, { x: 0, y: 0.5 }, 4)[1] is { x: 1.5, y: 0 }.
export function predictTurns(typical: Point, effect: Point, positions: number): readonly Point[] {
  checkPoint(must.predictTurns, typical, 'the typical tear');
  checkPoint(must.predictTurns, effect, "the arrow's own error");
  if (!Number.isInteger(positions) || positions < 1 || positions > MOST) throw must.predictTurns.error(`a nock with ${positions} positions cannot be turned; give a whole number, like 3`);
  return Array.from({ length: positions }, (_, turn) => {
    // The way back is the way there, turned: a mirrored arrow turned the other way is foretold the same, to the last bit.
    const back = 2 * turn > positions;
    const angle = (2 * Math.PI * (back ? positions - turn : turn)) / positions;
    const [along, sine] = [exact(Math.cos(angle)), exact(Math.sin(angle))];
    const across = back ? -sine : sine;
    return {
      x: typical.x + (effect.x * along + effect.y * across),
      y: typical.y + (effect.y * along - effect.x * across),
    };
  });
}

/** One for each degree; nobody turns a nock so finely. */
const MOST = 360;
/** Quarter turns, and the halves in third turns, without rounding. */
const exact = (value: number): number => Math.round(value * 1e15) / 1e15;
/** Turns that differ by less (in) are alike: only rounding tells them apart. */
const ALIKE = 1e-9;

/** The turn with the smallest foretold tear, neither 0 nor tried yet; of turns that are alike the lowest. null where none is left.
 *  Whether it is foretold to be better than staying as found (turn 0) is for the caller to compare.
 *  Throws RangeError on a tear that is not a finite number. */
// Example: nextTurn([{ x: 1, y: 0 }, { x: 2, y: 0 }, { x: 0.5, y: 0 }], [], { x: 0, y: 0 }) is 2.
export function nextTurn(predicted: readonly Point[], tried: readonly number[], target: Point): number | null {
  checkPoint(must.nextTurn, target, 'the tear aimed at');
  checkPoints(must.nextTurn, predicted, 'a foretold tear');
  const left = predicted.flatMap((tear, turn) => (turn === 0 || tried.includes(turn) ? [] : [{ turn, away: distance(tear, target) }]));
  const least = Math.min(...left.map(({ away }) => away));
  return left.find(({ away }) => away <= least + ALIKE)?.turn ?? null;
}

export interface TurnTried {
  readonly predicted: Point;
  /** Good shots at this turn. */
  readonly shots: readonly Point[];
  /** The arrow's centre before the turn, and how many shots that and so the foretelling rest on. */
  readonly before: Point;
  readonly countBefore: number;
  readonly target: Point;
  readonly spread: Spread;
  /** How near the target is good, inches. */
  readonly limit: number;
}

/** A foretelling that holds misses by more than so many standard errors in 9 of 100 cases (derived: exp(-2.2^2 / 2), two axes). */
const MISSED = 2.2;

/**
 * After two shots at a turn: `good` (nearer than before, and within the limit), `as predicted` (nearer than before, as foretold, but
 * not within the limit), or `missed` (not nearer than before, or not where it was foretold; try the rest).
 * Throws RangeError where there is no shot, or on a number that cannot be meant.
 */
// Example: judgeTurn({ predicted: { x: 0, y: 0 }, shots: [{ x: 0.1, y: 0 }], before: { x: 1, y: 0 }, countBefore: 3, target: { x: 0, y: 0 },
// spread: { sd: 0.2, df: 12 }, limit: 0.25 }) is 'good'.
export function judgeTurn({ predicted, shots, before, countBefore, target, spread, limit }: TurnTried): 'good' | 'as predicted' | 'missed' {
  checkPoint(must.judgeTurn, predicted, 'the foretold tear');
  checkPoint(must.judgeTurn, before, 'the tear before');
  checkPoint(must.judgeTurn, target, 'the tear aimed at');
  checkSpread(must.judgeTurn, spread);
  must.judgeTurn.size(countBefore, 'the count of shots before');
  must.judgeTurn.size(limit, 'the limit');
  const { centre, count } = centreOf(must.judgeTurn, shots, spread.sd);
  const away = distance(centre, target);
  if (away >= distance(before, target)) return 'missed';
  if (away <= limit) return 'good';
  const se = spread.sd * Math.sqrt(1 / count + 1 / countBefore);
  return distance(centre, predicted) > MISSED * se ? 'missed' : 'as predicted';
}

/**
 * The tried turn to stay at: with the least distance from the target to be expected in the square, once each turn's
 * centre is shrunk by what luck explains: a turn that shines on few shots is taken to be nearer to what turns usually are. Where luck explains all, the lowest turn:
 * leave it as found. Throws RangeError where nothing was tried or a turn has no shot.
 */
// Example: bestTurn([{ turn: 0, shots: [{ x: 1, y: 0 }] }, { turn: 1, shots: [{ x: 0.1, y: 0 }] }], { x: 0, y: 0 }, { sd: 0.2, df: 12 }) is 1.
export function bestTurn(tried: readonly { readonly turn: number; readonly shots: readonly Point[] }[], target: Point, spread: Spread): number {
  checkPoint(must.bestTurn, target, 'the tear aimed at');
  checkSpread(must.bestTurn, spread);
  const luck = spread.sd ** 2;
  const each = tried.map(({ turn, shots }) => {
    must.bestTurn.whole(turn, 'a turn', 0);
    const { centre, count } = centreOf(must.bestTurn, shots, spread.sd);
    return { turn, count, away: distance(centre, target) };
  });
  // How far turns lie from the target at all, as a variance on one axis: by moments, never below 0.
  const wide = Math.max(0, sum(each.map(({ away, count }) => away ** 2 / 2 - luck / count)) / each.length);
  const expected = each.map(({ turn, away, count }) => {
    const own = shrinkFactor(wide, luck, count);
    return { turn, square: (own * away) ** 2 + (2 * own * luck) / count };
  });
  const least = Math.min(...expected.map(({ square }) => square));
  const alike = expected.filter(({ square }) => square <= least + ALIKE);
  if (alike.length === 0) throw must.bestTurn.error('no turn was tried; give the shots at one turn at least');
  return Math.min(...alike.map(({ turn }) => turn));
}

function centreOf(by: Checks, shots: readonly Point[], sd: number): { readonly centre: Point; readonly count: number } {
  if (shots.length === 0) throw by.error('a turn has no shot; shoot it before it is judged');
  checkPoints(by, shots, 'a tear');
  const [x, y] = [huberCentre(shots.map((s) => s.x), sd), huberCentre(shots.map((s) => s.y), sd)];
  return { centre: { x: x.centre, y: y.centre }, count: Math.min(x.count, y.count) };
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
