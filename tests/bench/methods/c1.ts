// C1: how often each test finds two groups different, by how far they are shifted (in spreads of a field point on one axis).

import { seededRandom } from '../../../src/maths/random.ts';
import { cellOf, share } from './cell.ts';
import { shifted, TESTS, trialOf } from './c-rules.ts';
import { figuresOf, rowsOf, type Table } from './table.ts';
import { times } from './world.ts';

const TRIALS = 2000;
const THEIRS = 4000;
const SHIFTS = [0, 1, 2, 3, 4];

const PRINTED = `
1 | 2 | Hotelling | 5.1 | 6.0 | 9.7 | 12.5 | 16.2
1 | 2 | Welch, two axes | 2.3 | 2.6 | 6.6 | 10.3 | 15.3
1 | 2 | pooled t, two axes | 5.1 | 7.0 | 15.4 | 23.7 | 36.4
1 | 2 | round F | 5.1 | 9.6 | 23.4 | 44.0 | 67.0
1 | 2 | round F, known spread | 5.0 | 11.7 | 34.3 | 66.4 | 89.3
1 | 3 | Hotelling | 5.3 | 9.9 | 25.7 | 48.9 | 70.2
1 | 3 | Welch, two axes | 3.5 | 7.7 | 22.2 | 44.0 | 69.0
1 | 3 | pooled t, two axes | 5.2 | 12.3 | 31.4 | 58.6 | 83.0
1 | 3 | round F | 5.1 | 14.1 | 41.8 | 77.1 | 95.5
1 | 3 | round F, known spread | 5.3 | 15.3 | 49.8 | 86.0 | 98.6
1 | 6 | Hotelling | 4.8 | 25.5 | 74.6 | 98.0 | 100.0
1 | 6 | Welch, two axes | 3.9 | 23.7 | 72.8 | 97.7 | 100.0
1 | 6 | pooled t, two axes | 4.5 | 25.9 | 75.4 | 98.2 | 100.0
1 | 6 | round F | 4.6 | 30.1 | 83.0 | 99.0 | 100.0
1 | 6 | round F, known spread | 4.8 | 31.1 | 84.8 | 99.3 | 100.0
1.5 | 2 | Hotelling | 5.0 | 6.3 | 8.3 | 12.1 | 13.5
1.5 | 2 | Welch, two axes | 2.1 | 2.7 | 5.0 | 7.5 | 11.3
1.5 | 2 | pooled t, two axes | 5.8 | 6.2 | 11.6 | 18.8 | 25.5
1.5 | 2 | round F | 5.5 | 7.4 | 15.6 | 29.6 | 47.1
1.5 | 2 | round F, known spread | 9.0 | 15.3 | 33.4 | 57.3 | 81.2
1.5 | 3 | Hotelling | 6.2 | 9.1 | 20.4 | 33.9 | 53.3
1.5 | 3 | Welch, two axes | 3.6 | 5.8 | 15.8 | 28.8 | 49.4
1.5 | 3 | pooled t, two axes | 5.8 | 8.7 | 23.3 | 40.2 | 64.8
1.5 | 3 | round F | 5.5 | 10.6 | 30.0 | 54.3 | 82.0
1.5 | 3 | round F, known spread | 8.5 | 16.9 | 44.7 | 72.4 | 93.0
1.5 | 6 | Hotelling | 6.0 | 17.6 | 52.8 | 88.1 | 98.7
1.5 | 6 | Welch, two axes | 5.1 | 15.0 | 49.8 | 85.5 | 98.2
1.5 | 6 | pooled t, two axes | 5.7 | 16.8 | 54.4 | 88.7 | 98.8
1.5 | 6 | round F | 5.3 | 19.2 | 60.5 | 93.1 | 99.7
1.5 | 6 | round F, known spread | 7.3 | 24.4 | 67.7 | 96.0 | 99.8`;

const TABLE = 'C1 two groups';

export const C1: Table = {
  id: 'C1', name: TABLE, about: `ours ${TRIALS} pairs of groups, theirs ${THEIRS}; a shift in a direction drawn by chance`,
  run: (seed) => ({
    cells: rowsOf(PRINTED).flatMap(([wide = '', n = '', name = '', ...entries], i) => {
      const test = TESTS[name];
      if (test === undefined) throw new Error(`there is no test called ${name}`);
      return SHIFTS.map((by, j) => {
        const random = seededRandom(seed + 10 * i + j);
        const hits = times(TRIALS, () => trialOf(random, Number(n), Number(wide))).filter((trial) => test(shifted(trial, by), trial)).length;
        const [printed = ''] = figuresOf(entries[j] ?? '');
        return cellOf(TABLE, `broadheads ${wide} times as wide, ${n}+${n}, ${name}, shift ${by}: found %`, share(printed, hits, TRIALS, THEIRS));
      });
    }),
    own: [],
  }),
};
