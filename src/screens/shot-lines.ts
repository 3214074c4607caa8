// Pictures and the words beside them: beside where there is room, below where there is not.

import type { Picture, PlumbPicture, Tear } from '../machine/types.ts';
import { arrowsShapes } from './arrows-picture.ts';
import type { Block } from './fit.ts';
import { drawGroups, type Face, groupsLegend, groupsWords, middlesWords } from './groups-picture.ts';
import { type Line, paragraph, span } from './look.ts';
import { type Drawing, drawPaper, pictureWords } from './paper-picture.ts';
import { drawPlumb, plumbWords } from './plumb-picture.ts';
import { textWidth } from './text-width.ts';

const INDENT = '         ';
/** Beside the picture the words need at least this. */
const BESIDE = 28;
/** Rows inside the frame, from what is pleasant to what still shows left from right. */
const SIZES = [11, 9, 7, 5, 3] as const;

export interface PictureLook { readonly width: number; readonly braille: boolean }

/** A picture as it can be drawn: in one of some sizes, with all of its words or with the first few. */
interface Sketch {
  readonly sizes: readonly number[];
  readonly draw: (rows: number, braille: boolean) => readonly string[];
  readonly words: readonly string[];
  /** What is told beside it where all words have no room. */
  readonly brief: readonly string[];
  /** What is told where no picture has room, and not all words. */
  readonly alone: readonly string[];
}

const briefly = (words: readonly string[]): Pick<Sketch, 'brief' | 'alone'> => ({ brief: words, alone: words });
const ofPaper = (drawing: Drawing): Sketch => ({
  sizes: SIZES, draw: (rows, braille) => drawPaper(drawing, { rows, braille }), words: pictureWords(drawing),
  ...briefly(drawing.tail === undefined ? [] : pictureWords(drawing).slice(0, 1)),
});
const ofFace = (face: Face): Sketch => ({
  sizes: SIZES, draw: (rows, braille) => drawGroups(face, { rows, braille }), words: groupsWords(face),
  ...(face.entered === undefined ? { brief: groupsLegend(face), alone: middlesWords(face) } : briefly(groupsWords(face).slice(0, 1))),
});
const ofPlumb = (picture: PlumbPicture): Sketch => ({
  sizes: [picture.points.length], draw: () => drawPlumb(picture), words: plumbWords(picture, true), brief: plumbWords(picture, true).slice(-1), alone: [],
});

const indentFor = (look: PictureLook): string => (look.width >= 60 ? INDENT : '  ');

const sketchLines = (rows: readonly string[], words: readonly string[], look: PictureLook): Line[] => {
  const wide = textWidth(rows[0] ?? '');
  const indent = indentFor(look);
  const room = look.width - indent.length - wide - 2;
  if (room < BESIDE) return [...rows.map((row): Line => [span(indent + row)]), ...wordLines(words, look.width)];
  const beside = words.flatMap((text) => paragraph(span(''), text, room));
  return Array.from({ length: Math.max(rows.length, beside.length) }, (_, at) => [
    span(indent + (rows[at] ?? ' '.repeat(wide))), span('  '), ...(beside[at] ?? []),
  ]);
};

const wordLines = (words: readonly string[], width: number): Line[] => words.flatMap((text) => paragraph(span('  '), text, width));

/** With fewer rows than this words give way before the picture does. */
const PLEASANT = 7;

/** The picture in all its shapes, the ones to be preferred first; nothing at all is the last one. */
const shapesOf = ({ sizes, draw, words, brief, alone }: Sketch, look: PictureLook): Line[][] => {
  const drawn = (told: readonly string[], some: readonly number[]): Line[][] => some.map((rows) => sketchLines(draw(rows, look.braille), told, look));
  const small = sizes.filter((rows) => rows < PLEASANT);
  return [
    ...drawn(words, sizes.filter((rows) => rows >= PLEASANT)), ...drawn(brief, sizes.filter((rows) => rows >= PLEASANT)),
    ...drawn(words, small), ...drawn(brief, small),
    wordLines(words, look.width), wordLines(alone, look.width), [],
  ];
};

const arrowsLines = (picture: Extract<Picture, { kind: 'arrows' }>, look: PictureLook): Line[][] => {
  const indent = look.width >= 60 ? INDENT : ' ';
  const shapes = arrowsShapes(picture, look.width - indent.length);
  return [...shapes.map(({ rows, words }) => [...words.flatMap((text) => paragraph(span(indent), text, look.width)), ...rows.map((row): Line => [span(indent + row)])]), []];
};

const shapesOfPicture = (picture: Picture, look: PictureLook): Line[][] => {
  switch (picture.kind) {
    case 'paper': return shapesOf(ofPaper(picture), look);
    case 'groups': return shapesOf(ofFace(picture), look);
    case 'plumb': return shapesOf(ofPlumb(picture), look);
    case 'arrows': return arrowsLines(picture, look);
  }
};

const blockOf = (shapes: readonly Line[][], rank: number): Block =>
  ({ rank, lines: shapes[0] ?? [], shrink: (room) => shapes.find((lines) => lines.length <= room) ?? [] });

/** A finished picture: smaller where it is tight, and words alone where none fits. */
export const pictureBlock = (picture: Picture, rank: number, look: PictureLook): Block => blockOf(shapesOfPicture(picture, look), rank);

/** The shot that is being entered, among those before it where they are seen from the same side. */
export const enteringBlock = (kind: 'tear' | 'impact', past: Picture | undefined, at: Tear | null, rank: number, look: PictureLook): Block => {
  if (kind === 'tear') return blockOf(shapesOf(ofPaper({ shots: past?.kind === 'paper' ? past.shots : [], ...(at === null ? {} : { tail: at }) }), look), rank);
  // The middles move with every shot: while one is entered, only the shots themselves are shown.
  const before = past?.kind === 'groups' ? { a: past.a, b: past.b, names: past.names } : {};
  return blockOf(shapesOf(ofFace({ ...before, ...(at === null ? {} : { entered: at }) }), look), rank);
};

/** How tall a picture may be in the scroll-back. */
const TOLD_ROWS = 9;

/** The finished set, for the transcript: with all of its words. */
export const setLines = (picture: Picture, look: PictureLook): Line[] => {
  switch (picture.kind) {
    case 'paper': return sketchLines(drawPaper(picture, { rows: TOLD_ROWS, braille: look.braille }), pictureWords(picture), look);
    case 'groups': return sketchLines(drawGroups(picture, { rows: TOLD_ROWS, braille: look.braille }), groupsWords(picture), look);
    case 'arrows': case 'plumb': return shapesOfPicture(picture, look)[0] ?? [];
  }
};

/** How many shots a picture is made of. */
export const shotsIn = (picture: Picture): number => {
  switch (picture.kind) {
    case 'paper': return picture.shots.length;
    case 'groups': return picture.a.length + picture.b.length;
    case 'arrows': return picture.arrows.reduce((sum, one) => sum + one.shots, 0);
    case 'plumb': return picture.points.reduce((sum, one) => sum + one.shots, 0);
  }
};
