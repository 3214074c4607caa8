// What must rise, or fall, when one figure grows and all others stay: arguments come from the registry, one number in them is made larger.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as arrowEnergy from '../../src/archery/arrow-energy.ts';
import { grainsPerPound, worstGrainsPerPound } from '../../src/archery/arrow-mass.ts';
import { foc, leastMass, massOfParts } from '../../src/archery/arrow-parts.ts';
import { holdingWeight, letOff } from '../../src/archery/bow-figures.ts';
import { pairLimits } from '../../src/archery/consistency.ts';
import { margin, milliradians } from '../../src/archery/impact-angle.ts';
import { speedFor } from '../../src/archery/launch-speed.ts';
import { betweenVariance, shrinkFactor } from '../../src/archery/one-way.ts';
import { predict, priorFromBook } from '../../src/archery/response.ts';
import { amoPounds } from '../../src/archery/static-spine.ts';
import { cutShift } from '../../src/archery/stiffness.ts';
import { chanceAbove, chanceBelow, chanceWithin } from '../../src/archery/tolerance.ts';
import { judgeDifference, largestNotExcluded } from '../../src/archery/two-groups.ts';
import { fAbove } from '../../src/maths/fisher.ts';
import { normalCdf, normalQuantile } from '../../src/maths/normal.ts';
import { studentCdf, studentQuantile } from '../../src/maths/student.ts';
import { FUNCTIONS, type Any } from './functions.ts';
import { record, spoilt, spotsIn, valuesOf } from './shape.ts';

/** The library's incomplete beta function jumps by some 1e-8 where it changes its method. */
const JUMPS = 1e-7;
const identity = (outcome: number): number => outcome;

/** Function, the number that grows (as the shapes name places), what is looked at, and which way it goes. */
const WAYS: readonly (readonly [fn: Any, grows: string, way: 'rises' | 'falls', of?: Any, only?: Any])[] = [
  [chanceWithin, '.4', 'rises'], [chanceWithin, '.3', 'falls', identity, (_mean: number, _se: number, _df: number, low: number, high: number) => high - low > 0.5],
  [chanceAbove, '.0', 'rises'], [chanceAbove, '.3', 'falls'], [chanceBelow, '.0', 'falls'], [chanceBelow, '.3', 'rises'],
  [fAbove, '.0', 'falls'], [normalCdf, '.0', 'rises'], [normalQuantile, '.0', 'rises'], [studentCdf, '.0', 'rises'], [studentQuantile, '.0', 'rises'],
  // The fewer shots, the wider the tails.
  [studentQuantile, '.1', 'falls', identity, (p: number) => p > 0.5 && p < 1], [studentCdf, '.1', 'rises', identity, (t: number) => t > 0],
  [shrinkFactor, '.0', 'rises'], [shrinkFactor, '.1', 'falls'], [shrinkFactor, '.2', 'rises'], [betweenVariance, '.1', 'falls'],
  [judgeDifference, '.4', 'rises', ({ within }: { within: number }) => within], [judgeDifference, '.4', 'falls', ({ beyond }: { beyond: number }) => beyond],
  [largestNotExcluded, '.1', 'falls'], [largestNotExcluded, '.2.sd', 'rises'], [largestNotExcluded, '.2.df', 'falls'],
  [pairLimits, '.1', 'falls', ({ pair99 }: { pair99: number }) => pair99], [pairLimits, '.1', 'falls', ({ pair95 }: { pair95: number }) => pair95],
  [margin, '.0', 'rises'], [margin, '.1', 'rises'], [milliradians, '.0', 'rises'], [milliradians, '.1', 'falls', identity, (inches: number) => inches > 0],
  [predict, '.0.varIntercept', 'rises', ({ sd }: { sd: number }) => sd], [predict, '.0.intercept', 'rises', ({ mean }: { mean: number }) => mean],
  [priorFromBook, '.1', 'rises', ({ sd }: { sd: number }) => sd],
  [arrowEnergy.kineticEnergy, '.0', 'rises', ({ joules }: { joules: number }) => joules], [arrowEnergy.kineticEnergy, '.1', 'rises', ({ joules }: { joules: number }) => joules],
  [grainsPerPound, '.0', 'rises'], [grainsPerPound, '.1', 'falls'], [worstGrainsPerPound, '.2', 'falls'],
  [massOfParts, '.0.point', 'rises'], [massOfParts, '.0.length', 'rises'], [leastMass, '.0.point', 'rises'], [foc, '.1', 'rises'],
  [letOff, '.0', 'rises'], [letOff, '.1', 'falls'], [holdingWeight, '.1', 'falls'],
  [speedFor, '.1', 'falls'], [speedFor, '.0.virtualMass', 'falls'], [speedFor, '.0.energy', 'rises'],
  [amoPounds, '.0', 'falls'], [cutShift, '.1', 'rises', ({ steps }: { steps: { low: number } }) => steps.low],
  [cutShift, '.0', 'falls', ({ steps }: { steps: { high: number } }) => steps.high],
];

const call = (fn: Any, args: readonly unknown[]): unknown => Reflect.apply(fn, undefined, args);

describe('when one figure grows', () => {
  it.each(WAYS.map(([fn, grows, way, of = identity, only]) => [fn.name, grows, way, fn, of, only] as const))('%s with %s: %s', (_name, grows, way, fn, of, only) => {
    const entry = FUNCTIONS.find((one) => one.fn === fn);
    if (entry === undefined) throw new Error('not in the registry');
    const shape = record(Object.fromEntries(entry.args.map((one, i) => [`${i}`, one])));
    const args = fc.tuple(...entry.args.map((one) => valuesOf(one, 'on marks'))).map((drawn) => entry.arrange?.(drawn) ?? drawn);
    let looked = 0;
    fc.assert(fc.property(args, fc.integer({ min: 1, max: 8 }), (told, steps) => {
      const spot = spotsIn(shape, { ...told }).find(({ at }) => at === grows);
      if (spot === undefined || (only !== undefined && call(only, told) !== true)) return;
      const larger = Math.min(spot.leaf.high, spot.value + steps * spot.leaf.mark);
      const [before, after] = [call(of, [call(fn, told)]), call(of, [call(fn, Object.values(spoilt(shape, { ...told }, grows, larger) ?? {}))])];
      if (typeof before !== 'number' || typeof after !== 'number') throw new Error(`no figure comes out: ${String(before)}`);
      looked++;
      if (before === after) return;
      const by = way === 'rises' ? after - before : before - after;
      if (by < -JUMPS * Math.max(1, Math.abs(before))) expect.fail(`from ${before} to ${after}, told ${JSON.stringify(told)} and then ${larger}`);
    }), { numRuns: 60 });
    expect(looked).toBeGreaterThan(10);
  });

  it('an arrow weighs no less than its least mass, and a scale that reads low makes it no lighter for its bow', () => {
    const entry = FUNCTIONS.find((one) => one.fn === massOfParts);
    const [parts] = entry?.args ?? [];
    if (parts === undefined) throw new Error('not in the registry');
    fc.assert(fc.property(valuesOf(parts, 'anywhere'), (arrow) => {
      expect(call(leastMass, [arrow])).toBeLessThan(Number(call(massOfParts, [arrow])));
    }), { numRuns: 60 });
  });
});
