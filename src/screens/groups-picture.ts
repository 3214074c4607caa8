// Two kinds of arrows on one face, each from its own aiming dot, which is the middle: where both land, and how near their
// middles should lie. Small letters are shots and capitals the middles, so that nothing hangs on colour.

import type { GroupsPicture, Tear } from '../machine/types.ts';
import { openPlane, type PictureSize } from './plane.ts';
import { decimalsFrom, formatImpact, impactFigures } from './words.ts';

export interface Face extends Omit<Partial<GroupsPicture>, 'kind'> {
  /** The impact that is being entered and has not been taken. */
  readonly entered?: Tear;
}

/** Inches that one row stands for. */
const SCALES = [1 / 4, 1 / 2, 1, 2, 3, 6] as const;

/** The letters of the two kinds: their own first ones where these differ. */
export const groupMarks = (names: GroupsPicture['names'] = { a: 'a', b: 'b' }): { readonly a: string; readonly b: string } => {
  const [a, b] = [names.a.charAt(0).toLowerCase(), names.b.charAt(0).toLowerCase()];
  return /[a-wyz]/.test(a) && /[a-wyz]/.test(b) && a !== b ? { a, b } : { a: 'a', b: 'b' };
};

/** Where the middle of b belongs: beside that of a, or as far from it as a fair shot falls. */
export const belongsAt = ({ means, aim }: Face): Tear | null =>
  (means?.a === undefined ? null : { x: means.a.x + (aim?.x ?? 0), y: means.a.y + (aim?.y ?? 0) });

/** Draws the face; the result has `rows` + 2 lines, all of one width. */
export const drawGroups = (face: Face, size: PictureSize): string[] => {
  const { a = [], b = [], means = {}, margin, entered } = face;
  const marks = groupMarks(face.names);
  const points = [...a, ...b, ...(entered === undefined ? [] : [entered]), ...Object.values(means)];
  // While an impact is moved about, the scale does not jump below some inches to each side.
  const plane = openPlane(size, points, entered === undefined ? SCALES : SCALES.slice(2));
  const belongs = belongsAt(face);
  if (belongs !== null && margin !== undefined) plane.trace(square(belongs, margin), '.');
  for (const [shots, mark] of [[a, marks.a], [b, marks.b]] as const) for (const shot of shots) plane.put(shot, shot.counted ? mark : 'x');
  if (means.a !== undefined) plane.put(means.a, marks.a.toUpperCase());
  if (means.b !== undefined) plane.put(means.b, marks.b.toUpperCase());
  plane.put({ x: 0, y: 0 }, '@');
  if (entered !== undefined) plane.put(entered, '*');
  return plane.lines();
};

/** The outline of what lies within `half` inches each way. */
const square = (middle: Tear, half: number): Tear[] =>
  Array.from({ length: 33 }, (_, i) => (i / 16 - 1) * half).flatMap((along) => [
    { x: middle.x + along, y: middle.y + half }, { x: middle.x + along, y: middle.y - half },
    { x: middle.x + half, y: middle.y + along }, { x: middle.x - half, y: middle.y + along },
  ]);

/** The same picture in words. What is being entered comes first. */
export const groupsWords = (face: Face): string[] => {
  const { a = [], b = [], names, means = {}, entered } = face;
  const marks = groupMarks(names);
  const of = (shots: typeof a, name: string, mark: string): string[] =>
    (shots.some((shot) => shot.counted) ? [`${mark}: ${name}, ${shots.filter((shot) => shot.counted).map(impactFigures).join('; ')}`] : []);
  const bad = [...a, ...b].filter((shot) => !shot.counted);
  return [
    ...(entered === undefined ? [] : [`*: ${formatImpact(entered)}`]),
    ...of(a, names?.a ?? '', marks.a), ...of(b, names?.b ?? '', marks.b),
    ...(bad.length === 0 ? [] : [`x: called bad, not counted: ${bad.map(impactFigures).join('; ')}`]),
    ...(means.a === undefined || means.b === undefined ? [] : [`${marks.a.toUpperCase()} and ${marks.b.toUpperCase()}: the middles; ${apart(face, marks.b.toUpperCase(), marks.a.toUpperCase())}`]),
    ...togetherWords(face, 'dots: '),
    entered === undefined && a.length + b.length > 0 ? '@: the dot that each arrow was aimed at' : '@: the dot that it was aimed at',
  ];
};

/** The marks alone, a short line or two. */
export const groupsLegend = ({ names, means = {}, margin }: Face): string[] => {
  if (names === undefined) return [];
  const marks = groupMarks(names);
  const both = means.a !== undefined && means.b !== undefined;
  const [a, b] = [marks.a.toUpperCase(), marks.b.toUpperCase()];
  return [`${marks.a}: ${names.a}, ${marks.b}: ${names.b}`, ...(both ? [`${a}, ${b}: middles${margin === undefined ? '' : `; ${b} belongs in the dots`}`] : [])];
};

/** How the middle of b lies from that of a; '' until both are there. */
export const apart = ({ means = {} }: Face, b: string, a: string): string =>
  (means.a === undefined || means.b === undefined ? '' : `${b} lies ${decimalsFrom({ x: means.b.x - means.a.x, y: means.b.y - means.a.y })} ${a}`);

/** The same in a sentence, by the names of both; nothing until there are two middles. */
export const middlesWords = (face: Face): string[] => {
  const difference = apart(face, `the middle of the ${face.names?.b ?? 'b'}s`, `that of the ${face.names?.a ?? 'a'}s`);
  return difference === '' ? [] : [difference];
};

/** What counts as landing together, once there is a middle to hold it against. */
export const togetherWords = (face: Face, label = ''): string[] => {
  const { margin, aim, names } = face;
  if (belongsAt(face) === null || margin === undefined || names === undefined) return [];
  const from = aim === undefined || (aim.x === 0 && aim.y === 0) ? `the middle of the ${names.a}s` : `the spot ${decimalsFrom(aim)} the middle of the ${names.a}s`;
  return [`${label}they land together where the middle of the ${names.b}s lies within ${margin.toFixed(2)} in each way of ${from}`];
};
