// D1: how far off each arrow's own error is taken to be: its plain mean, shrunk by what luck explains (`oneWay`, `shrinkFactor`), and shrunk
// by the true variances, which nobody knows. Root mean square error on one axis, spread of one shot 1.

import { oneWay, shrinkFactor } from '../../../src/archery/one-way.ts';
import { screenArrows } from '../../../src/archery/arrow-set.ts';
import type { Point } from '../../../src/archery/shots.ts';
import { seededRandom } from '../../../src/maths/random.ts';
import { at, cellOf, moments, quantile, rootMeanSquare, share, type Cell } from './cell.ts';
import { rowsOf, type Outcome, type Table, type Told } from './table.ts';
import { honest, middle, plus, times } from './world.ts';

const TRIALS = 2000;
const OWN_TRIALS = 300;
const THEIRS = 4000;
const LEVEL = 0.05;

/** Arrows, shots each, true spread between arrows; error raw, shrunk, ideally shrunk; estimated spread between arrows: median, quartiles, none %; F finds a difference %. */
const PRINTED = `
6 | 2 | 0 | 0.705 | 0.359 | 0.287 | 0.00 | 0.00 | 0.42 | 52 | 4
6 | 2 | 0.5 | 0.707 | 0.519 | 0.470 | 0.48 | 0.04 | 0.70 | 25 | 16
6 | 2 | 1 | 0.705 | 0.641 | 0.601 | 0.95 | 0.70 | 1.17 | 5 | 54
6 | 2 | 2 | 0.707 | 0.691 | 0.676 | 1.92 | 1.59 | 2.26 | 0 | 96
6 | 3 | 0 | 0.574 | 0.283 | 0.236 | 0.00 | 0.00 | 0.32 | 55 | 5
6 | 3 | 0.5 | 0.577 | 0.450 | 0.418 | 0.47 | 0.24 | 0.64 | 18 | 30
6 | 3 | 1 | 0.579 | 0.537 | 0.515 | 0.96 | 0.75 | 1.17 | 1 | 82
6 | 3 | 2 | 0.576 | 0.565 | 0.557 | 1.92 | 1.60 | 2.26 | 0 | 100
6 | 4 | 0 | 0.498 | 0.242 | 0.205 | 0.00 | 0.00 | 0.27 | 54 | 5
6 | 4 | 0.5 | 0.500 | 0.408 | 0.382 | 0.47 | 0.30 | 0.62 | 12 | 43
6 | 4 | 1 | 0.498 | 0.468 | 0.454 | 0.97 | 0.77 | 1.16 | 1 | 93
6 | 4 | 2 | 0.499 | 0.491 | 0.486 | 1.93 | 1.61 | 2.24 | 0 | 100
12 | 2 | 0 | 0.704 | 0.265 | 0.204 | 0.00 | 0.00 | 0.36 | 52 | 5
12 | 2 | 0.5 | 0.709 | 0.479 | 0.442 | 0.48 | 0.24 | 0.65 | 17 | 24
12 | 2 | 1 | 0.707 | 0.614 | 0.591 | 0.98 | 0.81 | 1.14 | 1 | 82
12 | 2 | 2 | 0.703 | 0.674 | 0.666 | 1.96 | 1.73 | 2.21 | 0 | 100
12 | 3 | 0 | 0.576 | 0.203 | 0.163 | 0.00 | 0.00 | 0.27 | 53 | 5
12 | 3 | 0.5 | 0.579 | 0.423 | 0.399 | 0.49 | 0.36 | 0.61 | 7 | 48
12 | 3 | 1 | 0.580 | 0.521 | 0.510 | 0.98 | 0.85 | 1.12 | 0 | 98
12 | 3 | 2 | 0.577 | 0.559 | 0.556 | 1.96 | 1.76 | 2.18 | 0 | 100
12 | 4 | 0 | 0.499 | 0.175 | 0.143 | 0.00 | 0.00 | 0.23 | 52 | 5
12 | 4 | 0.5 | 0.501 | 0.386 | 0.368 | 0.49 | 0.38 | 0.59 | 3 | 67
12 | 4 | 1 | 0.500 | 0.459 | 0.452 | 0.99 | 0.86 | 1.11 | 0 | 100
12 | 4 | 2 | 0.498 | 0.487 | 0.485 | 1.97 | 1.76 | 2.20 | 0 | 100`;

interface ArrowSet { readonly truths: readonly Point[]; readonly shots: readonly (readonly Point[])[] }

function setsOf(seed: number, trials: number, arrows: number, n: number, between: number): readonly ArrowSet[] {
  const random = seededRandom(seed);
  return times(trials, () => {
    const truths = times(arrows, () => honest(random, between));
    return { truths, shots: truths.map((truth) => times(n, () => plus(truth, honest(random)))) };
  });
}

