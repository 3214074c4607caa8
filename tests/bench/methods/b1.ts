// B1: the worked example of the response line, to its printed digits. Derived by hand and by an independent solver of linear equations.
//
// Two settings, 0 and 8 steps back, three shots each, mean tears 1.0 and 0.45 in, spread of one shot 0.2 in; the book says 3/32 in a step,
// its standard deviation 0.6 of that.

import { bestSetting, fitLine, predict } from '../../../src/archery/response.ts';
import { cellOf, exact } from './cell.ts';
import type { Outcome, Table } from './table.ts';

const SD = 0.2;
const BOOK = { mean: 0.09375, sd: 0.05625 };
const SETTINGS = [{ x: 0, mean: 1, count: 3, group: 0 }, { x: -8, mean: 0.45, count: 3, group: 0 }];

/** The example, worked by `fit`: handed in, so that a test can hand in a wrong one. */
export function workedExample(fit: typeof fitLine): Outcome {
  const line = fit(SETTINGS, SD, BOOK, 0);
  const here = predict(line, -8);
  // With nothing shot the tear is the prior's; the first move is then 1 / (1 + 0.6^2) of what the book says.
  const first = fit([], SD, BOOK, 0);
  const cautious = bestSetting({ ...first, intercept: 1 }) / (-1 / BOOK.mean);
  const figures = [
    ['tear at 0, in', '1.010227', line.intercept],
    ['tear a step, in', '0.071494', line.slope],
    ['variance of the tear at 0, in2', '0.012540', line.varIntercept],
    ['variance of the tear a step, in2', '0.000368', line.varSlope],
    ['their covariance, in2', '0.001471', line.cov],
    ['best setting, steps', '-13.4498', bestSetting(line)],
    ['tear at -8, in', '0.438277', here.mean],
    ['and its standard deviation, in', '0.112060', here.sd],
    ['first move as a share of the book, %', '73.5', 100 * cautious],
  ] as const;
  return { cells: figures.map(([cell, printed, got]) => cellOf('B1', cell, exact(printed, got))), own: [] };
}

export const B1: Table = {
  id: 'B1', name: 'B1 one knob, worked example', about: 'exact: fitLine, bestSetting and predict to the printed digits',
  run: () => workedExample(fitLine),
};
