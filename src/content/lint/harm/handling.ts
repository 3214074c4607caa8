// Work that can hurt has its caution at that very step, also in steps that the book does not know by name.

import { error } from '../../problem.ts';
import type { Path, Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import type { Content, Step } from '../../types.ts';
import type { Book } from '../book/shape.ts';

export const handling = (content: Content, where: Where, book: Book): Problem[] =>
  Object.values(content.steps).flatMap((step) => (step.pause === 'talk' ? [] : handled(step, where, book)));

interface Part { readonly text: string; readonly path: Path }

function handled(step: Step, where: Where, book: Book): Problem[] {
  const parts: readonly Part[] = [
    ...[step.short, ...step.text].map((text) => ({ text, path: [] })),
    ...(step.kind === 'chunk' ? step.checks.map((check, index) => ({ text: `${check.label}. ${check.how}`, path: ['checks', index] })) : []),
  ];
  return book.handling.flatMap(({ what, when, cautions, said, pauses }) => {
    if (pauses?.includes(step.pause) === false || cautions.some((id) => step.cautions.includes(id))) return [];
    const bare = parts.find(({ text }) => when.test(text) && said?.test(text) !== true);
    return bare === undefined ? []
      : [error(where(['steps', step.id, ...bare.path]), `"${step.id}" has to do with ${what} and lacks the caution; write cautions: [${cautions[0]}]`)];
  });
}
