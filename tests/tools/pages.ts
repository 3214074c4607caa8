#!/usr/bin/env node
// Writes the parts of README.md and DEVELOPERS.md that are made from the program itself: npx tsx tests/tools/pages.ts
// A part stands between <!-- made: NAME --> and <!-- end -->. tests/docs/pages.test.ts fails where one is stale.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { HELP } from '../../src/arguments.ts';
import { floorsTable } from './pages/floors-table.ts';
import { keys, plainWords } from './pages/keys.ts';
import { practiceScreen } from './pages/practice.ts';
import { promises } from './pages/promises.ts';
import { session } from './pages/session.ts';
import { sources } from './pages/sources.ts';
import { thresholds } from './pages/thresholds.ts';
import { walkMap } from './pages/walk-map.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const COMMAND = 'npx tsx tests/tools/pages.ts';
export const PAGES = ['README.md', 'DEVELOPERS.md'] as const;

const fenced = (text: string): string => `\`\`\`text\n${text.trimEnd()}\n\`\`\``;

const PARTS: Readonly<Record<string, () => string | Promise<string>>> = {
  commands: () => fenced(HELP),
  keys,
  'plain-words': plainWords,
  session: async () => fenced(await session()),
  practice: () => fenced(practiceScreen()),
  floors: floorsTable,
  walk: () => fenced(walkMap()),
  thresholds,
  promises,
  sources,
};
export const PART_NAMES = Object.keys(PARTS);

const PART = /<!-- made: (\S+) -->\n[\s\S]*?<!-- end -->/g;

/** A page with every part made anew. Throws Error on a part that nobody makes. */
export async function remade(page: string): Promise<string> {
  const made = new Map<string, string>();
  for (const [, name = ''] of page.matchAll(PART)) {
    const make = PARTS[name];
    if (make === undefined) throw new Error(`nothing makes the part "${name}"; the parts are ${PART_NAMES.join(', ')}`);
    made.set(name, await make());
  }
  return page.replace(PART, (_, name: string) => `<!-- made: ${name} -->\n${made.get(name) ?? ''}\n<!-- end -->`);
}

export const partsOf = (page: string): string[] => [...page.matchAll(PART)].map(([, name = '']) => name);
export const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const name of PAGES) writeFileSync(join(ROOT, name), await remade(read(name)));
}
