// The standing question as blocks: cautions, advice, the question, and the place where it is answered.

import type { Advice, Ask, ShotPlan, View } from '../machine/types.ts';
import { adviceCautions, adviceDetailLines, adviceHeadline, cautionLines } from './advice-lines.ts';
import { type Entry, entryText } from './entry.ts';
import { type Block, endless, fixed, wholeOrNone } from './fit.ts';
import { listLines, type ListLook, listWindow } from './list-lines.ts';
import { cut, cutFront } from './text-width.ts';
import { BLANK, type Line, paragraph, paragraphs, span } from './look.ts';
import { isChecks, NOT_KNOWN, picksOf, suggestedText, suggestedValue } from './options.ts';
import { type Drawing } from './paper-picture.ts';
import { type Preview } from './pressed.ts';
import { shotText, tearOf } from './press-tear.ts';
import { pictureBlock } from './shot-lines.ts';
import { modeOf, type Prompt, type ScreenState } from './state.ts';
import { saidUnit, shotWords } from './words.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { unitWord } from '../maths/unit-words.ts';

/** Where each block stands when room is short: the lowest goes first. */
const RANK = { blank: 0, read: 1, spent: 2, picture: 3, details: 4, text: 5, list: 6, caution: 7 } as const;
/** A list says itself what it hides, and is shortened down to this. */
const LEAST_LIST = 4;

export interface Drawn { readonly width: number; readonly braille: boolean; readonly preview: Preview }

export const askBlocks = (state: ScreenState, drawn: Drawn): Block[] => {
  const { view } = state;
  const { ask, advice } = view;
  const { width } = drawn;
  if (ask === null) return [];
  // An advice belongs to the question whether it was followed; at other questions it is history.
  const shown = ask.kind === 'amount' || advice?.kind === 'inspect' || advice?.kind === 'shop' ? advice : null;
  const cautions = cautionLines([...new Set([...ask.caution, ...(shown === null ? [] : adviceCautions(shown))])], width);
  // The shot is shot: its caution stays only where there is room, its picture does not give way to it.
  const called = modeOf(ask, state.prompt) === 'tear';
  return [
    ...(ask.correcting === undefined ? [] : [fixed(paragraph(span('  '), 'Correcting an earlier answer; the bow is not touched.', width, 'soft'))]),
    ...(shown === null ? [] : [fixed(adviceHeadline(shown, width)), ...adviceDetailBlocks(shown, ask, width)]),
    called ? wholeOrNone(RANK.spent, cautions) : endless(RANK.caution, cautions, true),
    questionBlock(ask, called, width),
    wholeOrNone(RANK.blank, [BLANK]),
    ...inputBlocks(state, ask, view, drawn),
  ];
};

/** Sentence by sentence, so that none is cut in its middle; the last goes first. */
const adviceDetailBlocks = (advice: Advice, ask: Ask, width: number): Block[] =>
  adviceDetailLines(advice, width, ask.text).map((lines, at) => ({ ...wholeOrNone(RANK.details - at / 100, lines), tell: true }));

/** The question in full; in the fewest words where that has no room. Once a shot is called it was read, and makes way. */
const questionBlock = (ask: Ask, read: boolean, width: number): Block => {
  const label = span('  coach  ', 'coach');
  const asked = paragraph(label, ask.short, width, 'strong');
  // Which way a mark counts is never left out.
  const short = isChecks(ask) ? [...asked, ...paragraphs(['Mark what is NOT true.'], 9, width)] : asked;
  const full = [...asked, ...paragraphs(ask.text.filter((text) => text !== ask.short), 9, width)];
  if (read) return { rank: RANK.read, lines: full, shrink: (room) => [full, short, []].find((lines) => lines.length <= room) ?? [] };
  return { rank: RANK.text, lines: full, tell: true, shrink: (room) => (full.length <= room ? full : short) };
};

const inputBlocks = (state: ScreenState, ask: Ask, view: View, drawn: Drawn): Block[] => {
  const { width, preview } = drawn;
  const { prompt } = state;
  const mode = modeOf(ask, prompt);
  switch (mode) {
    case 'none': return [];
    case 'pick': return [listBlock(ask, prompt, width)];
    case 'called': case 'tear': return shotBlocks(ask, prompt, view, state.message, drawn);
    case 'number': case 'amount': {
      const unit = ask.kind === 'number' || ask.kind === 'amount' ? ask.unit : 'count';
      const word = unitWord(unit, 2);
      return [fixed([
        ...entryLines(prompt.entry, width, word),
        ...echoLines(entryText(prompt.entry).trim(), preview, width, word === '' ? 'a whole number' : `in ${saidUnit(unit)}, or write another unit behind it`, state.message),
        ...earlierLines(ask, width),
      ])];
    }
    case 'text': return [fixed([...entryLines(prompt.entry, width, ''), ...earlierLines(ask, width)])];
  }
};

