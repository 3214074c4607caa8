// The paper as the archer sees it from behind the bow: right is right, high is up. Letters mark the holes on every
// terminal; where the font has braille the likely region and the slit are drawn finer with it. Never without words beside it.

import type { PaperPicture, Tear } from '../machine/types.ts';
import { formatTail } from './words.ts';

export interface PictureSize {
  /** Rows inside the frame; made odd, so that the point has a row of its own. */
  readonly rows: number;
  readonly braille: boolean;
}

export interface Drawing extends Partial<PaperPicture> {
  /** The tail that is being entered and has not been taken. */
  readonly tail?: Tear;
}

/** Inches that one row stands for. A column stands for half of it, as a character is about twice as tall as wide. */
const SCALES = [1 / 8, 1 / 4, 1 / 2, 1] as const;
const BRAILLE_BITS = [[0x01, 0x08], [0x02, 0x10], [0x04, 0x20], [0x40, 0x80]] as const;

/** Draws the paper; the result has `rows` + 2 lines, all of one width. */
export const drawPaper = (drawing: Drawing, size: PictureSize): string[] => {
  const half = Math.max(1, Math.floor((size.rows - 1) / 2));
  const halfWidth = half * 2 + 2;
  const perRow = scaleFor(drawing, half, halfWidth);
  const grid = Array.from({ length: half * 2 + 1 }, () => Array.from({ length: halfWidth * 2 + 1 }, () => ' '));
  const put = (at: Tear, mark: string): void => {
    const row = grid[half - clamp(nearest(at.y / perRow), half)];
    if (row !== undefined) row[halfWidth + clamp(nearest(at.x / (perRow / 2)), halfWidth)] = mark;
  };
  const trace = size.braille ? traceFine : traceCoarse;
  if (drawing.mean !== undefined && drawing.likely !== undefined) trace(grid, ellipse(drawing.mean, drawing.likely), perRow, '.');
  if (drawing.tail !== undefined) trace(grid, slit(drawing.tail, size.braille ? perRow / 8 : perRow), perRow, slitMark(drawing.tail));
  if (drawing.mean !== undefined) put(drawing.mean, '+');
  for (const shot of drawing.shots ?? []) put(shot, shot.counted ? 'o' : 'x');
  put({ x: 0, y: 0 }, '@');
  if (drawing.tail !== undefined) put(drawing.tail, 'T');
  const edge = '-'.repeat(halfWidth);
  return [`.${edge}+${edge}.`, ...grid.map((row, at) => framed(row.join(''), at === half)), `'${edge}+${edge}'`];
};

const framed = (row: string, middle: boolean): string => (middle ? `+${row}+` : `|${row}|`);
/** Rounds alike to both sides, so that a mirrored sheet is a mirrored picture. */
const nearest = (value: number): number => Math.sign(value) * Math.round(Math.abs(value));
const clamp = (value: number, limit: number): number => Math.max(-limit, Math.min(limit, value));

/** How much paper the picture shows, in inches per row: the finest scale in which everything has room. */
export const scaleFor = (drawing: Drawing, half: number, halfWidth: number): number => {
  const points = [...(drawing.shots ?? []), ...(drawing.mean === undefined ? [] : [drawing.mean]), ...(drawing.tail === undefined ? [] : [drawing.tail])];
  const fits = (scale: number): boolean =>
    points.every((at) => Math.abs(at.y) <= half * scale && Math.abs(at.x) <= (halfWidth * scale) / 2);
  // While a tail is moved about, the scale does not jump below an inch to each side.
  const scales = drawing.tail === undefined ? SCALES : SCALES.slice(1);
  return scales.find(fits) ?? 1;
};

const ellipse = (mean: Tear, likely: Tear): Tear[] =>
  Array.from({ length: 96 }, (_, i) => {
    const turn = (i / 96) * 2 * Math.PI;
    return { x: mean.x + likely.x * Math.cos(turn), y: mean.y + likely.y * Math.sin(turn) };
  });

/** From the point to the tail: one step to a row, or to a column where it is flat. */
const slit = (tail: Tear, step: number): Tear[] => {
  const flat = Math.abs(tail.x) > Math.abs(tail.y) * 3;
  const count = Math.max(1, Math.round(flat ? Math.abs(tail.x) / (step / 2) : Math.abs(tail.y) / step));
  return Array.from({ length: count }, (_, i) => ({ x: (tail.x * i) / count, y: (tail.y * i) / count }));
};

const slitMark = ({ x, y }: Tear): string => {
  if (Math.abs(y) < Math.abs(x) / 3) return '-';
  if (Math.abs(x) < Math.abs(y) / 3) return '|';
  return Math.sign(x) === Math.sign(y) ? '/' : '\\';
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

/** The same picture in words, for every reader and every font. */
export const pictureWords = (drawing: Drawing): string[] => {
  const words: string[] = [];
  const shots = drawing.shots ?? [];
  if (drawing.tail !== undefined) words.push(`T: ${formatTail(drawing.tail)}`);
  if (shots.length > 0) words.push(`o: ${shots.filter((shot) => shot.counted).map(shortTail).join('; ') || 'none counted yet'}`);
  if (shots.some((shot) => !shot.counted)) words.push(`x: called bad, not counted: ${shots.filter((shot) => !shot.counted).map(shortTail).join('; ')}`);
  if (drawing.mean !== undefined) {
    words.push(`+: the middle, ${shortMean(drawing.mean)}`);
    if (drawing.likely !== undefined) words.push(`dots: it likely lies within ${drawing.likely.y.toFixed(2)} in up or down and ${drawing.likely.x.toFixed(2)} in sideways of that`);
  }
  words.push('@: the point');
  return words;
};

const shortTail = (tail: Tear): string => formatTail(tail).replace(/^the tail (is |went )?/, '').replace(/ of the point$/, '');
const shortMean = ({ x, y }: Tear): string =>
  `${Math.abs(y).toFixed(2)} in ${y < 0 ? 'low' : 'high'}, ${Math.abs(x).toFixed(2)} in ${x < 0 ? 'left' : 'right'}`;
