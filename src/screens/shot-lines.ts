// The paper and the words beside it: beside where there is room, below where there is not.

import type { PaperPicture } from '../machine/types.ts';
import type { Block } from './fit.ts';
import { type Line, paragraph, span } from './look.ts';
import { type Drawing, drawPaper, pictureWords } from './paper-picture.ts';
import { textWidth } from './text-width.ts';

const INDENT = '         ';
/** Beside the picture the words need at least this. */
const BESIDE = 28;
/** Rows inside the frame, from what is pleasant to what still shows left from right. */
const SIZES = [11, 9, 7, 5, 3] as const;

export interface PictureLook { readonly width: number; readonly braille: boolean }

/** The picture with `rows` inside its frame; the words come with it or without. */
export const pictureLines = (drawing: Drawing, rows: number, words: readonly string[], look: PictureLook): Line[] => {
  const paper = drawPaper(drawing, { rows, braille: look.braille });
  const wide = textWidth(paper[0] ?? '');
  const indent = look.width >= 60 ? INDENT : '  ';
  const room = look.width - indent.length - wide - 2;
  if (room < BESIDE) return [...paper.map((row): Line => [span(indent + row)]), ...wordLines(words, look.width)];
  const beside = words.flatMap((text) => paragraph(span(''), text, room));
  return Array.from({ length: Math.max(paper.length, beside.length) }, (_, at) => [
    span(indent + (paper[at] ?? ' '.repeat(wide))), span('  '), ...(beside[at] ?? []),
  ]);
};

const wordLines = (words: readonly string[], width: number): Line[] => words.flatMap((text) => paragraph(span('  '), text, width));

/** The picture as a block: smaller where it is tight, and words alone where no picture fits. */
export const pictureBlock = (drawing: Drawing, rank: number, look: PictureLook): Block => {
  const words = pictureWords(drawing);
  // Where it is tight, the shots before are left to the picture; what is being entered is told in words to the last.
  const fewest = drawing.tail === undefined ? [] : words.slice(0, 1);
  const shapes = [words, fewest].flatMap((told) => SIZES.map((rows) => pictureLines(drawing, rows, told, look)));
  const candidates = [...shapes, wordLines(words, look.width), wordLines(fewest, look.width), []];
  return { rank, lines: candidates[0] ?? [], shrink: (room) => candidates.find((lines) => lines.length <= room) ?? [] };
};

/** The finished set, for the transcript. */
export const setLines = (picture: PaperPicture, look: PictureLook): Line[] => pictureLines(picture, 9, pictureWords(picture), look);
