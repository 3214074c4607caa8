// The tables of words: holes that are closed, and entries that something uses.

import { HOLE } from '../fill.ts';
import { error, warning } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';
import type { Book } from './book/shape.ts';

export function words(content: Content, where: Where, book: Book): Problem[] {
  return [...holes(content, where), ...unused(content, where), ...unexplained(content, where, book)];
}

/** A word of the trade is explained wherever it is used: half of those who read it do so for the first time. */
function unexplained(content: Content, where: Where, book: Book): Problem[] {
  const plain = (word: string): string => word.toLowerCase().replaceAll('-', ' ');
  const explained = new Set(Object.keys(content.glossary).map(plain));
  const texts = shownTexts(content).map(plain).join('\n');
  return book.tradeWords.filter((word) => !explained.has(plain(word)) && new RegExp(`\\b${plain(word)}s?\\b`).test(texts))
    .map((word) => error(where(['glossary']), `"${word}" is a word of the trade that the content uses and the glossary does not explain; write it here, in one sentence`));
}

function holes(content: Content, where: Where): Problem[] {
  return Object.entries(content.phrases).flatMap(([id, phrase]) => (/[{}]/.test(phrase.replace(HOLE, ''))
    ? [error(where(['phrases', id]), `a hole in "${id}" is not whole; write {name} with letters and digits, a small letter first`)] : []));
}

function unused(content: Content, where: Where): Problem[] {
  const texts = shownTexts(content).join('\n').toLowerCase();
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
function shownTexts(content: Content): string[] {
  const steps = Object.values(content.steps).flatMap((step) => [
    step.short, ...step.text, ...step.why,
    ...(step.kind === 'choice' ? step.options.flatMap((one) => [one.label, one.say ?? '']) : []),
    ...(step.kind === 'chunk' ? step.checks.flatMap((one) => [one.label, one.how, one.thenDo]) : []),
    ...(step.kind === 'choice' || step.kind === 'number' ? [step.thenDo] : []),
  ]);
  const knobs = Object.values(content.knobs).flatMap((knob) => [knob.name, knob.words.plus, knob.words.minus, ...knob.how]);
  const inspections = Object.values(content.inspections).flatMap((one) => [
    ...one.say, ...one.options.flatMap((option) => [option.label, option.say]),
  ]);
  return [
    ...content.chapters.flatMap((one) => [one.title, ...one.intro, ...one.blocks.map((block) => block.title)]),
    ...steps, ...knobs, ...inspections, ...content.ladders.map((rule) => rule.shop),
    ...Object.values(content.cautions), ...Object.values(content.phrases),
  ];
}
