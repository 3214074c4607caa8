// What comments in the sources say of single rules that no published table has: their figures are held like any other, so that a comment
// cannot outlive the rule that it speaks of.

import { blame } from '../../../src/archery/arrow-rules.ts';
import { pooledSpread } from '../../../src/archery/spread.ts';
import { scatters } from '../../../src/archery/scatters.ts';
import type { Point } from '../../../src/archery/shots.ts';
import { seededRandom, type Random } from '../../../src/maths/random.ts';
import { cellOf, ERRORS, halfDigit, moments, statedShare, type Cell } from './cell.ts';
import type { Table } from './table.ts';
import { away, honest, plus, straying, times } from './world.ts';

const TRIALS = 2000;
const ARCHERS = 150;
const SD = 0.2;
const CENTRE: Point = { x: 0, y: 0 };

const shots = (random: Random, n: number, sd = SD, centre = CENTRE): readonly Point[] => times(n, () => plus(centre, honest(random, sd)));
const hits = (seed: number, one: (random: Random) => boolean): number => {
  const random = seededRandom(seed);
  return times(TRIALS, () => one(random)).filter(Boolean).length;
};

/** spread.ts: how far the pooled spread is from the true one, told to whole percents; 40 sets by each archer. */
function spreadCells(seed: number): readonly Cell[] {
  return ([[6, honest, '-6'], [6, straying, '6'], [3, honest, '-5'], [3, straying, '11']] as const).map(([n, shot, says], i) => {
    const random = seededRandom(seed + i);
    const off = moments(times(ARCHERS, () => 100 * (pooledSpread(times(40, () => times(n, () => shot(random, SD)))).sd / SD - 1)));
    const world = shot === honest ? 'no shot strays' : 'one in twenty strays fourfold';
    return cellOf(TABLE, `pooledSpread, sets of ${n}, ${world} (stated about ${says}): off by %`, { expected: Number(says), got: off.mean, tolerance: halfDigit(says) + (ERRORS * off.sd) / Math.sqrt(ARCHERS) });
  });
}

/** arrow-rules.ts: who is blamed. Reference of two shots, spread known. */
function blameCells(seed: number): readonly Cell[] {
  const known = { sd: SD, df: 30 };
  const judged = (suspect: readonly Point[], random: Random) => blame(suspect, shots(random, 2), CENTRE, known);
  const off = (random: Random, n: number, by: number): readonly Point[] => shots(random, n, SD, away(random, by * SD));
  const wild = (random: Random): readonly Point[] => [...shots(random, 2), plus(away(random, 6 * SD), honest(random, SD))];
  return ([
    ['one 3 spreads off, 3 shots (stated 92)', '92', '92', (random: Random) => judged(off(random, 3, 3), random) === 'the arrow'],
    ['one 3 spreads off, 5 shots (stated 88)', '88', '88', (random: Random) => judged(off(random, 5, 3), random) === 'the arrow'],
    ['a good one, 3 shots (stated fewer than 1)', '0', '1', (random: Random) => judged(shots(random, 3), random) === 'the arrow'],
    ['a good one with a wild shot of 6 spreads among three (stated 3)', '3', '3', (random: Random) => judged(wild(random), random) === 'the arrow'],
    ['a good reference said to have moved (stated 1 to 2)', '1', '2', (random: Random) => judged(shots(random, 3), random) === 'reference moved'],
  ] as const).map(([what, low, high, one], i) => cellOf(TABLE, `blame, ${what}: %`, statedShare(low, high, hits(seed + 10 + i, one), TRIALS)));
}

/** scatters.ts: how often broadheads are said to scatter; the shares without stray shots follow from F. */
function scatterCells(seed: number): readonly Cell[] {
  const found = (n: number, wide: number, shot = honest) => (random: Random): boolean => scatters([{ a: times(n, () => shot(random, SD)), b: times(n, () => shot(random, wide * SD)) }]);
  const many = (random: Random): boolean => scatters([...times(12, () => ({ a: shots(random, 3), b: [] })), { a: [], b: shots(random, 3, 3 * SD) }]);
  return ([
    ['3 times as wide, 3+3 (stated 33)', '33', '33', found(3, 3)],
    ['3 times as wide, 4+4 (stated 47)', '47', '47', found(4, 3)],
    ['3 times as wide, 6+6 (stated 68)', '68', '68', found(6, 3)],
    ['3 times as wide, 3 against 12 groups of three (stated 63)', '63', '63', many],
    ['honest, 1.5 times as wide, 3+3 (stated 5)', '5', '5', found(3, 1.5)],
    ['honest, 3+3, 5 % stray (stated 10 to 14)', '10', '14', found(3, 1.5, straying)],
    ['honest, 6+6, 5 % stray (stated 10 to 14)', '10', '14', found(6, 1.5, straying)],
  ] as const).map(([what, low, high, one], i) => cellOf(TABLE, `scatters, ${what}: %`, statedShare(low, high, hits(seed + 30 + i, one), TRIALS)));
}

const TABLE = 'stated in the sources';

export const STATED: Table = {
  id: 'stated', name: TABLE, about: `ours ${TRIALS} cases (${ARCHERS} archers for the spread); how many are behind a stated figure is not known, only our error counts`,
  run: (seed) => ({ cells: [...spreadCells(seed), ...blameCells(seed), ...scatterCells(seed)], own: [] }),
};
