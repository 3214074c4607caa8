// Several groups of shots, possibly of unequal size: do their centres differ by more than the shots within them explain, and
// by how much? The one-way layout with random effects; both axes of a tear may be pooled (one list of groups for each).
// Source: S. R. Searle, G. Casella, C. E. McCulloch, "Variance Components" (1992), the ANOVA estimator for unequal numbers (from memory).

import { checks } from '../maths/check.ts';
import { fAbove } from '../maths/fisher.ts';
import { sum } from '../maths/sum.ts';

const must = checks('betweenVariance', 'shrinkFactor', 'oneWay');

/** Centre of one group on one axis, and how many full shots it rests on. */
export interface GroupCentre { readonly mean: number; readonly count: number }

/** Mean square among the groups, its degrees of freedom, and how many shots a group has as far as this square goes. */
interface Among { readonly square: number; readonly df: number; readonly perGroup: number }

/** null where no axis has two groups; a group alone adds nothing. */
function among(axes: readonly (readonly GroupCentre[])[]): Among | null {
  const each = axes.filter((groups) => groups.length > 0).map((groups) => {
    const total = sum(groups.map((g) => g.count));
    const middle = sum(groups.map((g) => g.count * g.mean)) / total;
    return {
      squares: sum(groups.map((g) => g.count * (g.mean - middle) ** 2)),
      df: groups.length - 1,
      shots: total - sum(groups.map((g) => g.count ** 2)) / total,
    };
  });
  const df = sum(each.map((axis) => axis.df));
  if (df === 0) return null;
  return { square: sum(each.map((axis) => axis.squares)) / df, df, perGroup: sum(each.map((axis) => axis.shots)) / df };
}

/**
 * Variance of the groups' true centres on one axis, by the method of moments: (among - within) / shots in a group, never below 0.
 * `axes` holds the groups' centres, one list for each axis; `within` is the variance of one shot (its unit squared).
 * 0 for fewer than two groups. Throws RangeError on numbers that cannot be meant.
 */
// Example: betweenVariance([[{ mean: 0, count: 2 }, { mean: 2, count: 2 }]], 1) is 1.5.
export function betweenVariance(axes: readonly (readonly GroupCentre[])[], within: number): number {
  must.betweenVariance.positive(within, 'the variance of one shot');
  for (const { mean, count } of axes.flat()) {
    must.betweenVariance.measure(mean, 'the centre of a group');
    must.betweenVariance.size(count, 'the count of a group');
  }
  const found = among(axes);
  return found === null ? 0 : beyond(found, within);
}

const beyond = ({ square, perGroup }: Among, within: number): number => Math.max(0, (square - within) / perGroup);

/** How much of a group's distance from the rest is its own, between 0 and 1; the rest is luck.
 *  Throws RangeError unless `within` and `count` are above 0 and `between` 0 or more. */
// Example: shrinkFactor(1, 2, 4) is 0.6667.
export function shrinkFactor(between: number, within: number, count: number): number {
  must.shrinkFactor.notNegative(between, 'the variance between groups');
  must.shrinkFactor.positive(within, 'the variance of one shot');
  must.shrinkFactor.positive(count, 'the count of shots');
  return between / (between + within / count);
}

export interface OneWay {
  readonly within: number; readonly withinDf: number;
  readonly between: number;
  /** F of among over within, and the chance of one as large where all groups have the same centre. */
  readonly f: number; readonly p: number;
}

/**
 * The classical analysis with plain means: one list of groups for each axis. null where nothing is left to learn the shots'
 * own variance from, where that is 0, or where there are fewer than two groups. Empty groups do not count.
 * Throws RangeError on a shot that is not a finite number.
 */
// Example: oneWay([[[0, 2], [4, 6]]]) is { within: 2, withinDf: 2, between: 7, f: 8, p: 0.1056 }.
export function oneWay(axes: readonly (readonly (readonly number[])[])[]): OneWay | null {
  for (const value of axes.flat(2)) must.oneWay.measure(value, 'a shot');
  const full = axes.map((groups) => groups.filter((values) => values.length > 0).map((values) => {
    const mean = sum(values) / values.length;
    return { mean, count: values.length, squares: sum(values.map((v) => (v - mean) ** 2)) };
  }));
  const found = among(full);
  const squares = sum(full.flat().map((group) => group.squares));
  // Groups of one shot have no squares either.
  if (found === null || squares === 0) return null;
  const { square, df } = found;
  const withinDf = sum(full.flat().map((group) => group.count - 1));
  const within = squares / withinDf;
  return { within, withinDf, between: beyond(found, within), f: square / within, p: fAbove(square / within, df, withinDf) };
}
