// The paper as the archer sees it from behind the bow, with the point in its middle. Never without words beside it.

import type { PaperPicture, Tear } from '../machine/types.ts';
import { openPlane, type PictureSize } from './plane.ts';
import { decimals, formatTail } from './words.ts';

export interface Drawing extends Omit<Partial<PaperPicture>, 'kind'> {
  /** The tail that is being entered and has not been taken. */
  readonly tail?: Tear;
}

/** Inches that one row stands for. */
const SCALES = [1 / 8, 1 / 4, 1 / 2, 1] as const;

/** Draws the paper; the result has `rows` + 2 lines, all of one width. */
export const drawPaper = (drawing: Drawing, size: PictureSize): string[] => {
  const { shots = [], mean, likely, tail } = drawing;
  const points = [...shots, ...(mean === undefined ? [] : [mean]), ...(tail === undefined ? [] : [tail])];
  // While a tail is moved about, the scale does not jump below an inch to each side.
  const plane = openPlane(size, points, tail === undefined ? SCALES : SCALES.slice(1));
  if (mean !== undefined && likely !== undefined) plane.trace(ellipse(mean, likely), '.');
  if (tail !== undefined) plane.trace(slit(tail, size.braille ? plane.perRow / 8 : plane.perRow), slitMark(tail));
  if (mean !== undefined) plane.put(mean, '+');
  for (const shot of shots) plane.put(shot, shot.counted ? 'o' : 'x');
  plane.put({ x: 0, y: 0 }, '@');
  if (tail !== undefined) plane.put(tail, 'T');
  return plane.lines();
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

/** The same picture in words, for every reader and every font. */
export const pictureWords = (drawing: Drawing): string[] => {
  const words: string[] = [];
  const shots = drawing.shots ?? [];
  if (drawing.tail !== undefined) words.push(`T: ${formatTail(drawing.tail)}`);
  if (shots.length > 0) words.push(`o: ${shots.filter((shot) => shot.counted).map(shortTail).join('; ') || 'none counted yet'}`);
  if (shots.some((shot) => !shot.counted)) words.push(`x: called bad, not counted: ${shots.filter((shot) => !shot.counted).map(shortTail).join('; ')}`);
  if (drawing.mean !== undefined) {
    words.push(`+: the middle, ${decimals(drawing.mean)}`);
    if (drawing.likely !== undefined) words.push(`dots: it likely lies within ${drawing.likely.y.toFixed(2)} in up or down and ${drawing.likely.x.toFixed(2)} in sideways of that`);
  }
  words.push('@: the point');
  return words;
};

const shortTail = (tail: Tear): string => formatTail(tail).replace(/^the tail (is |went )?/, '').replace(/ of the point$/, '');
