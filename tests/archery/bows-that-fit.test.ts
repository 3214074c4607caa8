// All bows that fit, held against the same model thought through the plain way (all-bows.ts), and asked what a line cannot answer.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bowsThatFit, type Answers, type Belief, type Reading } from '../../src/archery/bows-that-fit.ts';
import { fitLine, predict, priorFromBook } from '../../src/archery/response.ts';
import { allBows } from './all-bows.ts';

const WAYS: readonly Answers[] = [{ share: 0.81, about: 0.1, logSd: 0.6 }, { share: 0.09, about: -0.1, logSd: 0.6 }, { share: 0.1, about: null }];
const LEARNED: readonly Answers[] = [{ share: 1, mean: 0.12, sd: 0.03 }];
const HERE: readonly Answers[] = [{ share: 1, about: null }];
const usual = { sd: 0.2, df: 3 };
/** Setting and tear, as they were shot. */
const shot = (rows: readonly (readonly [number, number])[], group = 0, counts = 1): readonly Reading[] => rows.map(([x, tear]) => ({ x, tear, group, counts }));

const ANSWERS = shot([[0, 0.75], [0, 0.625], [0, 0.8125], [-4, 0.375], [-4, 0.25], [-6, 0.125]]);
const OTHER_SIDE = shot([[0, 0.5], [0, 0.375], [0, 0.5], [-4, 0.875], [-4, 0.9375], [2, 0.25], [4, 0.125]]);
const NOTHING = shot([[0, 0.5], [0, 0.375], [0, 0.5], [-4, 0.4375], [-4, 0.5], [-8, 0.375], [-8, 0.5], [-12, 0.4375], [-12, 0.5]]);
const STRAY = shot([[0, 0.5], [0, 0.4375], [0, 0.5625], [0, 0.5], [0, 1.5]]);
const MOVED_BESIDES = [...shot([[0, 0.75], [0, 0.8125], [-4, 0.25], [-4, 0.3125]]), ...shot([[-4, -0.25], [-4, -0.3125]], 1)];
const LIGHT = [...shot([[0, 0.75], [0, 0.625]]), ...shot([[-4, 0.375], [-4, 0.25]], 0, 0.4)];

/** All that is asked of it, on both axes' tolerances. */
const asked = (belief: Belief) => ({
  here: predict(belief.line, 0), there: predict(belief.line, -6), line: belief.line, otherSide: belief.otherSide, sd: belief.sd,
  within: [belief.within(0, -1 / 8, 1 / 4), belief.within(-6, -1 / 4, 1 / 4), belief.within(3, 0, 1)],
  further: [belief.further(-4, 0, 1 / 16, 0), belief.further(-2, 0, 0, 1 / 8)], outOfReach: belief.outOfReach(-8, 8, -1 / 4, 1 / 4), alone: belief.withinAlone(0.1, 3, -1 / 8, 1 / 4),
});

