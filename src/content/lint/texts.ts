// The sentences that an archer may read, each with its place: all but titles, names and the glossary.

import type { Path } from '../problem.ts';
import type { Content, Step } from '../types.ts';

export interface Text { readonly text: string; readonly path: Path }

const listed = (texts: readonly string[], path: Path): Text[] => texts.map((text, index) => ({ text, path: [...path, index] }));

/** Those of the whole content; of the steps, those that are wanted. */
export const textsOf = (content: Content, wanted: (step: Step) => boolean = () => true): Text[] => [
  ...content.chapters.flatMap((one, index) => listed(one.intro, ['chapters', index, 'intro'])),
  ...Object.values(content.steps).filter(wanted).flatMap((step) => textsOfStep(step).map(({ text, path }) => ({ text, path: ['steps', step.id, ...path] }))),
  ...Object.values(content.knobs).flatMap((knob) => listed(knob.how, ['knobs', knob.id, 'how'])),
  ...content.ladders.map((rule, index) => ({ text: rule.shop, path: ['ladders', index, 'shop'] })),
  ...Object.values(content.inspections).flatMap((one) => [
    ...listed(one.say, ['inspections', one.id, 'say']),
    ...one.options.flatMap((option, index) => (['label', 'say'] as const).map((key) => ({ text: option[key], path: ['inspections', one.id, 'options', index, key] }))),
  ]),
  ...(['cautions', 'phrases'] as const).flatMap((root) => Object.entries(content[root]).map(([id, text]) => ({ text, path: [root, id] }))),
];

/** Those of one step, by their place in it. */
export function textsOfStep(step: Step): Text[] {
  const own: Text[] = [{ text: step.short, path: ['short'] }, ...listed(step.text, ['text']), ...listed(step.why, ['why'])];
  switch (step.kind) {
    case 'chunk':
      return [...own, ...step.checks.flatMap((one, index) => (['label', 'how', 'thenDo'] as const).map((key) => ({ text: one[key], path: ['checks', index, key] })))];
    case 'choice':
      return [
        ...own,
        ...step.options.flatMap((one, index) => (['label', 'say'] as const).flatMap((key) => (one[key] === undefined ? [] : [{ text: one[key], path: ['options', index, key] }]))),
        { text: step.thenDo, path: ['thenDo'] },
      ];
    case 'number':
      return [...own, { text: step.thenDo, path: ['thenDo'] }];
    case 'confirm':
    case 'text':
      return own;
  }
}
