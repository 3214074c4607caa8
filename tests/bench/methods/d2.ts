// D2: which arrow is odd. Sets in which a good arrow is called odd, and sets in which the bad one is found; spread of one shot 1.
//
// Reading: the bad arrow lies exactly so far off, in a direction drawn by chance, and has no other error of its own (with one, 58 of 100
// would be found by two standard deviations where 55 are printed). Means over both axes, typical arrow the median of each axis (the point
// nearest to all reproduces the figures as well; the middle arrow of the set does not).
// Left out are the printed table's two columns of an empirical-Bayes rule, 72 figures: what it did is not written down, and none of 252
// readings (typical arrow, estimate of the spread between arrows, posterior, spread known or not) comes near all of them.

import { screenArrows } from '../../../src/archery/arrow-set.ts';
import type { Point, Spread } from '../../../src/archery/shots.ts';
import { seededRandom, type Random } from '../../../src/maths/random.ts';
import { againstRest, beyondOneSpread, beyondTwoSd } from '../rivals/odd-arrows.ts';
import { cellOf, share, statedShare, type Cell } from './cell.ts';
import { figuresOf, rowsOf, toldShare, type Outcome, type Table } from './table.ts';
import { away, honest, knownSpread, plus, straying, times } from './world.ts';

const TRIALS = 2000;
const OWN_TRIALS = 400;
const STATED_TRIALS = 1200;
const THEIRS = 3000;
const ALARM = 0.05;
/** Of the spread that the walk knows before: both axes. */
const KNOWN_DF = 16;

/** Arrows x shots | spread between arrows | how far the bad one is off | any good one called odd / bad one found, a column a rule. */
const PRINTED = `
6x2 | 0 | 0 | 43.0 | 21.2 | 4.4 | 1.6
6x2 | 0.5 | 0 | 43.1 | 42.6 | 13.2 | 6.1
6x2 | 0.5 | 2.5 | 10.4 / 55 | 48.5 / 72 | 16.0 / 39 | 4.9 / 23
6x2 | 0.5 | 4 | 1.3 / 94 | 58.9 / 99 | 22.0 / 89 | 5.3 / 75
6x3 | 0 | 0 | 45.7 | 24.7 | 4.4 | 0.4
6x3 | 0.5 | 0 | 43.5 | 57.4 | 24.1 | 4.9
6x3 | 0.5 | 2.5 | 7.0 / 69 | 65.8 / 92 | 30.7 / 74 | 4.3 / 37
6x3 | 0.5 | 4 | 0.7 / 98 | 82.3 / 100 | 45.6 / 99 | 5.2 / 93
6x4 | 0 | 0 | 43.6 | 23.0 | 4.0 | 0.1
6x4 | 0.5 | 0 | 43.9 | 69.8 | 34.5 | 4.3
6x4 | 0.5 | 2.5 | 4.8 / 76 | 79.2 / 98 | 44.1 / 89 | 4.8 / 47
6x4 | 0.5 | 4 | 0.2 / 99 | 92.1 / 100 | 65.3 / 100 | 4.2 / 98
12x2 | 0 | 0 | 88.6 | 36.3 | 3.5 | 0.7
12x2 | 0.5 | 0 | 89.3 | 71.4 | 19.1 | 6.4
12x2 | 0.5 | 2.5 | 55.5 / 79 | 71.0 / 81 | 19.3 / 43 | 6.0 / 23
12x2 | 0.5 | 4 | 20.5 / 99 | 73.8 / 100 | 20.1 / 94 | 5.7 / 81
12x3 | 0 | 0 | 89.2 | 40.4 | 4.1 | 0.2
12x3 | 0.5 | 0 | 89.9 | 84.9 | 32.9 | 6.0
12x3 | 0.5 | 2.5 | 45.1 / 89 | 86.0 / 95 | 33.9 / 77 | 4.8 / 39
12x3 | 0.5 | 4 | 14.3 / 100 | 89.6 / 100 | 41.3 / 100 | 5.8 / 97
12x4 | 0 | 0 | 88.8 | 43.9 | 5.3 | 0.1
12x4 | 0.5 | 0 | 90.8 | 92.2 | 49.5 | 6.1
12x4 | 0.5 | 2.5 | 39.3 / 95 | 94.0 / 99 | 50.0 / 92 | 5.0 / 53
12x4 | 0.5 | 4 | 9.1 / 100 | 95.5 / 100 | 56.0 / 100 | 5.2 / 99`;

type Rule = (arrows: readonly (readonly Point[])[]) => readonly boolean[];

const RULES: readonly (readonly [string, Rule])[] = [
  ['two sd of the means', beyondTwoSd],
  ['F against the rest', (arrows) => againstRest(arrows, ALARM)],
  ['the same, Bonferroni', (arrows) => againstRest(arrows, ALARM / arrows.length)],
  ['one spread beyond luck', (arrows) => beyondOneSpread(arrows, ALARM)],
];

interface World {
  readonly arrows: number; readonly shots: number;
  readonly between: number;
  /** How far the first arrow is off; 0 where all are good. */
  readonly off: number;
  /** Whether the bad arrow has an error like the others' besides. */
  readonly besides: boolean;
  readonly shot: (random: Random) => Point;
}

