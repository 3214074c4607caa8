// A4: tuned, adjust, or undecided, and after how many shots; one axis, tolerance 1/4 in.
//
// The printed world: one shot in twenty strays fourfold, tears are told in sixteenths (unrounded ones would be tuned by the mean of three in
// 49 of 100 cases at 1/4 in, where 52 is printed), the spread begins at 0.20 in on 3 df for this axis. The sequential rules are printed for
// an estimate that the kernel still has: `pooledOf` (weights twice, the second time by the spread that came out; by the prior's alone 92
// of 100 would be tuned at zero and 48 with a spread of 0.35 in, where 90 and 42 are printed), `huberCentre`, `chanceWithin`.

import { pooledOf } from '../../../src/archery/spread.ts';
import { chanceWithin } from '../../../src/archery/tolerance.ts';
import { huberCentre } from '../../../src/maths/huber.ts';
import { seededRandom, type Random } from '../../../src/maths/random.ts';
import { judgeAxis } from '../../../src/machine/loop/judge.ts';
import { content, stateOf } from '../../machine/state-of.ts';
import { equivalentByOwnSpread, meanInside, notSignificant } from '../rivals/fixed-rules.ts';
import { average, cellOf, moments, share, type Cell } from './cell.ts';
import { figuresOf, rowsOf, toldShare, type Outcome, type Table, type Told } from './table.ts';
import { sixteenths, straying, strayingOnLine, times } from './world.ts';

const TRIALS = 2000;
const OWN_TRIALS = 200;
const THEIRS = 4000;
const TOLERANCE = 1 / 4;
const PRIOR = { sd: 0.2, df: 3 / 2 }; // pooledOf counts it for both axes: 3 df on one
const LEAST = 0.03;
const TEARS = [0, 0.1, 0.2, 0.25, 0.3, 0.375, 0.5, 0.75, 1] as const;
const OWN_TEARS = [0, 0.1, 0.2, 0.25, 0.3, 0.375, 0.5, 0.75] as const;

