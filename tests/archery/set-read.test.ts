import { describe, expect, it } from 'vitest';
import { screenArrows, type ArrowShots } from '../../src/archery/arrow-set.ts';
import { staysTurned } from '../../src/archery/set-index.ts';
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
});

describe('nocks stay as they were turned', () => {
  const foretold = [{ stood: at(0.3), foretold: at(0, 0.3) }, { stood: at(-0.3), foretold: at(0, 0.3) }, { stood: at(0, 0.3), foretold: at(0, 0.3) }];
  const seen = (of: (arrow: (typeof foretold)[number]) => { x: number; y: number }): Parameters<typeof staysTurned>[0] => foretold.map((arrow) => ({ ...arrow, seen: of(arrow) }));
  const closer = { before: 0.3, after: 0.1 };
  it('where they are seen as foretold and lie closer together; what is common to all says nothing', () => {
    expect(staysTurned(seen((one) => one.foretold), closer)).toBe(true);
    expect(staysTurned(seen(({ foretold: { x, y } }) => at(x + 2, y - 1)), closer)).toBe(true);
  });
  it('not where they lie as they stood, nor where they lie no closer', () => {
    expect(staysTurned(seen((one) => one.stood), closer)).toBe(false);
    expect(staysTurned(seen((one) => one.foretold), { before: 0.1, after: 0.1 })).toBe(false);
  });
  it('refuses what cannot be meant', () => {
    expect(() => staysTurned([], closer)).toThrow('staysTurned: no arrow was turned');
    expect(() => staysTurned(seen(() => at(NaN)), closer)).toThrow('staysTurned: an error that is seen is NaN');
  });
});
