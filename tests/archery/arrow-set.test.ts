import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { screenArrows, type ArrowShots } from '../../src/archery/arrow-set.ts';
import { pooledSpread } from '../../src/archery/spread.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));
const three = (x: number, y = 0): { x: number; y: number }[] => [at(x - 0.1, y), at(x, y), at(x + 0.1, y)];
const named = (shots: readonly (readonly { x: number; y: number }[])[]): ArrowShots[] => shots.map((s, i) => ({ arrow: `${i + 1}`, shots: s }));
const prior = { sd: 0.2, df: 8 };

describe('screenArrows', () => {
  it('finds the one that stands out among six (by hand)', () => {
    const set = screenArrows(named([three(0), three(0.05), three(-0.05), three(0, 0.05), three(0, -0.05), three(1.2)]), prior);
    expect(set.typical).toEqual(at(0));
    expect(set.arrows.map((a) => a.odd)).toEqual([false, false, false, false, false, true]);
    expect(set.arrows[5]).toMatchObject({ arrow: '6', mean: { x: expect.closeTo(1.2, 12), y: 0 }, count: 3, away: expect.closeTo(1.2, 12) });
    expect(set.spread.df).toBe(2 * 8 + 6 * 4);
    // t for 5 % over six arrows on 40 df is 2.5 (t at 1 - 0.05 / 6, any program; 2.423 at 0.99, from memory).
    const luck = 1.2 - set.arrows[5]!.atLeast;
    expect(luck / (1.06 * set.spread.sd * Math.sqrt(1 / 3 + Math.PI / 2 / 18))).toBeCloseTo(2.5, 1);
  });
  it('two shots of some, none of others: those without a shot are left out', () => {
    const set = screenArrows([{ arrow: 'a', shots: three(0) }, { arrow: 'b', shots: [] }, { arrow: 'c', shots: [at(0), at(0.2)] }], prior);
    expect(set.arrows.map((a) => [a.arrow, a.count])).toEqual([['a', 3], ['c', 2]]);
    // The same distance is worth less after fewer shots.
    const [more, fewer] = [three(0.7), [at(0.65), at(0.75)]].map((last) => screenArrows(named([three(0), three(0), three(0), last]), prior).arrows[3]!);
    expect(fewer!.away).toBeCloseTo(more!.away, 12);
    expect(fewer!.atLeast).toBeLessThan(more!.atLeast);
    expect(fewer!.effect.x).toBeLessThan(more!.effect.x);
  });
  it('arrows that do not differ have no error of their own', () => {
    const set = screenArrows(named([three(0), three(0.01), three(-0.01)]), prior);
    expect(set.betweenSd).toBe(0);
    expect(set.arrows.map((a) => a.effect)).toEqual([at(0), at(0), at(0)].map(({ x, y }) => ({ x: expect.closeTo(x, 12), y: expect.closeTo(y, 12) })));
  });
  it('without a known spread it is learned from the shots (by hand: squares 2 * 0.02 on 2 * 4 df, rounding added)', () => {
    expect(screenArrows(named([three(0), three(0.3)]), null).spread).toEqual({ sd: expect.closeTo(Math.hypot(Math.sqrt(0.04 / 8), 1 / 16 / Math.sqrt(12)), 6), df: expect.closeTo(8, 6) });
    expect(() => screenArrows(named([[at(0)], [at(1)]]), null)).toThrow('no arrow has two shots and no usual spread is known; shoot a second round first');
    expect(screenArrows(named([[at(0)], [at(1)]]), prior).arrows).toHaveLength(2);
  });
  it('a shot that strays counts partly, and the axis with fewer full shots is the one that counts (by hand: 0, 0.1 and 3 spreads of 1 are 2.68 shots)', () => {
    // Known so well that the set's own shots change nothing; the paper's rounding is added once.
    const sd = Math.hypot(1, 1 / 16 / Math.sqrt(12));
    const stray = [at(0), at(0.1 * sd), at(3 * sd)];
    const [first, second] = screenArrows(named([stray, stray.map(({ x }) => at(0, x))]), { sd: 1, df: 1e12 }).arrows;
    expect(first).toMatchObject({ count: expect.closeTo(2 + 1.5 / 2.2, 6), mean: { x: expect.closeTo(0.8 * sd, 6), y: 0 } });
    expect(second).toMatchObject({ count: expect.closeTo(2 + 1.5 / 2.2, 6), mean: { x: 0, y: expect.closeTo(0.8 * sd, 6) } });
    // Each is 0.4 from the middle on both axes; luck: 1.96 (one side of 5 % over two arrows) times 1.06 spreads of the difference.
    const [n, away] = [2 + 1.5 / 2.2, Math.hypot(0.4, 0.4)];
    expect(first!.atLeast / sd).toBeCloseTo(away - 1.95996 * 1.06 * Math.sqrt(1 / n + Math.PI / 2 / n / 2), 4);
  });
  it('only where an arrow lies from the others counts, not where the set lies', () => {
    const near = screenArrows(named([three(0), three(0.5, 0.25), three(0, -0.5), three(1.25, 1)]), prior);
    const far = screenArrows(named([three(0), three(0.5, 0.25), three(0, -0.5), three(1.25, 1)].map((s) => s.map(({ x, y }) => at(x + 4, y - 2)))), prior);
    expect(far.arrows.map((a) => [a.away, a.atLeast, a.effect.x, a.effect.y])).toEqual(
      near.arrows.map((a) => [a.away, a.atLeast, a.effect.x, a.effect.y].map((n) => expect.closeTo(n, 9))));
    expect(far.typical).toEqual({ x: expect.closeTo(near.typical.x + 4, 9), y: expect.closeTo(near.typical.y - 2, 9) });
  });
  it('where nothing is known a stray shot is told by the plain spread of all (by hand: squares 8 / 3 * 0.36 and 5 * 0.02 on 2 * 14 df)', () => {
    const sets = [[at(0), at(0), at(1.2)], ...Array.from({ length: 5 }, () => three(0)), [at(0)]];
    const plain = Math.sqrt((0.96 + 5 * 0.02) / 24);
    expect(screenArrows(named(sets), null).spread).toEqual(pooledSpread(sets, { sd: plain, df: 1e-9 }));
  });
  it('does not depend on the order of arrows or shots, and mirrors, to the last bit', () => {
    const tear = fc.integer({ min: -32, max: 32 }).map((n) => n / 16);
    const shots = fc.array(fc.record({ x: tear, y: tear }), { maxLength: 3 });
    const sets = fc.array(shots, { minLength: 1, maxLength: 8 }).filter((all) => all.some((s) => s.length > 0)).map(named);
    fc.assert(fc.property(sets, (set) => {
      const read = screenArrows(set, prior);
      const back = screenArrows(set.toReversed().map((a) => ({ ...a, shots: a.shots.toReversed() })), prior);
      same({ ...back, arrows: back.arrows.toReversed() }, read);
      const flip = (p: { x: number; y: number }): { x: number; y: number } => at(-p.x, p.y);
      const mirrored = screenArrows(set.map((a) => ({ ...a, shots: a.shots.map(flip) })), prior);
      same({ ...mirrored, typical: flip(mirrored.typical), arrows: mirrored.arrows.map((a) => ({ ...a, mean: flip(a.mean), effect: flip(a.effect) })) }, read);
      for (const a of read.arrows) {
        expect(a.atLeast).toBeLessThan(a.away);
        expect(Math.hypot(a.effect.x, a.effect.y)).toBeLessThanOrEqual(a.away + 1e-12);
        expect(a.odd).toBe(a.atLeast > read.spread.sd);
      }
    }));
  });
  it('refuses nothing at all, and NaN', () => {
    expect(() => screenArrows([], prior)).toThrow('no arrow has a shot; shoot each arrow before the set is judged');
    expect(() => screenArrows(named([[]]), prior)).toThrow(RangeError);
    expect(() => screenArrows(named([[at(NaN), at(0)]]), prior)).toThrow(RangeError);
    expect(() => screenArrows(named([[at(NaN)]]), prior)).toThrow(RangeError);
    expect(() => screenArrows(named([[at(0)]]), { sd: 0, df: 3 })).toThrow(RangeError);
  });
});
