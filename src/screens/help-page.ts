// The `?` page: the question in full, why it is asked, the words in it, and the keys.

import type { View } from '../machine/types.ts';
import { adviceCautions, adviceDetails } from './advice-lines.ts';
import { COMMANDS } from './key-table.ts';
import { BLANK, type Line, paragraph, span } from './look.ts';
import { picksOf } from './options.ts';
import type { ScreenState } from './state.ts';

const INDENT = 12;

/** The whole page; the screen shows a part of it. */
export const helpLines = (state: ScreenState, glossary: Readonly<Record<string, string>>, width: number): Line[] => {
  const { ask, advice } = state.view;
  const words = wordsIn(state.view, glossary);
  const sections: readonly (readonly [string, readonly string[]])[] = [
    ['bow', state.view.practice === undefined ? [] : [`PRACTICE on an invented bow: ${state.view.practice.of}.`]],
    ['asked', ask?.text ?? []],
    ['see', state.view.practice?.seen ?? []],
    ['care', [...(ask?.caution ?? []), ...(advice === null ? [] : adviceCautions(advice))]],
    ['why', ask?.why ?? []],
    ['advice', advice === null ? [] : [advice.what, ...adviceDetails(advice)]],
  ];
  return [
    ...sections.flatMap(([name, texts]) => (texts.length === 0 ? [] : [...named(name, texts, width), BLANK])),
    ...words.flatMap(([word, meaning]) => paragraph(span(`  ${word}: `, 'strong'), meaning, width).map(outdent)),
    ...(words.length === 0 ? [] : [BLANK]),
    ...keyLines(state, width),
  ];
};

const named = (name: string, texts: readonly string[], width: number): Line[] =>
  texts.flatMap((text, at) => paragraph(span(`  ${(at === 0 ? name : '').padEnd(7)}`, 'coach'), text, width));

/** A long word would push its meaning far to the right: lines after the first start at a fixed column. */
const outdent = (line: Line, at: number): Line => (at === 0 ? line : [span('    '), ...line.slice(1)]);

const keyLines = (state: ScreenState, width: number): Line[] => [
  ...ANSWERING.flatMap(([keys, text]) => paragraph(span(`  ${keys.padEnd(INDENT - 3)} `, 'strong'), text, width)),
  ...COMMANDS.filter((command) => command.here?.(state) ?? true).flatMap((command) => {
    const may = command.enabled(state);
    return paragraph(span(`  ${command.key.padEnd(INDENT - 3)} `, 'strong'), may === true ? command.help : `${command.help} (not now: ${may})`, width);
  }),
  ...paragraph(span('  '), 'Words may be typed anywhere: a word of danger stops at once, also where its letters are keys.', width),
  ...paragraph(span('  '), 'While words are typed, letters are letters: press Esc, then the key.', width),
];

export const ANSWERING: readonly (readonly [string, string])[] = [
  ['enter', 'take what is chosen or typed'],
  ['arrows', 'choose; on the paper: move the tail by 1/16 in, with Shift by 1/4; on a target: move the star by 1/4 in, with Shift by 1'],
  ['1 to 9', 'choose by number; space marks where several may be picked'],
];

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The words of the trade that this step uses, in the order of the alphabet. */
export const wordsIn = (view: View, glossary: Readonly<Record<string, string>>): [string, string][] => {
  const { ask, advice } = view;
  const text = [
    ...(ask === null ? [] : [ask.short, ...ask.text, ...ask.why, ...ask.caution, ...(picksOf(ask) ?? []).map((pick) => pick.label)]),
    ...(advice === null ? [] : [advice.what, ...adviceDetails(advice), ...advice.caution]),
    ...view.say,
  ].join('\n');
  return Object.entries(glossary)
    .filter(([word]) => new RegExp(`(?<![\\p{L}\\p{N}])${escaped(word)}(?:e?s)?(?![\\p{L}\\p{N}])`, 'iu').test(text))
    .sort(([a], [b]) => a.localeCompare(b, 'en'));
};
