// What an arrow of the practice bow left, drawn so that it can be read as at a real bow: the sheet with the point's hole, the slit and the cuts of
// the vanes, or the target with its dot and the hole, each with a rule along two sides. It shows no figure: reading is what is learned.
//
// Read by eye it is right to 1/16 in on paper and to 1/4 in at a target: a row of the fine scale is 1/8 in, and in a row of the coarse one the mark
// stands high, in the middle or low. What lies too far apart for the screen is drawn with a piece of the paper left out, as a torn strip.

import type { PracticeHole, Tear } from '../machine/types.ts';
import { formatInches } from '../maths/fractions.ts';

/** Columns and rows that there are, the rules among them. */
export interface HoleRoom { readonly columns: number; readonly rows: number }

interface Scale {
  /** Inches of a row, and of a column. */
  readonly row: number;
  readonly column: number;
  /** The mark says where in its row it is. */
  readonly thirds: boolean;
  /** Inches from mark to mark of the rules, and from figure to figure of the lower one. */
  readonly tick: number;
  readonly figure: number;
}

const SHEET: readonly Scale[] = [
  { row: 1 / 8, column: 1 / 16, thirds: false, tick: 1 / 4, figure: 1 / 2 },
  { row: 1 / 4, column: 1 / 8, thirds: true, tick: 1 / 4, figure: 1 },
];
const TARGET: readonly Scale[] = [
  { row: 1 / 2, column: 1 / 4, thirds: false, tick: 1, figure: 2 },
  { row: 1, column: 1 / 2, thirds: true, tick: 1, figure: 2 },
];
/** How far a vane cuts from the middle of the shaft, inches (about 1/2 in high vanes, less the shaft's own half). */
const VANE = 1 / 2;
/** What is shown around a hole in the target, inches: so much that its rules have marks to count from. */
const AROUND = 1;
/** The rule at the left: five places for a figure, one for its line. */
const GUTTER = 6;
/** The rule below: its line and its figures. */
const BELOW = 2;

export const POINT = '@';
/** The mark where the vanes' cuts meet, or where the arrow went in: in the middle of its row, high in it, low in it. */
export const MARKS = { middle: 'o', high: '\'', low: '.' } as const;
/** A piece that was left out. */
export const TORN = '~';

type Shape = readonly { readonly at: Tear; readonly mark: string }[];
/** Grid numbers that are shown, from left or from below; null where a piece is left out. */
type Shown = readonly (number | null)[];

/** The drawing; [] where nothing was hit. */
export function drawHole(hole: PracticeHole, room: HoleRoom): string[] {
  if (hole.kind === 'none') return [];
  const at = hole.kind === 'sheet' ? hole.tail : hole.at;
  const reach = hole.kind === 'sheet' ? VANE : AROUND;
  const scales = hole.kind === 'sheet' ? SHEET : TARGET;
  const [fine, coarse] = scales;
  if (fine === undefined || coarse === undefined) return [];
  const wide = Math.max(5, room.columns - GUTTER);
  const high = Math.max(5, room.rows - BELOW);
  const scale = fits(at.y / fine.row, high) && fits(at.x / fine.column, wide) ? fine : coarse;
  const columns = shownFrom(nearest(at.x / scale.column), nearest(reach / scale.column), wide);
  const rows = shownFrom(nearest(at.y / scale.row), nearest(reach / scale.row), high);
  const cells = new Map<string, string>();
  const put = (spot: Tear, mark: string): unknown => cells.set(`${nearest(spot.x / scale.column)} ${nearest(spot.y / scale.row)}`, mark);
  if (hole.kind === 'sheet') {
    for (const { at: spot, mark } of [...slit(at, scale), ...cuts(at, hole.vanes, scale)]) put(spot, mark);
  }
  put({ x: 0, y: 0 }, POINT);
  const mark = markIn(at.y / scale.row, scale.thirds);
  const onPoint = nearest(at.x / scale.column) === 0 && nearest(at.y / scale.row) === 0;
  if (!onPoint || mark !== MARKS.middle) put(at, mark);
  return [
    ...rows.toReversed().map((row) => `${sideRule(row, scale)}${rowOf(columns, row, cells)}`.trimEnd()),
    `${' '.repeat(GUTTER - 1)}+${columns.map((column) => lowerRule(column, scale)).join('')}`,
    `${' '.repeat(GUTTER)}${lowerFigures(columns, scale)}`.trimEnd(),
  ];
}

