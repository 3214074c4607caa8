// The paper and the words beside it: beside where there is room, below where there is not.

import type { PaperPicture } from '../machine/types.ts';
import { type Block, wholeOrNone } from './fit.ts';
import { type Line, paragraph, span } from './look.ts';
import { type Drawing, drawPaper, pictureWords } from './paper-picture.ts';
import { textWidth } from './text-width.ts';

const INDENT = '         ';
/** Beside the picture the words need at least this. */
const BESIDE = 28;
const TALLEST = 11;
const LOWEST = 5;

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
  const tallest = pictureLines(drawing, TALLEST, words, look);
  return {
    rank,
    lines: tallest,
    shrink: (room) => {
      for (let rows = TALLEST; rows >= LOWEST; rows -= 2) {
        const lines = pictureLines(drawing, rows, words, look);
        if (lines.length <= room) return lines;
      }
      return wholeOrNone(rank, wordLines(words, look.width)).shrink?.(room) ?? [];
    },
  };
};

/** The finished set, for the transcript. */
export const setLines = (picture: PaperPicture, look: PictureLook): Line[] => pictureLines(picture, 9, pictureWords(picture), look);
