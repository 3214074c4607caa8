// The shape of one expert case, as a technician writes it in YAML; strict, so that a slip of the pen is a failed test.

import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';
import { DIRECTIONS, KNOBS } from '../../src/content/types.ts';
import { CHANGED } from '../../src/machine/types.ts';
import { parseQuantity } from '../../src/maths/fractions.ts';

const word = z.union([z.string(), z.number(), z.array(z.string())]);
const pair = z.tuple([z.number(), z.number()]);
/** `1/32`, in the adjustment's own unit: inches, half twists in pairs, turns. */
const amount = z.union([z.string(), z.number()]).transform((raw, context) => {
  const read = parseQuantity(String(raw), 'in');
  if (read.ok) return read.value;
  context.addIssue(read.why);
  return z.NEVER;
});
const move = z.strictObject({ knob: z.enum(KNOBS), way: z.enum(DIRECTIONS), size: amount });

/** What happened before the step that is asked for, in order. */
const seen = z.union([
  /** The mean of as many good shots as the coach wants here; the shots lie `spread` apart round it. */
  z.strictObject({ tear: pair, spread: z.number().positive().optional() }),
  /** Exactly these shots and no more. */
  z.strictObject({ shots: z.array(z.union([pair, z.strictObject({ x: z.number(), y: z.number(), called: z.literal('bad') }), z.literal('missed')])).min(1) }),
  /**
   * Where the two kinds landed from their dots at this distance, inches: field points or fletched arrows (`usual`), broadheads
   * or unfletched shafts (`other`). As many of each as the coach wants, round their middle as far as `spread` and `spreadOther`
   * say. Paper before it, where there is any, was in tune.
   */
  z.strictObject({ impacts: z.strictObject({ usual: pair, other: pair, spread: z.number().positive(), spreadOther: z.number().positive().optional() }) }),
  /** Down a plumb line: how far right of it per yard beyond 20, inches. */
  z.strictObject({ line: z.strictObject({ drift: z.number(), spread: z.number().positive() }) }),
  /** Each arrow of the set once through paper, the bow in tune: all alike but for one, by its number. */
  z.strictObject({ round: z.strictObject({ all: pair, arrow: z.string(), tear: pair }) }),
  /**
   * Arrows by their number, as long as the coach wants shots of single arrows: `odd` where they tear elsewhere, the others at
   * `all`; each shot lies `drift` further on than the one before.
   */
  z.strictObject({ arrows: z.strictObject({ all: pair, odd: z.record(z.string(), pair).default({}), spread: z.number().nonnegative().default(0.05), drift: pair.default([0, 0]) }) }),
  /** Exactly these impacts of each kind, in the order of the shots, and no more. */
  z.strictObject({ hits: z.strictObject({ usual: z.array(pair).min(1), other: z.array(pair).min(1) }) }),
  /** A change of arrows that the coach advises: done as told, not possible, or done but for one nock that does not turn. */
  z.strictObject({ change: z.enum(['done', 'cannot', 'one stays']) }),
  /** All that is asked up to this question, itself included, is answered as the case says; a stop on the way is seen to. */
  z.strictObject({ answered: z.string() }),
  /** What was found where the coach asks for a cause, or what was seen on an arrow. */
  z.strictObject({ found: z.string() }),
  /** A change that was made: as advised where the coach advises this very knob and side, else unasked. */
  z.strictObject({ moved: move }),
  /** A part that is another one now, or what became of the bow, told unasked. */
  z.strictObject({ changed: z.enum(CHANGED) }),
  /** Hours until the program is started again. */
  z.strictObject({ later: z.number().positive() }),
  z.strictObject({ stop: z.string() }),
]);

const sizes = z.tuple([amount, amount]);
const step = z.strictObject({ knob: z.enum(KNOBS), way: z.enum(DIRECTIONS), size: sizes });

const next = z.discriminatedUnion('kind', [
  /** One change on the bow; `also` is the equally right one, offered on "not now". */
  z.strictObject({ kind: z.literal('adjust'), ...step.shape, trial: z.boolean().optional(), words: z.string().optional(), also: step.optional() }),
  z.strictObject({ kind: z.literal('put-back'), ...step.shape, proof: z.number().int().optional() }),
  /** Nothing is shot; `out` is the question that leads on. */
  z.strictObject({ kind: z.literal('stop'), out: z.string(), words: z.string() }),
  /** No adjustment: something is looked for. */
  z.strictObject({ kind: z.literal('look'), words: z.string(), fresh: z.number().int().optional() }),
  /** Only more shots. */
  z.strictObject({ kind: z.literal('shoot'), more: z.number().int(), distance: z.number().optional(), words: z.string().optional() }),
  /** One arrow again and again, each time after a reference that is another one; nothing is changed. */
  z.strictObject({ kind: z.literal('shoot again'), arrow: z.string(), times: z.number().int(), words: z.string() }),
  z.strictObject({ kind: z.literal('shop'), words: z.string() }),
  /** One arrow's nock: another one, or turned by so many vanes; the bow is left alone. */
  z.strictObject({ kind: z.literal('nock'), arrow: z.string(), change: z.enum(['new', 'turn']), vanes: z.number().int().optional(), words: z.string().optional() }),
  /** What becomes of an arrow, and why. */
  z.strictObject({ kind: z.literal('class'), arrow: z.string(), class: z.enum(['first choice', 'practice', 'repair', 'never again']), words: z.string() }),
  /** Something is asked or measured before anything else. */
  z.strictObject({ kind: z.literal('ask'), about: z.array(z.string()).min(1), words: z.string().optional() }),
  /** In tolerance: the bow is left alone and a second distance confirms it. */
  z.strictObject({ kind: z.literal('leave'), words: z.string() }),
]);

const schema = z.array(z.strictObject({
  situation: z.string(),
  /** Answers, by what is asked, that differ from the usual archer's; `once` only the first time. */
  bow: z.record(z.string(), word).default({}),
  once: z.record(z.string(), word).default({}),
  /** Checks of a list that are not so, or that nobody can tell, by their names in content; once mended they are so. */
  checks: z.record(z.string(), z.enum(['not so', 'not known'])).default({}),
  /** The bow was tuned here before, to the end and with nothing found. */
  known: z.boolean().default(false),
  seen: z.array(seen).default([]),
  next,
  why: z.string(),
  source: z.string(),
}));

export type Case = z.infer<typeof schema>[number];
export type Seen = z.infer<typeof seen>;
export type Next = z.infer<typeof next>;

export const readCases = (file: string): readonly Case[] => schema.parse(parse(readFileSync(new URL(file, import.meta.url), 'utf8')));
