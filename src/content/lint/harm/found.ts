// What cautions say, what an inspection may find, and where a failed gate sends people.

import { error } from '../../problem.ts';
import type { Path, Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import type { Content, Step } from '../../types.ts';
import type { Book } from '../book/shape.ts';
import { plain } from './adjusting.ts';
import { words } from './book-words.ts';

export const found = (content: Content, where: Where, book: Book): Problem[] =>
  [...cautions(content, where, book), ...told(content, where, book), ...inspections(content, where, book), ...Object.values(content.steps).flatMap((step) => dealer(step, where))];

function cautions(content: Content, where: Where, book: Book): Problem[] {
  return [...says('caution', 'cautions', content.cautions, book.cautions, where), ...says('phrase', 'phrases', content.phrases, book.phrases, where)];
}

function says(what: string, root: string, given: Readonly<Record<string, string>>, must: Readonly<Record<string, readonly RegExp[]>>, where: Where): Problem[] {
  return Object.entries(must).flatMap(([id, patterns]) => {
    const text = given[id];
    if (text === undefined) return [error(where([root]), `the ${what} "${id}" is missing; write it`)];
    return patterns.filter((one) => !one.test(text)).map((one) => error(where([root, id]), `the ${what} "${id}" does not say "${plain(one)}"; write it`));
  });
}

function told(content: Content, where: Where, book: Book): Problem[] {
  return Object.entries(book.says).flatMap(([id, must]) => {
    const step = content.steps[id];
    if (step === undefined) return [];
    const said = wordsOf(step);
    return must.filter((one) => !one.test(said)).map((one) => error(where(['steps', id]), `"${id}" does not say "${plain(one)}"; write it where it is asked`));
  });
}

const wordsOf = (step: Step): string => [
  step.short, ...step.text, ...step.why,
  ...(step.kind === 'choice' || step.kind === 'number' ? [step.thenDo] : []),
  ...(step.kind === 'choice' ? step.options.flatMap((one) => [one.label, one.say ?? '']) : []),
  ...(step.kind === 'chunk' ? step.checks.flatMap((one) => [one.label, one.how, one.thenDo]) : []),
].join(' ');

function inspections(content: Content, where: Where, book: Book): Problem[] {
  return Object.values(content.inspections).flatMap((one) => words(book.found[one.id]).flatMap((word) => {
    const [value = '', named] = word.split('=');
    const cause = named?.replace('_', ' ') ?? null;
    const index = one.options.findIndex((option) => option.value === value);
    const option = one.options[index];
    const at: Path = ['inspections', one.id, 'options'];
    if (option === undefined) return [error(where(at), `"${one.id}" cannot find "${value}"; write that option${cause === null ? '' : ` with cause: ${cause}`}`)];
    const problems: Problem[] = [];
    if (cause !== null && option.cause !== cause) problems.push(error(where([...at, index, 'cause']), `"${value}" in "${one.id}" has the cause ${option.cause ?? 'none'}, and less is looked at again; write cause: ${cause}`));
    const must = book.foundSays[`${one.id}/${value}`];
    if (must?.test(option.say) === false) problems.push(error(where([...at, index, 'say']), `"${value}" in "${one.id}" does not say "${plain(must)}"; write it`));
    return problems;
  }));
}

const DEALER = /\bdealer\b/i;
const HOLDS_BACK = /\b(no|not|never|nobody)\b[^.]*\b(draw|draws|drawn|shot|shoot)\b/i;

/** What only a dealer may release says so, and that nobody draws it until then. */
function dealer(step: Step, where: Where): Problem[] {
  const look = (text: string, what: string, path: Path): Problem[] => [
    ...(DEALER.test(text) ? [] : [error(where(['steps', step.id, ...path]), `${what} is for an authorised dealer and does not say so; name the dealer`)]),
    ...(HOLDS_BACK.test(text) ? [] : [error(where(['steps', step.id, ...path]), `${what} is for an authorised dealer; say that nobody draws it until then`)]),
  ];
  if (step.kind === 'chunk') return step.checks.flatMap((check, index) => (check.fail === 'shop' ? look(check.thenDo, `"${check.id}"`, ['checks', index, 'thenDo']) : []));
  if (step.effect !== 'gate') return [];
  if (step.kind === 'number') return step.fail === 'shop' ? look(step.thenDo, `"${step.id}"`, ['thenDo']) : [];
  if (step.kind !== 'choice') return [];
  return step.options.flatMap((option, index) => (option.gate !== 'shop' ? []
    : look(option.say ?? step.thenDo, `"${option.value}" of "${step.id}"`, option.say === undefined ? ['thenDo'] : ['options', index, 'say'])));
}
