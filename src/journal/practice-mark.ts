// What a line of a practice says besides its fact. The first line says which invented bow it is; a later one says what the learner's
// hands truly did, where that is not what the coach was told. So the hidden bow is worked out again from the lines alone.

import { z } from 'zod';
import { KNOBS } from '../content/types.ts';
import { UNITS } from '../maths/units.ts';

const turned = z.strictObject({ knob: z.enum(KNOBS), by: z.number() });
const shot = z.strictObject({
  arrow: z.string().nullable(), nockTurn: z.number(), flying: z.string(),
  at: z.enum(['paper', 'target']), distance: z.strictObject({ value: z.number(), unit: z.enum(UNITS) }),
});

/** Which bow: of a lesson, or by its number alone. */
export const practiceOf = z.strictObject({ lesson: z.string().nullable(), seed: z.int().min(0) });
export type PracticeOf = z.infer<typeof practiceOf>;

export const practiceMark = z.strictObject({
  of: practiceOf.exactOptional(),
  /** What was truly turned with this line, whatever was told; empty: nothing was. */
  turned: z.array(turned).exactOptional(),
  /** What was shot, and at what. */
  shot: shot.exactOptional(),
  /** The arrow whose nock was replaced. */
  newNock: z.string().exactOptional(),
  /** What was to be seen at this question, in words, where the answer says otherwise. */
  overlooked: z.string().exactOptional(),
  /** The learner left here, and asked what was true. */
  ended: z.literal(true).exactOptional(),
});
export type PracticeMark = z.infer<typeof practiceMark>;
