import { describe, expect, it } from 'vitest';
import { screenArrows, type ArrowShots } from '../../src/archery/arrow-set.ts';
import { indexRead, trulyDiffer } from '../../src/archery/set-read.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const set = (...middles: readonly { x: number; y: number }[]): ArrowShots[] =>
  middles.map(({ x, y }, i) => ({ arrow: `${i + 1}`, shots: [at(x + 0.03, y), at(x - 0.03, y), at(x, y + 0.03)] }));

describe('a set as it was read', () => {
  const differing = set(at(0.2), at(-0.2), at(0, 0.2), at(0, -0.2));
  it('truly differs by more than luck, or does not', () => {
    expect(trulyDiffer(differing)).toBe(true);
    expect(trulyDiffer(set(at(0), at(0.01), at(0, 0.01)))).toBe(false);
    // Nothing to learn the shots' own spread from: nothing is proven.
    expect(trulyDiffer([{ arrow: '1', shots: [at(0)] }, { arrow: '2', shots: [at(1)] }])).toBe(false);
    expect(trulyDiffer([])).toBe(false);
  });
  it('is turned to one side, with what is unsure in it: never promised away whole', () => {
    const read = screenArrows(differing, { sd: 0.05, df: 8 });
    const index = indexRead(read, 4);
    expect(index?.turns.map(({ turn }) => turn).toSorted()).toEqual([0, 1, 2, 3]);
    expect(index?.after).toBeGreaterThan(0.01);
    expect(index?.after).toBeLessThan(0.85 * (index?.before ?? 0));
    expect(indexRead(read, 1)?.turns.map(({ turn }) => turn)).toEqual([0, 0, 0, 0]);
    expect(indexRead({ ...read, arrows: read.arrows.slice(0, 1) }, 4)).toBeNull();
    expect(() => indexRead(read, 0)).toThrow('indexRead: the ways round of a nock is 0');
  });

  // By hand: arrows differ by 0.2, luck 0.1 in a shot; four shots and one leave 0.04 / 0.0425 * 0.0025 and 0.04 / 0.05 * 0.01 unsure, 0.005176 on
  // average. As they stand 0.09 of scatter besides; turned the one upon the other none, but what the typical arrow, a median of these, may be
  // wrong by: pi / 2 * (0.0425 + 0.05) / 4, once either way.
  it('by hand, two arrows that err to either side', () => {
    const read = { ...screenArrows(differing, { sd: 0.05, df: 8 }), typical: at(0), spread: { sd: 0.1, df: 30 }, betweenSd: 0.2 };
    const index = indexRead({ ...read, arrows: [0.3, -0.3].map((x, i) => ({ ...read.arrows[i]!, effect: at(x), count: i === 0 ? 4 : 1 })) }, 2);
    expect(index?.before).toBeCloseTo(Math.sqrt(0.09 + 0.0051765), 6);
    expect(index?.after).toBeCloseTo(Math.sqrt((Math.PI / 2) * 0.0925 / 4 * 2 + 0.0051765), 6);
  });
});
