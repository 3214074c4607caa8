// Impacts beside a plumb line, the farthest distance on top, as one looks down the range. The line stands in the middle.

import type { PlumbPicture } from '../machine/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { sideways } from './words.ts';

/** Columns to each side of the line, and inches that one of them may stand for. */
const HALF = 12;
const SCALES = [1 / 8, 1 / 4, 1 / 2, 1, 2] as const;

type Points = PlumbPicture['points'];
const farFirst = (points: Points): Points => points.toSorted((one, other) => other.distance.value - one.distance.value);
const scaleOf = (points: Points): number => SCALES.find((scale) => points.every(({ x }) => Math.abs(x) <= HALF * scale)) ?? 2;

/** One line for each distance, and two for the frame; all of one width. */
export const drawPlumb = ({ points }: PlumbPicture): string[] => {
  const scale = scaleOf(points);
  const labels = farFirst(points).map(({ distance }) => formatQuantity(distance));
  const wide = Math.max(0, ...labels.map((label) => label.length));
  const edge = '-'.repeat(HALF);
  const rows = farFirst(points).map(({ x }, at) => {
    const row: string[] = Array.from({ length: HALF * 2 + 1 }, (_, column) => (column === HALF ? '|' : ' '));
    const steps = Math.sign(x) * Math.round(Math.abs(x) / scale);
    row[HALF + Math.max(-HALF, Math.min(HALF, steps))] = 'o';
    return `${(labels[at] ?? '').padStart(wide)} |${row.join('')}|`;
  });
  return [`${' '.repeat(wide)} .${edge}+${edge}.`, ...rows, `${' '.repeat(wide)} '${edge}+${edge}'`];
};

/** The same in words, the nearest distance first; `marks`: with the signs that the picture uses. */
export const plumbWords = ({ points }: PlumbPicture, marks: boolean): string[] => [
  ...farFirst(points).toReversed().map(({ distance, x, shots }) => `${marks ? 'o ' : ''}${formatQuantity(distance)}: ${sideways(x)}, ${shots} ${shots === 1 ? 'shot' : 'shots'}`),
  ...(marks ? [`|: the line; a column is ${formatQuantity({ value: scaleOf(points), unit: 'in' })}`] : []),
];
