// The arrows of a set side by side: how far each one's tail lies from that of the typical arrow, and which way. A row for
// each where there is room, else several in a row, else only those that stand out. A star and words mark what stands out.

import type { ArrowsPicture, Tear } from '../machine/types.ts';
import { decimals } from './words.ts';

type One = ArrowsPicture['arrows'][number];
const BAR = 24;
/** A component that is smaller than this part of the other gives no direction of its own. */
const SLANT = 0.4;

/** From the typical arrow; from a clean hole until there is one. */
export const offOf = ({ typical }: ArrowsPicture, { mean }: One): Tear => ({ x: mean.x - (typical?.x ?? 0), y: mean.y - (typical?.y ?? 0) });
const far = ({ x, y }: Tear): number => Math.hypot(x, y);

/** `high left`, `low`; '' where it lies on the spot. */
export const wayOf = (off: Tear): string => {
  if (far(off) < 0.005) return '';
  const [up, side] = [Math.abs(off.y), Math.abs(off.x)];
  return [...(up > side * SLANT ? [off.y < 0 ? 'low' : 'high'] : []), ...(side > up * SLANT ? [off.x < 0 ? 'left' : 'right'] : [])].join(' ');
};

const shotsOf = ({ shots }: One): string => `${shots} ${shots === 1 ? 'shot' : 'shots'}`;
const heading = ({ typical }: ArrowsPicture): string => (typical === null
  ? 'where each arrow\'s tail goes; what is typical shows once all were shot'
  : 'how far each tail lies from the typical one');

/** A row for each arrow, with a bar as long as it lies far off. */
const bars = (picture: ArrowsPicture): string[] => {
  const offs = picture.arrows.map((one) => offOf(picture, one));
  const most = Math.max(0.25, ...offs.map(far));
  const wide = numberWidth(picture);
  return picture.arrows.map((one, at) => {
    const off = offs[at] ?? one.mean;
    const bar = (one.standsOut ? '*' : '=').repeat(Math.round((far(off) / most) * BAR));
    return `${one.standsOut ? '*' : ' '} ${one.arrow.padStart(wide)}  ${far(off).toFixed(2)} in ${wayOf(off).padEnd(10)} ${bar.padEnd(BAR)} ${one.standsOut ? 'stands out' : ''}`.trimEnd();
  });
};

/** As many arrows beside one another as fit into `width`, down the columns. The place of the star parts them. */
const cells = (picture: ArrowsPicture, width: number): string[] => {
  const wide = numberWidth(picture);
  const each = picture.arrows.map((one) => {
    const off = offOf(picture, one);
    return `${one.standsOut ? '*' : ' '}${one.arrow.padStart(wide)} ${far(off).toFixed(2)} ${wayOf(off).padEnd(10)}`;
  });
  const cell = Math.max(0, ...each.map((text) => text.length));
  const columns = Math.max(1, Math.floor(width / cell));
  const rows = Math.ceil(each.length / columns);
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column) => each[column * rows + row] ?? '').join('').trimEnd());
};

const numberWidth = ({ arrows }: ArrowsPicture): number => Math.max(2, ...arrows.map(({ arrow }) => arrow.length));

/** Those that stand out, and the farthest of the others: what is told where all have no room. */
export const arrowsInShort = (picture: ArrowsPicture): string => {
  const odd = picture.arrows.filter((one) => one.standsOut);
  const others = picture.arrows.filter((one) => !one.standsOut);
  const least = others.reduce((most, one) => Math.max(most, far(offOf(picture, one))), 0).toFixed(2);
  const told = odd.map((one) => `arrow ${one.arrow} ${far(offOf(picture, one)).toFixed(2)} in ${wayOf(offOf(picture, one))}`.trimEnd()).join(', ');
  const from = picture.typical === null ? 'a clean hole' : 'the typical one';
  const rest = others.length === 0 ? '' : `${odd.length === 0 ? (others.length === 1 ? 'the only arrow so far lies' : `all ${others.length} arrows lie`) : `the other ${others.length} lie`} within ${least} in of ${from}`;
  return [...(odd.length === 0 ? [] : [`* stands out: ${told}`]), ...(rest === '' ? [] : [rest])].join('; ');
};

export interface ArrowsShape { readonly rows: readonly string[]; readonly words: readonly string[] }

/** Shapes of the picture for a width, the tallest first; the last one is a sentence alone. */
export const arrowsShapes = (picture: ArrowsPicture, width: number): ArrowsShape[] => {
  const star = picture.arrows.some((one) => one.standsOut) ? ['*: stands out from the others'] : [];
  const short = { rows: [], words: [arrowsInShort(picture)] };
  const beside = cells(picture, width);
  return [
    ...(width >= 60 ? [{ rows: bars(picture), words: [heading(picture)] }] : []),
    { rows: beside, words: [`inches: ${heading(picture)}`, ...star] },
    { rows: beside, words: star },
    short,
  ];
};

/** One line an arrow, in words alone. */
export const arrowsWords = (picture: ArrowsPicture): string[] => [
  picture.typical === null ? heading(picture) : `${heading(picture)}; that one is ${decimals(picture.typical)}`,
  ...picture.arrows.map((one) => {
    const off = offOf(picture, one);
    const where = wayOf(off) === '' ? 'right on it' : `${far(off).toFixed(2)} in ${wayOf(off)}`;
    return `arrow ${one.arrow}: ${where}, ${shotsOf(one)}${one.standsOut ? '; it stands out' : ''}`;
  }),
];
