// A plumb line over several distances, always the same sight mark and dot: the drift to one side from the nearest to the
// farthest distance. It shows left and right alone.

import { sum } from '../../maths/sum.ts';
import { fitPlumb, judgePlumb, plumbSpread, type AngleSpread, type PlumbFit } from '../../archery/plumb-line.ts';
import type { Spread } from '../../archery/spread.ts';
import { margin, milliradians } from '../../archery/two-groups.ts';
import { mrad, yards, yardsIn, type Feet, type Yards } from '../../maths/units.ts';
import type { Shot, State } from '../state.ts';
import type { Gauge, Judged, Tolerance } from './gauge-shape.ts';
import { groupPrior, judgedAfter, judgedApart, FIRST_YARDS, type Looks } from './gauge-groups.ts';
import { goodShots } from './sets.ts';

/** Where the shots are taken from, yards, nearest first. */
export const PLUMB_YARDS = [20, 30, 40] as const;
const [NEAREST, , FARTHEST] = [yards(PLUMB_YARDS[0]), yards(PLUMB_YARDS[1]), yards(PLUMB_YARDS[2])];

/** Inches at the farthest distance for one mrad. */
export const INCHES_PER_MRAD = (36 * FARTHEST) / 1000;

const LOOKS: Looks = { cheap: 15, most: 18 };

function judgeShots(shots: readonly Shot[], spread: Spread): Judged {
  const { verdict, within } = judgePlumb(plumbPoints(shots), { sd: mrad(spread.sd / INCHES_PER_MRAD), df: spread.df }, toleranceOf(spread).high);
  return judgedAfter(verdict === 'straight' ? 'in' : verdict === 'slant' ? 'out' : null, within, countOf(shots), LOOKS);
}

const countOf = (shots: readonly Shot[]): number => PLUMB_YARDS.length * Math.min(...PLUMB_YARDS.map((yards) => shots.filter((shot) => yardsOf(shot) === yards).length));

function toleranceOf(spread: Spread): Tolerance {
  const give = margin(spread.sd, FARTHEST);
  return { low: -give, high: give, aim: 0 };
}

export function plumbGauge(state: State, distance: Feet): Gauge {
  const at20 = groupPrior(state, FIRST_YARDS);
  const prior: AngleSpread = { sd: milliradians(at20.sd, FIRST_YARDS), df: at20.df };
  return {
    of: 'plumb', distance, prior,
    axes: ['side'],
    first: 9, again: 9, most: LOOKS.most, enough: 9,
    doubtful: LOOKS.cheap,
    impacts: {
      judge: (_axis, mean, se, spread, shots) => judgedApart(toleranceOf(spread), mean, se, spread, shots, LOOKS),
      tolerance: (_axis, spread) => toleranceOf(spread),
    },
    judgeShots,
    next: (taken) => taken + PLUMB_YARDS.length,
    count: countOf,
    whole: () => true,
    read: (shots, sd) => {
      if (plumbPoints(shots).length < 2) return null;
      const line = lineOfShots(shots, sd);
      const length = FARTHEST - NEAREST;
      const count = (sd / (line.se * length)) ** 2;
      return { mean: { x: line.slope * length, y: 0 }, count: { x: count, y: count } };
    },
    comparable: goodShots,
    spread: (sets) => {
      const { sd, df } = plumbSpread(sets.flatMap((set) => goodShots(set).map((shot) => ({ distance: yardsOf(shot), x: shot.x, set: set.id }))), prior);
      return { sd: sd * INCHES_PER_MRAD, df };
    },
    // No book: which way the rest must go, and how far, is tried on this bow. Inches of drift for one inch of tear, guessed.
    perTear: { ratio: -5, unsure: 2, wrongSide: 1 / 2 },
  };
}

const yardsOf = (shot: Shot): Yards => (shot.tag?.distance === undefined ? NEAREST : yardsIn(shot.tag.distance));

/** The line through these shots; `sd` is the spread of one shot (in) at the farthest distance. */
export const lineOfShots = (shots: readonly Shot[], sd: number): PlumbFit => fitPlumb(plumbPoints(shots), { sd: mrad(sd / INCHES_PER_MRAD), df: Infinity });

/** Mean impact by distance. */
export function plumbPoints(shots: readonly Shot[]): readonly { readonly distance: Yards; readonly mean: number; readonly count: number }[] {
  return PLUMB_YARDS.map(yards).flatMap((distance) => {
    const xs = shots.filter((shot) => yardsOf(shot) === distance).map((shot) => shot.x);
    return xs.length === 0 ? [] : [{ distance, mean: sum(xs) / xs.length, count: xs.length }];
  });
}
