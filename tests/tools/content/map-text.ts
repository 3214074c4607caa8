// The walk as text: readable at 80 columns, and by ear from top to bottom.

import { broken } from './broken.ts';
import type { Row, StepLine, Walk } from './walk-of.ts';

const ID = 20;
const KIND = 9;
const PAUSE = 9;
const EFFECT = 9;

function step(one: StepLine): string[] {
  const head = `    ${one.id.padEnd(ID)}${one.kind.padEnd(KIND)}${one.pause.padEnd(PAUSE)}${one.effect.padEnd(EFFECT)}`;
  return [...broken(head, one.marks.join('; '), head.length), ...(one.checks.length > 0 ? broken('      checks: ', one.checks.join(', '), 14) : [])];
}

const row = (one: Row, between: string, before = ''): string[] => [
  ...broken('  ', one.name, 4),
  ...broken('    ', `${before}${one.ids.length > 0 ? one.ids.join(between) : 'nothing'}`, 4),
  ...(one.note === '' ? [] : broken('    ', one.note, 4)),
];

const titled = (title: string, about: string, lines: readonly string[]): string[] => [title, '='.repeat(title.length), ...broken('', about, 0), '', ...lines, ''];

export function mapText(walk: Walk): string {
  const chapters = walk.chapters.flatMap((chapter) => [
    `${chapter.id}: ${chapter.title}`,
    ...chapter.blocks.flatMap((block) => [`  ${block.id}: ${block.title}`, ...block.steps.flatMap(step)]),
    '',
  ]);
  return [
    ...titled('The walk', 'Chapters, blocks, and the steps in their order: id, kind, pause, effect, and when it is asked.', chapters),
    ...titled('Steps in no block', 'An adjustment, a list below, or the machine asks them by name.', walk.elsewhere.flatMap(step)),
    ...titled('Asked again', 'After each of these, the steps in this order.', walk.again.flatMap((one) => row(one, ', '))),
    ...titled('Adjustments', 'The steps that each needs first, and the list above that is asked once it was moved.', walk.needs.flatMap((one) => row(one, ', ', 'needs '))),
    ...titled('Ladders', 'Which adjustment comes first on which bow; the first that fits is taken.', walk.ladders.flatMap((one) => row(one, ' > '))),
    ...titled('The machine\'s own places', 'What each event does at each place: event > place.', walk.places),
  ].join('\n').trimEnd().concat('\n');
}
