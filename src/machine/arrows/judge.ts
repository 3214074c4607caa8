// What the shots say of single arrows: which stand out, whether a changed one lies near the others now, and whether the
// references themselves held still.

import { blame, tooManyOdd } from '../../archery/arrow-rules.ts';
import { screenArrows, type ArrowSet, type ArrowShots } from '../../archery/arrow-set.ts';
import { carriedPrior, type Spread } from '../../archery/spread.ts';
import type { Point } from '../../archery/widest.ts';
import { huberCentre } from '../../maths/huber.ts';
import { paperSpreadOf } from '../loop/evidence.ts';
import { once } from '../../maths/once.ts';
import type { State } from '../state.ts';
import type { Tear } from '../types.ts';
import { FEWEST_ROUNDS, nearEnough, ownShots, ROUNDS, roundsOf, stageOf } from './plan.ts';
import { mendingShots, roundShots, type ArrowShot } from './shots.ts';

export interface RoundsJudged {
  /** False while shots of the rounds are still to be made: then nothing is called odd. */
  readonly complete: boolean;
  /** Each arrow as it was read. */
  readonly set: ArrowSet;
  /** The typical arrow's tear, inches. */
  readonly typical: Tear;
  readonly odd: readonly string[];
  /** Those that stand out by the shots so far. */
  readonly standOut: readonly string[];
  /** More than a third of the arrows stand out. */
  readonly tooMany: boolean;
  /** An arrow's own tear less the typical one's, inches; zero for an arrow without a shot. */
  readonly off: (arrow: string) => Tear;
  /** Spread of one shot of one arrow, inches. */
  readonly usual: number;
  readonly spread: Spread;
}

const ZERO: Tear = { x: 0, y: 0 };

/** The rounds as far as they are shot, with the archer's spread at paper as what is known beforehand; null before any shot. */
export const judgeRounds: (state: State) => RoundsJudged | null = once((state: State) => {
  const rounds = roundsOf(state);
  const shots = roundShots(state).filter((shot) => shot.good);
  const groups = byArrow(shots).filter(({ arrow, shots: own }) => rounds.play.includes(arrow) || own.length >= FEWEST_ROUNDS);
  if (groups.length === 0) return null;
  const complete = stageOf(rounds, roundShots(state)).kind === 'shot';
  const set = readGroups(state, groups);
  const { arrows, typical, spread } = set;
  const standOut = arrows.filter((one) => one.odd).map(({ arrow }) => arrow);
  return {
    complete, set, typical, odd: complete ? standOut : [], standOut, tooMany: tooManyOdd(standOut.length, arrows.length), usual: spread.sd, spread,
    off: (arrow) => {
      const mean = arrows.find((one) => one.arrow === arrow)?.mean;
      return mean === undefined ? ZERO : minus(mean, typical);
    },
  };
});

/** A set as it is read, with the archer's spread at paper as what is known beforehand. */
export const readGroups = (state: State, groups: readonly ArrowShots[]): ArrowSet => screenArrows(groups, carriedPrior(paperSpreadOf(state)));

/** Good shots of each arrow, in the order of their numbers. */
export function byArrow(shots: readonly ArrowShot[]): readonly ArrowShots[] {
  const arrows = [...new Set(shots.map(({ arrow }) => arrow))].toSorted((a, b) => Number(a) - Number(b));
  return arrows.map((arrow) => ({ arrow, shots: tearsOf(shots.filter((shot) => shot.arrow === arrow)) }));
}

const tearsOf = (shots: readonly ArrowShot[]): readonly Point[] => shots.flatMap(({ tear }) => (tear === null ? [] : [tear]));
const minus = (a: Tear, b: Tear): Tear => ({ x: a.x - b.x, y: a.y - b.y });

export interface Standing { readonly mean: Tear; readonly off: Tear; readonly shots: number; readonly near: boolean }

/** Where an arrow lies with its nock as it stands now, or stood at `turn`; null while it has no shot so. */
export function standingOf(state: State, arrow: string, turn?: number, judged = judgeRounds(state)): Standing | null {
  const tears = tearsAt(state, arrow, turn);
  if (tears.length === 0 || judged === null) return null;
  const mean = { x: huberCentre(tears.map((t) => t.x), judged.usual).centre, y: huberCentre(tears.map((t) => t.y), judged.usual).centre };
  const off = minus(mean, judged.typical);
  return { mean, off, shots: tears.length, near: Math.hypot(off.x, off.y) <= nearEnough(state) };
}

/** Good shots of an arrow with its nock as it stood at `turn`, inches. */
export const tearsAt = (state: State, arrow: string, turn?: number): readonly Point[] => tearsOf(ownShots(state, mendingShots(state), arrow, turn));

/** What three shots of a suspect, in turn with references, say of it; null where they are too few. */
export function blameOf(state: State, arrow: string): ReturnType<typeof blame> {
  const judged = judgeRounds(state);
  const all = roundShots(state).filter((shot) => shot.good);
  const own = all.filter((shot) => shot.arrow === arrow).slice(0, ROUNDS);
  const [first, last] = [own[0], own.at(-1)];
  if (judged === null || first === undefined || last === undefined) return null;
  const between = all.filter((shot) => shot.reference && shot.arrow !== arrow && shot.seq > first.seq && shot.seq < last.seq);
  return blame(tearsOf(own), tearsOf(between), judged.typical, judged.spread);
}
