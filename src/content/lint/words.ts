// The tables of words: holes that are closed, and entries that something uses.

import { HOLE } from '../fill.ts';
import { error, warning } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';

export function words(content: Content, where: Where): Problem[] {
  return [...holes(content, where), ...unused(content, where)];
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
