// A3: the two-stage rule. Three (or four) shots; where the furthest two break the 95 % limit, shoot on to seven; then inconsistent, odd shot or fine.
//
// Worlds as the printed figures need them: who strays does so on both axes; the one flier is among the first three (anywhere among the
// first four would be 4.6 / 13.2 / 4.8 from three shots, where 5.4 / 16.9 / 5.4 is printed); contact throws each shot of a group the
// same way (each its own way: 41 / 6 / 5.3 where 26.8 / 2.6 / 4.8 is printed). The limits are the shipped ones: they differ from the
// printed ones in the third digit, which moves a share by up to half a point.

import { judgeConsistency } from '../../../src/archery/consistency.ts';
import type { Point, Spread } from '../../../src/archery/shots.ts';
import { seededRandom, type Random } from '../../../src/maths/random.ts';
import { average, cellOf, moments, share, statedShare, type Cell } from './cell.ts';
import { figuresOf, rowsOf, toldShare, type Table, type Told } from './table.ts';
import { away, honest, knownSpread, plus, straying, times } from './world.ts';

const TRIALS = 10_000;
const OWN_TRIALS = 2000;
const THEIRS = 10_000;
const DF = 16;
const ALL = 7;

const PRINTED = `
normal | 0.6 / 0.2 / 3.2 | 0.8 / 0.3 / 4.2
5 % stray fourfold | 2.9 / 4.9 / 3.6 | 3.5 / 6.3 / 4.5
one flier of 4 | 5.4 / 16.9 / 5.4 | 5.2 / 17.6 / 5.7
one flier of 6 | 6.8 / 59.4 / 6.8 | 6.5 / 58.6 / 6.8
noise x1.5 | 12.7 / 2.7 / 4.2 | 14.8 / 3.1 / 5.0
noise x2 | 40.6 / 4.3 / 5.2 | 47.7 / 4.8 / 6.0
noise x3 | 80.6 / 2.1 / 6.4 | 87.0 / 2.1 / 6.7
contact 40 % by 4 | 26.8 / 2.6 / 4.8 | 31.1 / 3.3 / 5.6
contact 40 % by 6 | 58.6 / 4.5 / 5.7 | 69.3 / 5.6 / 6.4
contact 40 % by 10 | 67.5 / 5.9 / 5.9 | 77.9 / 7.9 / 6.6`;

type World = (random: Random) => readonly Point[];

const all = (shot: (random: Random) => Point): World => (random) => times(ALL, () => shot(random));
const flier = (by: number): World => (random) => {
  const wild = Math.floor(3 * random.uniform());
  return times(ALL, (i) => (i === wild ? plus(honest(random), away(random, by)) : honest(random)));
};
const contact = (by: number): World => (random) => {
  const thrown = away(random, by);
  return times(ALL, () => (random.uniform() < 0.4 ? plus(honest(random), thrown) : honest(random)));
};
const WORLDS: Readonly<Record<string, World>> = {
  'normal': all(honest),
  '5 % stray fourfold': all(straying),
  'one flier of 4': flier(4), 'one flier of 6': flier(6),
  'noise x1.5': all((random) => honest(random, 1.5)), 'noise x2': all((random) => honest(random, 2)), 'noise x3': all((random) => honest(random, 3)),
  'contact 40 % by 4': contact(4), 'contact 40 % by 6': contact(6), 'contact 40 % by 10': contact(10),
};

interface End { readonly kind: 'inconsistent' | 'odd shot' | 'fine'; readonly shots: number }

/** The printed rule, judged by `judgeConsistency`: at the first look only whether the 95 % limit is broken, at seven what it says. */
function twoStages(shots: readonly Point[], spread: Spread, start: number): End {
  if (judgeConsistency(shots.slice(0, start), spread, 4).kind === 'fine') return { kind: 'fine', shots: start };
  const { kind } = judgeConsistency(shots, spread);
  if (kind === 'suspect') throw new Error('seven shots are enough to tell');
  return { kind, shots: ALL };
}

/** What the walk does with the same shots: one more wherever it is suspect, and from the fourth on each look may end it. */
function shotByShot(shots: readonly Point[], spread: Spread, earliest: 3 | 4): End {
  for (let n = 3; ; n++) {
    const { kind } = judgeConsistency(shots.slice(0, n), spread, earliest);
    if (kind !== 'suspect') return { kind, shots: n };
  }
}

function ends(world: World, seed: number, trials: number, rule: (shots: readonly Point[], spread: Spread) => End): readonly End[] {
  const random = seededRandom(seed);
  return times(trials, () => {
    const spread = { sd: knownSpread(random, DF), df: DF };
    return rule(world(random), spread);
  });
}

const count = (found: readonly End[], kind: End['kind']): number => found.filter((end) => end.kind === kind).length;
const shotsOf = (found: readonly End[]) => moments(found.map((end) => end.shots));

function run(seed: number): { cells: readonly Cell[]; own: readonly Told[] } {
  const cells: Cell[] = [];
  const own: Told[] = [];
  for (const [i, [name = '', ...entries]] of rowsOf(PRINTED).entries()) {
    const world = WORLDS[name];
    if (world === undefined) throw new Error(`there is no world called ${name}`);
    for (const [j, start] of [3, 4].entries()) {
      const found = ends(world, seed + 10 * i + j, TRIALS, (shots, spread) => twoStages(shots, spread, start));
      const [inconsistent = '', odd = '', taken = ''] = figuresOf(entries[j] ?? '');
      const cell = `${name}, begun with ${start}`;
      cells.push(
        cellOf(TABLE, `${cell}: inconsistent %`, share(inconsistent, count(found, 'inconsistent'), TRIALS, THEIRS)),
        cellOf(TABLE, `${cell}: odd shot %`, share(odd, count(found, 'odd shot'), TRIALS, THEIRS)),
        cellOf(TABLE, `${cell}: shots`, average(taken, shotsOf(found), THEIRS)),
      );
    }
    const walked = ends(world, seed + 500 + i, OWN_TRIALS, (shots, spread) => shotByShot(shots, spread, 4));
    const { mean, sd } = shotsOf(walked);
    own.push(
      toldShare(`${name}: inconsistent`, count(walked, 'inconsistent'), OWN_TRIALS),
      toldShare(`${name}: odd shot`, count(walked, 'odd shot'), OWN_TRIALS),
      { cell: `${name}: shots`, got: mean, error: sd / Math.sqrt(OWN_TRIALS), unit: '' },
    );
  }
  return { cells: [...cells, ...stated(seed)], own };
}

/** What judgeConsistency says of itself: one shot thrown 6 spreads off among three, ending as inconsistent. */
function stated(seed: number): readonly Cell[] {
  return ([[3, '75', '85', 'about 8 in 10'], [4, '5', '25', '1 or 2 in 10']] as const).map(([earliest, low, high, says]) => {
    const found = ends(flier(6), seed + 900, OWN_TRIALS, (shots, spread) => shotByShot(shots, spread, earliest));
    return cellOf(TABLE, `the walk's own, one flier of 6, earliest ${earliest} ("${says}"): inconsistent %`, statedShare(low, high, count(found, 'inconsistent'), OWN_TRIALS));
  });
}

const TABLE = 'A3 two stages';

export const A3_STAGES: Table = {
  id: 'A3', name: TABLE, about: `ours ${TRIALS} sets, theirs ${THEIRS}; spread known on ${DF} df; the walk's own (shot by shot, earliest 4): ${OWN_TRIALS} sets`,
  run,
};
