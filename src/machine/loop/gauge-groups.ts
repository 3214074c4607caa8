// Two groups of impacts at one distance, each arrow measured from its own dot: broadheads against field points, or
// unfletched shafts against fletched ones. What counts is the difference of their centres, never where either lands.

import { dragShare, difference, judgeDifference, LOOKS, margin, pairSpread, type TwoGroups } from '../../archery/two-groups.ts';
import type { Spread } from '../../archery/spread.ts';
import type { Axis } from '../../content/types.ts';
import { feetIn, yards, yardsIn, type Feet, type Yards } from '../../maths/units.ts';
import { chosen, measured } from '../guards.ts';
import type { Shot, ShotSet, State } from '../state.ts';
import type { Gauge, Judged, Tolerance } from './gauge-shape.ts';
import { goodShots } from './sets.ts';

/** Where the first comparison is shot, and where the usual group is asked for. Yards. */
export const FIRST_YARDS = yards(20);
export const FIRST_AT_TARGET = feetIn(FIRST_YARDS);

/** A group of three has this mean width, in spreads of one shot (derived: the exact integral over all triangles; tables of extreme spread agree). */
const WIDTH_OF_THREE = 2.4088;

/**
 * Inches of impact difference at 20 yd for one inch of tear. Derived with a rigid-arrow flight model (fixed blades, vanes
 * about half an inch high); other vanes, points and blades change it by half as much again, either way.
 */
const RATIO = { fixed: -3.9, mechanical: -0.55, unfletched: -4.1 } as const;
const UNSURE = 0.5;

/** Guides agree on the side here, as they do not for paper: the rest moves the second group towards the first. */
const AGREED_SIDE = 0.05;

/** Shots of both kinds together: three of each, then four, then six. Two of each would be told from luck too seldom. */
const [FIRST = 6, SECOND = 8, LAST = 12] = LOOKS.filter((each) => each >= 3).map((each) => 2 * each);

export function groupsGauge(state: State, of: 'broadheads' | 'unfletched', distance: Feet): Gauge {
  const yards = yardsIn(distance);
  const fixed = of === 'broadheads' && chosen(state, 'broadheads-wanted') !== 'mechanical';
  const kind = of === 'unfletched' ? 'unfletched' : fixed ? 'fixed' : 'mechanical';
  const comparable = (set: ShotSet): readonly Shot[] => {
    const scale = distance / set.distance;
    return goodShots(set).map((shot) => (scale === 1 ? shot : { ...shot, x: shot.x * scale, y: shot.y * scale }));
  };
  const prior = groupPrior(state, yards);
  const toleranceOf = (axis: Axis, spread: Spread): Tolerance => {
    const aim = axis === 'height' && kind === 'fixed' ? dragShare(yards) : 0;
    const give = margin(spread.sd, yards);
    return { low: aim - give, high: aim + give, aim };
  };
  return {
    of, distance, prior,
    axes: ['height', 'side'],
    first: FIRST, again: FIRST, most: LAST,
    // Half-time: the heads change shafts, so that a shaft's own error cancels. Farther on it has cancelled already.
    enough: of === 'broadheads' && yards === FIRST_YARDS ? LAST : FIRST,
    doubtful: SECOND,
    impacts: {
      judge: (axis, mean, se, spread, shots) => judgedApart(toleranceOf(axis, spread), mean, se, spread, shots, { cheap: SECOND, most: LAST }),
      tolerance: toleranceOf,
    },
    next: (taken) => [FIRST, SECOND, LAST].find((look) => look > taken) ?? taken + 2,
    count: (shots) => {
      const { a, b } = groupsIn(shots, of);
      return 2 * Math.min(a.length, b.length);
    },
    // Always as many of each: told three at once, one kind may be ahead.
    whole: (shots) => {
      const { a, b } = groupsIn(shots, of);
      return a.length === b.length;
    },
    read: (shots, sd) => difference(groupsIn(shots, of), sd),
    comparable,
    spread: (sets) => pairSpread(sets.map((set) => groupsIn(comparable(set), of)), prior),
    perTear: { ratio: (RATIO[kind] * yards) / FIRST_YARDS, unsure: UNSURE, wrongSide: AGREED_SIDE },
  };
}

/** By an estimate, and its standard error: the rule for two groups. */
export function judgedApart({ high, aim }: Tolerance, mean: number, se: number, spread: Spread, shots: number, looks: Looks): Judged {
  const { verdict, within } = judgeDifference(mean, (spread.sd / se) ** 2, spread, aim, high - aim);
  return judgedAfter(verdict === 'same' ? 'in' : verdict === 'different' ? 'out' : null, within, shots, looks);
}

/** From `cheap` shots on a move may be worth more than shots; `most` are shot at one setting. */
export interface Looks { readonly cheap: number; readonly most: number }

/**
 * What is shown stands. Undecided (null) after the second look, and rather apart than together, a move is worth more than shots: measured,
 * 300 invented bows, that leaves 454 of 600 axes inside the margin after 27 shots, and moving only what is shown to be apart 430 after 24.
 */
export function judgedAfter(shown: 'in' | 'out' | null, within: number, shots: number, { cheap, most }: Looks): Judged {
  return { within, says: shown ?? (shots < cheap ? 'more' : within < RATHER_APART ? 'out' : shots < most ? 'more' : 'open') };
}

/** Chance of being together below which it is rather apart. */
const RATHER_APART = 0.45;

/** What the second group is called: the one that is told against the usual arrows. */
export const secondKind = (of: 'broadheads' | 'unfletched'): 'broadhead' | 'unfletched' => (of === 'broadheads' ? 'broadhead' : 'unfletched');

/** Field points or fletched shafts (a), broadheads or unfletched shafts (b). */
export function groupsIn(shots: readonly Shot[], of: 'broadheads' | 'unfletched'): TwoGroups & { readonly a: readonly Shot[]; readonly b: readonly Shot[] } {
  const second = (shot: Shot): boolean => (of === 'broadheads' ? shot.tag?.head === 'broadhead' : shot.tag?.shaft === 'unfletched');
  return { a: shots.filter((shot) => !second(shot)), b: shots.filter(second) };
}

/** Spread of one shot (in, at `yards`) before any was shot: from the group that the archer told, else a usual one, hardly believed. */
export function groupPrior(state: State, yards: Yards): Spread {
  const group = measured(state, 'group-at-20');
  return group === undefined ? { sd: yards / FIRST_YARDS, df: 1.5 } : { sd: ((group / WIDTH_OF_THREE) * yards) / FIRST_YARDS, df: 4 };
}

/** The width (in) of three shots to be expected at `yards`, from a spread at another distance. */
export const groupAt = (spread: Spread, yardsNow: Yards, yards: Yards): number => (spread.sd * WIDTH_OF_THREE * yards) / yardsNow;