/** Rounds alike to both sides; never -0. */
const nearest = (value: number): number => Math.sign(value) * Math.round(Math.abs(value)) + 0;
const fits = (steps: number, room: number): boolean => Math.abs(nearest(steps)) + 3 <= room;
const span = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** From the point to the mark, with as much round both as there is room for; a piece left out where they lie too far apart. */
function shownFrom(to: number, reach: number, room: number): Shown {
  const [low, high] = [Math.min(0, to), Math.max(0, to)];
  const spare = room - (high - low + 1);
  if (spare >= 0) {
    // Room at the mark's end first, for the cuts of the vanes; the rest on both sides.
    const each = Math.floor(spare / 2);
    const [below, above] = to < 0 ? [Math.min(reach, spare), 0] : [0, Math.min(reach, spare)];
    const left = spare - below - above;
    const more = Math.min(each, Math.ceil(left / 2), reach + 1);
    const less = Math.min(left - more, reach + 1);
    return span(low - below - more, high + above + Math.max(0, less));
  }
  const beside = Math.max(0, Math.min(2, Math.floor((room - 3) / 4)));
  const [a, b] = [span(low - beside, low + beside), span(high - beside, high + beside)];
  return [...a, null, ...b];
}

/** High, middle or low in its row. */
function markIn(steps: number, thirds: boolean): string {
  const over = steps - nearest(steps);
  if (!thirds || Math.abs(over) <= 1 / 6) return MARKS.middle;
  return over > 0 ? MARKS.high : MARKS.low;
}

/** The tear from the point's hole to the middle of the cuts. */
function slit(tail: Tear, { row, column }: Scale): Shape {
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(tail.x) / column, Math.abs(tail.y) / row)));
  return Array.from({ length: steps }, (_, i) => ({ at: { x: (tail.x * i) / steps, y: (tail.y * i) / steps }, mark: ':' }));
}

/** Three cuts, one straight up; or four, slantwise. */
function cuts(tail: Tear, vanes: 3 | 4, { row }: Scale): Shape {
  const ways: readonly (readonly [number, number, string])[] = vanes === 3
    ? [[0, 1, '|'], [-0.87, -0.5, '/'], [0.87, -0.5, '\\']]
    : [[-0.71, 0.71, '\\'], [0.71, 0.71, '/'], [-0.71, -0.71, '/'], [0.71, -0.71, '\\']];
  // One stroke to a row, so that a slanting cut is a line and no wedge.
  return ways.flatMap(([x, y, mark]) => {
    const strokes = Math.max(1, Math.round((VANE * Math.abs(y)) / row));
    return Array.from({ length: strokes }, (_, i) => {
      const far = (VANE * (i + 1)) / strokes;
      return { at: { x: tail.x + x * far, y: tail.y + y * far }, mark };
    });
  });
}

const rowOf = (columns: Shown, row: number | null, cells: ReadonlyMap<string, string>): string =>
  columns.map((column) => (row === null || column === null ? TORN : (cells.get(`${column} ${row}`) ?? ' '))).join('');

const isMark = (inches: number, every: number): boolean => Math.abs(inches / every - Math.round(inches / every)) < 1e-9;

function sideRule(row: number | null, { row: inch, tick }: Scale): string {
  if (row === null) return `${TORN.padStart(GUTTER - 1)}${TORN}`;
  const marked = isMark(row * inch, tick);
  return `${(marked ? formatInches(Math.abs(row * inch), 4) : '').padStart(GUTTER - 1)}${marked ? '+' : '|'}`;
}

const lowerRule = (column: number | null, { column: inch, tick }: Scale): string => (column === null ? TORN : isMark(column * inch, tick) ? '+' : '-');

/** Each figure with its last digit's middle below its mark; one that has no room is left out, and 0 never. */
function lowerFigures(columns: Shown, { column: inch, figure }: Scale): string {
  const line = columns.map(() => ' ');
  const order = [...columns.entries()].filter(([, column]) => column !== null && isMark(column * inch, figure)).sort(([, a], [, b]) => Math.abs(a ?? 0) - Math.abs(b ?? 0));
  for (const [at, column] of order) {
    const text = formatInches(Math.abs((column ?? 0) * inch), 4);
    const from = at - Math.floor(text.length / 2);
    if (from < 0 || from + text.length > line.length) continue;
    if (line.slice(Math.max(0, from - 1), from + text.length + 1).some((cell) => cell !== ' ')) continue;
    for (const [i, letter] of [...text].entries()) line[from + i] = letter;
  }
  return line.join('');
}

/** What the marks stand for, short. */
export function holeLegend(hole: PracticeHole): string {
  const { middle, high, low } = MARKS;
  switch (hole.kind) {
    case 'none': return 'There is no hole to be found: it missed.';
    case 'sheet': return `${POINT} the point's hole, ${middle} where the cuts of the vanes meet (${high} high, ${low} low in its row). Rules in inches, from + to + 1/4; left is your left as you shoot.`;
    case 'target': return `${POINT} the dot that you aimed at, ${middle} the hole (${high} high, ${low} low in its row). Rules in inches, from + to + 1; left is your left as you shoot.`;
  }
}
