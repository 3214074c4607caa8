import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mayBeDead } from '../../src/archery/may-be-dead.ts';
import { seededRandom } from '../../src/maths/random.ts';

const mean = fc.double({ min: -20, max: 20, noNaN: true });
const sd = fc.double({ min: 0.01, max: 20, noNaN: true });
const dead = fc.double({ min: 0, max: 0.99, noNaN: true });

it('has the mean and the variance of a slope that is nothing now and then (by hand, and by simulation)', () => {
  // Half of the time nothing, else 2: mean 1, variance 1.
  expect(mayBeDead({ mean: 2, sd: 1e-6 }, 0.5)).toEqual({ mean: 1, sd: expect.closeTo(1, 9) });
  const random = seededRandom(12);
  const slopes = Array.from({ length: 20_000 }, () => (random.uniform() < 0.2 ? 0 : -4 + 2 * random.normal()));
  const middle = slopes.reduce((sum, one) => sum + one, 0) / slopes.length;
  const spread = Math.sqrt(slopes.reduce((sum, one) => sum + (one - middle) ** 2, 0) / slopes.length);
  const told = mayBeDead({ mean: -4, sd: 2 }, 0.2);
  // Three standard errors of the simulation.
  expect(Math.abs(told.mean - middle)).toBeLessThan((3 * spread) / Math.sqrt(slopes.length));
  expect(Math.abs(told.sd - spread)).toBeLessThan(0.05);
});

it('leaves a belief as it is where nothing is dead, mirrors it, and draws it to nothing the more the oftener it is', () => {
  fc.assert(fc.property(mean, sd, dead, (m, s, d) => {
    expect(mayBeDead({ mean: m, sd: s }, 0)).toEqual({ mean: m, sd: expect.closeTo(s, 9) });
    const [one, other] = [mayBeDead({ mean: m, sd: s }, d), mayBeDead({ mean: -m, sd: s }, d)];
    expect([0 - other.mean + 0, other.sd]).toEqual([one.mean + 0, one.sd]);
    expect(Math.abs(one.mean)).toBeLessThanOrEqual(Math.abs(m));
    // Less sure of its side than before.
    expect(Math.abs(one.mean) / one.sd).toBeLessThanOrEqual(Math.abs(m) / s + 1e-9);
  }));
});

it('refuses what cannot be meant', () => {
  for (const act of [() => mayBeDead({ mean: NaN, sd: 1 }, 0.1), () => mayBeDead({ mean: 1, sd: 0 }, 0.1), () => mayBeDead({ mean: 1, sd: 1 }, 1), () => mayBeDead({ mean: 1, sd: 1 }, -0.1)]) expect(act).toThrow(RangeError);
  expect(() => mayBeDead({ mean: 1, sd: 1 }, 1)).toThrow('mayBeDead: the chance of doing nothing is 1; it lies between 0 and 1, 1 left out');
});
