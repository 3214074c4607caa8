// All bows that the one in hand may be, asked what a line cannot answer: a response may be to the other side or none at all, and a shot may have
// gone astray. No normal belief says that.

import { checks } from '../maths/check.ts';
import { normalCdf } from '../maths/normal.ts';
import { once } from '../maths/once.ts';
import type { Answers } from './bows-before.ts';
import { bowsLeft, type BowsLeft, type Reading } from './bows-left.ts';
import type { Line } from './response.ts';
import type { Spread } from './shots.ts';

export type { Answers } from './bows-before.ts';
export type { Reading } from './bows-left.ts';

const must = checks('bowsThatFit');

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

/**
 * All bows that fit these readings, told in the order in which they were shot; the last one's group is the one that is asked of. `answers` are the
 * ways in which the adjustment may work, `spread` is what is known beforehand of one reading (in).
 * Throws RangeError on numbers that cannot be meant, without a reading, and where no way is given.
 */
// Example: bowsThatFit([{ share: 1, about: 0.1, logSd: 0.6 }], { sd: 0.2, df: 3 }, [{ x: 0, tear: 1, group: 0, counts: 1 },
// { x: -7, tear: 0.5, group: 0, counts: 1 }]).line.slope is 0.0797.
export function bowsThatFit(answers: readonly Answers[], spread: Spread, readings: readonly Reading[]): Belief {
  return beliefOf(bowsLeft(must.bowsThatFit, answers, spread, readings));
}

/** One turn asks for the same belief many times. */
const beliefOf = once((left: BowsLeft): Belief => (left.side === 0 ? between(seenFrom(left, 1), seenFrom(left, -1)) : seenFrom(left, left.side)));

/** What two beliefs say in the mean: a grid leans to one side by a part of its step, and readings that are their own mirror to none. */
function between(one: Belief, other: Belief): Belief {
  const mean = (a: number, b: number): number => (a + b) / 2 + 0;
  const { intercept, slope, varIntercept, varSlope, cov } = other.line;
  return {
    line: {
      intercept: mean(one.line.intercept, intercept), slope: mean(one.line.slope, slope), varIntercept: mean(one.line.varIntercept, varIntercept),
      varSlope: mean(one.line.varSlope, varSlope), cov: mean(one.line.cov, cov),
    },
    otherSide: mean(one.otherSide, other.otherSide),
    sd: mean(one.sd, other.sd),
    within: (...asked) => mean(one.within(...asked), other.within(...asked)),
    further: (...asked) => mean(one.further(...asked), other.further(...asked)),
    outOfReach: (...asked) => mean(one.outOfReach(...asked), other.outOfReach(...asked)),
    withinAlone: (...asked) => mean(one.withinAlone(...asked), other.withinAlone(...asked)),
  };
}

function seenFrom({ at, step, tears, gains, chances, sds, spreads }: BowsLeft, side: 1 | -1): Belief {
  // Chances add up to 1 but for the last digit.
  const chance = (total: number): number => Math.min(1, total);
  const far = (x: number): number => side * (x - at);
  const tearAt = (i: number, u: number): number => (tears[i] ?? 0) + (gains[i] ?? 0) * u;
  const shareWhere = (holds: (i: number) => boolean): number => {
    let total = 0;
    for (let i = 0; i < chances.length; i++) if (holds(i)) total += chances[i] ?? 0;
    return total;
  };
  // Low and high, or high and low, of what was mirrored.
  const turned = (low: number, high: number): readonly [number, number] => (side === 1 ? [low, high] : [-high, -low]);
  const line = lineOf({ tears, gains, chances }, side, far(0));
  return {
    line,
    otherSide: chance(shareWhere((i) => (gains[i] ?? 0) * line.slope < 0)),
    sd: Math.sqrt(spreads.reduce((all, share, s) => all + share * (sds[s] ?? 0) ** 2, 0)),
    within: (x, low, high) => {
      const [[a, b], u] = [turned(low, high), far(x)];
      let total = 0;
      for (let i = 0; i < chances.length; i++) {
        // A bow stands for all tears of its step.
        const t = tearAt(i, u);
        const inside = Math.min(t + step / 2, b) - Math.max(t - step / 2, a);
        if (inside > 0) total += (chances[i] ?? 0) * inside;
      }
      return chance(total / step);
    },
    further: (now, before, target, by) => {
      const [here, there, aim] = [far(now), far(before), side * target];
      return chance(shareWhere((i) => Math.abs(tearAt(i, here) - aim) > Math.abs(tearAt(i, there) - aim) + by));
    },
    outOfReach: (lo, hi, low, high) => {
      const [[a, b], first, last] = [turned(low, high), far(lo), far(hi)];
      return chance(shareWhere((i) => Math.min(tearAt(i, first), tearAt(i, last)) > b || Math.max(tearAt(i, first), tearAt(i, last)) < a));
    },
    withinAlone: (mean, count, low, high) => chance(spreads.reduce((all, share, s) => {
      const width = (sds[s] ?? 1) / Math.sqrt(count);
      return all + share * (normalCdf((high - mean) / width) - normalCdf((low - mean) / width));
    }, 0)),
  };
}

/** Their means and variances; `u` is how far 0 lies from the group's first setting. */
function lineOf({ tears, gains, chances }: Pick<BowsLeft, 'tears' | 'gains' | 'chances'>, side: 1 | -1, u: number): Line {
  let [middle, slope] = [0, 0];
  for (let i = 0; i < chances.length; i++) {
    middle += (chances[i] ?? 0) * (tears[i] ?? 0);
    slope += (chances[i] ?? 0) * (gains[i] ?? 0);
  }
  let [varMiddle, varSlope, cov] = [0, 0, 0];
  for (let i = 0; i < chances.length; i++) {
    const [chance, tear, gain] = [chances[i] ?? 0, (tears[i] ?? 0) - middle, (gains[i] ?? 0) - slope];
    varMiddle += chance * tear * tear;
    varSlope += chance * gain * gain;
    cov += chance * tear * gain;
  }
  return {
    intercept: side * (middle + slope * u) + 0, slope, varSlope,
    varIntercept: Math.max(0, varMiddle + 2 * u * cov + u * u * varSlope), cov: side * (cov + u * varSlope) + 0,
  };
}
