import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestTurn, judgeTurn, nextTurn, predictTurns, type TurnTried } from '../../src/archery/nock-turn.ts';

interface P { readonly x: number; readonly y: number }
const at = (x: number, y = 0): P => ({ x, y });
const zero = at(0);
const flip = ({ x, y }: P): P => at(-x, y);
/** Equal to the last bit; JSON writes numbers in full, and does not tell 0 from -0. */
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));
const tear = fc.integer({ min: -32, max: 32 }).map((n) => n / 16);
const point = fc.record({ x: tear, y: tear });

describe('predictTurns', () => {
  it('turns the arrow\'s own error clockwise, seen from behind, around what is common (by hand)', () => {
    same(predictTurns(at(1, 0), at(0, 0.5), 4), [at(1, 0.5), at(1.5, 0), at(1, -0.5), at(0.5, 0)]);
    const [, second, third] = predictTurns(zero, at(0, 1), 3);
    expect(second).toEqual({ x: expect.closeTo(Math.sqrt(3) / 2, 12), y: -0.5 });
    expect(third).toEqual({ x: expect.closeTo(-Math.sqrt(3) / 2, 12), y: -0.5 });
    same(predictTurns(at(1, 2), at(3, 4), 1), [at(4, 6)]);
  });
  it('never makes the own error smaller, and a mirrored arrow turned the other way is mirrored, to the last bit', () => {
    fc.assert(fc.property(point, point, fc.integer({ min: 1, max: 12 }), (typical, effect, n) => {
      const turns = predictTurns(typical, effect, n);
      same(turns[0], at(typical.x + effect.x, typical.y + effect.y));
      for (const t of turns) expect(Math.hypot(t.x - typical.x, t.y - typical.y)).toBeCloseTo(Math.hypot(effect.x, effect.y), 9);
      const mirrored = predictTurns(flip(typical), flip(effect), n);
      same(turns.map((_, k) => flip(mirrored[(n - k) % n]!)), turns);
    }));
  });
});

describe('nextTurn', () => {
  const predicted = predictTurns(at(0.5, 0), at(0.5, 0), 3);
  it('takes the smallest foretold tear that was not tried, never 0', () => {
    expect(nextTurn(predicted, [], at(0.25, 0.5))).toBe(2); // 2 points high, 1 points low
    expect(nextTurn(predicted, [2], at(0.25, 0.5))).toBe(1);
    expect(nextTurn(predicted, [0, 1, 2], zero)).toBeNull();
    expect(nextTurn([at(0)], [], zero)).toBeNull();
  });
  it('of turns that are alike it takes the lowest, however they were rounded', () => {
    expect(nextTurn(predicted, [], zero)).toBe(1);
    for (const angle of [0.1, 1, 2, 4]) expect(nextTurn(predictTurns(at(0.3, 0.1), at(Math.cos(angle), Math.sin(angle)), 3), [], at(0.3, 0.1))).toBe(1);
  });
});

describe('judgeTurn', () => {
  const base: TurnTried = { predicted: at(0.5), shots: [at(0.5), at(0.5)], before: at(1), countBefore: 3, target: zero, spread: { sd: 0.2, df: 20 }, limit: 0.4 };
  it('good, as predicted, missed (by hand: one standard error is 0.2 * sqrt(1 / 2 + 1 / 3) = 0.183)', () => {
    expect(judgeTurn({ ...base, limit: 0.5 })).toBe('good');
    expect(judgeTurn(base)).toBe('as predicted');
    expect(judgeTurn({ ...base, predicted: at(0.5, 0.4) })).toBe('as predicted');
    expect(judgeTurn({ ...base, predicted: at(0.5, 0.41) })).toBe('missed');
    // Good is good, foretold or not; and no nearer than before is never good.
    expect(judgeTurn({ ...base, predicted: at(5), limit: 0.5 })).toBe('good');
    expect(judgeTurn({ ...base, before: at(0.5), limit: 0.6 })).toBe('missed');
  });
  it('does not depend on order or side', () => {
    fc.assert(fc.property(point, point, fc.array(point, { minLength: 1, maxLength: 4 }), point, (predicted, before, shots, target) => {
      const tried = { ...base, predicted, before, shots, target };
      const verdict = judgeTurn(tried);
      expect(judgeTurn({ ...tried, shots: shots.toReversed() })).toBe(verdict);
      expect(judgeTurn({ ...tried, predicted: flip(predicted), before: flip(before), shots: shots.map(flip), target: flip(target) })).toBe(verdict);
    }));
  });
});

