// Small faults are put into the numbers one at a time, and the fast tests must notice: `npm run mutate [-- file ...]`.
// Whatever nobody notices is told, and the last line is the score; below 85 % it ends with 1. The copies that are worked on
// stand in the system's temporary folder and go with the run.

import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { ROOT } from './build.mjs';

const LEAST = 85;
const MUTATED = ['maths', 'archery'];
/** What the tests in mutate.vitest.ts read. */
const TESTS = ['maths', 'archery', 'sources', 'properties', 'tooling', 'tools'];
/** Nothing of ours, and a table that a simulation made. */
const LEFT_OUT = ['jstat.d.ts', 'consistency-limits.ts'];

const { values, positionals } = parseArgs({ allowPositionals: true, options: { workers: { type: 'string', default: String(availableParallelism()) } } });
const all = MUTATED.flatMap((folder) => readdirSync(join(ROOT, 'src', folder), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !LEFT_OUT.includes(name)).map((name) => `src/${folder}/${name}`));
const files = positionals.length > 0 ? positionals : all;
const unknown = files.filter((file) => !all.includes(file));
if (unknown.length > 0) throw new Error(`no such file to mutate: ${unknown.join(', ')}; give files of src/maths or src/archery`);

process.chdir(ROOT);
const started = Date.now();
const folder = mkdtempSync(join(tmpdir(), 'quarterturn-mutate-'));
try {
  const mutants = await new Stryker({
    mutate: files,
    testRunner: 'vitest',
    vitest: { configFile: 'tests/tools/mutate.vitest.ts' },
    // Per test would be faster, but on this vitest it sometimes calls a mutant alive that is not.
    coverageAnalysis: 'all',
    concurrency: Number(values.workers),
    ignorePatterns: [...others('.', ['src', 'tests', 'package.json', 'tsconfig.json']), ...others('src', MUTATED), ...others('tests', TESTS)],
    disableTypeChecks: false,
    tempDirName: folder,
    cleanTempDir: 'always',
    reporters: [process.stdout.isTTY ? 'progress' : 'progress-append-only'],
    allowConsoleColors: false,
  }).runMutationTest();
  tell(mutants);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** The rest of a folder, as patterns. */
function others(folder: string, wanted: readonly string[]): string[] {
  return readdirSync(join(ROOT, folder)).filter((name) => !wanted.includes(name)).map((name) => join('/', folder, name));
}

type Mutants = Awaited<ReturnType<Stryker['runMutationTest']>>;

function tell(mutants: Mutants): void {
  const of = (...states: readonly Mutants[number]['status'][]): Mutants => mutants.filter(({ status }) => states.includes(status));
  const alive = of('Survived', 'NoCoverage');
  for (const { fileName, location, mutatorName, replacement = '', status } of alive) {
    console.log(`${fileName}:${location.start.line}:${location.start.column} ${status} ${mutatorName} -> ${replacement.replace(/\s+/g, ' ')}`);
  }
  const killed = of('Killed', 'Timeout').length;
  const score = (100 * killed) / (killed + alive.length);
  console.log(`in ${((Date.now() - started) / 60_000).toFixed(1)} min`);
  console.log(`score ${score.toFixed(1)} % (${killed} killed, ${of('Survived').length} survived, ${of('NoCoverage').length} no coverage)`);
  process.exitCode = score >= LEAST ? 0 : 1;
}
