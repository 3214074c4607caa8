// The pipe, version 1, as schemas of both directions. `--pipe --schema` prints them; tests hold every line out against them.

import { z } from 'zod';
import { AXES, DIRECTIONS, KNOBS } from '../content/types.ts';
import { ERRORS } from '../errors.ts';
import { ARROW_KNOBS, CHANGED, CHAPTERS } from '../machine/types.ts';
import { namesOf } from '../maths/closed.ts';
import { UNITS } from '../maths/units.ts';

export const PIPE_VERSION = 1;

// ---- in ------------------------------------------------------------------------------------------------------------

const written = z.union([z.number(), z.string()]).describe('a number in the unit asked for, or as an archer writes it: "1/32", "1 1/8 in", "3 mm"');
const amountIn = z.union([written, z.strictObject({ value: z.number(), unit: z.enum(UNITS) })]);
const shotIn = z.union([
  z.strictObject({ x: written, y: written, called: z.enum(['good', 'bad']).optional() })
    .describe('tail minus point in inches, right and high positive, as the archer sees it; called before the hole was looked at'),
  z.strictObject({ missed: z.literal(true) }),
  z.string().describe('in words: "high 1/2 left 1/8"'),
]);
/** What an answer may look like. The session reads it against the ask that stands, and says what is wrong in its own words. */
const answerIn = z.union([
  z.string(), z.number(), z.boolean(), z.array(z.string()).describe('several options, where `many` is true'),
  shotIn, z.array(shotIn), amountIn,
]);

const requests = {
  answer: z.strictObject({ answer: answerIn, hands: z.literal('still').optional().describe('in practice: it is said, and nothing is turned') }),
  back: z.strictObject({ back: z.union([z.boolean(), z.int().positive()]) })
    .describe('true: correct the last answer, once more for the one before; a number: correct the answer of that line (its seq); false: leave it as it was'),
  putBack: z.strictObject({ putBack: z.union([z.literal(true), z.int().positive()]) })
    .describe('undo the last adjustment on the bow, or bring the bow back to what it was before that line'),
  stop: z.strictObject({ stop: z.string() }).describe('something is wrong: stop at once, in words'),
  note: z.strictObject({ note: z.string() }),
  moved: z.strictObject({ moved: z.strictObject({ knob: z.enum(KNOBS), direction: z.enum(DIRECTIONS), amount: amountIn }) })
    .describe('a change on the bow that was not advised'),
  changed: z.strictObject({ changed: z.enum(CHANGED), note: z.string().optional() }),
  turned: z.strictObject({ turned: z.strictObject({ knob: z.enum(KNOBS), direction: z.enum(DIRECTIONS), amount: amountIn }) })
    .describe('in practice: something is turned, and the coach is not told'),
  debrief: z.strictObject({ debrief: z.literal(true) }).describe('in practice: it is ended, and what was true is told'),
  quit: z.strictObject({ quit: z.literal(true) }),
} as const;

export type RequestName = keyof typeof requests;
export const REQUESTS = requests;
export const inSchema = z.union(Object.values(requests));

// ---- out -----------------------------------------------------------------------------------------------------------

const list = <T extends z.ZodType>(item: T) => z.array(item).readonly();
const words = list(z.string());
const quantity = z.strictObject({ value: z.number(), unit: z.enum(UNITS) });
const point = z.strictObject({ x: z.number(), y: z.number() });

const shot = z.union([
  point.extend({ called: z.enum(['good', 'bad']).optional() }),
  z.strictObject({ missed: z.literal(true) }),
]);
const answer = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('choice'), values: words }),
  z.strictObject({ kind: z.literal('number'), value: z.number() }),
  z.strictObject({ kind: z.literal('confirm'), value: z.boolean() }),
  z.strictObject({ kind: z.literal('text'), value: z.string() }),
  z.strictObject({ kind: z.literal('shots'), shots: list(shot) }),
  z.strictObject({ kind: z.literal('moved'), moved: z.union([z.literal(['as told', 'not now', 'another', 'at its end']), quantity]) }),
  z.strictObject({ kind: z.literal('not known') }),
]);

const askBase = {
  about: z.string().describe('what is asked: one of the names under `about`'),
  step: z.string(),
  short: z.string(),
  text: words, why: words, caution: words,
  unknown: z.literal(true).optional().describe('"not known" is an answer: {"answer":"not known"}'),
  suggestion: answer.optional().describe('an earlier answer that no longer counts, to be given again if it still holds'),
  practice: z.literal(true).optional().describe('the bow is invented: this arrow is shot by the program, or hands need not do what is told'),
  correcting: z.number().optional().describe('the seq of the answer that is being corrected'),
};
const shotPlan = {
  distance: quantity, shaft: z.enum(['fletched', 'unfletched']), head: z.enum(['field', 'broadhead']),
  arrow: z.string().nullable(), nockTurn: z.number(),
  shots: z.strictObject({ taken: z.number(), wanted: z.number() }),
  axis: z.enum(AXES).optional(),
};
const option = z.strictObject({ value: z.string(), label: z.string(), pass: z.literal(true).optional() });
const MANY = 'several options may be picked; where one has `pass` it says that all are true, and the others are picked when they are NOT true or not known';
const range = z.strictObject({ min: z.number().optional(), max: z.number().optional() });