describe('the list says what the plain way says', () => {
  // Its steps are 0.2 spreads (0.04 in) of tear, nine spreads, 23 responses a way, and it drops what is below one in 10,000 of the likeliest bow.
  const cases: readonly (readonly [string, readonly Answers[], readonly Reading[]])[] = [
    ['one reading', WAYS, shot([[0, 0.5]])], ['in tune as found', HERE, shot([[0, 0.0625], [0, 0], [0, 0.125], [0, 0.0625]])],
    ['as the book says', WAYS, ANSWERS], ['to the other side', WAYS, OTHER_SIDE], ['nothing', WAYS, NOTHING], ['one stray', WAYS, STRAY],
    ['another adjustment moved', WAYS, MOVED_BESIDES], ['learned, another adjustment moved', LEARNED, MOVED_BESIDES], ['some that count less', WAYS, LIGHT],
  ];
  it.each(cases)('%s', (_name, ways, readings) => {
    const [list, plain] = [bowsThatFit(ways, usual, readings), allBows(ways, usual, readings)];
    // Each response has its tears shifted by up to half a step against what the first setting showed. Over many responses that cancels; of few, and with
    // a third of the readings there, a sixth of a step is left. What is dropped, and nine spreads instead of a scale, come to less.
    for (const x of [0, -6]) expect(Math.abs(predict(list.line, x).mean - plain.mean(x)), `mean at ${x}`).toBeLessThan(0.04 / 6);
    for (const x of [0, -6]) expect(Math.abs(predict(list.line, x).sd - plain.unsure(x)), `how unsure at ${x}`).toBeLessThan(0.01);
    expect(Math.abs(list.line.slope - plain.slope), 'slope').toBeLessThan(0.001);
    expect(Math.abs(Math.sqrt(list.line.varSlope) - Math.sqrt(plain.varSlope)), 'spread of the slope').toBeLessThan(0.0015);
    expect(Math.abs(list.sd - plain.sd), 'spread of a reading').toBeLessThan(0.005);
    // Chances of a place: a node is spread over its step, so they are off by what a density bends within one; and by a shift of a sixth of a step
    // (0.007 in) times the density at the ends of the place, at the most 0.4 / 0.07 in where two ends lie in the thick of what is known.
    for (const [x, low, high] of [[0, -1 / 8, 1 / 4], [-6, -1 / 4, 1 / 4]] as const) expect(Math.abs(list.within(x, low, high) - plain.within(x, low, high)), `within at ${x}`).toBeLessThan(0.015);
    for (const [x, low, high] of [[0, 0.4, 0.6], [3, 0, 1]] as const) expect(Math.abs(list.within(x, low, high) - plain.within(x, low, high)), `within at ${x}`).toBeLessThan(0.04);
    expect(Math.abs(list.otherSide - plain.otherSide), 'other side').toBeLessThan(0.002);
    // Yes or no node by node: the likeliest of 23 responses of a way holds 10 in 100, and half of it may fall on the wrong side of an edge.
    for (const [now, before, target, by] of [[-4, 0, 1 / 16, 0], [-2, 0, 0, 1 / 8], [4, 0, 0, 0]] as const) expect(Math.abs(list.further(now, before, target, by) - plain.further(now, before, target, by)), `further at ${now}`).toBeLessThan(0.05);
    for (const reach of [2, 8]) expect(Math.abs(list.outOfReach(-reach, reach, -1 / 4, 1 / 4) - plain.outOfReach(-reach, reach, -1 / 4, 1 / 4)), `out of reach of ${reach}`).toBeLessThan(0.05);
  });
});

describe('what a line cannot say', () => {
  it('that it works to the other side: one in ten beforehand, certain after two steps, and the next step would go the other way', () => {
    const before = bowsThatFit(WAYS, usual, OTHER_SIDE.slice(0, 3));
    expect(before.line.slope).toBeGreaterThan(0);
    expect(before.otherSide).toBeCloseTo(0.09, 3);
    const after = bowsThatFit(WAYS, usual, OTHER_SIDE);
    expect([after.line.slope < -0.08, after.otherSide < 0.001]).toEqual([true, true]);
    expect([after.further(-4, 0, 0, 0) > 0.99, after.further(4, 0, 0, 0) < 0.01]).toEqual([true, true]);
  });

  it('that it does nothing: no setting of a wide travel brings it in, and no setting is worse', () => {
    const dead = bowsThatFit(WAYS, usual, NOTHING);
    expect(Math.abs(dead.line.slope)).toBeLessThan(0.002);
    expect(dead.outOfReach(-16, 16, -1 / 8, 1 / 4)).toBeGreaterThan(0.95);
    expect(dead.further(-4, 0, 0, 1 / 16)).toBeLessThan(0.01);
    expect(bowsThatFit(WAYS, usual, NOTHING.slice(0, 3)).outOfReach(-16, 16, -1 / 8, 1 / 4)).toBeLessThan(0.2);
  });

  it('that one shot strayed: it hardly moves what the others agree on, and drags a normal belief by its share', () => {
    const agreeing = STRAY.slice(0, -1);
    const mean = (readings: readonly Reading[]): number => predict(bowsThatFit(WAYS, usual, readings).line, 0).mean;
    const normal = (readings: readonly Reading[]): number => predict(fitLine(readings.map(({ x, tear }) => ({ x, mean: tear, count: 1, group: 0 })), 0.2, priorFromBook(0.1, 0.1), 0), 0).mean;
    expect(mean(agreeing)).toBeCloseTo(0.5, 1);
    expect(Math.abs(mean(STRAY) - mean(agreeing))).toBeLessThan(0.04);
    expect(normal(STRAY) - normal(agreeing)).toBeGreaterThan(0.15);
    // And it is a stray, not a wide hand.
    expect(bowsThatFit(WAYS, usual, STRAY).sd).toBeLessThan(0.22);
  });
});

