import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesDirection, judgeConsistency, pairLimits, widest } from '../../src/archery/consistency.ts';
import { DFS, LIMITS } from '../../src/archery/consistency-limits.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const coordinate = fc.integer({ min: -32, max: 32 }).map((n) => n / 16);
const shots = (minLength: number): fc.Arbitrary<{ x: number; y: number }[]> =>
  fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength, maxLength: 9 });

describe('widest', () => {
  it('finds the widest pair, and the odd one', () => {
    expect(widest([at(0), at(0.3, 0.4)])).toEqual({ pair: 0.5, oddOut: null, odd: null });
    expect(widest([at(0), at(0.25), at(3), at(0, 0.25)])).toEqual({ pair: expect.closeTo(Math.hypot(3, 0.25), 12), oddOut: Math.hypot(0.25, 0.25), odd: 2 });
    expect(widest([at(0), at(0), at(1), at(1)]).odd).toBeNull(); // two and two: none is the odd one
    expect([widest([]).pair, widest([at(5)]).pair]).toEqual([0, 0]);
  });
  it('the odd one is whose going narrows the set most, not the furthest from the others (by hand: 4 against 4.12 in)', () => {
    // (0, 0) is 12.6 from the others taken together, (4, 3) only 10.5.
    expect(widest([at(0, 0), at(0, 4), at(4, 3), at(3, 2)])).toEqual({ pair: 5, oddOut: 4, odd: 2 });
  });
  it('of two whose going narrows it alike the odd one is further from the others (by hand: 10.8 against 9.0 in)', () => {
    expect(widest([at(2, 0), at(1, 2), at(0, 3), at(4, 3)])).toEqual({ pair: 4, oddOut: expect.closeTo(Math.sqrt(13), 12), odd: 3 });
    expect(widest([at(4, 3), at(1, 2), at(0, 3), at(2, 0)]).odd).toBe(0);
  });
  it('does not depend on the order, and leaving one out never widens', () => {
    fc.assert(fc.property(shots(4), (s) => {
      const a = widest(s);
      const b = widest(s.toReversed());
      expect([b.pair, b.oddOut, b.odd === null ? null : s.length - 1 - b.odd]).toEqual([a.pair, a.oddOut, a.odd]);
      expect(a.oddOut).toBeLessThanOrEqual(a.pair);
    }));
  });
  it('refuses NaN', () => expect(() => widest([at(NaN), at(0)])).toThrow('a tear is NaN'));
});

