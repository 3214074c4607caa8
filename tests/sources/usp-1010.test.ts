// United States Pharmacopeia, USP 29 NF 24, general chapter 1010 (analytical data): how far results of several runs differ, and what more
// runs or more replicates would gain. Read. The same model asks whether an arrow's number matters.

import { describe, expect, it } from 'vitest';
import { betweenVariance, oneWay, shrinkFactor } from '../../src/archery/one-way.ts';
import { sum } from '../../src/maths/sum.ts';
import { near, prints } from './near.ts';

const RUNS = [[100.70, 101.05, 101.15], [99.46, 99.37, 99.59], [99.96, 100.17, 101.01], [101.80, 102.16, 102.44], [101.91, 102.00, 101.67]] as const;
const { within, withinDf, between, f } = oneWay([RUNS]) ?? { within: NaN, withinDf: NaN, between: NaN, f: NaN };

describe('five runs of three replicates', () => {
  it('grand mean 100.96', () => prints(sum(RUNS.flat()) / 15, 100.96, 2));
  it('sums of squares 14.200 and 1.018, mean squares 3.550 and 0.102', () => {
    expect(withinDf).toBe(10);
    prints(f * within * 4, 14.2, 3);
    prints(within * withinDf, 1.018, 3);
    prints(f * within, 3.55, 3);
    prints(within, 0.102, 3);
  });
  it('F 34.80 as printed, of mean squares that were rounded (0.3 %; 34.886 derived without rounding)', () => {
    near(f, 34.8, 3e-3);
    near(f, 34.886, 1e-5);
  });
  it('variance of one result 1.251; between the runs 1.1494, a share of 0.9187 (derived)', () => {
    prints(between + within, 1.251, 3);
    prints(between, 1.1494, 4);
    prints(shrinkFactor(between, within, 1), 0.9187, 4);
  });
  it.each([[1, 1, 1.251], [1, 2, 1.2], [1, 3, 1.183], [2, 1, 0.625], [2, 2, 0.6], [2, 3, 0.592]])('%i runs of %i replicates: variance %f', (runs, replicates, variance) => {
    // 0.62558 stands there as 0.625, half of the 1.251 above it: the last digit is good to 0.0006.
    expect(Math.abs((between + within / replicates) / runs - variance)).toBeLessThan(6e-4);
  });
  it('the runs alone, by their means, give the same variance between them (derived)', () => {
    const means = RUNS.map((run) => ({ mean: sum(run) / run.length, count: run.length }));
    near(betweenVariance([means], within), between, 1e-12);
  });
});
