// The floors of the house: who may import whom. Sources are read as text; nothing is run.
// `node --import tsx tests/tools/floors.ts` prints what is wrong and ends with 1.

import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Source text by path relative to src/, with forward slashes. */
export type Sources = ReadonlyMap<string, string>;

export interface Floor {
  readonly floor: number;
  /** The files of this floor: a folder ending in /, or one file. */
  readonly at: readonly string[];
  /** What of ours it may import besides its own folder. */
  readonly own: readonly string[];
  readonly packages: readonly string[];
  /** Said when the rule is broken: what to do. */
  readonly advice: string;
}

const TYPES = ['machine/types.ts', 'content/types.ts', 'maths/', 'errors.ts'];

export const FLOORS: readonly Floor[] = [
  { floor: 0, at: ['maths/', 'errors.ts'], own: ['maths/', 'errors.ts'], packages: ['jstat'],
    advice: 'maths knows numbers only: hand in what it needs as arguments' },
  { floor: 1, at: ['archery/'], own: ['maths/', 'errors.ts'], packages: [],
    advice: 'archery takes numbers and gives numbers: hand words and limits in, or move the code up to machine/' },
  { floor: 1, at: ['content/'], own: ['maths/', 'errors.ts'], packages: ['zod', 'yaml'],
    advice: 'content is data and its reader: it takes text, not paths; files are read in main.tsx or tests/tools/' },
  { floor: 2, at: ['machine/'], own: ['archery/', 'content/', 'maths/', 'errors.ts'], packages: ['xstate'],
    advice: 'the machine is pure: files, clocks and screens belong above it' },
  { floor: 3, at: ['journal/'], own: TYPES, packages: ['zod', 'node:fs', 'node:path', 'node:os', 'node:crypto', 'node:buffer'],
    advice: 'the journal keeps facts and knows only their types: let session.ts bring the two together' },
  { floor: 3, at: ['practice/'], own: [...TYPES, 'archery/'], packages: [],
    advice: 'the practice bow answers a view: it may use archery and the types, no files and no screens' },
  { floor: 3, at: ['screens/'], own: TYPES,
    packages: ['ink', 'react', 'zod', 'node:readline', 'node:string_decoder', 'node:stream', 'node:events', 'node:process'],
    advice: 'a face shows a view and sends an intent: take what is missing from the View, or have main.tsx hand it in' },
  { floor: 3, at: ['report/'], own: TYPES, packages: [],
    advice: 'a report is made of the BowRecord alone: put what is missing into the record' },
  { floor: 4, at: ['session.ts'], own: ['journal/', 'machine/', 'content/', 'archery/', 'maths/', 'errors.ts'], packages: [],
    advice: 'the session moves the walk and shows nothing: screens and reports are joined to it in main.tsx' },
  { floor: 5, at: ['training/'], own: ['session.ts', 'practice/', 'journal/', 'machine/', 'content/', 'archery/', 'maths/', 'errors.ts'], packages: [],
    advice: 'a practice joins the session and the invented bow; files, faces and the clock are handed in by main.tsx' },
  { floor: 6, at: ['main.tsx', 'arguments.ts', 'commands.ts', 'practise.ts'], own: [''], packages: ['node:fs', 'node:url', 'node:util', 'node:path', 'node:process'],
    advice: 'main only wires: put the work on the floor that it belongs to' },
];

const NO_CHANCE = [
  { pattern: /\bDate\.now\s*\(/, name: 'Date.now()' },
  { pattern: /\bMath\.random\s*\(/, name: 'Math.random()' },
  { pattern: /\bnew Date\s*\(\s*\)/, name: 'new Date() without an argument' },
  { pattern: /\bperformance\.now\s*\(/, name: 'performance.now()' },
];
/** Below the session time and chance come in with the event, or nothing could be replayed. */
const TIMELESS_BELOW = 4;

const covers = (entries: readonly string[], path: string): boolean =>
  entries.some((entry) => (entry === '' || entry.endsWith('/') ? path.startsWith(entry) : path === entry));
const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/.*$/gm, '$1');

/** The module names that a source imports, re-exports or loads, types included. */
export function importsOf(text: string): string[] {
  const clean = withoutComments(text);
  const from = /\b(?:import|export)\b[^'";]*?\bfrom\s*['"]([^'"]+)['"]/g;
  const bare = /\bimport\s*\(?\s*['"]([^'"]+)['"]/g;
  return [...clean.matchAll(from), ...clean.matchAll(bare)].map((match) => match[1] ?? '');
}

const floorOf = (path: string): Floor | undefined => FLOORS.find((floor) => covers(floor.at, path));
const target = (path: string, name: string): string => posix.normalize(posix.join(posix.dirname(path), name));
const packageOf = (name: string): string =>
  name.startsWith('node:') ? name : name.split('/').slice(0, name.startsWith('@') ? 2 : 1).join('/');

function judgeFile(path: string, text: string, sources: Sources): string[] {
  const floor = floorOf(path);
  if (floor === undefined) return [`${path}: it belongs to no floor. Move it into a folder of the house, or give it a floor in tests/tools/floors.ts.`];
  const problems: string[] = [];
  const home = floor.at.filter((entry) => entry.endsWith('/'));
  for (const name of importsOf(text)) {
    if (!name.startsWith('.')) {
      if (!floor.packages.includes(packageOf(name))) {
        problems.push(`${path}: it imports ${name}, which floor ${floor.floor} may not use. Do this: ${floor.advice}.`);
      }
      continue;
    }
    const to = target(path, name);
    if (!sources.has(to)) problems.push(`${path}: it imports ${name}, which is no file in src/. Write the ending (.ts or .tsx).`);
    else if (!covers([...home, ...floor.own], to)) problems.push(`${path}: it imports ${to}. Do this: ${floor.advice}.`);
  }
  if (floor.floor < TIMELESS_BELOW) {
    for (const { pattern, name } of NO_CHANCE) {
      if (pattern.test(withoutComments(text))) problems.push(`${path}: it uses ${name}. Let the caller hand in the time, or a seeded random.`);
    }
  }
  return problems;
}

function cycles(sources: Sources): string[] {
  const found: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return;
    if (state.get(path) === 'open') {
      const loop = [...trail.slice(trail.indexOf(path)), path].join(' -> ');
      found.push(`${loop}: the imports run in a circle. Move what both need into a third file below them.`);
      return;
    }
    state.set(path, 'open');
    for (const name of importsOf(sources.get(path) ?? '')) {
      const to = target(path, name);
      if (name.startsWith('.') && sources.has(to)) visit(to, [...trail, path]);
    }
    state.set(path, 'done');
  };
  for (const path of sources.keys()) visit(path, []);
  return found;
}

/** Every broken rule, as a sentence that says what to do. Empty when the house stands. */
export function floorProblems(sources: Sources): string[] {
  return [...[...sources].flatMap(([path, text]) => judgeFile(path, text, sources)), ...cycles(sources)];
}

export function readSources(src: string): Sources {
  const paths = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((path) => /\.tsx?$/.test(path)).toSorted();
  return new Map(paths.map((path) => [path.split('\\').join('/'), readFileSync(join(src, path), 'utf8')]));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const src = join(dirname(fileURLToPath(import.meta.url)), '../../src');
  const problems = floorProblems(readSources(src));
  for (const problem of problems) console.log(`src/${problem}`);
  process.exitCode = problems.length > 0 ? 1 : 0;
}