function setOf(random: Random, { arrows, shots, between, off, besides, shot }: World): readonly (readonly Point[])[] {
  return times(arrows, (i) => {
    const bad = i === 0 && off > 0;
    const own = honest(random, bad && !besides ? 0 : between);
    const centre = bad ? plus(own, away(random, off)) : own;
    return times(shots, () => plus(centre, shot(random)));
  });
}

interface Found { readonly good: number; readonly bad: number }

/** In how many sets a good arrow is called odd, and in how many the bad one is. */
function tally(odd: readonly (readonly boolean[])[], off: number): Found {
  const isBad = (i: number): boolean => i === 0 && off > 0;
  return {
    good: odd.filter((calls) => calls.some((call, i) => call && !isBad(i))).length,
    bad: odd.filter((calls) => calls.some((call, i) => call && isBad(i))).length,
  };
}

function row(seed: number, [size = '', between = '', off = '', ...entries]: readonly string[]): Outcome {
  const [arrows = 0, shots = 0] = size.split('x').map(Number);
  const world: World = { arrows, shots, between: Number(between), off: Number(off), besides: false, shot: honest };
  const random = seededRandom(seed);
  const sets = times(TRIALS, () => setOf(random, world));
  const name = `${arrows} x ${shots}, differing by ${between}${world.off > 0 ? `, one off by ${off}` : ''}`;
  const cells = RULES.flatMap(([rule, call], i) => {
    const found = tally(sets.map(call), world.off);
    const [good = '', bad] = figuresOf(entries[i] ?? '');
    return [
      cellOf(TABLE, `${name}, ${rule}: a good one %`, share(good, found.good, TRIALS, THEIRS)),
      ...(bad === undefined ? [] : [cellOf(TABLE, `${name}, ${rule}: the bad one %`, share(bad, found.bad, TRIALS, THEIRS))]),
    ];
  });
  const own = walked(seed + 100, world, OWN_TRIALS);
  return {
    cells,
    own: [
      toldShare(`${name}: a good one`, own.good, OWN_TRIALS),
      ...(world.off > 0 ? [toldShare(`${name}: the bad one`, own.bad, OWN_TRIALS)] : []),
    ],
  };
}

/**
 * The walk's own screening. An inch is a spread here: rounding to sixteenths is next to nothing. The archer's spread is known on 16 df from
 * before, or not at all where shots stray: who strays has no honest spread to know (with one, 85 would be found where 73 to 79 are stated).
 */
function walked(seed: number, world: World, trials: number): Found {
  const random = seededRandom(seed);
  const odd = times(trials, () => {
    const known: Spread | null = world.shot === honest ? { sd: knownSpread(random, KNOWN_DF), df: KNOWN_DF / 2 } : null;
    const set = setOf(random, world).map((shots, i) => ({ arrow: `${i}`, shots }));
    return screenArrows(set, known).arrows.map((arrow) => arrow.odd);
  });
  return tally(odd, world.off);
}

/** What screenArrows says of itself, six arrows and twelve; its bad arrow has an error like the others' besides. */
function stated(seed: number): readonly Cell[] {
  const world = (arrows: number, shots: number, between: number, off: number, shot = honest): World => ({ arrows, shots, between, off, besides: true, shot });
  return [6, 12].flatMap((arrows, i) => [
    { what: 'a good one of like arrows', low: '0', high: '1', world: world(arrows, 3, 0, 0), of: 'good' as const },
    { what: 'a good one', low: '4', high: '5', world: world(arrows, 3, 0.5, 0), of: 'good' as const },
    { what: 'one off by 4', low: '89', high: '94', world: world(arrows, 3, 0.5, 4), of: 'bad' as const },
    { what: 'one off by 2.5', low: '40', high: '43', world: world(arrows, 3, 0.5, 2.5), of: 'bad' as const },
    { what: 'one off by 4, two shots each', low: '77', high: '80', world: world(arrows, 2, 0.5, 4), of: 'bad' as const },
    { what: 'one off by 2.5, two shots each', low: '26', high: '26', world: world(arrows, 2, 0.5, 2.5), of: 'bad' as const },
    { what: 'one off by 4, 5 % stray', low: '73', high: '79', world: world(arrows, 3, 0.5, 4, straying), of: 'bad' as const },
    { what: 'one off by 2.5, 5 % stray', low: '26', high: '26', world: world(arrows, 3, 0.5, 2.5, straying), of: 'bad' as const },
  ].map(({ what, low, high, world: made, of }, j) =>
    cellOf(TABLE, `the walk's own, ${arrows} arrows, ${what} (stated ${low === high ? low : `${low} to ${high}`}) %`, statedShare(low, high, walked(seed + 10 * i + j, made, STATED_TRIALS)[of], STATED_TRIALS))));
}

const TABLE = 'D2 odd arrows';

export const D2: Table = {
  id: 'D2', name: TABLE, about: `ours ${TRIALS} sets of arrows, theirs ${THEIRS}; the walk's own (screenArrows, spread known on ${KNOWN_DF} df): ${OWN_TRIALS} sets, ${STATED_TRIALS} where a figure is stated`,
  run: (seed) => {
    const rows = rowsOf(PRINTED).map((figures, i) => row(seed + i, figures));
    return { cells: [...rows.flatMap((r) => r.cells), ...stated(seed + 500)], own: rows.flatMap((r) => r.own) };
  },
};
