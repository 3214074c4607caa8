import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blame, tooManyOdd } from '../../src/archery/arrow-rules.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const zero = at(0);

it('tooManyOdd: more than a third, and two at least', () => {
  expect(([[0, 12], [4, 12], [5, 12], [1, 2], [2, 2], [2, 6], [3, 6], [1, 1], [0, 0]] as const).map(([odd, of]) => tooManyOdd(odd, of)))
    .toEqual([false, false, true, false, true, false, true, false, false]);
});

describe('blame', () => {
  const spread = { sd: 0.1, df: 20 };
  const clean = [at(0.05), at(-0.05, 0.05)];
  it('the arrow, where all its shots lie the same way beyond a quarter of an inch', () => {
    expect(blame([at(0.5), at(0.4, 0.1), at(0.45, -0.1)], clean, zero, spread)).toBe('the arrow');
    expect(blame([at(0.5, 2), at(0.4, 2.1), at(0.45, 1.9)], clean.map((s) => at(s.x, s.y + 2)), at(0, 2), spread)).toBe('the arrow');
    expect(blame([at(0.5), at(-0.5), at(0.5)], clean, zero, spread)).toBe('not the arrow');
    expect(blame([at(0.2), at(0.2), at(0.2)], clean, zero, spread)).toBe('not the arrow');
  });
  it('the limit is two spreads where they are wider', () => {
    const shots = [at(0.45), at(0.5), at(0.55)];
    expect([0.2, 0.24, 0.26].map((sd) => blame(shots, clean, zero, { sd, df: 20 }))).toEqual(['the arrow', 'the arrow', 'not the arrow']);
  });
  it('at the limit it is not beyond it; a shot at half the limit still lies that way', () => {
    expect(blame([at(0.25), at(0.25), at(0.25)], clean, zero, spread)).toBe('not the arrow');
    expect(blame([at(0.5), at(0.5), at(0.5)], [at(0.25), at(0.25)], zero, spread)).toBe('the arrow');
    // Two spreads are 0.4 in; the centre of these lies at 0.467.
    expect(blame([at(0.2), at(0.6), at(0.6)], clean, zero, { sd: 0.2, df: 20 })).toBe('the arrow');
    expect(blame([at(0.199), at(0.6), at(0.6)], clean, zero, { sd: 0.2, df: 20 })).toBe('not the arrow');
  });
  it('on both axes together, and from the typical arrow', () => {
    const around = (x: number, y: number): { x: number; y: number }[] => [at(x, y), at(x + 0.05, y - 0.05), at(x - 0.05, y + 0.05)];
    // 0.2 and 0.2 are 0.28 in; 0.15 and 0.15 are 0.21.
    expect(blame(around(0.2, 0.2), clean, zero, spread)).toBe('the arrow');
    expect(blame(around(0.15, 0.15), clean, zero, spread)).toBe('not the arrow');
    expect(blame(around(0.2, -0.2), clean, zero, spread)).toBe('the arrow');
    // Far enough, but the three do not lie the same way.
    expect(blame([at(1, 0), at(0, 1), at(1, -0.4)], clean, zero, { sd: 0.25, df: 20 })).toBe('not the arrow');
    const from = { x: 0.3, y: -0.2 };
    expect(blame(around(0.3, -0.2), [at(0.3, -0.2), at(0.35, -0.25)], from, spread)).toBe('not the arrow');
    expect(blame(around(0.5, 0), [at(0.3, -0.2), at(0.35, -0.25)], from, spread)).toBe('the arrow');
  });
  it('one wild shot among good ones is not the arrow', () => {
    expect(blame([at(0.02), at(0.1), at(2)], clean, zero, spread)).toBe('not the arrow');
    expect(blame([at(0.02), at(0.1), at(20), at(25)], clean, zero, spread)).toBe('not the arrow');
  });
  it('a reference that wandered off says nothing of the suspect', () => {
    expect(blame([at(0.5), at(0.5), at(0.5)], [at(0.5), at(0.45)], zero, spread)).toBe('reference moved');
    expect(blame([at(0.5), at(0.5), at(0.5)], [at(0.5), at(-0.1)], zero, spread)).toBe('the arrow');
  });
  it('waits for three shots, and two of the reference', () => {
    expect(blame([at(0.5), at(0.5)], clean, zero, spread)).toBeNull();
    expect(blame([at(0.5), at(0.5), at(0.5)], [at(0)], zero, spread)).toBeNull();
    expect(blame([], [], zero, spread)).toBeNull();
  });
  it('does not depend on order or side, and never blames an arrow whose shots lie within half the limit', () => {
    const tear = fc.integer({ min: -24, max: 24 }).map((n) => n / 16);
    const shots = fc.array(fc.record({ x: tear, y: tear }), { maxLength: 6 });
    fc.assert(fc.property(shots, shots, fc.double({ min: 0.05, max: 0.5, noNaN: true }), (suspect, reference, sd) => {
      const verdict = blame(suspect, reference, at(0.125, 0.25), { sd, df: 20 });
      expect(blame(suspect.toReversed(), reference.toReversed(), at(0.125, 0.25), { sd, df: 20 })).toBe(verdict);
      const flip = (all: readonly { x: number; y: number }[]): { x: number; y: number }[] => all.map((s) => at(-s.x, s.y));
      expect(blame(flip(suspect), flip(reference), at(-0.125, 0.25), { sd, df: 20 })).toBe(verdict);
      const limit = Math.max(0.25, 2 * sd);
      if (verdict === 'the arrow') expect(suspect.every((s) => Math.hypot(s.x - 0.125, s.y - 0.25) >= limit / 2 - 1e-9)).toBe(true);
    }));
  });
});

it('refuse what cannot be meant', () => {
  for (const act of [
    () => tooManyOdd(3, 2), () => tooManyOdd(NaN, 2), () => tooManyOdd(1, -1),
    () => blame([at(NaN)], [], zero, { sd: 0.2, df: 9 }), () => blame([], [at(0, NaN)], zero, { sd: 0.2, df: 9 }), () => blame([], [], zero, { sd: NaN, df: 9 }),
    () => blame([at(0)], [], at(NaN), { sd: 0.2, df: 9 }),
  ]) expect(act).toThrow(RangeError);
  expect(() => tooManyOdd(3, 2)).toThrow('3 of 2 arrows are odd');
});
