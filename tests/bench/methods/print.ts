// The tables of the bench for people: a line a figure, aligned; what failed stands out and is told once more at the end.

import type { Cell } from './cell.ts';
import type { Ran } from './methods.ts';

/** A figure to one digit more than its error begins with. */
function asSureAs(value: number, error: number): string {
  const digits = error > 0 ? Math.max(0, 1 - Math.floor(Math.log10(error))) : 0;
  return value.toFixed(Math.min(9, digits));
}

export function tableLines({ table, cells, own, seconds }: Ran): readonly string[] {
  return [
    `${table.name}: ${table.about}`,
    ...aligned([['', 'expected', 'got', 'tolerance', ''], ...cells.map(figures)]),
    ...(own.length === 0 ? [] : [
      `the walk's own, beside it (with one standard error)`,
      ...aligned(own.map(({ cell, got, error, unit }) => [cell, `${asSureAs(got, error)}${unit === '' ? '' : ` ${unit}`}`, '+-', asSureAs(error, error)])),
    ]),
    `${table.name}: ${within(cells)}, ${seconds.toFixed(1)} s`,
    '',
  ];
}

/** What failed, then the last line: how many figures are within their error. */
export function endLines(ran: readonly Ran[]): readonly string[] {
  const cells = ran.flatMap((one) => one.cells);
  const failed = cells.filter((cell) => !cell.ok);
  return [
    ...aligned(ran.map(({ table, cells: own, seconds }) => [table.name, within(own), `${seconds.toFixed(1)} s`])),
    ...aligned(failed.map((cell) => [`${cell.table}: ${cell.cell}`, ...figures(cell).slice(1)])),
    `${cells.length - failed.length} of ${cells.length} cells within their Monte-Carlo error`,
  ];
}

const within = (cells: readonly Cell[]): string => `${cells.filter((cell) => cell.ok).length} of ${cells.length}`;
const figures = ({ cell, expected, got, tolerance, ok }: Cell): readonly string[] => [cell, `${expected}`, asSureAs(got, tolerance), asSureAs(tolerance, tolerance), ok ? 'ok' : 'FAILED'];

/** The first column to the left, the others to the right. */
function aligned(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows.map((row) => `  ${row.map((entry, i) => (i === 0 ? entry.padEnd(widths[i] ?? 0) : entry.padStart(widths[i] ?? 0))).join('  ')}`.trimEnd());
}
