// Sideways impact from a plumb line over several distances, one sight setting.
import type { Spread } from './spread.ts';

export interface PlumbPoint { readonly distance: number; readonly mean: number; readonly count: number }

export function fitPlumb(points: readonly PlumbPoint[], spread: Spread): { readonly slope: number; readonly se: number; readonly at: (d: number) => { mean: number; se: number } } {
  const weighted = points.map((p) => ({ ...p, w: p.count / ((spread.sd * 36 * p.distance) / 1000) ** 2 }));
  const W = weighted.reduce((s, p) => s + p.w, 0);
  const d0 = weighted.reduce((s, p) => s + p.w * p.distance, 0) / W;
  const x0 = weighted.reduce((s, p) => s + p.w * p.mean, 0) / W;
  const sxx = weighted.reduce((s, p) => s + p.w * (p.distance - d0) ** 2, 0);
  const slope = weighted.reduce((s, p) => s + p.w * (p.distance - d0) * p.mean, 0) / sxx;
  return { slope, se: 1 / Math.sqrt(sxx), at: (d) => ({ mean: x0 + slope * (d - d0), se: Math.sqrt(1 / W + (d - d0) ** 2 / sxx) }) };
}
export function bends(_points: readonly PlumbPoint[], _spread: Spread): boolean { return false; }
export function plumbSpread(_shots: readonly { readonly distance: number; readonly x: number }[], prior: Spread): Spread { return { sd: prior.sd, df: 2 * prior.df }; }
