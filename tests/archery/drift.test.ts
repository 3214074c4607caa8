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

  it('say nothing by too few shots', () => {
    expect(judgeDrift([])).toBeNull();
    expect(judgeDrift([[shot(0, 0)], [shot(1, 1)]])).toBeNull();
    expect(judgeDrift([[shot(0, 0), shot(2, 1)], [shot(1, 0), shot(3, 1)]])).toBeNull();
    expect(judgeDrift([[shot(0, 0), shot(0, 1)], [shot(0, 0), shot(0, 1)], [shot(0, 0), shot(0, 1)]])).toBeNull();
    expect(() => judgeDrift([[shot(NaN, 0)]])).toThrow('judgeDrift: when a shot was made is NaN');
  });
});
