// Words made less careful: a caution watered down, a draw asked for in passing, the dealer talked away.

import { ASKED_ALONE } from '../../src/content/lint/safety.ts';
import type { Content, Step } from '../../src/content/types.ts';
import { put, without } from './weakening.ts';
import type { Path, Weakening } from './weakening.ts';

export const ofWords = (content: Content): Weakening[] => [
  ...cautions(content), ...howTo(content), ...Object.values(content.steps).flatMap((step) => [...drawing(content, step), ...dealer(content, step), ...said(content, step)]),
  ...inspections(content), ...phrases(content),
];

const sentences = (text: string): string[] => text.split(/(?<=[.;:]) /);

function cautions(content: Content): Weakening[] {
  return Object.entries(content.cautions).flatMap(([id, text]) => [
    { group: 'a caution emptied', name: id, content: put(content, ['cautions', id], '') },
    ...sentences(text).map((part, index, all): Weakening => ({
      group: 'a caution watered down', name: `${id}: without "${part}"`, content: put(content, ['cautions', id], without(all, index).join(' ')),
    })),
  ]);
}

/** Each sentence of how to move it that warns or limits. */
function howTo(content: Content): Weakening[] {
  return Object.values(content.knobs).flatMap((knob) => {
    const all = knob.how.flatMap(sentences);
    return all.flatMap((part, index): Weakening[] => (/\b(never|only|undrawn|before|locks?|again|if it does not|slowly|measure|done when)\b/i.test(part)
      ? [{ group: 'a warning taken out of how it is moved', name: `${knob.id}: without "${part}"`, content: put(content, ['knobs', knob.id, 'how'], [without(all, index).join(' ')]) }]
      : []));
  });
}

/** As an author may put it in passing. */
export const DRAWS = [
  'Draw the bow once, slowly.', 'Come to full draw and hold.', 'Then let down.', 'Pull it back to the stop.', 'Come to anchor and look.',
  'Shoot one arrow.', 'At full draw, see where it points.', 'Now draw.', 'Fire one at the backstop.', 'Hold it drawn for ten seconds.',
] as const;

let turn = 0;
function drawing(content: Content, step: Step): Weakening[] {
  if (step.pause !== 'talk' && step.pause !== 'undrawn') return [];
  const found: Weakening[] = [];
  const add = (where: string, path: Path, before: string): void => {
    for (let k = 0; k < 2; k += 1) {
      const words = DRAWS[turn++ % DRAWS.length] ?? '';
      found.push({ group: 'a draw asked for undrawn', name: `${step.id}${where}: "${words}"`, content: put(content, ['steps', step.id, ...path], `${before} ${words}`.trim()) });
    }
  };
  if (step.text.length > 0) add('', ['text', step.text.length - 1], step.text.at(-1) ?? '');
  if (step.kind === 'chunk') step.checks.forEach((check, index) => add(`/${check.id}`, ['checks', index, 'how'], check.how));
  return found;
}

const friend = (text: string): string => text.replace(/(an )?(authorised )?dealers?\b/gi, 'a friend');
const soothed = (text: string): string => text
  .replace(/\b(do not|never|no|nobody|nothing) (draw|drawn|press|shot|shoot)\b/gi, 'be careful when you $2');

/** What sends somebody to a dealer, said softer. */
function dealer(content: Content, step: Step): Weakening[] {
  const found: Weakening[] = [];
  const add = (where: string, path: Path, text: string): void => {
    for (const [what, softer] of [['dealer', friend(text)], ['no draw', soothed(text)]] as const) {
      if (softer !== text) found.push({ group: 'the dealer talked away', name: `${step.id}${where}: ${what}`, content: put(content, ['steps', step.id, ...path], softer) });
    }
  };
  if (step.kind === 'chunk') step.checks.forEach((check, index) => { if (check.fail === 'shop') add(`/${check.id}`, ['checks', index, 'thenDo'], check.thenDo); });
  if (step.kind === 'number' && step.fail === 'shop') add('', ['thenDo'], step.thenDo);
  if (step.kind === 'choice') {
    if (step.options.some((option) => option.gate === 'shop' && option.say === undefined)) add('', ['thenDo'], step.thenDo);
    step.options.forEach((option, index) => { if (option.gate === 'shop') add(`/${option.value}`, ['options', index, 'say'], option.say ?? ''); });
  }
  return found;
}

function inspections(content: Content): Weakening[] {
  return Object.values(content.inspections).flatMap((one) => one.options.flatMap((option, index): Weakening[] => {
    const name = `${one.id}: ${option.value}`;
    const at = ['inspections', one.id, 'options'];
    return [
      { group: 'a cause no longer named', name, content: put(content, at, without(one.options, index)) },
      ...(option.cause === null ? [] : [{ group: 'a cause that changes nothing', name: `${name} to none`, content: put(content, [...at, index, 'cause'], null) }]),
      ...(option.cause === null || option.cause === 'other' ? []
        : [{ group: 'a cause that changes nothing', name: `${name} to other`, content: put(content, [...at, index, 'cause'], 'other') }]),
      ...(/\bdealer|\bshop\b|dry fire|\bstop shooting/i.test(option.say)
        ? [{ group: 'a finding said softer', name, content: put(content, [...at, index, 'say'], 'Then go on.') }] : []),
    ];
  }));
}

/** Each sentence that tells how one of the five is looked at, or what holds for those who still grow. */
function said(content: Content, step: Step): Weakening[] {
  const found: Weakening[] = [];
  const five = (ASKED_ALONE as readonly string[]).includes(step.id);
  const cut = (where: string, path: Path, text: string, all: boolean): void => {
    sentences(text).forEach((part, index, parts) => {
      const young = /\b(growing|grow|grown|under 18|18 or over)\b/i.test(part);
      if (!young && !all) return;
      const group = young ? 'nothing said of those who still grow' : 'how one of the five is looked at';
      found.push({ group, name: `${step.id}${where}: without "${part}"`, content: put(content, ['steps', step.id, ...path], without(parts, index).join(' ')) });
    });
  };
  step.text.forEach((text, index) => cut('', ['text', index], text, five));
  step.why.forEach((text, index) => cut(' (why)', ['why', index], text, false));
  if (step.kind === 'choice' || step.kind === 'number') cut(' (then)', ['thenDo'], step.thenDo, false);
  if (step.kind === 'choice') step.options.forEach((one, index) => cut(`/${one.value}`, ['options', index, 'say'], one.say ?? '', false));
  if (step.kind === 'chunk') {
    step.checks.forEach((one, index) => {
      for (const key of ['label', 'how', 'thenDo'] as const) cut(`/${one.id} (${key})`, ['checks', index, key], one[key], false);
    });
  }
  return found;
}

/** Sentences of the coach that stop somebody, or ask for work that can hurt, without what they say of it. */
function phrases(content: Content): Weakening[] {
  const careful = /\b(do not (draw|shoot)|not drawn|nothing is shot|authorised dealer|away from your face|dry fire|never shot again|quarter turn|nobody behind|X at both ends|people first|full draw, pointing|broadheads are touched|flex, nock)\b/i;
  return Object.entries(content.phrases).flatMap(([id, text]) => text.split(/(?<=[.]) /).flatMap((part, index, all): Weakening[] => (careful.test(part)
    ? [{ group: 'a sentence of the coach made easier', name: `${id}: without "${part}"`, content: put(content, ['phrases', id], without(all, index).join(' ')) }] : [])));
}
