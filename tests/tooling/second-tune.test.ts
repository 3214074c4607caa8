// The next tune of the same bow: what stays, what drifts, and by how much.

import { describe, expect, it } from 'vitest';
import { drifted as nextTune, DRIFT } from '../bench/coach/second-tune.ts';
import { knobBow, WORLDS } from '../bench/coach/world.ts';
import { knobEntries } from '../../src/content/types.ts';
import { sum } from '../../src/maths/sum.ts';
import { drifted, GAIN_DRIFT } from '../../src/practice/drifted.ts';
import { bowByNumber, mirrored } from '../../src/practice/world.ts';
import { shippedContent } from '../tunes/play.ts';
import { mean, means, spreads } from '../practice/statistics.ts';

const { knobs } = shippedContent();

describe('a bow of the kernel', () => {
  const world = WORLDS.nominal;
  const pairs = Array.from({ length: 2000 }, (_, number) => knobBow(world, 7, number)).map((first) => ({ first, next: nextTune(world, first) }));

  it('keeps the archer and the way it works; a response drifts by a quarter', () => {
    for (const { first, next } of pairs) expect([next.sd, Math.sign(next.response)]).toEqual([first.sd, Math.sign(first.response)]);
    const logs = pairs.flatMap(({ first, next }) => (first.response === 0 ? [] : [Math.log(next.response / first.response)]));
    means(logs, 0);
    spreads(logs, DRIFT);
  });

  it('starts anew, as any bow does and as no tune before it', () => {
    const [firsts, nexts] = [pairs.map(({ first }) => first.start), pairs.map(({ next }) => next.start)];
    means(nexts, 0);
    // 0.4 to 1.75 in to either side: the mean square of an even spread is (a2 + ab + b2) / 3.
    means(nexts.map((start) => start ** 2), (0.4 ** 2 + 0.4 * 1.75 + 1.75 ** 2) / 3);
    for (const start of nexts) expect(Math.abs(start) >= 0.4 && Math.abs(start) <= 1.75).toBe(true);
    const together = mean(firsts.map((start, i) => start * (nexts[i] ?? NaN))) / mean(firsts.map((start) => start ** 2));
    expect(Math.abs(together)).toBeLessThan(3 / Math.sqrt(pairs.length));
    expect(new Set(pairs.map(({ next }) => next.seed)).size).toBe(pairs.length);
  });

  it('is the same each time, and another in the tune after', () => {
    const first = knobBow(world, 7, 3);
    expect(nextTune(world, first)).toEqual(nextTune(world, first));
    expect(nextTune(world, first, 2).start).not.toBe(nextTune(world, first).start);
  });
});

describe('a practice bow', () => {
  const pairs = Array.from({ length: 150 }, (_, number) => bowByNumber(number, knobs)).map((first) => ({ first, next: drifted(first, knobs) }));

  it('keeps archer, arrows and hardware; what its adjustments are worth drifts by a quarter', () => {
    const logs = pairs.flatMap(({ first, next }) => {
      expect([next.archer, next.set, next.bow.hardware, next.bow.throws]).toEqual([first.archer, first.set, first.bow.hardware, first.bow.throws]);
      return knobEntries(next.bow.adjustments).flatMap(([id, { worth, works }]) => {
        const before = first.bow.adjustments[id];
        expect(works).toBe(before?.works);
        const [now, then] = [Math.hypot(worth.x, worth.y), Math.hypot(before?.worth.x ?? 0, before?.worth.y ?? 0)];
        return then === 0 ? [] : [Math.log(now / then)];
      });
    // Bows that nothing can mend answer too weakly: that is no drift.
    }).filter((log) => Math.abs(log) < 4 * GAIN_DRIFT);
    means(logs, 0);
    spreads(logs, GAIN_DRIFT);
  });

  it('stands off elsewhere, and no string settles twice', () => {
    const optima = ({ bow }: (typeof pairs)[number]['first']) => JSON.stringify(knobEntries(bow.adjustments).map(([, { optimum }]) => optimum));
    expect(pairs.filter(({ first, next }) => optima(first) === optima(next)).length).toBeLessThan(pairs.length / 4);
    expect(sum(pairs.map(({ next }) => (next.bow.creep === null ? 0 : 1)))).toBe(0);
    expect(new Set(pairs.map(({ next }) => next.seed)).size).toBe(pairs.length);
  });

  it('drifts in a mirror as it does here', () => {
    for (const { first, next } of pairs.slice(0, 20)) expect(JSON.stringify(drifted(mirrored(first), knobs))).toBe(JSON.stringify(mirrored(next)));
  });
});
