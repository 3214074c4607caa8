// Is it truly worse than before a change? The chance along one line says so too often: with a belief that is wide enough to hold both sides, any luck
// counts as an answer. So what may be is taken apart: that the adjustment works as the book says, that it works to the other side, and that
// it does nothing. By simulation, where one line gave a false alarm in one of five and more: of what is then called worse at
// 0.9, by three shots or more, nine in ten are and more (tests/machine/worse.chance.test.ts).
// Derived: Bayes' rule over the ways, each as likely as the slope that the points show by themselves is under it (Student's t).

import { checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { chanceWorse, checkSettings, fitLine, type SettingPoint, type SlopePrior } from './response.ts';
import { checkSpread, type Spread } from './shots.ts';

const must = checks('chanceTrulyWorse');

/** One way in which an adjustment may work: how likely beforehand, and the slope then; null where it does nothing. */
export interface Way { readonly share: number; readonly slope: SlopePrior | null }

/**
 * Chance that the tear at `now` lies further from `target` (in) than at `before`, by all `ways`: doing nothing is not worse. `spread` is that of one
 * shot (in). 0 where the points show no slope. Throws RangeError on numbers that cannot be meant, and where no way is given.
 */
// Example: chanceTrulyWorse([{ x: 0, mean: 0.4, count: 4, group: 0 }, { x: 1, mean: 0.9, count: 4, group: 0 }], 0, { sd: 0.1, df: 16 },
// [{ share: 0.2, slope: null }, { share: 0.5, slope: { mean: -0.1, sd: 0.06 } }, { share: 0.3, slope: { mean: 0.1, sd: 0.06 } }], 0, 1) is 0.9964.
export function chanceTrulyWorse(
  points: readonly SettingPoint[], group: number, spread: Spread, ways: readonly Way[], before: number, now: number, target = 0,
): number {
  checkSpread(must.chanceTrulyWorse, spread);
  must.chanceTrulyWorse.finite(group, 'the group asked for');
  checkSettings(must.chanceTrulyWorse, points);
  must.chanceTrulyWorse.measure(before, 'the setting before');
  must.chanceTrulyWorse.measure(now, 'the setting now');
  must.chanceTrulyWorse.measure(target, 'the target');
  if (ways.length === 0) throw must.chanceTrulyWorse.error('there is no way in which it may work; give at least one');
  for (const { share, slope } of ways) {
    must.chanceTrulyWorse.size(share, 'the share of a way');
    if (slope === null) continue;
    must.chanceTrulyWorse.measure(slope.mean, 'the slope of a way');
    must.chanceTrulyWorse.size(slope.sd, 'the spread of a slope');
  }
  const free = shown(points, group, spread.sd, ways);
  if (free === null) return 0;
  const logs = ways.map(({ share, slope }) => Math.log(share) + likely(free, slope ?? NOTHING, spread.df));
  const weighed = ways.map(({ slope }, i) => ({ slope, weight: Math.exp((logs[i] ?? 0) - Math.max(...logs)) }));
  // Few shots know their own spread badly: a normal line as wide as Student's t is.
  const df = Math.max(3, spread.df);
  const sd = Math.min(MOST, spread.sd * (df === Infinity ? 1 : Math.sqrt(df / (df - 2))));
  const worse = weighed.map(({ slope, weight }) => (slope === null ? 0 : weight * chanceWorse(fitLine(points, sd, slope, group), before, now, target)));
  return sum(worse) / sum(weighed.map(({ weight }) => weight));
}

const NOTHING: SlopePrior = { mean: 0, sd: 0 };
/** The most that any figure may be here. */
const MOST = 1e30;
/** Points that tell less than this share of what is believed tell nothing. */
const LEAST_TOLD = 1e-9;

/** The slope that the points show by themselves, and how unsure it is: what a wide belief in nothing adds is taken out of a fit again. Null where they show none. */
function shown(points: readonly SettingPoint[], group: number, sd: number, ways: readonly Way[]): { readonly slope: number; readonly sd: number } | null {
  const widest = Math.max(0, ...ways.map(({ slope }) => slope?.sd ?? 0));
  // One setting alone tells of no slope.
  if (widest === 0 || !points.some((p) => points.some((q) => q.group === p.group && q.x !== p.x))) return null;
  const line = fitLine(points, sd, { mean: 0, sd: widest }, group);
  const believed = 1 / widest ** 2;
  const told = 1 / line.varSlope - believed;
  return told > LEAST_TOLD * believed ? { slope: line.slope / line.varSlope / told, sd: 1 / Math.sqrt(told) } : null;
}

/** The logarithm of how likely the slope that is shown is under a belief, but for what is the same for all. */
function likely(free: { readonly slope: number; readonly sd: number }, { mean, sd }: SlopePrior, df: number): number {
  const wide = Math.hypot(1, sd / free.sd);
  const far = ((free.slope - mean) / (wide * free.sd)) ** 2;
  return (df === Infinity ? -far / 2 : -((df + 1) / 2) * Math.log1p(far / df)) - Math.log(wide);
}
