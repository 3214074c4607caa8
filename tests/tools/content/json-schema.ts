// JSON Schema of what an author may write. zod says it of most pieces by itself; what it cannot say is what is taken before a
// piece is read: a fraction for a number, one word for a list.

import { z } from 'zod';

export interface JsonSchema {
  [key: string]: unknown;
  type?: string;
  properties?: Record<string, JsonSchema>;
  items?: JsonSchema;
  additionalProperties?: JsonSchema | boolean;
  anyOf?: JsonSchema[];
  oneOf?: JsonSchema[];
  enum?: unknown[];
  pattern?: string;
  description?: string;
}

/** As `readNumber` reads them: 0.25, "1/32", "-3/16", "1 1/8". */
export const AMOUNT = '^\\s*([+-]?(\\d+(\\.\\d+)?|\\.\\d+)|[+-]?(\\d+ +)?\\d+/0*[1-9]\\d*)\\s*$';

const isPreprocess = (schema: z.core.$ZodType): boolean => {
  const { def } = (schema as z.core.$ZodPipe)._zod;
  return def.type === 'pipe' && def.in._zod.def.type === 'transform';
};

/** In place: zod hands over the object that it goes on with. */
function widen(json: JsonSchema): void {
  const strict: JsonSchema = { ...json };
  for (const key of Object.keys(json)) delete json[key];
  if (strict.type === 'number') json.anyOf = [strict, { type: 'string', pattern: AMOUNT }];
  else if (strict.type === 'array') json.anyOf = [strict.items ?? {}, strict];
  else if (strict.anyOf !== undefined) json.anyOf = [...strict.anyOf, { type: 'string', minLength: 1 }];
  else throw new Error(`a piece that is prepared before it is read has no JSON Schema here yet: ${JSON.stringify(strict)}`);
}

export function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, {
    io: 'input', target: 'draft-7',
    override: ({ zodSchema, jsonSchema }) => {
      const json = jsonSchema as JsonSchema;
      if (isPreprocess(zodSchema)) widen(json);
      // A line is tidied before it is held to be no empty one.
      else if (zodSchema._zod.def.type === 'pipe' && json.type === 'string') json.pattern = '\\S';
    },
  }) as JsonSchema;
}
