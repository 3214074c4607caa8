// One JSON Schema for each kind of content file: for an editor that completes and checks YAML while it is written.

import { practiceWords } from '../../../src/content/practice-words.ts';
import { chapterFile, FILES } from '../../../src/content/schema.ts';
import type { Content } from '../../../src/content/types.ts';
import type { Descriptions } from './descriptions.ts';
import { jsonSchemaOf, type JsonSchema } from './json-schema.ts';

/** Which comments belong to the objects that stand under a key; '' is the file's own entries. */
const DESCRIBED: Readonly<Record<string, readonly string[]>> = {
  'chapter:': ['StepBase', 'Step'], 'chapter:checks': ['Check'], 'chapter:options': ['ChoiceOption'],
  'knobs:': ['Knob'], 'knobs:books': ['BookRow'], 'ladders:': ['LadderRule'], 'procedure:': ['Content'], 'inspections:options': ['Inspection'],
};

const ABOUT: Readonly<Record<string, string>> = {
  procedure: 'The order: chapters, blocks, step ids; and the tear that is called tuned.',
  chapter: 'Steps in words, each under its id.',
  knobs: 'The adjustments, each once, with their limits and what is believed of each.',
  ladders: 'Which adjustment comes first on which bow. The first rule that fits is taken.',
  inspections: 'Where to look when no adjustment is right.',
  rechecks: 'What is asked again after what, in this order.',
  cautions: 'What can hurt, and how not to be hurt: one caution a line, under its id.',
  glossary: 'The words of the trade as they stand in the texts, one sentence each.',
  sources: 'Where the content is from: each begins with read:, memory: or common practice:.',
  practice: 'What is seen and felt of a practice bow, and the lessons.',
  phrases: 'The coach\'s own sentences, with {holes} that the program fills.',
};

/** Keys under which something of another file is named, and what is offered there. */
const NAMED: Readonly<Record<string, string>> = { cautions: 'cautions', source: 'sources', needs: 'steps', steps: 'steps', cams: 'cams', rest: 'rest', press: 'press' };

/** What the content has today. It is offered; what is new is taken too, and lint tells where nothing is called so. */
function idsOf(content: Content): Readonly<Record<string, readonly string[]>> {
  const answers = (id: string): string[] => { const step = content.steps[id]; return step?.kind === 'choice' ? step.options.map((one) => one.value) : []; };
  return {
    cautions: Object.keys(content.cautions), sources: Object.keys(content.sources), steps: Object.keys(content.steps),
    cams: answers('cams'), rest: answers('rest'), press: answers('press'),
  };
}

/** Every object of a schema, with the key under which it stands. */
function eachObject(json: JsonSchema, under: string, tell: (object: JsonSchema, under: string) => void): void {
  if (json.properties !== undefined) tell(json, under);
  for (const [key, inner] of Object.entries(json.properties ?? {})) eachObject(inner, key, tell);
  for (const inner of [...json.anyOf ?? [], ...json.oneOf ?? []]) eachObject(inner, under, tell);
  if (json.items !== undefined) eachObject(json.items, under, tell);
  if (typeof json.additionalProperties === 'object') eachObject(json.additionalProperties, '', tell);
}

/** The bare texts of a schema, however deep, become `to`: "one of these, or another". Their own rule is what "another" must keep. */
function offer(json: JsonSchema, to: string, definitions: Record<string, JsonSchema>, ids: readonly string[]): void {
  for (const inner of [...json.anyOf ?? [], ...(json.items === undefined ? [] : [json.items])]) offer(inner, to, definitions, ids);
  if (json.type !== 'string' || json.enum !== undefined || json['const'] !== undefined || ids.length === 0) return;
  definitions[to] ??= { anyOf: [{ enum: [...ids] }, { ...json }] };
  for (const key of Object.keys(json)) delete json[key];
  json['$ref'] = `#/definitions/${to}`;
}

const nameOf = (file: string): string => file.replace(/^content\//, '').replace(/\.yaml$/, '');

export function schemas(content: Content, descriptions: Descriptions): ReadonlyMap<string, JsonSchema> {
  const ids = idsOf(content);
  const made = [...Object.entries(FILES).map(([file, schema]) => [nameOf(file), jsonSchemaOf(schema)] as const), ['chapter', jsonSchemaOf(chapterFile)] as const, ['practice', jsonSchemaOf(practiceWords)] as const];
  return new Map(made.map(([kind, json]) => {
    const definitions: Record<string, JsonSchema> = {};
    eachObject(json, '', (object, under) => {
      const fields = object.properties ?? {};
      for (const [key, to] of Object.entries(NAMED)) {
        const field = fields[key];
        // The steps of a chapter file are the steps themselves, and the press of an adjustment is yes or no.
        if (field !== undefined && field.type !== 'object' && field.type !== 'boolean') offer(field, to, definitions, ids[to] ?? []);
      }
      if (kind === 'rechecks') for (const list of Object.values(fields)) offer(list, 'steps', definitions, ids['steps'] ?? []);
      for (const type of DESCRIBED[`${kind}:${under}`] ?? []) {
        for (const [key, text] of descriptions.get(type) ?? []) if (fields[key] !== undefined) fields[key].description ??= text;
      }
    });
    if (kind === 'sources' && typeof json.additionalProperties === 'object') json.additionalProperties.pattern = '^\\s*(read|memory|common practice):';
    const { $schema, ...rest } = json;
    return [kind, { $schema, title: kind, description: ABOUT[kind] ?? '', ...rest, ...(Object.keys(definitions).length > 0 ? { definitions } : {}) }];
  }));
}
