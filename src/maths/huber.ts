// A centre that one stray value cannot drag far: Huber's estimate with a fixed scale.
// A value within k scales of the centre counts fully, one further off counts less the further it is.
// Source: P. J. Huber, "Robust Estimation of a Location Parameter" (1964).

import { checks } from './check.ts';
import { median, sum } from './sum.ts';

const must = checks('huberCentre');

export interface HuberCentre {
  /** In the unit of the values. */
  readonly centre: number;
  /** Sum of the weights: how many full values the estimate rests on. */
  readonly count: number;
  /** Between 0 and 1, in the order of the values. */
  readonly weights: readonly number[];
}

/**
 * The centre m where the pulls of all values, each limited to k * scale, balance.
 * The pull is a falling broken line in m with its corners at value +- k * scale: the balance lies between two corners.
 * Where it is level at zero (two values far apart) the point nearest the middle value is taken.
 * Throws RangeError on no values, a value that is not finite, or a scale or k that is not above 0.
 */
// Example: huberCentre([0, 0.1, 3], 1).centre is 0.8; huberCentre([0, 0.1, 3], 1, 1).centre is 0.55.
export function huberCentre(values: readonly number[], scale: number, k = 1.5): HuberCentre {
  must.huberCentre.positive(scale, 'the scale');
  must.huberCentre.positive(k, 'k');
  for (const value of values) must.huberCentre.finite(value, 'a value');
  if (values.length === 0) throw must.huberCentre.error('there is no centre of no values; give at least one');
  const reach = k * scale;
  const [least, most] = [Math.min(...values), Math.max(...values)];
  // All closer together than the reach: each counts fully, and the balance is their mean.
  if (most - least < reach) return { centre: clamp(sum(values) / values.length, most - reach, least + reach), count: values.length, weights: values.map(() => 1) };
  // Only its sign is asked for, beyond all rounding, and at every corner: a plain sum will do.
  const pull = (m: number): number => values.reduce((all, v) => all + Math.max(-reach, Math.min(reach, v - m)), 0);

  const middle = median(values);
  const corners = values.flatMap((v) => [v - reach, v + reach]);
  const nothing = 1e-9 * reach; // a corner's own rounding must not hide that the pull is level there
  let low = -Infinity;
  let high = Infinity;
  for (const corner of corners) {
    const p = pull(corner);
    if (p >= -nothing) low = Math.max(low, corner);
    if (p <= nothing) high = Math.min(high, corner);
  }
  // Level at zero: every corner from high to low balances; otherwise solve between the two corners.
  const centre = low >= high ? clamp(middle, high, low) : clamp(balance(values, (low + high) / 2, reach), low, high);

  const weights = values.map((v) => Math.min(1, reach / Math.abs(v - centre)));
  return { centre, count: sum(weights), weights };
}

/** The root of the straight piece of the pull around `near`, which is not level there. */
function balance(values: readonly number[], near: number, reach: number): number {
  const inside = values.filter((v) => Math.abs(v - near) <= reach);
  const above = values.filter((v) => v - near > reach).length;
  const below = values.length - inside.length - above;
  return (sum(inside) + reach * (above - below)) / inside.length;
}

function clamp(x: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, x));
}
