#!/usr/bin/env node
// Reads content/, checks all of it, and writes it as one JSON file. Every mistake is told at once, with its line.
// Run by itself it writes dist/content.json; the build calls compileContent.

import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { tsImport } from 'tsx/esm/api';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Words of the practice bow: no part of the walk, read by themselves. */
const PRACTICE = 'practice.yaml';

/** The text of every YAML file of the walk under content/, by its path as shown: `content/knobs.yaml`. */
export function contentFiles(root) {
  const folder = join(root, 'content');
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile() && /\.ya?ml$/.test(one.name) && one.name !== PRACTICE);
  return new Map(names.map((one) => {
    const path = join(one.parentPath ?? one.path, one.name);
    return [relative(root, path).split(sep).join('/'), readFileSync(path, 'utf8')];
  }));
}

/** Writes the content of `root` to `outFile`; `book` is what it must hold, common practice where none is given. Warnings go to stderr. Throws an Error that lists every mistake, one a line. */
export async function compileContent({ root, outFile, book }) {
  const { checkContent } = await tsImport('../../src/content/lint.ts', import.meta.url);
  const { sayProblem } = await tsImport('../../src/content/problem.ts', import.meta.url);
  const { content, problems } = checkContent(contentFiles(root), book);
  const errors = problems.filter((one) => one.level === 'error');
  if (content === null || errors.length > 0) throw new Error(errors.map(sayProblem).join('\n'));
  for (const one of problems) console.error(sayProblem(one));
  mkdirSync(dirname(outFile), { recursive: true });
  writeFileSync(outFile, `${JSON.stringify(content)}\n`);
}

/** The same for the words of the practice bow. */
export async function compilePractice({ root, outFile }) {
  const { readPracticeWords } = await tsImport('../../src/content/practice-words.ts', import.meta.url);
  const { sayProblem } = await tsImport('../../src/content/problem.ts', import.meta.url);
  const { words, problems } = readPracticeWords(`content/${PRACTICE}`, readFileSync(join(root, 'content', PRACTICE), 'utf8'));
  if (words === null) throw new Error(problems.map(sayProblem).join('\n'));
  mkdirSync(dirname(outFile), { recursive: true });
  writeFileSync(outFile, `${JSON.stringify(words)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await compileContent({ root: ROOT, outFile: join(ROOT, 'dist', 'content.json') });
    await compilePractice({ root: ROOT, outFile: join(ROOT, 'dist', 'practice.json') });
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