const listBlock = (ask: Ask, prompt: Prompt, width: number): Block => {
  const picks = picksOf(ask) ?? [];
  const suggested = suggestedValue(ask.suggestion);
  const look: ListLook = {
    cursor: prompt.cursor,
    ...(ask.kind === 'choice' && ask.many ? { marks: prompt.marks, checks: isChecks(ask) } : {}),
    ...(suggested === null ? {} : { beside: new Map([[suggested, 'your answer before']]) }),
  };
  return { rank: RANK.list, lines: listLines(picks, look, width), shrink: (room) => listWindow(picks, look, width, Math.max(LEAST_LIST, room)) };
};

/** The line that is typed on. The caret is a character, so that it shows on every terminal and in every copy of it. */
export const entryLines = (entry: Entry, width: number, unit: string): Line[] => {
  const tail = unit === '' ? '' : ` ${unit}`;
  const room = width - 5 - tail.length;
  const before = cutFront(entry.before, Math.max(4, room - Math.min(entry.after.length, 8)));
  const after = cut(entry.after, Math.max(0, room - before.length));
  return [[span('  > ', 'strong'), span(before, 'strong'), span('_'), span(after, 'strong'), span(tail, 'soft')]];
};

/** How what was typed would be understood; one line, so that nothing jumps while typing. */
const echoLines = (text: string, preview: Preview, width: number, hint: string, told: string | null): Line[] => {
  if (text === '') return [[span(cut(`    ${hint}`, width), 'soft')]];
  const understood = preview(text);
  if (understood.ok) return [[span(cut(`    = ${understood.words}`, width), 'soft')]];
  // A refusal that stands as the screen's message is not told twice; its line stays, so that nothing jumps.
  return [[span(understood.message === told ? '' : cut(`    ? ${understood.message}`, width), 'soft')]];
};

const earlierLines = (ask: Ask, width: number): Line[] => {
  const text = ask.suggestion?.kind === 'not known' ? NOT_KNOWN : suggestedText(ask.suggestion);
  if (text === '') return [];
  const unit = ask.kind === 'number' && ask.suggestion?.kind === 'number' ? formatQuantity({ value: ask.suggestion.value, unit: ask.unit }) : text;
  return paragraph(span('    '), `your answer before: ${unit}; Tab puts it in`, width, 'soft');
};

/** The question says which shot and how far; only what else there is to say is told besides. */
const isUsual = ({ arrow, shaft, head, nockTurn }: ShotPlan): boolean => arrow === null && shaft === 'fletched' && head === 'field' && nockTurn === 0;

const shotBlocks = (ask: Ask, prompt: Prompt, view: View, told: string | null, drawn: Drawn): Block[] => {
  if (ask.kind !== 'tear' && ask.kind !== 'impact') return [];
  const { width, preview } = drawn;
  const what = paragraph(span('  shoot  ', 'coach'), shotWords(ask), width);
  const past: Drawing = view.picture?.kind === 'paper' ? view.picture : {};
  if (prompt.called === null) {
    return [
      ...(past.shots !== undefined && past.shots.length > 0 ? [pictureBlock(past, RANK.picture, drawn)] : []),
      fixed([...(isUsual(ask) ? [] : what), ...paragraph(span('  > ', 'strong'), 'Called good or bad? Before you look at the hole: g or b', width, 'strong')]),
    ];
  }
  const tail = prompt.tail ?? tearOf(preview, shotText(prompt.entry));
  const drawing: Drawing = { shots: past.shots ?? [], ...(tail === null ? {} : { tail }) };
  const seen = ask.kind === 'tear' ? 'Read it from the shooter\'s side' : 'Measure from its own aiming dot';
  const side = width < 60 ? `${seen}.` : `${seen}: left is your left as you shoot.`;
  return [
    pictureBlock(drawing, RANK.picture, drawn),
    fixed([
      ...what,
      ...paragraph(span('    '), side, width, 'soft'),
      ...entryLines(prompt.entry, width, `  called ${prompt.called}`),
      ...(entryText(prompt.entry) === '' && tail !== null ? [] : echoLines(shotText(prompt.entry), preview, width, 'arrows, or type: high 1/2 left 1/8', told)),
    ]),
  ];
};