export const askSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...askBase, kind: z.literal('choice'), options: list(option), many: z.literal(true).optional().describe(MANY) }),
  z.strictObject({ ...askBase, kind: z.literal('number'), unit: z.enum(UNITS), min: z.number(), max: z.number(), pass: range.optional() }),
  z.strictObject({ ...askBase, kind: z.literal('tear'), ...shotPlan }),
  z.strictObject({ ...askBase, kind: z.literal('impact'), ...shotPlan }),
  z.strictObject({ ...askBase, kind: z.literal('amount'), unit: z.enum(UNITS), max: z.number() }),
  z.strictObject({ ...askBase, kind: z.literal('confirm') }),
  z.strictObject({ ...askBase, kind: z.literal('text') }),
]);

const advice = z.strictObject({
  kind: z.enum(['adjust', 'put-back', 'inspect', 'shop']),
  knob: z.enum([...KNOBS, ...ARROW_KNOBS]).optional(), arrow: z.string().optional(), direction: z.enum(DIRECTIONS).optional(),
  amount: quantity.optional(), to: quantity.optional(),
  expect: point.extend({ sdX: z.number(), sdY: z.number() }).optional(),
  trial: z.literal(true).optional(), press: z.boolean().optional(),
  what: z.string(), why: z.string(), wrongIf: z.string().optional(), undo: z.string().optional(), caution: words,
});

const finding = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('gate'), gate: z.string(), result: z.enum(['passed', 'failed', 'unknown', 'noted']) }),
  z.strictObject({
    kind: z.literal('axis'), axis: z.enum(AXES), chapter: z.enum(CHAPTERS),
    result: z.enum(['tuned', 'cannot', 'accepted', 'inconsistent']), chance: z.number().optional(),
  }),
  z.strictObject({ kind: z.literal('knob'), knob: z.enum(KNOBS), result: z.enum(['learned', 'no response', 'limit']) }),
  z.strictObject({ kind: z.literal('arrow'), arrow: z.string(), class: z.enum(['first choice', 'practice', 'repair', 'never again']), why: z.string() }),
  z.strictObject({ kind: z.literal('cause'), cause: z.enum(['contact', 'grip', 'face', 'loose part', 'one arrow', 'tired archer', 'other']) }),
]);

const record = z.strictObject({
  title: z.string(), invented: z.literal(true).optional(),
  sections: list(z.strictObject({ title: z.string(), rows: list(z.strictObject({ name: z.string(), value: z.string() })) })),
});

const hole = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sheet'), tail: point.describe('from the point\'s hole to where the cuts of the vanes meet, as a rule reads'), vanes: z.literal([3, 4]) }),
  z.strictObject({ kind: z.literal('target'), at: point.describe('from the dot that was aimed at, as a rule reads') }),
  z.strictObject({ kind: z.literal('none') }),
]);
const practice = z.strictObject({
  of: z.string().describe('which invented bow this is'), seen: words.describe('what is seen at it; the question is answered from that'),
  shot: z.strictObject({ felt: z.string(), hole }).optional().describe('the arrow that is asked for, as it was shot'),
  debrief: record.optional().describe('at the end: what was true'),
});

const walk = {
  v: z.literal(PIPE_VERSION), seq: z.number().describe('the number of the last journal line'),
  chapter: z.enum([...CHAPTERS, 'stopped']), step: z.string(), say: words,
  bow: z.partialRecord(z.enum(KNOBS), quantity).describe('the setting of every moved knob against the baseline'),
  practice: practice.optional().describe('present in practice, and never with a real bow'),
  advice: advice.nullable(), findings: list(finding), noted: z.literal(true).optional(),
};
const codes = namesOf(ERRORS);

export const outSchema = z.discriminatedUnion('type', [
  z.strictObject({ ...walk, type: z.literal('ask'), ask: askSchema.nullable() }),
  z.strictObject({ ...walk, type: z.literal('stop'), ask: askSchema.nullable() }),
  z.strictObject({ ...walk, type: z.literal('done'), ask: askSchema.nullable(), record: record.optional() }),
  z.strictObject({ v: z.literal(PIPE_VERSION), type: z.literal('error'), seq: z.number(), code: z.enum(codes), message: z.string(), ask: askSchema.nullable() }),
  z.strictObject({ v: z.literal(PIPE_VERSION), type: z.literal('left'), seq: z.number() }),
]);
export type OutLine = z.infer<typeof outSchema>;

/** Everything a program needs to know before it talks to the pipe, as one JSON object. */
export function pipeSchema(about: readonly string[]): Record<string, unknown> {
  return {
    v: PIPE_VERSION,
    in: z.toJSONSchema(inSchema),
    out: z.toJSONSchema(outSchema),
    about,
    units: UNITS,
    errors: Object.entries(ERRORS).map(([code, { says, exit }]) => ({ code, says, exit })),
  };
}