/** Mean square error on one axis of arrows that are moved from the centre of all to `kept` of their distance. */
function squareError({ truths }: ArrowSet, centres: readonly Point[], kept: number): number {
  const all = middle(centres);
  const errors = centres.map((centre, i) => {
    const truth = truths[i] ?? { x: NaN, y: NaN };
    return (all.x + kept * (centre.x - all.x) - truth.x) ** 2 + (all.y + kept * (centre.y - all.y) - truth.y) ** 2;
  });
  return errors.reduce((total, e) => total + e, 0) / (2 * errors.length);
}

function learned({ shots }: ArrowSet) {
  const found = oneWay((['x', 'y'] as const).map((axis) => shots.map((own) => own.map((p) => p[axis]))));
  if (found === null) throw new Error('two arrows with two shots each tell their spread');
  return found;
}

function row(seed: number, figures: readonly string[]): Outcome {
  const [arrows = 0, n = 0, between = 0] = figures.map(Number);
  const [, , , raw = '', shrunk = '', ideal = '', median = '', lower = '', upper = '', none = '', power = ''] = figures;
  const sets = setsOf(seed, TRIALS, arrows, n, between);
  const centres = sets.map(({ shots }) => shots.map(middle));
  const found = sets.map(learned);
  const errors = (kept: (i: number) => number) => moments(sets.map((set, i) => squareError(set, centres[i] ?? [], kept(i))));
  const estimates = found.map((f) => Math.sqrt(f.between)).sort((a, b) => a - b);
  const name = `${arrows} arrows x ${n}, differing by ${between}`;
  const cells: Cell[] = [
    cellOf(TABLE, `${name}: error of plain means`, rootMeanSquare(raw, errors(() => 1), THEIRS)),
    cellOf(TABLE, `${name}: shrunk`, rootMeanSquare(shrunk, errors((i) => shrinkFactor(found[i]?.between ?? NaN, found[i]?.within ?? NaN, n)), THEIRS)),
    cellOf(TABLE, `${name}: ideally shrunk`, rootMeanSquare(ideal, errors(() => shrinkFactor(between ** 2, 1, n)), THEIRS)),
    cellOf(TABLE, `${name}: estimated, median`, quantile(median, estimates, 0.5, THEIRS)),
    cellOf(TABLE, `${name}: estimated, lower quartile`, quantile(lower, estimates, 0.25, THEIRS)),
    cellOf(TABLE, `${name}: estimated, upper quartile`, quantile(upper, estimates, 0.75, THEIRS)),
    cellOf(TABLE, `${name}: estimated as none %`, share(none, found.filter((f) => f.between === 0).length, TRIALS, THEIRS)),
    cellOf(TABLE, `${name}: F finds a difference %`, share(power, found.filter((f) => f.p < LEVEL).length, TRIALS, THEIRS)),
  ];
  return { cells, own: walked(name, setsOf(seed + 500, OWN_TRIALS, arrows, n, between)) };
}

/** The walk's screening of the same sets: robust centres, no spread known beforehand. Its shots are in inches: here an inch is a spread. */
function walked(name: string, sets: readonly ArrowSet[]): readonly Told[] {
  const read = sets.map(({ shots }) => screenArrows(shots.map((own, i) => ({ arrow: `${i}`, shots: own })), null));
  const squares = moments(sets.map(({ truths }, i) => {
    const screened = read[i];
    if (screened === undefined) throw new Error('a set was not read');
    const errors = screened.arrows.map(({ effect }, j) => (screened.typical.x + effect.x - (truths[j]?.x ?? NaN)) ** 2 + (screened.typical.y + effect.y - (truths[j]?.y ?? NaN)) ** 2);
    return errors.reduce((total, e) => total + e, 0) / (2 * errors.length);
  }));
  const estimates = read.map((r) => r.betweenSd).sort((a, b) => a - b);
  const error = Math.sqrt(squares.mean);
  return [
    { cell: `${name}: error of the shrunk effect`, got: error, error: squares.sd / (2 * error * Math.sqrt(squares.count)), unit: '' },
    { cell: `${name}: estimated, median`, got: at(estimates, 0.5), error: (at(estimates, 0.5 + 0.5 / Math.sqrt(estimates.length)) - at(estimates, 0.5 - 0.5 / Math.sqrt(estimates.length))) / 2, unit: '' },
  ];
}

const TABLE = 'D1 shrinking';

export const D1: Table = {
  id: 'D1', name: TABLE, about: `ours ${TRIALS} sets of arrows, theirs ${THEIRS}; the walk's own (screenArrows, nothing known before): ${OWN_TRIALS} sets`,
  run: (seed) => {
    const rows = rowsOf(PRINTED).map((figures, i) => row(seed + i, figures));
    return { cells: rows.flatMap((r) => r.cells), own: rows.flatMap((r) => r.own) };
  },
};
