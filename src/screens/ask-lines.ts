// The standing question as blocks: cautions, advice, the question, and the place where it is answered.

import type { Advice, Ask, View } from '../machine/types.ts';
import { adviceCautions, adviceDetailLines, adviceHeadline, cautionLines } from './advice-lines.ts';
import { clean } from './clean.ts';
import { type Entry, entryText } from './entry.ts';
import { type Block, endless, fixed, wholeOrNone } from './fit.ts';
import { listLines, type ListLook, listWindow } from './list-lines.ts';
import { cut, cutFront } from './text-width.ts';
import { BLANK, type Line, paragraph, paragraphs, span } from './look.ts';
import { callLines, holeBlock, movedTo, seenBlocks } from './practice-lines.ts';
import { isChecks, NOT_KNOWN, picksOf, suggestedText, suggestedValue } from './options.ts';
import { type Preview } from './pressed.ts';
import { shotText, tearOf } from './press-tear.ts';
import { shotKind } from './shot-kind.ts';
import { enteringBlock, pictureBlock, shotsIn } from './shot-lines.ts';
import { modeOf, type Prompt, type ScreenState } from './state.ts';
import { saidUnit, shotWords } from './words.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { unitWord } from '../maths/unit-words.ts';

/** Where each block stands when room is short: the lowest goes first. */
const RANK = { blank: 0, read: 1, picture: 3, details: 4, text: 5, list: 6, seen: 6.5, hole: 7.5, asked: 8, caution: 9 } as const;

export interface Drawn { readonly width: number; readonly braille: boolean; readonly preview: Preview }

export const askBlocks = (state: ScreenState, drawn: Drawn): Block[] => {
  const { view } = state;
  const { ask, advice } = view;
  const { width } = drawn;
  if (ask === null) return [];
  // An advice belongs to the question whether it was followed; at other questions it is history.
  const shown = ask.kind === 'amount' || advice?.kind === 'inspect' || advice?.kind === 'shop' ? advice : null;
  // The arrow of a practice bow has flown by the time that its hole is read: nothing is drawn any more.
  const flown = ask.practice === true && modeOf(ask, state.prompt) === 'tear';
  const cautions = cautionLines(flown ? [] : [...new Set([...ask.caution, ...(shown === null ? [] : adviceCautions(shown))])], width);
  const called = modeOf(ask, state.prompt) === 'tear';
  return [
    ...(ask.correcting === undefined ? [] : [correctingBlock(width)]),
    ...(shown === null ? [] : [fixed(adviceHeadline(shown, width)), ...adviceDetailBlocks(shown, ask, width)]),
    // Whatever else has no room: pictures, reasons and the question in full give way to them, at every size that is promised.
    endless(RANK.caution, cautions, true),
    ...questionBlocks(ask, { read: called, told: state.message !== null }, width),
    ...seenBlocks(view.practice, RANK.seen, width),
    wholeOrNone(RANK.blank, [BLANK]),
    ...inputBlocks(state, ask, view, drawn),
  ];
};

const correctingBlock = (width: number): Block => {
  const [whole, short] = ['Correcting an earlier answer; the bow is not touched.', 'Correcting an earlier answer.'].map((text) => paragraph(span('  '), text, width, 'soft'));
  return { rank: RANK.list, lines: whole ?? [], shrink: (room) => (room < (whole?.length ?? 0) ? short : whole) ?? [] };
};

/** Sentence by sentence, so that none is cut in its middle; the last goes first. */
const adviceDetailBlocks = (advice: Advice, ask: Ask, width: number): Block[] =>
  adviceDetailLines(advice, width, ask.text).map((lines, at) => ({ ...wholeOrNone(RANK.details - at / 100, lines), tell: true }));

/**
 * The question in full; in the fewest words where that has no room, of which the way that a mark counts is one. Once a shot is
 * called it was read, and makes way; so does every question while something is `told` about the last key, before a caution does.
 */
