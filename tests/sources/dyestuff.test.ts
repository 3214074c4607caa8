// O. L. Davies, "Statistical Methods in Research and Production" (1947): yields of six batches of dyestuff, five of each. From memory;
// that the published results come out to all digits is the proof that the figures are right.

import { describe, expect, it } from 'vitest';
import { betweenVariance, oneWay, shrinkFactor } from '../../src/archery/one-way.ts';
import { sum } from '../../src/maths/sum.ts';
import { near, prints } from './near.ts';

const BATCHES = [
  [1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495], [1595, 1550, 1605, 1510, 1560],
  [1445, 1440, 1595, 1465, 1545], [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445],
] as const;
const { within, between } = oneWay([BATCHES]) ?? { within: NaN, between: NaN };
const mean = (values: readonly number[]): number => sum(values) / values.length;

describe('random effects', () => {
  it('variances 1764.05 between the batches and 2451.25 within them', () => {
    near(within, 2451.25, 1e-12);
    near(between, 1764.05, 1e-12);
  });
  it('the same from the means of the batches', () => {
    const means = [1505, 1528, 1564, 1498, 1600, 1470];
    expect(BATCHES.map(mean)).toEqual(means);
    near(betweenVariance([means.map((m) => ({ mean: m, count: 5 }))], 2451.25), 1764.05, 1e-12);
  });
  it('effects of the batches, shrunk by 0.782527', () => {
    const share = shrinkFactor(between, within, 5);
    prints(share, 0.782527, 6);
    const middle = mean(BATCHES.map(mean));
    for (const [i, effect] of [-17.6069, 0.3913, 28.5622, -23.0845, 56.7332, -44.9953].entries()) {
      prints(share * (mean(BATCHES[i] ?? []) - middle), effect, 4);
    }
  });
});
