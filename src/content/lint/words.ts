// The tables of words: holes that are closed, and entries that something uses.

import { HOLE } from '../fill.ts';
import { error, warning } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';
import type { Book } from './book/shape.ts';
import { textsOf } from './texts.ts';

export function words(content: Content, where: Where, book: Book): Problem[] {
  const texts = shownTexts(content).join('\n').toLowerCase();
  return [...holes(content, where), ...unused(content, where, texts), ...unexplained(content, where, book, texts)];
}

/** A word of the trade is explained wherever it is used: half of those who read it do so for the first time. */
function unexplained(content: Content, where: Where, book: Book, texts: string): Problem[] {
  const plain = (word: string): string => word.toLowerCase().replaceAll('-', ' ');
  const explained = new Set(Object.keys(content.glossary).map(plain));
  const shown = plain(texts);
  return book.tradeWords.filter((word) => !explained.has(plain(word)) && new RegExp(`\\b${plain(word)}s?\\b`).test(shown))
    .map((word) => error(where(['glossary']), `"${word}" is a word of the trade that the content uses and the glossary does not explain; write it here, in one sentence`));
}

function holes(content: Content, where: Where): Problem[] {
  return Object.entries(content.phrases).flatMap(([id, phrase]) => (/[{}]/.test(phrase.replace(HOLE, ''))
    ? [error(where(['phrases', id]), `a hole in "${id}" is not whole; write {name} with letters and digits, a small letter first`)] : []));
}

function unused(content: Content, where: Where, texts: string): Problem[] {
  const used = new Set<string>();
  const cautions = new Set<string>();
  for (const step of Object.values(content.steps)) {
    step.cautions.forEach((id) => cautions.add(id));
    [...step.source, ...(step.kind === 'chunk' ? step.checks.flatMap((one) => one.source) : [])].forEach((id) => used.add(id));
  }
  for (const knob of Object.values(content.knobs)) {
    knob.cautions.forEach((id) => cautions.add(id));
    knob.source.forEach((id) => used.add(id));
  }
  for (const one of [...content.ladders, ...Object.values(content.inspections)]) one.source.forEach((id) => used.add(id));
  const idle = (root: 'glossary' | 'cautions' | 'sources', is: (key: string) => boolean): Problem[] =>
    Object.keys(content[root]).filter((key) => !is(key)).map((key) =>
      warning(where([root, key]), `nothing uses "${key}"; use it or take it out`));
  return [
    ...idle('glossary', (key) => texts.includes(key.toLowerCase().replaceAll('-', ' ')) || texts.includes(key.toLowerCase())),
    ...idle('cautions', (key) => cautions.has(key)),
    ...idle('sources', (key) => used.has(key)),
  ];
}

/** Every text that an archer may read, but the glossary itself. */
const shownTexts = (content: Content): string[] => [
  ...content.chapters.flatMap((one) => [one.title, ...one.blocks.map((block) => block.title)]),
  ...Object.values(content.knobs).flatMap((knob) => [knob.name, knob.words.plus, knob.words.minus]),
  ...textsOf(content).map(({ text }) => text),
];
