// The stated model of a tear thought through the plain way, for tests: a triple loop over tear, response and spread, every node kept, steps much finer
// than those of src/archery/bows-that-fit.ts, no mirror, nothing remembered. Only the figures of the model are the same; they are stated there.

import type { Answers } from '../../src/archery/bows-before.ts';
import type { Reading } from '../../src/archery/bows-that-fit.ts';
import type { Spread } from '../../src/archery/spread.ts';

/** A tear (in) at setting 0 with a response, and how likely both are together. */
interface Bow { readonly c: number; readonly gain: number; readonly w: number }

/** Nobody reads closer than 0.03 in, and a hole is told to 1/16 in (a uniform error: width squared / 12). */
const READING = 0.03 ** 2 + (1 / 16) ** 2 / 12;
const normal = (far: number, sd: number): number => Math.exp(-(far * far) / (2 * sd * sd)) / sd;
const range = (from: number, to: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count);

function responses(answers: readonly Answers[], count: number): { readonly gain: number; readonly w: number }[] {
  return answers.flatMap((one) => {
    if ('about' in one && one.about === null) return [{ gain: 0, w: one.share }];
    const zs = range(-2.8, 2.8, count);
    const all = zs.reduce((total, z) => total + normal(z, 1), 0);
    return zs.map((z) => ({ gain: 'mean' in one ? one.mean + one.sd * z : one.about * Math.exp(one.logSd * z), w: (one.share * normal(z, 1)) / all }));
  });
}

/** Spreads of a reading: the archer's own, unsure by a factor, from far steadier than usual to a good deal wilder; and the reading itself. */
function spreads({ sd, df }: Spread, count: number): { readonly sd: number; readonly w: number }[] {
  const own = Math.sqrt(sd * sd - READING);
  return range(-4, 2.4, count).map((z) => ({ sd: Math.hypot(own * Math.exp(z * Math.sqrt(1 / (2 * df))), Math.sqrt(READING)), w: normal(z, 1) }));
}

export interface Plain {
  readonly mean: (x: number) => number;
  /** How unsure the tear at a setting is. */
  readonly unsure: (x: number) => number;
  readonly slope: number;
  readonly varSlope: number;
  readonly within: (x: number, low: number, high: number) => number;
  readonly further: (now: number, before: number, target: number, by: number) => number;
  readonly outOfReach: (lo: number, hi: number, low: number, high: number) => number;
  readonly otherSide: number;
  readonly sd: number;
}

/** All bows that fit, of the last reading's group. Tears reach 2.4 in either way of the group's first. */
export function allBows(answers: readonly Answers[], spread: Spread, readings: readonly Reading[], step = 0.025): Plain {
  const last = readings.at(-1)?.group ?? NaN;
  const groups = [...new Set(readings.map(({ group }) => group))].filter((group) => group !== last);
  const sets = [...groups, last].map((group) => readings.filter((one) => one.group === group));
  const tears = sets.map((own) => range((own[0]?.tear ?? 0) - 2.4, (own[0]?.tear ?? 0) + 2.4, Math.round(4.8 / step)));
  const bows: Bow[] = [];
  let [squares, all] = [0, 0];
  for (const { gain, w: byGain } of responses(answers, 34)) {
    const fitting = new Float64Array(tears.at(-1)?.length ?? 0);
    for (const { sd, w: bySpread } of spreads(spread, 12)) {
      let beforehand = byGain * bySpread;
      for (const [j, own] of sets.entries()) {
        const fits = Float64Array.from(tears[j] ?? [], (c) => normal(c, 3));
        for (const { x, tear, counts } of own) {
          const first = tear - gain * (x - (own[0]?.x ?? 0)) - (tears[j]?.[0] ?? 0);
          for (let i = 0; i < fits.length; i++) {
            const fit = 0.94 * normal(first - i * step, sd) + 0.06 * normal(first - i * step, 4 * sd) + 1e-9 / sd;
            fits[i] = (fits[i] ?? 0) * (counts === 1 ? fit : fit ** counts);
          }
        }
        if (j === sets.length - 1) for (let i = 0; i < fits.length; i++) fitting[i] = (fitting[i] ?? 0) + beforehand * (fits[i] ?? 0);
        beforehand *= fits.reduce((a, b) => a + b, 0);
      }
      squares += beforehand * sd * sd;
      all += beforehand;
    }
    for (const [i, w] of fitting.entries()) bows.push({ c: (tears.at(-1)?.[i] ?? 0) - gain * (sets.at(-1)?.[0]?.x ?? 0), gain, w });
  }
  const total = (value: (bow: Bow) => number): number => bows.reduce((sum, bow) => sum + bow.w * value(bow), 0) / all;
  const slope = total(({ gain }) => gain);
  const mean = (x: number): number => total(({ c, gain }) => c + gain * x);
  return {
    slope, varSlope: total(({ gain }) => (gain - slope) ** 2), sd: Math.sqrt(squares / all),
    mean,
    unsure: (x) => {
      const middle = mean(x);
      return Math.sqrt(total(({ c, gain }) => (c + gain * x - middle) ** 2));
    },
    otherSide: total(({ gain }) => (gain * slope < 0 ? 1 : 0)),
    within: (x, low, high) => total(({ c, gain }) => {
      const t = c + gain * x;
      return Math.max(0, Math.min(high, t + step / 2) - Math.max(low, t - step / 2)) / step;
    }),
    further: (now, before, target, by) => total(({ c, gain }) => (Math.abs(c + gain * now - target) > Math.abs(c + gain * before - target) + by ? 1 : 0)),
    outOfReach: (lo, hi, low, high) => total(({ c, gain }) => {
      const [a, b] = [c + gain * lo, c + gain * hi];
      return Math.min(a, b) > high || Math.max(a, b) < low ? 1 : 0;
    }),
  };
}
