// The live part: where we are, the one thing to do now, the input, one line of keys. A function of the state and nothing
// else; never wider than columns - 1 and never taller than rows - 3, counted after wrapping.

import type { View } from '../machine/types.ts';
import { clean } from './clean.ts';
import { askBlocks, entryLines } from './ask-lines.ts';
import { type Block, endless, fit, fixed, wholeOrNone } from './fit.ts';
import { helpLines } from './help-page.ts';
import { keyLine } from './key-table.ts';
import { listLines, type ListLook, listWindow } from './list-lines.ts';
import { BLANK, clip, type Line, lineText, paragraph, paragraphs, span } from './look.ts';
import type { Pick } from './options.ts';
import { detailOf, formOf } from './pages.ts';
import type { Preview } from './pressed.ts';
import type { Overlay, ScreenState } from './state.ts';
import { cut, textWidth } from './text-width.ts';

export interface LiveNeeds { readonly preview: Preview; readonly glossary: Readonly<Record<string, string>>; readonly braille: boolean }

/** The rank of the heading, which is squeezed into one line before anything that can hurt is cut. */
const HEADER = 7;
/** Text wider than this is hard to read standing two steps away. */
const WIDEST = 100;
const NARROWEST = 20;
export const liveWidth = (columns: number): number => Math.max(NARROWEST, Math.min(WIDEST, columns - 1));
export const liveHeight = (rows: number): number => Math.max(4, rows - 3);

export const liveLines = (state: ScreenState, needs: LiveNeeds): readonly Line[] => {
  if (state.leaving !== null) return [];
  const width = liveWidth(state.size.columns);
  const height = liveHeight(state.size.rows);
  const blank = wholeOrNone(0, [BLANK]);
  const header = headerLines(state.view, width);
  const top: Block[] = [blank, { rank: HEADER, lines: header, shrink: (room) => (room < header.length && header.length > 1 ? headerLine(state.view, width) : header) }, blank];
  const bottomWith = (more: boolean): Block[] => [
    ...(state.message === null ? [] : [fixed(paragraph(span('  ! ', 'warn'), state.message, width, 'strong').slice(0, 4))]),
    blank,
    fixed([[span(`  ${keyLine(state, width - 2, more)}`, 'soft')]]),
  ];
  const bottom = bottomWith(false);
  const used = [...top, ...bottom].reduce((sum, block) => sum + (block === blank ? 0 : block.lines.length), 0);
  const middle = state.overlay === null
    ? askBlocks(state, { width, braille: needs.braille, preview: needs.preview })
    : overlayBlocks(state, state.overlay, needs, width, Math.max(3, height - used));
  const whole = fit([...top, ...middle, ...bottom], height);
  if (!whole.cut || state.overlay !== null) return whole.lines.map((line) => clip(line, width));
  return fit([...top, ...middle, ...bottomWith(true)], height).lines.map((line) => clip(line, width));
};

/** True where a list is longer than its place on the screen, so that a part of it is out of sight. */
export const listIsCut = (state: ScreenState, needs: LiveNeeds): boolean =>
  liveLines(state, needs).some((line) => /^ +\u2026 \d+ more (above|below)/.test(lineText(line)));

/** True where a part of what is seen at a practice bow has no room: the answer may hang on it. */
export const seenIsCut = (state: ScreenState, needs: LiveNeeds): boolean => {
  const words = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();
  const shown = words(liveLines(state, needs).map(lineText).join(' '));
  return (state.view.practice?.seen ?? []).some((text) => !shown.includes(words(text)));
};

/** Where we are. On a narrow screen the day and the count go below the part. */
export const headerLines = (view: View, width: number): Line[] => {
  const { title, part, day, shots } = view.where;
  const stopped = `${view.practice === undefined ? '' : 'PRACTICE. '}${view.type === 'stop' ? 'STOPPED. ' : ''}`;
  const left = `  ${stopped}${clean([title, ...(view.type === 'stop' && part === 'stopped' ? [] : [part])].filter((word) => word !== '').join(', '))}`;
  const right = `day ${day}, ${shots} ${shots === 1 ? 'shot' : 'shots'}`;
  if (textWidth(left) + 3 + right.length <= width) return [[span(left, view.type === 'stop' ? 'warn' : 'strong'), span('   '), span(right, 'soft')]];
  return [[span(cut(left, width), view.type === 'stop' ? 'warn' : 'strong')], [span(`  ${right}`, 'soft')]];
};

/** The same in one line, the place cut short. */
const headerLine = (view: View, width: number): Line[] => {
  const [[place = span('')] = [], [count = span('')] = []] = headerLines(view, width);
  return [[span(cut(place.text, width - count.text.length - 1), place.tone), span(' '), count]];
};

const overlayBlocks = (state: ScreenState, overlay: Overlay, needs: LiveNeeds, width: number, room: number): Block[] => {
  const { page } = overlay;
  if (page.id === 'help') return [fixed(helpWindow(helpLines(state, needs.glossary, width), page.top, room))];
  const form = formOf(page);
  const title = fixed(paragraph(span('  coach  ', 'coach'), form.title, width, 'strong'));
  const lines = paragraphs(form.text, 9, width);
  const text: Block = page.id === 'sure' ? { rank: 2, lines, shrink: (most) => cutTold(lines, most, 'each told in turn') } : endless(2, lines);
  const { picks } = form;
  if (picks === undefined) return [title, text, fixed(entryLines(overlay.entry, width, ''))];
  const look = { cursor: overlay.cursor };
  const detail = detailOf(overlay).flatMap(([label, words]) => paragraph(span(`  ${label.padEnd(6)} `, 'coach'), words, width));
  const whole = listLines(picks, look, width);
  return [title, text, { rank: 6, lines: [...whole, ...detail], shrink: (most) => listAndDetail(picks, look, width, detail, Math.max(LEAST_LIST, most)) }];
};

/** A list is shortened down to this. */
const LEAST_LIST = 3;

/** A part of the list around the cursor, and below it what is told of the entry there: half of the room for each at most. */
const listAndDetail = (picks: readonly Pick[], look: ListLook, width: number, detail: readonly Line[], room: number): Line[] => {
  const told = cutTold(detail, Math.max(0, Math.min(Math.floor(room / 2), room - LEAST_LIST)), 'Enter tells all');
  return [...listWindow(picks, look, width, room - told.length), ...told];
};

/** At most `room` lines; the last one says how many were left out, and where they are. */
const cutTold = (lines: readonly Line[], room: number, where: string): readonly Line[] => {
  if (lines.length <= room) return lines;
  const shown = Math.max(0, room - 1);
  return room < 1 ? [] : [...lines.slice(0, shown), [span(`         \u2026 ${lines.length - shown} more: ${where}`, 'soft')]];
};

/** A part of the help page, with a word on how much is left. */
const helpWindow = (lines: readonly Line[], top: number, room: number): Line[] => {
  if (lines.length <= room) return [...lines];
  const shown = Math.max(1, room - 1);
  const from = Math.min(top, lines.length - shown);
  const left = lines.length - from - shown;
  return [...lines.slice(from, from + shown), [span(left > 0 ? `    \u2026 ${left} more lines: space` : '    (the end)', 'soft')]];
};

/** The lowest line that the help page may start with, so that scrolling stops at its end. */
export const helpEnd = (state: ScreenState, needs: LiveNeeds): number => {
  const width = liveWidth(state.size.columns);
  const frame = headerLines(state.view, width).length + 1;
  const shown = Math.max(1, Math.max(3, liveHeight(state.size.rows) - frame) - 1);
  return Math.max(0, helpLines(state, needs.glossary, width).length - shown);
};