const PRINTED = {
  '0.20': `
mean of 3 | 93/7/0/3.0 | 88/12/0/3.0 | 67/33/0/3.0 | 52/48/0/3.0 | 36/64/0/3.0 | 19/81/0/3.0 | 4/96/0/3.0 | 1/99/0/3.0 | 0/100/0/3.0
not significant, 3 | 95/5/0/3.0 | 92/8/0/3.0 | 83/17/0/3.0 | 78/22/0/3.0 | 71/29/0/3.0 | 59/41/0/3.0 | 43/57/0/3.0 | 18/82/0/3.0 | 7/93/0/3.0
own spread, 6 | 57/43/0/6.0 | 37/63/0/6.0 | 12/88/0/6.0 | 5/95/0/6.0 | 1/99/0/6.0 | 0/100/0/6.0 | 0/100/0/6.0 | 0/100/0/6.0 | 0/100/0/6.0
.95/.90 3..6 | 68/0/32/5.1 | 48/1/50/5.4 | 15/8/78/5.6 | 6/18/75/5.5 | 2/34/64/5.3 | 0/64/36/4.6 | 0/94/6/3.5 | 0/100/0/3.0 | 0/100/0/3.0
.95/.90 3..9 | 90/0/10/5.8 | 70/1/29/6.7 | 25/10/65/7.8 | 10/22/68/7.7 | 3/44/53/7.0 | 0/78/22/5.5 | 0/98/2/3.6 | 0/100/0/3.0 | 0/100/0/3.0
.90/.80 3..9 | 96/1/3/4.5 | 83/4/13/5.2 | 42/21/37/6.4 | 21/40/39/6.3 | 9/64/27/5.6 | 1/89/9/4.4 | 0/100/0/3.3 | 0/100/0/3.0 | 0/100/0/3.0
.95/.50 3..9 | 86/10/5/5.3 | 66/21/13/5.6 | 23/55/22/5.4 | 10/74/16/4.8 | 3/90/7/4.0 | 0/98/1/3.3 | 0/100/0/3.0 | 0/100/0/3.0 | 0/100/0/3.0
.95/.90 4..12 | 97/0/3/6.1 | 83/0/17/7.4 | 32/9/59/9.9 | 12/23/65/10.0 | 3/48/49/9.0 | 0/85/14/6.6 | 0/100/0/4.4 | 0/100/0/4.0 | 0/100/0/4.0`,
  '0.35': `
mean of 3 | 74/26/0/3.0 | 69/31/0/3.0 | 56/44/0/3.0 | 50/50/0/3.0 | 41/59/0/3.0 | 29/71/0/3.0 | 13/87/0/3.0 | 3/97/0/3.0 | 1/99/0/3.0
not significant, 3 | 95/5/0/3.0 | 95/5/0/3.0 | 92/8/0/3.0 | 90/10/0/3.0 | 87/13/0/3.0 | 82/18/0/3.0 | 74/26/0/3.0 | 53/47/0/3.0 | 35/65/0/3.0
own spread, 6 | 10/90/0/6.0 | 8/92/0/6.0 | 5/95/0/6.0 | 3/97/0/6.0 | 1/99/0/6.0 | 1/99/0/6.0 | 0/100/0/6.0 | 0/100/0/6.0 | 0/100/0/6.0
.95/.90 3..6 | 18/6/76/5.6 | 15/8/76/5.6 | 9/19/72/5.4 | 6/28/67/5.3 | 4/39/57/5.0 | 1/54/44/4.7 | 0/79/21/4.0 | 0/98/2/3.2 | 0/100/0/3.0
.95/.90 3..9 | 42/6/52/7.7 | 35/9/56/7.7 | 18/23/59/7.4 | 11/33/56/7.1 | 7/45/47/6.7 | 2/64/33/5.9 | 0/88/12/4.5 | 0/100/0/3.3 | 0/100/0/3.0
.90/.80 3..9 | 65/12/22/6.2 | 56/19/25/6.1 | 33/36/31/6.1 | 24/46/30/5.9 | 15/59/26/5.5 | 7/77/16/4.8 | 1/95/4/3.8 | 0/100/0/3.1 | 0/100/0/3.0
.95/.50 3..9 | 37/41/22/5.9 | 30/48/22/5.6 | 16/67/17/5.0 | 10/78/12/4.6 | 6/85/9/4.2 | 2/94/4/3.7 | 0/99/0/3.2 | 0/100/0/3.0 | 0/100/0/3.0
.95/.90 4..12 | 62/4/34/9.3 | 51/7/42/9.5 | 24/20/57/9.7 | 14/32/53/9.3 | 8/47/46/8.7 | 3/68/29/7.5 | 0/93/7/5.5 | 0/100/0/4.2 | 0/100/0/4.0`,
} as const;

interface End { readonly verdict: 'tuned' | 'adjust' | 'undecided'; readonly shots: number }
/** The chance of being in tolerance after the first n of these shots. */
type Chances = (n: number) => number;

const fixed = (n: number, tuned: (shots: readonly number[]) => boolean) => (shots: readonly number[]): End =>
  ({ verdict: tuned(shots.slice(0, n)) ? 'tuned' : 'adjust', shots: n });

/** Tuned from the chance `sure` on, adjust at `far` or less, else one shot more, up to `last`. */
const sequential = (sure: number, far: number, first: number, last: number) => (_: readonly number[], chances: Chances): End => {
  for (let n = first; n <= last; n++) {
    const chance = chances(n);
    if (chance >= sure) return { verdict: 'tuned', shots: n };
    if (chance <= far) return { verdict: 'adjust', shots: n };
  }
  return { verdict: 'undecided', shots: last };
};

const RULES: Readonly<Record<string, (shots: readonly number[], chances: Chances) => End>> = {
  'mean of 3': fixed(3, (shots) => meanInside(shots, TOLERANCE)),
  'not significant, 3': fixed(3, notSignificant),
  'own spread, 6': fixed(6, (shots) => equivalentByOwnSpread(shots, TOLERANCE)),
  '.95/.90 3..6': sequential(0.95, 0.1, 3, 6),
  '.95/.90 3..9': sequential(0.95, 0.1, 3, 9),
  '.90/.80 3..9': sequential(0.9, 0.2, 3, 9),
  '.95/.50 3..9': sequential(0.95, 0.5, 3, 9),
  '.95/.90 4..12': sequential(0.95, 0.1, 4, 12),
};

function chancesOf(shots: readonly number[]): Chances {
  const known: (number | undefined)[] = [];
  return (n) => {
    const chance = known[n] ?? chanceAfter(shots.slice(0, n));
    known[n] = chance;
    return chance;
  };
}

