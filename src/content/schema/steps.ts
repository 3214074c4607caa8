// The steps as an author writes them, with what is usual filled in, and their way into `Step`.

import { z } from 'zod';
import { UNITS } from '../../maths/units.ts';
import { GUARDS } from '../types.ts';
import type { Check, Step } from '../types.ts';
import { amount, id, known, line, listOf, paragraphs } from './words.ts';

const guards = listOf(z.enum(GUARDS));
const gateFail = z.enum(['shop', 'fix', 'look-up', 'note']);

const base = {
  about: z.string().min(1, 'empty').exactOptional(),
  pause: z.enum(['talk', 'undrawn', 'draw', 'shoot']),
  when: guards.default([]),
  onDemand: z.boolean().default(false),
  everyTune: z.boolean().default(false),
  effect: z.enum(['chosen', 'measured', 'gate']),
  short: line,
  text: paragraphs.default([]),
  why: paragraphs.default([]),
  cautions: listOf(id).default([]),
  unknown: z.boolean().default(false),
  noDefault: z.boolean().default(false),
};

const option = known({
  value: z.string().min(1, 'empty'),
  label: line,
  gate: z.enum(['pass', 'shop', 'fix', 'look-up', 'note']).exactOptional(),
  say: line.exactOptional(),
  when: guards.exactOptional(),
});

const check = known({
  id,
  label: line,
  how: line,
  fail: gateFail,
  thenDo: line,
  when: guards.default([]),
  source: listOf(id).exactOptional(),
});

/** A step under its id: `steps: { ID: authorStep }`. */
export const authorStep = z.discriminatedUnion('kind', [
  known({
    kind: z.literal('choice'), ...base, source: listOf(id),
    options: z.array(option), thenDo: line.default(''), unknownFail: gateFail.default('look-up'),
  }),
  known({
    kind: z.literal('number'), ...base, source: listOf(id),
    unit: z.enum(UNITS), min: amount, max: amount,
    pass: known({ min: amount.exactOptional(), max: amount.exactOptional() }).exactOptional(),
    fail: gateFail.default('fix'), thenDo: line.default(''),
  }),
  known({ kind: z.literal('confirm'), ...base, source: listOf(id).default([]) }),
  known({ kind: z.literal('text'), ...base, source: listOf(id).default([]) }),
  known({
    kind: z.literal('chunk'), ...base, source: listOf(id).default([]),
    mode: z.enum(['read-do', 'do-confirm']), checks: z.array(check),
  }),
]);
export type AuthorStep = z.output<typeof authorStep>;

export const stepsFile = known({ steps: z.record(id, authorStep) });

/** What the author left out because it follows: the step's own id, what it asks about, and a chunk's sources for its checks. */
export function toStep(stepId: string, author: AuthorStep): Step {
  const about = author.about ?? (author.effect === 'gate' ? `gate:${stepId}` : stepId);
  if (author.kind !== 'chunk') return { ...author, id: stepId, about };
  const checks = author.checks.map((one): Check => ({ ...one, source: one.source ?? author.source }));
  return { ...author, id: stepId, about, checks };
}