describe('readings', () => {
  it('of another group hand over response and spread, but not their height', () => {
    const [first, last] = [MOVED_BESIDES.slice(0, 4), MOVED_BESIDES.slice(4)];
    const [both, alone] = [bowsThatFit(WAYS, usual, MOVED_BESIDES), bowsThatFit(WAYS, usual, last)];
    const higher = bowsThatFit(WAYS, usual, [...first.map((one) => ({ ...one, tear: one.tear + 1 })), ...last]);
    expect(predict(both.line, -4).mean).toBeCloseTo(-0.28, 1);
    expect(Math.abs(predict(higher.line, -4).mean - predict(both.line, -4).mean)).toBeLessThan(1e-3);
    expect([Math.sqrt(both.line.varSlope) < 0.5 * Math.sqrt(alone.line.varSlope), both.sd < alone.sd, both.otherSide < 0.01, alone.otherSide > 0.08]).toEqual([true, true, true, true]);
    expect(both.line.slope).toBeGreaterThan(alone.line.slope);
  });

  it('that count for less than one weigh less: two halves are one, and the less they count the less is known', () => {
    const halves = [...shot([[0, 0.75], [-4, 0.375]], 0, 0.5), ...shot([[-4, 0.375], [0, 0.75]], 0, 0.5)];
    const [whole, split] = [bowsThatFit(WAYS, usual, shot([[0, 0.75], [-4, 0.375]])), bowsThatFit(WAYS, usual, halves)];
    // Other nodes are dropped on the way: a twentieth of a step.
    expect(Math.abs(predict(split.line, -4).mean - predict(whole.line, -4).mean)).toBeLessThan(0.002);
    expect(Math.abs(split.line.slope - whole.line.slope)).toBeLessThan(0.001);
    const sure = [0.1, 0.3, 0.6, 1].map((counts) => predict(bowsThatFit(LEARNED, usual, [...shot([[0, 0.75]]), ...shot([[0, 0.75], [-4, 0.375], [-4, 0.375]], 0, counts)]).line, -4).sd);
    expect(sure).toEqual(sure.toSorted((a, b) => b - a));
    expect((sure[0] ?? 0) / (sure[3] ?? 1)).toBeGreaterThan(1.3);
  });

  const sixteenth = fc.integer({ min: -24, max: 24 }).map((n) => n / 16);
  // The first tear that lies off zero says which of two mirrored bows is thought through; before it, the first setting beside another.
  const series = fc.tuple(sixteenth, fc.array(fc.tuple(fc.integer({ min: -6, max: 6 }), sixteenth, fc.constantFrom(0, 0, 1), fc.constantFrom(1, 1, 0.5)), { maxLength: 5 }))
    .map(([first, rest]): readonly Reading[] => [{ x: 0, tear: first, group: 0, counts: 1 }, ...rest.map(([x, tear, group, counts]) => ({ x, tear, group, counts })).toSorted((a, b) => a.group - b.group)]);

  it('mirrored say the mirror, to the last bit', () => {
    fc.assert(fc.property(series, (readings) => {
      const [one, other] = [bowsThatFit(WAYS, usual, readings), bowsThatFit(WAYS, usual, readings.map((reading) => ({ ...reading, x: -reading.x, tear: -reading.tear })))];
      for (const x of [0, 3, -7]) {
        expect(predict(other.line, -x + 0)).toEqual({ mean: -predict(one.line, x).mean + 0, sd: predict(one.line, x).sd });
        expect(other.within(-x, -1 / 4, 1 / 8)).toBe(one.within(x, -1 / 8, 1 / 4));
        expect(other.further(-x, 0, -1 / 16, 1 / 8)).toBe(one.further(x, 0, 1 / 16, 1 / 8));
      }
      expect(other.outOfReach(-8, 4, -1 / 4, 1 / 8)).toBe(one.outOfReach(-4, 8, -1 / 8, 1 / 4));
      expect(other.withinAlone(-0.1, 3, -1 / 4, 1 / 8)).toBeCloseTo(one.withinAlone(0.1, 3, -1 / 8, 1 / 4), 12);
      expect([other.otherSide, other.sd]).toEqual([one.otherSide, one.sd]);
    }), { seed: 21, numRuns: 6 });
  });

  it('of nothing lean to neither side, at any one setting', () => {
    for (const x of [0, 3, -7]) {
      const nothing = bowsThatFit(WAYS, usual, shot([[x, 0], [x, 0]]));
      expect(predict(nothing.line, x).mean).toBeCloseTo(0, 15);
      expect(nothing.within(x, -1 / 4, 1 / 8)).toBe(nothing.within(x, -1 / 8, 1 / 4));
      expect(nothing.further(x + 2, x, 0, 1 / 8)).toBe(nothing.further(x - 2, x, 0, 1 / 8));
    }
  });

  it('asked after shot by shot say the same as asked at once, to the last bit, and what is kept in between changes no answer', () => {
    const at = (k: number, df: number): Belief => bowsThatFit(WAYS, { sd: 0.2, df }, MOVED_BESIDES.slice(0, k));
    const others = (n: number): void => { for (let i = 0; i < n; i++) bowsThatFit(HERE, usual, shot([[0, i / 64]])); };
    // More than are kept: nothing is left of any question.
    others(100);
    const atOnce = asked(at(6, 3));
    others(100);
    for (let k = 1; k <= 6; k++) {
      asked(at(k, 3));
      // The same shots of another archer, and of another bow: told apart from these.
      bowsThatFit(LEARNED, usual, MOVED_BESIDES.slice(0, k));
      at(k, 4);
    }
    expect(asked(at(6, 3))).toEqual(atOnce);
    expect(asked(at(6, 4))).not.toEqual(atOnce);
    others(100);
    expect(asked(at(6, 3))).toEqual(atOnce);
  });
});

