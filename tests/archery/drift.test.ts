import { describe, expect, it } from 'vitest';
import { judgeDrift, type ShotInTurn } from '../../src/archery/drift.ts';

const shot = (at: number, x: number, y = 0): ShotInTurn => ({ at, tear: { x, y } });

describe('tears that drift while arrows are shot in rounds', () => {
  it('are told by each arrow against itself: what arrows differ by does not enter', () => {
    const still = Array.from({ length: 6 }, (_, i) => [shot(i, i), shot(6 + i, i + (i % 2 === 0 ? 0.05 : -0.05))]);
    expect(judgeDrift(still)).toMatchObject({ drifts: false });
    // 0.05 in a shot, so 0.55 in from the first of twelve to the last.
    const drifting = Array.from({ length: 6 }, (_, i) => [shot(i, i + 0.05 * i), shot(6 + i, i + 0.05 * (6 + i))]);
    expect(judgeDrift(drifting)?.drifts).toBe(true);
    expect(judgeDrift(drifting)?.size).toBeCloseTo(0.55, 12);
  });

  it('to the other side, high or low, or told in another order of arrows, alike', () => {
    const drifting = Array.from({ length: 6 }, (_, i) => [shot(i, 0.03 * i, 0.1), shot(6 + i, 0.04 * (6 + i), 0.07), shot(12 + i, 0.04 * (12 + i))]);
    const told = judgeDrift(drifting);
    expect(judgeDrift(drifting.map((own) => own.map(({ at, tear: { x, y } }) => shot(at, -x, y))))).toEqual(told);
    expect(judgeDrift(drifting.map((own) => own.map(({ at, tear: { x, y } }) => shot(at, y, x))))).toEqual(told);
    expect(judgeDrift(drifting.toReversed())).toEqual(told);
  });

  it('count from three spreads on: less harms no arrow', () => {
    // The shots stray by 0.1 either way in turn; over three rounds of twelve the drift is proven long before it harms.
    const set = (drift: number): readonly ShotInTurn[][] => Array.from({ length: 12 }, (_, i) => [0, 1, 2].map((round) => {
      const at = 12 * round + i;
      return shot(at, (drift * at) / 35 + 0.1 * [1, -2, 1][round]! * (i % 2 === 0 ? 1 : -1), 0.1 * [-1, 2, -1][round]! * (i % 3 === 0 ? 1 : -1));
    }));
    expect([0.2, 0.8].map((drift) => judgeDrift(set(drift))?.drifts)).toEqual([false, true]);
  });

  it('of little by a hundred shots are proven, and harm no arrow all the same', () => {
    const set = Array.from({ length: 12 }, (_, i) => Array.from({ length: 8 }, (_, round) => {
      const at = 12 * round + i;
      return shot(at, (0.2 * at) / 95 + 0.1 * [1, -1, -1, 1][round % 4]!);
    }));
    const told = judgeDrift(set);
    // Two spreads of 0.1 from the first shot to the last, and 0.1 / sqrt(times) of luck in the slope: seven standard errors.
    expect(told?.size).toBeCloseTo(0.2, 2);
    expect(told?.drifts).toBe(false);
  });

  it('that look large by three arrows shot twice are not proven by so few', () => {
    // By hand: 0.4 in on average in three turns, each arrow 0.1 to 0.3 from it, so a spread of sqrt(0.07 / 4) = 0.132, on 4 df. The slope is
    // 0.4 / 3, its standard error 0.132 / sqrt(13.5): 3.7 of them, where 5.6 are asked (Student's t, 0.9975).
    const told = judgeDrift([[shot(0, 0), shot(3, 0.6)], [shot(1, 0), shot(4, 0.1)], [shot(2, 0), shot(5, 0.5)]]);
    expect(told?.size).toBeCloseTo(0.4 / 3 * 5, 12);
    expect(told?.drifts).toBe(false);
  });

  it('are as large whenever the count of shots began', () => {
    const set = (from: number) => Array.from({ length: 3 }, (_, i) => [shot(from + i, 0), shot(from + 3 + i, 0.3)]);
    expect(judgeDrift(set(100))).toEqual(judgeDrift(set(0)));
  });

  it('say nothing by too few shots', () => {
    expect(judgeDrift([])).toBeNull();
    expect(judgeDrift([[shot(0, 0)], [shot(1, 1)]])).toBeNull();
    expect(judgeDrift([[shot(0, 0), shot(2, 1)], [shot(1, 0), shot(3, 1)]])).toBeNull();
    expect(judgeDrift([[shot(0, 0), shot(0, 1)], [shot(0, 0), shot(0, 1)], [shot(0, 0), shot(0, 1)]])).toBeNull();
    expect(() => judgeDrift([[shot(NaN, 0)]])).toThrow('judgeDrift: when a shot was made is NaN');
  });
});
