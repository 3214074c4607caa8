// C4: two groups looked at again and again: same, different or undecided, and after how many shots of each. One axis, plain means, 8 df
// known of the spread before; `judgeDifference` at its own limits (0.9 and 0.8), whatever the margin and the looks.

import { difference, judgeDifference, LOOKS, pairSpread } from '../../../src/archery/two-groups.ts';
import { seededRandom } from '../../../src/maths/random.ts';
import { average, cellOf, moments, share, statedShare, type Cell } from './cell.ts';
import { figuresOf, rowsOf, toldShare, type Outcome, type Table } from './table.ts';
import { honest, mean, plus, times } from './world.ts';

const TRIALS = 2000;
const OWN_TRIALS = 500;
const THEIRS = 4000;
const PRIOR_DF = 8;
const MARGIN = 1.5;
const DIFFERENCES = [0, 0.5, 1, 1.5, 2, 3, 4];

/** Margin in spreads | looks | same / different / undecided / shots of each, a column a true difference. */
const PRINTED = `
1.5 | 2,3,4,6 | 82/2/15/4.4 | 69/5/26/4.6 | 41/14/45/4.8 | 16/37/47/4.5 | 5/63/32/3.9 | 0/98/2/2.5 | 0/100/0/2.1
2 | 2,3,4,6 | 97/1/2/3.1 | 91/2/8/3.4 | 73/5/22/3.9 | 45/14/41/4.4 | 20/36/44/4.4 | 2/87/11/3.1 | 0/100/0/2.2
1.5 | 3,6 | 81/1/18/5.2 | 65/3/32/5.2 | 36/10/54/5.3 | 13/29/58/5.2 | 3/61/36/4.7 | 0/97/3/3.5 | 0/100/0/3.0
1.5 | 3,6,9 | 94/1/5/5.7 | 82/2/16/6.3 | 47/11/42/7.0 | 17/33/50/7.0 | 4/70/27/5.8 | 0/99/1/3.6 | 0/100/0/3.0
1.5 | 3,4,5,6,7,8,9,10 | 97/1/2/4.7 | 88/3/9/5.4 | 58/13/29/6.5 | 22/39/39/6.9 | 5/75/19/5.5 | 0/100/0/3.3 | 0/100/0/3.0`;

interface End { readonly verdict: ReturnType<typeof judgeDifference>['verdict']; readonly shots: number }

/** The first look at which `judge` is sure, else undecided after the last. */
function lookedAt(looks: readonly number[], judge: (n: number) => End['verdict']): End {
  for (const n of looks) {
    const verdict = judge(n);
    if (verdict !== 'undecided') return { verdict, shots: n };
  }
  return { verdict: 'undecided', shots: looks.at(-1) ?? NaN };
}

function printedRule(seed: number, looks: readonly number[], margin: number, by: number): readonly End[] {
  const random = seededRandom(seed);
  const last = looks.at(-1) ?? 0;
  return times(TRIALS, () => {
    const draw = (n: number, centre: number): number[] => times(n, () => centre + random.normal());
    const known = draw(PRIOR_DF, 0).reduce((total, x) => total + x ** 2, 0);
    const [a, b] = [draw(last, 0), draw(last, by)];
    return lookedAt(looks, (n) => {
      const [first, second] = [a.slice(0, n), b.slice(0, n)];
      const df = PRIOR_DF + 2 * (n - 1);
      const sd = Math.sqrt((known + squares(first) + squares(second)) / df);
      return judgeDifference(mean(second) - mean(first), n / 2, { sd, df }, 0, margin).verdict;
    });
  });
}

function squares(values: readonly number[]): number {
  const centre = mean(values);
  return values.reduce((total, v) => total + (v - centre) ** 2, 0);
}

/** In full use: robust centres, both axes, and a margin from the spread as it was found; an inch is a spread. */
function walked(seed: number, by: number): readonly End[] {
  const random = seededRandom(seed);
  const most = Math.max(...LOOKS);
  return times(OWN_TRIALS, () => {
    const [a, b] = [times(most, () => honest(random)), times(most, () => plus(honest(random), { x: by, y: 0 }))];
    return lookedAt(LOOKS, (n) => {
      const groups = { a: a.slice(0, n), b: b.slice(0, n) };
      const spread = pairSpread([groups], { sd: 1, df: PRIOR_DF / 2 });
      const found = difference(groups, spread.sd);
      if (found === null) throw new Error('both groups have shots');
      return judgeDifference(found.mean.x, found.count.x, spread, 0, MARGIN * spread.sd).verdict;
    });
  });
}

const count = (ends: readonly End[], verdict: End['verdict']): number => ends.filter((end) => end.verdict === verdict).length;

function cellsOf(name: string, printed: readonly string[], ends: readonly End[]): readonly Cell[] {
  const [same = '', different = '', undecided = '', shots = ''] = printed;
  const held = (figure: string, verdict: End['verdict']) => share(figure, count(ends, verdict), ends.length, THEIRS);
  return [
    cellOf(TABLE, `${name}: same %`, held(same, 'same')),
    cellOf(TABLE, `${name}: different %`, held(different, 'different')),
    cellOf(TABLE, `${name}: undecided %`, held(undecided, 'undecided')),
    cellOf(TABLE, `${name}: shots of each`, average(shots, moments(ends.map((end) => end.shots)), THEIRS)),
  ];
}

function run(seed: number): Outcome {
  const cells = rowsOf(PRINTED).flatMap(([margin = '', looks = '', ...entries], i) => DIFFERENCES.flatMap((by, j) =>
    cellsOf(`margin ${margin}, looks ${looks}, true difference ${by}`, figuresOf(entries[j] ?? ''), printedRule(seed + 10 * i + j, looks.split(',').map(Number), Number(margin), by))));
  const own = DIFFERENCES.map((by, j) => ({ by, ends: walked(seed + 100 + j, by) }));
  // What judgeDifference says of itself in full use.
  const stated = ([[0, 'same', '80'], [0, 'different', '5'], [3, 'different', '98']] as const).map(([by, verdict, says]) =>
    cellOf(TABLE, `the walk's own, true difference ${by} (stated ${says}): ${verdict} %`, statedShare(says, says, count(own.find((one) => one.by === by)?.ends ?? [], verdict), OWN_TRIALS)));
  return {
    cells: [...cells, ...stated],
    own: own.flatMap(({ by, ends }) => {
      const taken = moments(ends.map((end) => end.shots));
      return [
        toldShare(`true difference ${by}: same`, count(ends, 'same'), OWN_TRIALS),
        toldShare(`true difference ${by}: different`, count(ends, 'different'), OWN_TRIALS),
        { cell: `true difference ${by}: shots of each`, got: taken.mean, error: taken.sd / Math.sqrt(OWN_TRIALS), unit: '' },
      ];
    }),
  };
}

const TABLE = 'C4 looked at again';

export const C4: Table = {
  id: 'C4', name: TABLE, about: `ours ${TRIALS} pairs of groups, theirs ${THEIRS}; the walk's own (robust centres, two axes, looks ${LOOKS.join(', ')}): ${OWN_TRIALS}`,
  run,
};
