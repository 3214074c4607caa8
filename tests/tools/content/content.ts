#!/usr/bin/env node
// The tool for who writes content: lints it as the build does, draws the map of the walk, and writes JSON Schemas for an editor.
// `npm run content`; `npm run content -- --help` says the rest.

import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { checkContent } from '../../../src/content/lint.ts';
import { readPracticeWords } from '../../../src/content/practice-words.ts';
import { error, sayProblem, type Problem } from '../../../src/content/problem.ts';
import type { Content } from '../../../src/content/types.ts';
import { contentFiles } from '../compile-content.mjs';
import { descriptionsOf } from './descriptions.ts';
import { mapSvg } from './map-svg.ts';
import { mapText } from './map-text.ts';
import { schemas } from './schemas.ts';
import { walkOf } from './walk-of.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const PRACTICE = 'content/practice.yaml';

export const HELP = `npm run content [-- OPTIONS]

Checks content/ as the build does, draws the walk, and writes schemas for an
editor. With a mistake in the content every mistake is told, one a line as
FILE:LINE:COLUMN: what is wrong and what to write; nothing is written then,
and the command ends with 1.

  --from FOLDER   the folder that holds content/    (this repository)
  --to FOLDER     where to write                    (authoring/ here)
  --help          this page

It writes
  map.txt         the walk as text: chapters, blocks, steps; what is asked
                  again after what; adjustments, ladders, the machine's places
  map.svg         the same as a drawing
  schemas/*.json  one JSON Schema for each kind of content file

The map is printed too. How to write a step: content/README.md.`;

interface Out { readonly code: number; readonly out: string; readonly err: string }

/** Everything that the command does, but for printing. */
export function run(args: readonly string[]): Out {
  const fail = (err: string): Out => ({ code: 1, out: '', err });
  let given: { help?: boolean | undefined; from?: string | undefined; to?: string | undefined };
  try {
    given = parseArgs({ args: [...args], options: { help: { type: 'boolean', short: 'h' }, from: { type: 'string' }, to: { type: 'string' } } }).values;
  } catch (caught) {
    return fail(`${(caught instanceof Error ? caught.message : String(caught)).split(/[.\n]/)[0] ?? ''}; the options are --from, --to and --help: try npm run content -- --help`);
  }
  if (given.help === true) return { code: 0, out: HELP, err: '' };
  const from = resolve(given.from ?? ROOT);
  const to = resolve(given.to ?? join(ROOT, 'authoring'));
  if (!existsSync(join(from, 'content'))) return fail(`there is no folder content in ${from}; name the folder that holds it: --from FOLDER`);
  if (!existsSync(dirname(to))) return fail(`there is no folder ${dirname(to)} to write into; make it, or name another: --to FOLDER`);
  if (existsSync(to) && !statSync(to).isDirectory()) return fail(`${to} is a file, and a folder is written; name another: --to FOLDER`);
  const { content, problems } = checked(from);
  const told = problems.map(sayProblem).join('\n');
  const errors = problems.filter((one) => one.level === 'error').length;
  if (content === null || errors > 0) return fail(`${told}\n${errors === 1 ? 'one mistake' : `${errors} mistakes`}; nothing was written`);
  const files = made(content);
  try {
    // One folder at a time: making a whole path at once never comes back where the system refuses it half-way.
    for (const folder of [to, join(to, 'schemas')]) if (!existsSync(folder)) mkdirSync(folder);
    for (const [name, text] of files) writeFileSync(join(to, name), text);
  } catch (caught) {
    return fail(`nothing can be written into ${to} (${caught instanceof Error && 'code' in caught ? String(caught.code) : 'no reason given'}); name another folder: --to FOLDER`);
  }
  const written = [...files.keys()].map((name) => `  ${relative(process.cwd(), join(to, name))}`);
  return { code: 0, out: [files.get('map.txt') ?? '', 'No mistake in the content. Written:', ...written].join('\n'), err: told };
}

/** As in the build: the walk's files by one rule, the words of the practice bow by another. */
function checked(from: string): { readonly content: Content | null; readonly problems: readonly Problem[] } {
  const { content, problems } = checkContent(contentFiles(from));
  const practice = join(from, PRACTICE);
  const words = existsSync(practice) ? readPracticeWords(PRACTICE, readFileSync(practice, 'utf8')).problems
    : [error({ file: PRACTICE, line: 1, column: 1 }, 'this file is missing; the practice bow cannot do without it')];
  return { content, problems: [...problems, ...words] };
}

function made(content: Content): ReadonlyMap<string, string> {
  const walk = walkOf(content);
  const descriptions = descriptionsOf(readFileSync(join(ROOT, 'src', 'content', 'types.ts'), 'utf8'));
  return new Map([
    ['map.txt', mapText(walk)], ['map.svg', mapSvg(walk)],
    ...[...schemas(content, descriptions)].map(([kind, json]) => [`schemas/${kind}.json`, `${JSON.stringify(json, null, 2)}\n`] as const),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { code, out, err } = run(process.argv.slice(2));
  if (err !== '') console.error(err);
  if (out !== '') console.log(out);
  process.exitCode = code;
}
