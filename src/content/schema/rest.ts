// Everything in content but the steps: order, adjustments, ladders, inspections, and the tables of words.

import { z } from 'zod';
import { tableOf } from '../../maths/closed.ts';
import { UNITS } from '../../maths/units.ts';
import { AXES, DIRECTIONS, KNOBS, TRIGGERS } from '../types.ts';
import { amount, id, known, line, listOf, paragraphs } from './words.ts';

const block = known({ id, title: line, steps: listOf(id) });

const between = known({ low: amount, high: amount });

export const procedureFile = known({
  version: z.string().min(1, 'empty'),
  tolerance: known({ height: between, side: between }),
  chapters: z.array(known({ id, title: line, intro: paragraphs.default([]), blocks: z.array(block) })),
});

const knobId = z.enum(KNOBS);

const anyOrList = z.preprocess(
  (given) => (typeof given === 'string' && given !== 'any' ? [given] : given),
  z.union([z.literal('any'), z.array(z.string().min(1, 'empty'))]),
);

const bookRow = known({
  cams: anyOrList.default('any'), rest: anyOrList.default('any'), change: amount, per: amount, wrongSign: amount, dead: amount, source: listOf(id),
});

const knob = known({
  id: knobId,
  name: line,
  axis: z.enum([...AXES, 'none']),
  unit: z.enum(UNITS),
  plus: z.enum(DIRECTIONS),
  minus: z.enum(DIRECTIONS),
  words: known({ plus: line, minus: line }),
  how: paragraphs,
  book: known({ change: amount, per: amount }).nullable(),
  books: z.array(bookRow).default([]),
  plausible: amount,
  wrongSign: amount,
  dead: amount,
  first: amount,
  firstWhenFar: known({ over: amount, step: amount }).nullable().default(null),
  later: amount,
  soft: amount,
  hard: amount,
  smallest: amount,
  from: z.enum(['start', 'maker']),
  press: z.boolean(),
  cautions: listOf(id).default([]),
  needs: listOf(id).default([]),
  trigger: z.enum(TRIGGERS),
  alternative: knobId.nullable().default(null),
  source: listOf(id),
});
export const knobsFile = z.array(knob);

export const laddersFile = z.array(known({
  axis: z.enum(AXES),
  cams: anyOrList,
  press: anyOrList,
  rungs: z.array(known({ knob: knobId, soft: amount.exactOptional(), trial: z.boolean().exactOptional() })),
  shop: line,
  source: listOf(id),
}));

/** What an inspection may find: the causes that the walk knows. */
export const CAUSES = ['contact', 'grip', 'face', 'loose part', 'one arrow', 'tired archer', 'other'] as const;

const inspection = known({
  say: paragraphs,
  options: z.array(known({ value: z.string().min(1, 'empty'), label: line, cause: z.enum(CAUSES).nullable(), say: line })),
  source: listOf(id),
});

export const inspectionsFile = known({
  'scatter': inspection, 'gross': inspection, 'very-gross': inspection, 'missed': inspection, 'not-returned': inspection,
  'broadhead-scatter': inspection, 'plumb-bend': inspection, 'many-odd': inspection, 'references': inspection,
});

const stepIds = listOf(id);
export const rechecksFile = known(tableOf(TRIGGERS, () => stepIds));

export const cautionsFile = z.record(id, line);
export const phrasesFile = z.record(id, line);
/** The words of the trade, as they stand in the texts. */
export const glossaryFile = z.record(z.string().min(1, 'empty'), line);
export const sourcesFile = z.record(id, line.refine((text) => /^(read|memory|common practice):/.test(text), 'origin'));