describe('pairLimits', () => {
  // Two shots of a known spread would be Rayleigh; for three at df endless an earlier simulation (60,000 sets) has 4.78 and 4.00.
  it('n = 3 and n = 7 agree with an independent simulation of 60,000 sets within 2 % (99 % / 95 %, df 8, 16, endless)', () => {
    for (const [n, df, p99, p95] of [[3, 8, 6.84, 5.05], [3, 16, 5.71, 4.49], [3, Infinity, 4.78, 4], [7, 8, 8.59, 6.49], [7, 16, 6.87, 5.6], [7, Infinity, 5.5, 4.82]] as const) {
      const limits = pairLimits(n, df);
      expect(Math.abs(limits.pair99 / p99 - 1)).toBeLessThan(0.02);
      expect(Math.abs(limits.pair95 / p95 - 1)).toBeLessThan(0.02);
    }
    expect(pairLimits(7, 16).oddOut99).toBeCloseTo(5.16, 1);
  });
  it('grows with shots and level, shrinks with df, and leaving one out is always narrower', () => {
    fc.assert(fc.property(fc.integer({ min: 3, max: 12 }), fc.double({ min: 2, max: 500, noNaN: true }), fc.double({ min: 1.01, max: 3, noNaN: true }), (n, df, more) => {
      const a = pairLimits(n, df);
      expect(a.pair99).toBeGreaterThan(a.pair95);
      expect(pairLimits(n, df * more).pair99).toBeLessThan(a.pair99);
      if (n < 12) expect(pairLimits(n + 1, df).pair95).toBeGreaterThan(a.pair95);
      expect(n === 3 ? a.oddOut99 : Math.sign(a.pair99 - a.oddOut99!)).toBe(n === 3 ? null : 1);
    }));
  });
  it('between two columns it is within 1 % of the column left out (df 12 from 8 and 16 by the same rule)', () => {
    const [c8, c12, c16] = [8, 12, 16].map((df) => DFS.indexOf(df as 8));
    for (const row of LIMITS) {
      const share = (1 / 8 - 1 / 12) / (1 / 8 - 1 / 16);
      const between = Math.exp((1 - share) * Math.log(row.pair99[c8!]!) + share * Math.log(row.pair99[c16!]!));
      expect(Math.abs(between / row.pair99[c12!]! - 1)).toBeLessThan(0.01);
      expect(pairLimits(row.n, 12).pair99).toBeCloseTo(row.pair99[c12!]!, 12);
    }
  });
  it('between two columns the logarithm is straight in 1 / df (by hand: 10 lies 0.6 of the way from 8 to 12)', () => {
    const { pair95, pair99, oddOut95, oddOut99 } = pairLimits(4, 10);
    // Natural logarithms of 5.566 and 5.101, 7.453 and 6.505, 3.581 and 3.303, 4.852 and 4.274: 0.4 and 0.6 of them.
    expect([pair95, pair99, oddOut95!, oddOut99!].map((limit) => Math.log(limit))).toEqual(
      [[5.566, 5.101], [7.453, 6.505], [3.581, 3.303], [4.852, 4.274]].map(([a, b]) => expect.closeTo(0.4 * Math.log(a!) + 0.6 * Math.log(b!), 12)));
    expect(pairLimits(3, 64).pair95).toBeCloseTo(4.102, 12);
    // From 64 on the next column is endless: 128 lies half-way.
    expect(pairLimits(3, 128).pair95).toBeCloseTo(Math.sqrt(4.102 * 3.983), 12);
  });
  it('says what can be judged', () => {
    expect(() => pairLimits(13, 8)).toThrow('pairLimits: there is no limit for 13 shots; 3 to 12 can be judged');
    expect(() => pairLimits(3, 1)).toThrow('pairLimits: the df of the spread is 1; limits need 2 or more');
    expect(() => judgeConsistency([at(0)], { sd: 0.2, df: 1 })).toThrow('judgeConsistency: the df of the spread is 1; limits need 2 or more');
  });
  it.each([[2, 8], [13, 8], [3.5, 8], [3, 1], [3, NaN], [NaN, 8]])('refuses %d shots on %d df', (n, df) => expect(() => pairLimits(n, df)).toThrow(RangeError));
});