const questionBlocks = (ask: Ask, { read, told }: { readonly read: boolean; readonly told: boolean }, width: number): Block[] => {
  const texts = ask.text.filter((text) => text !== ask.short);
  const asked = paragraph(span('  coach  ', 'coach'), ask.short, width, 'strong');
  const begun: Line = [span('  coach  ', 'coach'), span(cut(clean(ask.short), width - 9), 'strong')];
  const rest = paragraphs(texts, 9, width);
  if (read) return [{ rank: RANK.read, lines: [...asked, ...rest], shrink: (room) => [[...asked, ...rest], asked].find((lines) => lines.length <= room) ?? [] }];
  const mark = isChecks(ask) ? paragraphs(['Mark what is NOT true.'], 9, width) : [];
  return [
    { rank: RANK.asked, lines: asked, shrink: (room) => (asked.length <= room ? asked : told ? [] : [begun]) },
    { rank: RANK.text, lines: rest, tell: true, shrink: (room) => (rest.length <= room ? rest : told && room < 1 ? [] : mark) },
  ];
};

const inputBlocks = (state: ScreenState, ask: Ask, view: View, drawn: Drawn): Block[] => {
  const { width, preview } = drawn;
  const { prompt } = state;
  const mode = modeOf(ask, prompt);
  switch (mode) {
    case 'none': return [];
    case 'pick': return [listBlock(ask, prompt, width)];
    case 'shoot': case 'called': case 'tear': return shotBlocks(ask, prompt, view, state.message, drawn);
    case 'number': case 'amount': {
      const unit = ask.kind === 'number' || ask.kind === 'amount' ? ask.unit : 'count';
      const word = unitWord(unit, 2);
      return [fixed([
        ...entryLines(prompt.entry, width, word),
        ...echoLines(entryText(prompt.entry).trim(), preview, width, word === '' ? (ask.kind === 'amount' ? 'by how many vanes' : 'a whole number') : `in ${saidUnit(unit)}, or write another unit behind it`, state.message),
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
  return { rank: RANK.list, lines: listLines(picks, look, width), shrink: (room) => listWindow(picks, look, width, room) };
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

const shotBlocks = (ask: Ask, prompt: Prompt, view: View, told: string | null, drawn: Drawn): Block[] => {
  if (ask.kind !== 'tear' && ask.kind !== 'impact') return [];
  const { width, preview } = drawn;
  const kind = shotKind(ask);
  // Which arrow it is stands by itself and in capitals: the wrong one in hand spoils the shot.
  const what = shotWords(ask).join(', ');
  const shoot = what === '' ? [] : paragraph(span('  shoot  ', 'coach'), what.toUpperCase(), width, 'strong');
  const { picture } = view;
  if (prompt.called === null || modeOf(ask, prompt) === 'shoot') {
    return [
      ...(picture !== undefined && shotsIn(picture) > 0 ? [pictureBlock(picture, RANK.picture, drawn)] : []),
      fixed([...shoot, ...callLines(view.practice, prompt.loosed, kind, width)]),
    ];
  }
  const at = prompt.tail ?? tearOf(preview, shotText(prompt.entry));
  const side = width < 60 ? `${kind.seen}.` : `${kind.seen}: left is your left as you shoot.`;
  const hole = view.practice?.shot?.hole;
  return [
    hole === undefined ? enteringBlock(ask.kind, picture, at, RANK.picture, drawn) : holeBlock(hole, RANK.hole, width),
    fixed([
      ...shoot,
      ...paragraph(span('    '), side, width, 'soft'),
      ...entryLines(prompt.entry, width, `  called ${prompt.called}`),
      ...(entryText(prompt.entry) === '' && at !== null ? (hole === undefined ? [] : movedTo(at, kind, width)) : echoLines(shotText(prompt.entry), preview, width, `arrows, or type: ${kind.like}`, told)),
    ]),
  ];
};
