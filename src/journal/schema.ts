// The shape of one fact as it lies in a journal, checked when a line is read and before one is written.
// Strict where replay depends on it (the fact, its answer, its events); open where only words are kept
// (findings) and in `decided.loop`, which belongs to the loop alone.

import { z } from 'zod';
import { DIRECTIONS, KNOBS } from '../content/types.ts';
import { UNITS } from '../maths/units.ts';
import { ARROW_KNOBS, CHANGED } from '../machine/types.ts';
import type { Answer, Fact, MachineEvent } from '../machine/types.ts';
import type { CURRENT_VERSION } from './versions.ts';

const quantity = z.strictObject({ value: z.number(), unit: z.enum(UNITS) });

const shot = z.union([
  z.strictObject({ missed: z.literal(true) }),
  z.strictObject({ x: z.number(), y: z.number(), called: z.enum(['good', 'bad']).exactOptional() }),
]);

const answer = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('choice'), values: z.array(z.string()) }),
  z.strictObject({ kind: z.literal('number'), value: z.number() }),
  z.strictObject({ kind: z.literal('confirm'), value: z.boolean() }),
  z.strictObject({ kind: z.literal('text'), value: z.string() }),
  z.strictObject({ kind: z.literal('shots'), shots: z.array(shot) }),
  z.strictObject({ kind: z.literal('moved'), moved: z.union([z.enum(['as told', 'not now', 'another', 'at its end']), quantity]) }),
  z.strictObject({ kind: z.literal('not known') }),
]);

const verdict = z.enum([
  'inconsistent', 'gross', 'in tolerance', 'out', 'worse', 'cannot', 'borderline', 'returned', 'not returned',
  'odd arrows', 'many odd', 'set differs',
]);

const event = z.discriminatedUnion('type', [
  z.strictObject({ type: z.enum(['settled', 'skipped', 'farther', 'due', 'clear', 'stop', 'released', 'moved', 'looked', 'put back']) }),
  z.strictObject({ type: z.literal('verdict'), verdict }),
  z.strictObject({ type: z.literal('return'), to: z.enum(['paper', 'broadheads']) }),
  z.strictObject({ type: z.literal('chosen'), choice: z.enum(['accept', 'go on', 'finish step']) }),
]);

// The ledger is worked out from the advice when an answer is "as told", so these fields are checked; the rest is words.
const advice = z.looseObject({
  kind: z.enum(['adjust', 'put-back', 'inspect', 'shop']),
  knob: z.enum([...KNOBS, ...ARROW_KNOBS]).exactOptional(),
  direction: z.enum(DIRECTIONS).exactOptional(),
  amount: quantity.exactOptional(),
  to: quantity.exactOptional(),
  what: z.string(),
  why: z.string(),
  caution: z.array(z.string()),
});

const decided = z.strictObject({
  events: z.array(event),
  say: z.array(z.string()),
  findings: z.array(z.looseObject({ kind: z.string() })),
  advice: advice.nullable().exactOptional(),
  due: z.array(z.string()).exactOptional(),
  loop: z.record(z.string(), z.unknown()).exactOptional(),
});

const gains = z.partialRecord(z.enum(KNOBS), z.strictObject({ mean: z.number(), sd: z.number() }));
const carried = z.strictObject({
  from: z.string(),
  bow: z.string(),
  bowId: z.string().exactOptional(),
  archerId: z.string().exactOptional(),
  answers: z.record(z.string(), answer),
  spread: z.strictObject({ sd: z.number(), df: z.number() }).nullable(),
  gains,
  besides: gains.exactOptional(),
});

const seq = z.int().min(1);
const time = z.string().refine((text) => !Number.isNaN(Date.parse(text)), 'is not a time');
// Which versions are known is looked at before the shape is (read.ts): here any number of a version will do.
const v = z.int().min(1);
const base = { seq, time, v: v.exactOptional(), decided };

export const factSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...base, kind: z.literal('begun'), v, tune: z.string(), engine: z.string(), content: z.string(),
    known: z.array(carried),
  }),
  z.strictObject({ ...base, kind: z.literal('answered'), step: z.string(), about: z.string(), answer }),
  z.strictObject({ ...base, kind: z.literal('corrected'), of: seq, answer }),
  z.strictObject({ ...base, kind: z.literal('wanted-back'), to: z.int().min(0) }),
  z.strictObject({ ...base, kind: z.literal('stopped'), words: z.string() }),
  z.strictObject({ ...base, kind: z.literal('noted'), note: z.string() }),
  z.strictObject({ ...base, kind: z.literal('moved'), knob: z.enum(KNOBS), delta: z.number() }),
  z.strictObject({ ...base, kind: z.literal('changed'), what: z.enum(CHANGED), note: z.string() }),
  z.strictObject({ ...base, kind: z.literal('resumed'), away: z.number(), setAside: z.strictObject({ from: seq, to: seq }).exactOptional() }),
]);

// The compiler holds this page to machine/types.ts: an event, an answer, a kind of fact or a field of one that is added there and
// not here is an error here; so is a version that facts do not carry.
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
type Holds<T extends true> = T;
type Fields<F extends { kind: string }> = { [K in F['kind']]: keyof Extract<F, { kind: K }> };
type Deep<T> = T extends object ? { -readonly [K in keyof T]: Deep<T[K]> } : T;
export type SchemaAgrees = [
  Holds<Same<Deep<MachineEvent>, Deep<z.infer<typeof event>>>>,
  Holds<Same<Deep<Answer>, Deep<z.infer<typeof answer>>>>,
  Holds<Same<Fact['kind'], z.infer<typeof factSchema>['kind']>>,
  Holds<Same<Fields<Fact>, Fields<z.infer<typeof factSchema>>>>,
  Holds<Same<Fact['v'], typeof CURRENT_VERSION | undefined>>,
];