describe('judgeConsistency', () => {
  const spread = { sd: 0.2, df: 16 };
  it('tells fine, suspect, odd shot and inconsistent apart', () => {
    expect(judgeConsistency([], spread).kind).toBe('fine');
    expect(judgeConsistency([at(0), at(0.5)], spread).kind).toBe('fine');
    expect(judgeConsistency([at(0), at(1)], spread)).toMatchObject({ kind: 'suspect', pair: 1, limit: pairLimits(3, 16).pair95 * 0.2 });
    expect(judgeConsistency([at(0), at(0.1), at(1)], spread).kind).toBe('suspect');
    expect(judgeConsistency([at(0), at(0.1), at(1.5)], spread).kind).toBe('inconsistent');
    expect(judgeConsistency([at(0), at(0.1), at(1.5)], spread, 4).kind).toBe('suspect');
    expect(judgeConsistency([at(0), at(0.1), at(1.5), at(0, 0.1)], spread)).toMatchObject({ kind: 'suspect', odd: 2 });
    expect(judgeConsistency([at(0), at(1.5), at(0, 1.5), at(1.5, 1.5)], spread).kind).toBe('inconsistent');
    const six = [at(0), at(0.1), at(0.2), at(0, 0.1), at(0, 0.2), at(0.1, 0.1)];
    expect(judgeConsistency([...six, at(0.3)], spread).kind).toBe('fine');
    expect(judgeConsistency([...six, at(2)], spread)).toMatchObject({ kind: 'odd shot', odd: 6 });
    const wild = judgeConsistency([...six.slice(0, 4), at(1.5), at(-1.5), at(0, 1.5)], spread);
    expect(wild.kind).toBe('inconsistent');
    expect(wild.pair).toBeGreaterThan(wild.limit);
    expect(judgeConsistency(Array.from({ length: 30 }, () => at(0.1)), spread).kind).toBe('fine');
  });

  it('without the odd shot: before the seventh the widest pair must be broken too, from then on it need not', () => {
    // Two and two: leaving one out leaves the pair as wide. Limits of four shots with a known spread: 3.369 without the odd one, 5.025 with it.
    const known = { sd: 1, df: Infinity };
    expect(judgeConsistency([at(0), at(0), at(4), at(4)], known)).toMatchObject({ kind: 'fine', pair: 4, limit: expect.closeTo(4.291, 9) });
    // Of seven 4.152 and 5.483.
    const seven = [...Array.from({ length: 3 }, () => at(0)), ...Array.from({ length: 4 }, () => at(4.8))];
    expect(judgeConsistency(seven, known)).toEqual({ kind: 'inconsistent', pair: 4.8, limit: expect.closeTo(4.152, 9), odd: null });
    expect(judgeConsistency(seven.map(({ x }) => at(x / 1.2)), known)).toEqual({ kind: 'fine', pair: 4, limit: expect.closeTo(5.483, 9), odd: null });
  });
  it('does not depend on order or side, and a wider spread never accuses more', () => {
    const rank = { fine: 0, 'odd shot': 1, suspect: 1, inconsistent: 2 };
    fc.assert(fc.property(shots(1), fc.double({ min: 0.05, max: 1, noNaN: true }), (set, sd) => {
      const a = judgeConsistency(set, { sd, df: 10 });
      for (const other of [set.toReversed(), set.map((t) => at(-t.x, t.y))]) {
        const b = judgeConsistency(other, { sd, df: 10 });
        expect([b.kind, b.pair, b.limit]).toEqual([a.kind, a.pair, a.limit]);
      }
      expect(rank[judgeConsistency(set, { sd: sd * 1.5, df: 10 }).kind]).toBeLessThanOrEqual(rank[a.kind]);
    }));
  });
  it('refuses a spread that is none', () => {
    expect(() => judgeConsistency([at(0)], { sd: NaN, df: 8 })).toThrow(RangeError);
    expect(() => judgeConsistency([at(0)], { sd: 0.2, df: NaN })).toThrow(RangeError);
  });
});

describe('changesDirection', () => {
  const spread = { sd: 0.15, df: 16 };
  it('needs half an inch, twice the mean, and more than the usual spread', () => {
    expect(changesDirection([at(0.5), at(-0.5), at(0.25)], spread)).toBe(true);
    expect(changesDirection([at(0, 0.5), at(0, -0.5)], spread)).toBe(true);
    expect(changesDirection([at(0.25), at(-0.25)], spread)).toBe(false); // half an inch is not more than half an inch
    expect(changesDirection([at(1.5), at(0.75), at(1)], spread)).toBe(false); // all one way
    expect(changesDirection([at(0.3), at(-0.3)], { sd: 0.2, df: 16 })).toBe(false); // usual for this archer
    expect(changesDirection([at(0.5)], spread)).toBe(false);
  });
  it('does not depend on order or side', () => {
    fc.assert(fc.property(shots(1), (set) => {
      const a = changesDirection(set, spread);
      expect(changesDirection(set.toReversed(), spread)).toBe(a);
      expect(changesDirection(set.map((t) => at(-t.x, -t.y)), spread)).toBe(a);
    }));
  });
  it('refuses NaN', () => expect(() => changesDirection([at(NaN), at(0)], spread)).toThrow(RangeError));
});