function chanceAfter(shots: readonly number[]): number {
  const { sd, df } = pooledOf([shots], PRIOR, LEAST);
  const { centre, count } = huberCentre(shots, sd);
  return chanceWithin(centre, sd / Math.sqrt(count), df, -TOLERANCE, TOLERANCE);
}

const shotAt = (random: Random, tear: number, sd: number): number => sixteenths(tear + strayingOnLine(random, sd));

function run(seed: number): Outcome {
  const cells: Cell[] = [];
  const own: Told[] = [];
  for (const [i, [spread, text]] of Object.entries(PRINTED).entries()) {
    const rows = rowsOf(text);
    for (const [j, tear] of TEARS.entries()) {
      const random = seededRandom(seed + 100 * i + j);
      const sets = times(TRIALS, () => times(12, () => shotAt(random, tear, Number(spread)))).map((shots) => ({ shots, chances: chancesOf(shots) }));
      for (const [name = '', ...entries] of rows) {
        const rule = RULES[name];
        if (rule === undefined) throw new Error(`there is no rule called ${name}`);
        cells.push(...cellsOf(`spread ${spread}, ${name}, tear ${tear}`, figuresOf(entries[j] ?? ''), sets.map(({ shots, chances }) => rule(shots, chances))));
      }
    }
    for (const [j, tear] of OWN_TEARS.entries()) own.push(...walked(seed + 100 * i + 50 + j, Number(spread), tear));
  }
  return { cells, own };
}

function cellsOf(name: string, [tuned = '', adjust = '', undecided = '', shots = '']: readonly string[], ends: readonly End[]): readonly Cell[] {
  const held = (printed: string, verdict: End['verdict']) => share(printed, count(ends, verdict), ends.length, THEIRS);
  return [
    cellOf(TABLE, `${name}: tuned %`, held(tuned, 'tuned')),
    cellOf(TABLE, `${name}: adjust %`, held(adjust, 'adjust')),
    cellOf(TABLE, `${name}: undecided %`, held(undecided, 'undecided')),
    cellOf(TABLE, `${name}: shots`, average(shots, moments(ends.map((end) => end.shots)), THEIRS)),
  ];
}

const count = (ends: readonly End[], verdict: End['verdict']): number => ends.filter((end) => end.verdict === verdict).length;

/** The judge of the walk itself, side to side as found: both axes tell the spread, the other one has no tear. Scatter is not looked for here. */
function walked(seed: number, sd: number, tear: number): readonly Told[] {
  const random = seededRandom(seed);
  const ends = times(OWN_TRIALS, (): End => {
    const shots: (readonly [number, number])[] = times(2, () => tearOf(random, tear, sd));
    for (;;) {
      shots.push(tearOf(random, tear, sd));
      const { verdict } = judgeAxis(content, stateOf({ sets: [{ shots }] }), 'side');
      if (verdict === 'in tolerance') return { verdict: 'tuned', shots: shots.length };
      if (verdict === 'out') return { verdict: 'adjust', shots: shots.length };
      if (verdict !== null) return { verdict: 'undecided', shots: shots.length };
    }
  });
  const taken = moments(ends.map((end) => end.shots));
  const name = `spread ${sd.toFixed(2)}, tear ${tear}`;
  return [
    toldShare(`${name}: tuned`, count(ends, 'tuned'), OWN_TRIALS),
    toldShare(`${name}: adjust`, count(ends, 'adjust'), OWN_TRIALS),
    toldShare(`${name}: left to the archer`, count(ends, 'undecided'), OWN_TRIALS),
    { cell: `${name}: shots`, got: taken.mean, error: taken.sd / Math.sqrt(OWN_TRIALS), unit: '' },
  ];
}

function tearOf(random: Random, tear: number, sd: number): readonly [number, number] {
  const { x, y } = straying(random, sd);
  return [sixteenths(tear + x), sixteenths(y)];
}

const TABLE = 'A4 verdicts';

export const A4_VERDICTS: Table = {
  id: 'A4', name: TABLE, about: `ours ${TRIALS} sets, theirs ${THEIRS}; the walk's own (side to side, as found): ${OWN_TRIALS} sets`,
  run,
};
