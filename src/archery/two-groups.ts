// Field points (a) against broadheads (b), or fletched (a) against unfletched (b): one spread over both axes and both groups.
import jStat from 'jstat';
import { huberCentre } from '../maths/huber.ts';
import { studentQuantile } from '../maths/student.ts';
import { pooledSpread, type Spread } from './spread.ts';
import { chanceAbove, chanceBelow, chanceWithin } from './tolerance.ts';
import type { Point } from './widest.ts';

export interface TwoGroups { readonly a: readonly Point[]; readonly b: readonly Point[] }

export function difference({ a, b }: TwoGroups, sd: number): { readonly mean: Point; readonly count: Point } | null {
  if (a.length === 0 || b.length === 0) return null;
  const at = (axis: 'x' | 'y'): { mean: number; count: number } => {
    const first = huberCentre(a.map((p) => p[axis]), sd);
    const second = huberCentre(b.map((p) => p[axis]), sd);
    return { mean: second.centre - first.centre, count: 1 / (1 / first.count + 1 / second.count) };
  };
  const [x, y] = [at('x'), at('y')];
  return { mean: { x: x.mean, y: y.mean }, count: { x: x.count, y: y.count } };
}

export const pairSpread = (pairs: readonly TwoGroups[], prior: Spread): Spread =>
  pooledSpread(pairs.flatMap(({ a, b }) => [a, b]).filter((shots) => shots.length > 0), prior);

export const milliradians = (inches: number, yards: number): number => (1000 * inches) / (36 * yards);

export const margin = (sd: number, yards: number): number => Math.max(1.5 * sd, (36 * yards) / 1000);

export function dragShare(yards: number): number {
  if (yards <= 20) return (-0.5 * yards) / 20;
  if (yards <= 30) return -0.5 - (0.3 * (yards - 20)) / 10;
  return -0.8 - (0.25 * (yards - 30)) / 10;
}

export type TwoGroupsVerdict = 'same' | 'different' | 'undecided';
export function judgeDifference(mean: number, count: number, spread: Spread, aim: number, give: number): { readonly verdict: TwoGroupsVerdict; readonly within: number; readonly beyond: number } {
  const se = spread.sd / Math.sqrt(count);
  const within = chanceWithin(mean, se, spread.df, aim - give, aim + give);
  const beyond = Math.max(chanceAbove(mean, se, spread.df, aim + give), chanceBelow(mean, se, spread.df, aim - give));
  return { within, beyond, verdict: within >= 0.9 ? 'same' : beyond >= 0.8 ? 'different' : 'undecided' };
}
export const LOOKS = [2, 3, 4, 6] as const;

export const largestNotExcluded = (mean: number, count: number, spread: Spread, aim: number): number =>
  Math.abs(mean - aim) + (studentQuantile(0.95, spread.df) * spread.sd) / Math.sqrt(count);

export function scatters(groups: readonly TwoGroups[]): boolean {
  const squares = (side: 'a' | 'b'): { sum: number; df: number } => groups.reduce((total, group) => {
    const shots = group[side];
    if (shots.length < 2) return total;
    const m = { x: shots.reduce((s, p) => s + p.x, 0) / shots.length, y: shots.reduce((s, p) => s + p.y, 0) / shots.length };
    return { sum: total.sum + shots.reduce((s, p) => s + (p.x - m.x) ** 2 + (p.y - m.y) ** 2, 0), df: total.df + 2 * (shots.length - 1) };
  }, { sum: 0, df: 0 });
  const [a, b] = [squares('a'), squares('b')];
  if (a.df === 0 || b.df === 0 || a.sum === 0) return false;
  const ratio = b.sum / b.df / (a.sum / a.df);
  return ratio > 4 && 1 - jStat.centralF.cdf(ratio / 2.25, b.df, a.df) < 0.05;
}
