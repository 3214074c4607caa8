// AIAG, "Measurement Systems Analysis", fourth edition: ten parts, three appraisers, three trials. Data and results read on secondary pages;
// appraiser C's second and third trial from memory, and right, for every printed figure comes out.
//
// The kernel has the analysis of variance, so the manual's table III-B 7 and 8 can be held. Its other way, from mean ranges (EV 0.2019, AV 0.2297,
// GRR 0.3058, PV 1.1046, TV 1.1461), rests on constants that no function of ours has; its ranges are held here only as far as `widest` measures them.

import { describe, expect, it } from 'vitest';
import { betweenVariance, oneWay, type GroupCentre } from '../../src/archery/one-way.ts';
import { widest } from '../../src/archery/widest.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { sum } from '../../src/maths/sum.ts';
import { near, prints } from './near.ts';

/** By appraiser and trial; one figure a part. */
const TRIALS = [
  [
    [0.29, -0.56, 1.34, 0.47, -0.80, 0.02, 0.59, -0.31, 2.26, -1.36],
    [0.41, -0.68, 1.17, 0.50, -0.92, -0.11, 0.75, -0.20, 1.99, -1.25],
    [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
  ], [
    [0.08, -0.47, 1.19, 0.01, -0.56, -0.20, 0.47, -0.63, 1.80, -1.68],
    [0.25, -1.22, 0.94, 1.03, -1.20, 0.22, 0.55, 0.08, 2.12, -1.62],
    [0.07, -0.68, 1.34, 0.20, -1.28, 0.06, 0.83, -0.34, 2.19, -1.50],
  ], [
    [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
    [-0.11, -1.13, 1.09, 0.20, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
    [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
  ],
] as const;

const PARTS = Array.from({ length: 10 }, (_, part) => TRIALS.map((trials) => trials.map((row) => row[part] ?? NaN)));
const byPart = PARTS.map((cells) => cells.flat());
const byAppraiser = TRIALS.map((trials) => trials.flat());
const byCell = PARTS.flat();

interface Squares { readonly among: number; readonly inside: number }
function squares(groups: readonly (readonly number[])[]): Squares {
  const found = oneWay([groups]);
  if (found === null) throw new Error('nothing was learned');
  return { among: found.f * found.within * (groups.length - 1), inside: found.within * found.withinDf };
}
const [parts, appraisers, cells] = [squares(byPart), squares(byAppraiser), squares(byCell)];
const interaction = cells.among - parts.among - appraisers.among;
/** Interaction is far from significant, so the manual pools it with the error: 18 + 60 df. */
const pooled = (interaction + cells.inside) / 78;
const centres = (groups: readonly (readonly number[])[]): readonly (readonly GroupCentre[])[] =>
  [groups.map((values) => ({ mean: sum(values) / values.length, count: values.length }))];

describe('the analysis of variance', () => {
  it('sums of squares: parts 88.3619, appraisers 3.1673, interaction 0.3590, error 2.7589, total 94.6471', () => {
    prints(parts.among, 88.3619, 4, 'parts');
    prints(appraisers.among, 3.1673, 4, 'appraisers');
    prints(interaction, 0.359, 4, 'interaction');
    prints(cells.inside, 2.7589, 4, 'error');
    prints(cells.among + cells.inside, 94.6471, 4, 'total');
  });
  it('the total is the same, however the figures are grouped (derived)', () => {
    near(parts.among + parts.inside, cells.among + cells.inside, 1e-12);
    near(appraisers.among + appraisers.inside, cells.among + cells.inside, 1e-12);
  });
  it('F of the interaction 0.434 on 18 and 60 df: not significant', () => {
    const f = interaction / 18 / (cells.inside / 60);
    // oxlint-disable-next-line approx-constant -- it is no logarithm
    prints(f, 0.434, 3);
    expect(fAbove(f, 18, 60)).toBeGreaterThan(0.9);
  });
  it('repeatability 0.199933 (variance 0.039973), reproducibility 0.226838, parts 1.042327; together 0.302373 and 1.085', () => {
    const [av2, pv2] = [betweenVariance(centres(byAppraiser), pooled), betweenVariance(centres(byPart), pooled)];
    prints(pooled, 0.039973, 6, 'variance of repeatability');
    prints(Math.sqrt(pooled), 0.199933, 6, 'repeatability');
    prints(av2, 0.051455, 6, 'variance of reproducibility');
    prints(Math.sqrt(av2), 0.226838, 6, 'reproducibility');
    prints(pv2, 1.086447, 6, 'variance of the parts');
    prints(Math.sqrt(pv2), 1.042327, 6, 'parts');
    // Printed 0.302373, which is the sum of the printed variances; without rounding it is 0.3023715.
    near(Math.sqrt(pooled + av2), 0.302373, 1e-5, 'repeatability and reproducibility');
    prints(Math.sqrt(pooled + av2 + pv2), 1.085, 3, 'total');
  });
});

it('the mean range of three trials is 0.3417, and the appraisers differ by 0.4447 at the most', () => {
  const range = (values: readonly number[]): number => widest(values.map((x) => ({ x, y: 0 }))).pair;
  prints(sum(byCell.map(range)) / byCell.length, 0.3417, 4);
  prints(range(byAppraiser.map((values) => sum(values) / values.length)), 0.4447, 4);
});