describe('chances', () => {
  it('lie between 0 and 1, of a wider place are no less, and of all places are 1', () => {
    for (const readings of [ANSWERS, OTHER_SIDE, NOTHING, STRAY, MOVED_BESIDES, LIGHT]) {
      const { within, further, outOfReach, otherSide } = bowsThatFit(WAYS, usual, readings);
      const wider = [1 / 16, 1 / 8, 1 / 4, 1, 50].map((half) => within(-2, -half, half));
      expect(wider).toEqual(wider.toSorted((a, b) => a - b));
      expect(wider.at(-1)).toBeCloseTo(1, 9);
      expect(further(-4, 0, 0, 0) + further(0, -4, 0, 0)).toBeLessThanOrEqual(1 + 1e-9);
      expect(outOfReach(-4, 4, -1 / 8, 1 / 8)).toBeGreaterThanOrEqual(outOfReach(-8, 8, -1 / 8, 1 / 8) - 1e-9);
      for (const chance of [...wider, further(-4, 0, 0, 0), outOfReach(-4, 4, -1 / 8, 1 / 8), otherSide]) { expect(chance).toBeGreaterThanOrEqual(0); expect(chance).toBeLessThanOrEqual(1); }
    }
  });

  it('by shots of one setting alone: a normal mean of the spread that is believed', () => {
    const { withinAlone } = bowsThatFit(HERE, { sd: 0.2, df: Infinity }, shot([[0, 0.5]]));
    // Four shots of 0.2 in: a mean that is good to 0.1 in; one and two deviations (published normal table: 0.6827, 0.9545).
    expect(withinAlone(0, 4, -0.1, 0.1)).toBeCloseTo(0.6827, 4);
    expect(withinAlone(0.3, 4, 0.1, 0.5)).toBeCloseTo(0.9545, 4);
  });

  it('refuses what cannot be meant, in its own name', () => {
    expect(() => bowsThatFit(WAYS, usual, [])).toThrow('bowsThatFit: without a reading every bow fits; give at least one');
    expect(() => bowsThatFit([], usual, ANSWERS)).toThrow('bowsThatFit: there is no way in which it may work; give at least one');
    for (const one of [{ x: NaN }, { tear: Infinity }, { group: NaN }, { counts: 0 }, { counts: -1 }]) expect(() => bowsThatFit(WAYS, usual, [{ x: 0, tear: 0, group: 0, counts: 1, ...one }])).toThrow(/^bowsThatFit: /);
    expect(() => bowsThatFit(WAYS, { sd: 0, df: 3 }, ANSWERS)).toThrow(/^bowsThatFit: /);
  });
});
