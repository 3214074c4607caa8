// What a practice adds to the screen: what is seen beside the question, letting the arrow go, and the hole that it left.

import type { PracticeHole, Tear, View } from '../machine/types.ts';
import { type Block, endless } from './fit.ts';
import { drawHole, holeLegend } from './hole-picture.ts';
import { type Line, paragraph, span } from './look.ts';
import type { ShotKind } from './shot-kind.ts';

type Practice = View['practice'];

/** The question is answered from it, so it stays longer than reasons and lists do. */
export const seenBlocks = (practice: Practice, rank: number, width: number): Block[] => {
  if (practice === undefined || practice.seen.length === 0) return [];
  return [endless(rank, practice.seen.flatMap((text, at) => paragraph(span(at === 0 ? '  see    ' : '         ', 'coach'), text, width)), true)];
};

/** Before the hole is looked at: the arrow is let go, how that felt is told, and it is called. Nothing of this where the bow is real. */
export const callLines = (practice: Practice, loosed: boolean, { beforeLooking }: ShotKind, width: number): Line[] => {
  if (practice?.shot !== undefined && !loosed) return paragraph(span('  > ', 'strong'), 'Enter lets the arrow go.', width, 'strong');
  const felt = practice?.shot === undefined ? [] : paragraph(span('  felt   ', 'coach'), practice.shot.felt, width);
  return [...felt, ...paragraph(span('  > ', 'strong'), `Called good or bad? ${beforeLooking}: g or b`, width, 'strong')];
};

/** Rows of the drawing, from what is pleasant to what can still be read. */
const ROWS = [13, 12, 11, 10, 9, 8, 7, 6, 5] as const;
/** Beside it there is room for its words from here on; below, where there is not. */
const BESIDE = 26;

/** The hole, as large as there is room for, and in words what its marks are; with little room the drawing alone. */
export const holeBlock = (hole: PracticeHole, rank: number, width: number): Block => {
  const shapes = hole.kind === 'none' ? [paragraph(span('  '), holeLegend(hole), width)] : ROWS.flatMap((rows) => shapesIn(hole, rows, width));
  return { rank, lines: shapes[0] ?? [], shrink: (room) => shapes.find((lines) => lines.length <= room) ?? shapes.at(-1) ?? [] };
};

const shapesIn = (hole: PracticeHole, rows: number, width: number): Line[][] => {
  const wide = width >= 60;
  const indent = wide ? '    ' : '';
  const columns = wide ? width - indent.length - BESIDE - 2 : width;
  const drawing = drawHole(hole, { columns, rows });
  const alone = drawing.map((row): Line => [span(indent + row)]);
  if (!wide) return [[...alone, ...paragraph(span(' '), holeLegend(hole), width, 'soft')], alone];
  const words = paragraph(span(''), holeLegend(hole), BESIDE, 'soft');
  const longest = Math.max(...drawing.map((row) => row.length));
  return [Array.from({ length: Math.max(drawing.length, words.length) }, (_, at) => [span(indent + (drawing[at] ?? '').padEnd(longest)), span('  '), ...(words[at] ?? [])]), alone];
};

/** What was moved to with the arrows, in words: on the drawing it would lead the eye. */
export const movedTo = (at: Tear, { format }: ShotKind, width: number): Line[] => paragraph(span('    = '), format(at), width, 'soft');