describe('bestTurn', () => {
  const spread = { sd: 0.2, df: 20 };
  it('is the nearest to the target, where luck does not explain the difference', () => {
    const tried = [{ turn: 0, shots: [at(1), at(1.1), at(0.9)] }, { turn: 1, shots: [at(0, 0.6), at(0, 0.5)] }, { turn: 2, shots: [at(-0.1), at(0.1)] }];
    expect(bestTurn(tried, zero, spread)).toBe(2);
    expect(bestTurn(tried, at(0, 0.7), spread)).toBe(1);
    expect(bestTurn(tried.slice(0, 1), zero, spread)).toBe(0);
  });
  it('where luck explains all, it stays as found', () => {
    expect(bestTurn([{ turn: 2, shots: [at(0.01), at(0)] }, { turn: 0, shots: [at(0.05), at(0), at(0.05)] }], zero, spread)).toBe(0);
  });
  it('where most turns are far off, trusts a near one less after two shots than after six', () => {
    const far = { turn: 0, shots: [at(1.5), at(1.5), at(1.5)] };
    const six = { turn: 2, shots: Array.from({ length: 6 }, () => at(0, 0.5)) };
    expect(bestTurn([far, { turn: 1, shots: [at(0.5), at(0.5)] }, six], zero, spread)).toBe(2);
    // 0.49 is nearer than 0.5, but by less than two shots can tell.
    expect(bestTurn([far, { turn: 1, shots: [at(0.49), at(0.49)] }, six], zero, spread)).toBe(2);
    expect(bestTurn([far, { turn: 1, shots: [at(0.4), at(0.4)] }, six], zero, spread)).toBe(1);
  });
  // By hand, spread 0.2, so 0.04 of luck in one shot. At 0.2 by six and at 0.3 by one, turns lie 0.0092 (variance) from the target: what is
  // then expected in the square is 0.021 and 0.018. At 0.2 by six and at 0.1 by one, luck explains all.
  it('weighs what luck leaves of each, whichever looks nearer', () => {
    const shots = (away: number, count: number) => Array.from({ length: count }, () => at(away));
    expect(bestTurn([{ turn: 0, shots: shots(0.2, 6) }, { turn: 1, shots: shots(0.3, 1) }], zero, spread)).toBe(1);
    expect(bestTurn([{ turn: 0, shots: shots(0.2, 6) }, { turn: 1, shots: shots(0.1, 1) }], zero, spread)).toBe(0);
  });
  it('does not depend on order or side', () => {
    const shots = fc.array(point, { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(fc.array(shots, { minLength: 1, maxLength: 4 }), point, (all, target) => {
      const tried = all.map((s, turn) => ({ turn, shots: s }));
      const best = bestTurn(tried, target, spread);
      expect(bestTurn(tried.toReversed().map((t) => ({ ...t, shots: t.shots.toReversed() })), target, spread)).toBe(best);
      expect(bestTurn(tried.map((t) => ({ ...t, shots: t.shots.map(flip) })), flip(target), spread)).toBe(best);
    }));
  });
});

it('refuse what cannot be meant', () => {
  const good: TurnTried = { predicted: zero, shots: [zero], before: zero, countBefore: 3, target: zero, spread: { sd: 0.2, df: 9 }, limit: 0.25 };
  for (const act of [
    () => predictTurns(zero, zero, 0), () => predictTurns(zero, zero, 2.5), () => predictTurns(at(NaN), zero, 3), () => predictTurns(zero, at(0, Infinity), 3),
    () => nextTurn([zero, at(NaN)], [], zero), () => nextTurn([zero], [], at(NaN)), () => judgeTurn({ ...good, shots: [] }), () => judgeTurn({ ...good, shots: [at(NaN)] }),
    () => judgeTurn({ ...good, countBefore: 0 }), () => judgeTurn({ ...good, limit: NaN }), () => judgeTurn({ ...good, before: at(NaN) }),
    () => bestTurn([], zero, good.spread), () => bestTurn([{ turn: 0, shots: [] }], zero, good.spread), () => bestTurn([{ turn: 0, shots: [zero] }], zero, { sd: NaN, df: 3 }),
  ]) expect(act).toThrow(RangeError);
  expect(predictTurns(zero, at(0, 1), 360)).toHaveLength(360);
  expect(() => predictTurns(zero, zero, 361)).toThrow('a nock with 361 positions cannot be turned; give a whole number, like 3');
  expect(() => bestTurn([], zero, good.spread)).toThrow('no turn was tried; give the shots at one turn at least');
  expect(() => judgeTurn({ ...good, shots: [] })).toThrow('a turn has no shot; shoot it before it is judged');
});
