// A figure in a text says what it measures, and what states one says where it is from.

import { error } from '../problem.ts';
import type { Path, Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';
import { textsOf, textsOfStep } from './texts.ts';

export const figures = (content: Content, where: Where): Problem[] => [...bare(content, where), ...unsourced(content, where)];

/** `40`, `1,000`, `.340`, `2.5`, `1/32`, `1 1/8`; never a part of a word or of another figure. */
const FIGURE = /(?<![\w.,/{-]|[\w}]-)(?:\d+ \d+\/\d+|\d+\/\d+|\d{1,3}(?:,\d{3})+|\d*\.\d+|\d+)(?![\w/}])/g;
const PART_OF_ONE = /[./]/;
/** What may follow a part of one: a unit, or what it is a part of. Of a whole figure any word may be what is counted. */
const UNIT = /^(-| ?[%°]| (in|ft|yd|mm|cm|m|km|gr|g|kg|lb|lbf|s|min|h|mph|fps|inch|inches|degrees?|turns?|half|twists?|of)\b)/;
const COUNTED = /^(-[a-z]| ?[%°]| [a-z])/i;
const NO_COUNT = /^ (and|or|to|by|is|are|was|where|when|then|than|for|from|on|at|with|but|if|as|the|a|it|you|your|away|off|up|down|back|apart|left|right|high|low)\b/i;
/** What is numbered, and "under 18". */
const NAMED = /\b(arrows?|shafts?|numbers?|numbered|rounds?|steps?|lines?|class|part)( (is|are))?[ \d,]*( (and|or|to) )?$/i;
const GROWN = '18';
const AGE = /\b(under|over) $/i;
const OF_AGE = /^ or (over|older)\b/i;

/** "As many half twists in as out, never more than 6": the word came first. */
const WORD_BEFORE = /\b(twists|turns|inches|yards|feet|grains|pounds|shots)\b/i;

const sentences = (text: string): string[] => text.split(/(?<=[.?]) /);

/** The first figure of a sentence in which no figure says what it measures: "20 to 40 yd" says it for both. */
function bareFigure(sentence: string): string | null {
  let first: string | null = null;
  for (const match of sentence.matchAll(FIGURE)) {
    const [figure] = match;
    const before = sentence.slice(0, match.index);
    const after = sentence.slice(match.index + figure.length);
    if (PART_OF_ONE.test(figure) ? UNIT.test(after) : COUNTED.test(after) && !NO_COUNT.test(after)) return null;
    const age = figure === GROWN && (AGE.test(before) || OF_AGE.test(after));
    if (!age && !NAMED.test(before) && !WORD_BEFORE.test(before)) first ??= figure;
  }
  return first;
}

function bare(content: Content, where: Where): Problem[] {
  // What is asked in a unit says figures in that unit.
  const texts = textsOf(content, (step) => step.kind !== 'number');
  const glossary = Object.entries(content.glossary).map(([id, text]) => ({ text, path: ['glossary', id] }));
  return [...texts, ...glossary].flatMap(({ text, path }) => {
    if (!/\d/.test(text)) return [];
    const figure = sentences(text).map(bareFigure).find((one) => one !== null) ?? null;
    return figure === null ? [] : [error(where(path), `${figure} stands here without a unit; write what it measures or counts, as in "3 in" or "3 shots"`)];
  });
}

/** Of numbers, choices and checks safety.ts tells, whether a figure stands in them or not. */
function unsourced(content: Content, where: Where): Problem[] {
  const found: Problem[] = [];
  const tell = (what: string, source: readonly string[], path: Path): void => {
    if (source.length === 0) found.push(error(where([...path, 'source']), `${what} has no source; name one of content/sources.yaml`));
  };
  for (const step of Object.values(content.steps)) {
    const figure = step.kind === 'confirm' || step.kind === 'text' ? textsOfStep(step).flatMap(({ text }) => text.match(FIGURE) ?? [])[0] : undefined;
    if (figure !== undefined) tell(`"${step.id}" says ${figure} and`, step.source, ['steps', step.id]);
  }
  for (const knob of Object.values(content.knobs)) {
    tell(`the adjustment "${knob.id}"`, knob.source, ['knobs', knob.id]);
    knob.books.forEach((row, index) => { tell(`this row of "${knob.id}"`, row.source, ['knobs', knob.id, 'books', index]); });
  }
  content.ladders.forEach((rule, index) => { tell(`this ladder for ${rule.axis}`, rule.source, ['ladders', index]); });
  for (const one of Object.values(content.inspections)) tell(`the inspection "${one.id}"`, one.source, ['inspections', one.id]);
  return found;
}
