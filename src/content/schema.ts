// Which file holds what, and how the parsed files become `Content`. The authors' form is in schema/; the result is types.ts.

import { tableOf } from '../maths/closed.ts';
import { KNOBS } from './types.ts';
import type { Content, Knob, KnobId, Step } from './types.ts';
import {
  cautionsFile, glossaryFile, inspectionsFile, knobsFile, laddersFile, phrasesFile, procedureFile, rechecksFile, sourcesFile,
} from './schema/rest.ts';
import { stepsFile, toStep } from './schema/steps.ts';
import type { z } from 'zod';

export { CAUSES } from './schema/rest.ts';

/** Files that must be there once, by path. */
export const FILES = {
  'content/procedure.yaml': procedureFile,
  'content/knobs.yaml': knobsFile,
  'content/ladders.yaml': laddersFile,
  'content/inspections.yaml': inspectionsFile,
  'content/rechecks.yaml': rechecksFile,
  'content/cautions.yaml': cautionsFile,
  'content/glossary.yaml': glossaryFile,
  'content/sources.yaml': sourcesFile,
  'content/phrases.yaml': phrasesFile,
} as const;
export type FileName = keyof typeof FILES;

/** Any number of these, each with its share of the steps. */
export const CHAPTER_FILE = /^content\/chapters\/[a-z0-9-]+\.yaml$/;
export const chapterFile = stepsFile;

export type Parsed = { readonly [F in FileName]: z.output<(typeof FILES)[F]> };

/** Merges the parsed files. Every knob must be there exactly once and no step id twice: the reader sees to that first. */
export function toContent(parsed: Parsed, chapters: readonly z.output<typeof stepsFile>[]): Content {
  const steps: Record<string, Step> = {};
  for (const chapter of chapters) {
    for (const [stepId, author] of Object.entries(chapter.steps)) steps[stepId] = toStep(stepId, author);
  }
  return {
    ...parsed['content/procedure.yaml'],
    steps,
    knobs: byId(parsed['content/knobs.yaml']),
    ladders: parsed['content/ladders.yaml'],
    inspections: {
      'scatter': { id: 'scatter', ...parsed['content/inspections.yaml'].scatter },
      'gross': { id: 'gross', ...parsed['content/inspections.yaml'].gross },
      'very-gross': { id: 'very-gross', ...parsed['content/inspections.yaml']['very-gross'] },
      'missed': { id: 'missed', ...parsed['content/inspections.yaml'].missed },
      'not-returned': { id: 'not-returned', ...parsed['content/inspections.yaml']['not-returned'] },
      'broadhead-scatter': { id: 'broadhead-scatter', ...parsed['content/inspections.yaml']['broadhead-scatter'] },
      'plumb-bend': { id: 'plumb-bend', ...parsed['content/inspections.yaml']['plumb-bend'] },
      'many-odd': { id: 'many-odd', ...parsed['content/inspections.yaml']['many-odd'] },
      'references': { id: 'references', ...parsed['content/inspections.yaml'].references },
    },
    rechecks: parsed['content/rechecks.yaml'],
    cautions: parsed['content/cautions.yaml'],
    glossary: parsed['content/glossary.yaml'],
    sources: parsed['content/sources.yaml'],
    phrases: parsed['content/phrases.yaml'],
  };
}

function byId(knobs: readonly Knob[]): Readonly<Record<KnobId, Knob>> {
  return tableOf(KNOBS, (id) => {
    const knob = knobs.findLast((one) => one.id === id);
    if (knob === undefined) throw new Error(`adjustment missing: ${id}`);
    return knob;
  });
}
