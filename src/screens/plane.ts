// A plane in characters, as the archer sees it: right is right, high is up, and its middle is marked on all four sides.
// Letters mark the spots on every terminal; where the font has braille, lines are drawn finer with it.

import type { Tear } from '../machine/types.ts';

export interface PictureSize {
  /** Rows inside the frame; made odd, so that the middle has a row of its own. */
  readonly rows: number;
  readonly braille: boolean;
}

export interface Plane {
  /** Inches that one row stands for. A column stands for half of it, as a character is about twice as tall as wide. */
  readonly perRow: number;
  /** A mark at these inches from the middle; one that lies outside stands at the edge. */
  put(at: Tear, mark: string): void;
  /** A line through these points; what lies outside is left out. */
  trace(points: readonly Tear[], mark: string): void;
  /** `rows` + 2 lines, all of one width. */
  lines(): string[];
}

const BRAILLE_BITS = [[0x01, 0x08], [0x02, 0x10], [0x04, 0x20], [0x40, 0x80]] as const;

/** A plane with room for all `points`, at the finest of the `scales` (inches per row) that has it. */
export const openPlane = ({ rows, braille }: PictureSize, points: readonly Tear[], scales: readonly number[]): Plane => {
  const half = Math.max(1, Math.floor((rows - 1) / 2));
  const halfWidth = half * 2 + 2;
  const perRow = finestFor(points, half, halfWidth, scales);
  const grid = Array.from({ length: half * 2 + 1 }, () => Array.from({ length: halfWidth * 2 + 1 }, () => ' '));
  const edge = '-'.repeat(halfWidth);
  return {
    perRow,
    put: (at, mark) => {
      const row = grid[half - clamp(nearest(at.y / perRow), half)];
      if (row !== undefined) row[halfWidth + clamp(nearest(at.x / (perRow / 2)), halfWidth)] = mark;
    },
    trace: (traced, mark) => (braille ? traceFine(grid, traced, perRow) : traceCoarse(grid, traced, perRow, mark)),
    lines: () => [`.${edge}+${edge}.`, ...grid.map((row, at) => framed(row.join(''), at === half)), `'${edge}+${edge}'`],
  };
};

const framed = (row: string, middle: boolean): string => (middle ? `+${row}+` : `|${row}|`);
/** Rounds alike to both sides, so that a mirrored sheet is a mirrored picture. */
const nearest = (value: number): number => Math.sign(value) * Math.round(Math.abs(value));
const clamp = (value: number, limit: number): number => Math.max(-limit, Math.min(limit, value));

const finestFor = (points: readonly Tear[], half: number, halfWidth: number, scales: readonly number[]): number => {
  const fits = (scale: number): boolean => points.every((at) => Math.abs(at.y) <= half * scale && Math.abs(at.x) <= (halfWidth * scale) / 2);
  return scales.find(fits) ?? scales.at(-1) ?? 1;
};

const traceCoarse = (grid: string[][], points: readonly Tear[], perRow: number, mark: string): void => {
  const half = (grid.length - 1) / 2;
  for (const at of points) {
    const row = grid[half - nearest(at.y / perRow)];
    const column = ((row?.length ?? 0) - 1) / 2 + nearest(at.x / (perRow / 2));
    if (row !== undefined && column >= 0 && column < row.length) row[column] = mark;
  }
};

/** Two by four dots to a character. */
const traceFine = (grid: string[][], points: readonly Tear[], perRow: number): void => {
  const half = (grid.length - 1) / 2;
  for (const at of points) {
    const down = Math.round((half + 0.5) * 4 - 0.5 - (at.y / perRow) * 4);
    const row = grid[Math.floor(down / 4)];
    if (down < 0 || row === undefined) continue;
    const across = Math.round(row.length - 0.5 + (at.x / (perRow / 2)) * 2);
    const column = Math.floor(across / 2);
    if (across < 0 || column >= row.length) continue;
    const was = row[column] ?? ' ';
    const bits = was >= '\u2800' && was <= '\u28ff' ? was.charCodeAt(0) - 0x2800 : 0;
    row[column] = String.fromCharCode(0x2800 + (bits | (BRAILLE_BITS[down % 4]?.[across % 2] ?? 0)));
  }
};
