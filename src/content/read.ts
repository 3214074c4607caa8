// Reads the content from the text of its files. Pure: no file is opened here, so a bench may hand in a small content of its own.
// Everything that is wrong is told at once, in reading order.

import type { z } from 'zod';
import { namesOf, oneOf } from '../maths/closed.ts';
import { error, inOrder } from './problem.ts';
import type { Path, Position, Problem } from './problem.ts';
import { nearest } from './nearest.ts';
import { sayIssue } from './say-issue.ts';
import { chapterFile, CHAPTER_FILE, FILES, toContent } from './schema.ts';
import type { FileName, Parsed } from './schema.ts';
import { KNOBS } from './types.ts';
import type { Content } from './types.ts';
import { readYaml } from './yaml-text.ts';
import type { YamlText } from './yaml-text.ts';

/** The place of a part of the content, by its path there: `['steps', 'bow', 'cautions', 0]`, `['knobs', 'yoke', 'hard']`. */
export type Where = (path: Path) => Position;

export type ReadResult =
  | { readonly ok: true; readonly content: Content; readonly where: Where; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface Read<T> { readonly text: YamlText; readonly value: T | undefined; readonly problems: readonly Problem[] }

/** `files`: text by path, as `content/knobs.yaml`. References between files are the linter's work (lint.ts). */
export function readContent(files: ReadonlyMap<string, string>): ReadResult {
  const problems: Problem[] = strangers(files);
  const texts = new Map<string, YamlText>();
  const read = <S extends z.ZodType>(file: string, schema: S): z.output<S> | undefined => {
    const source = files.get(file);
    if (source === undefined) {
      problems.push(error({ file, line: 1, column: 1 }, 'this file is missing; the content cannot do without it'));
      return undefined;
    }
    const one = readFile(file, source, schema);
    texts.set(file, one.text);
    problems.push(...one.problems);
    return one.value;
  };
  const parsed: Partial<Record<FileName, unknown>> = {};
  for (const file of namesOf(FILES)) parsed[file] = read(file, FILES[file]);
  const chapterFiles = [...files.keys()].filter((file) => CHAPTER_FILE.test(file)).sort();
  const chapters = chapterFiles.map((file) => ({ file, value: read(file, chapterFile) }));
  problems.push(...repeatedSteps(chapters, texts));
  // oxlint-disable-next-line typescript/consistent-type-assertions -- read by this very schema, or not there
  problems.push(...knobsOnce(parsed['content/knobs.yaml'] as Parsed['content/knobs.yaml'] | undefined, texts));
  if (problems.some((one) => one.level === 'error')) return { ok: false, problems: inOrder(problems) };
  // oxlint-disable-next-line typescript/consistent-type-assertions -- without a problem every file was read by its schema, so nothing in here is undefined
  const whole = parsed as Parsed;
  const content = toContent(whole, chapters.flatMap((one) => (one.value ? [one.value] : [])));
  return { ok: true, content, where: placesOf(whole, chapters, texts), problems: inOrder(problems) };
}

function readFile<S extends z.ZodType>(file: string, source: string, schema: S): Read<z.output<S>> {
  const text = readYaml(file, source);
  if (text.problems.length > 0) return { text, value: undefined, problems: text.problems };
  const result = schema.safeParse(text.value);
  if (result.success) return { text, value: result.data, problems: [] };
  return { text, value: undefined, problems: result.error.issues.flatMap((issue) => sayIssue(issue, text)) };
}

function strangers(files: ReadonlyMap<string, string>): Problem[] {
  return [...files.keys()].filter((file) => !(file in FILES) && !CHAPTER_FILE.test(file)).map((file) => {
    const bare = (path: string): string => path.replace(/^content\//, '').replace(/\.ya?ml$/, '');
    const close = nearest(bare(file), Object.keys(FILES).map(bare));
    const instead = close !== null ? `did you mean content/${close}.yaml?` : 'steps belong in content/chapters/NAME.yaml';
    return error({ file, line: 1, column: 1 }, `this file is no part of the content; ${instead}`);
  });
}

type Chapters = readonly { readonly file: string; readonly value: z.output<typeof chapterFile> | undefined }[];

function repeatedSteps(chapters: Chapters, texts: ReadonlyMap<string, YamlText>): Problem[] {
  const first = new Map<string, Position>();
  const found: Problem[] = [];
  for (const { file, value } of chapters) {
    for (const stepId of Object.keys(value?.steps ?? {})) {
      const at = texts.get(file)?.keyAt(['steps', stepId]) ?? { file, line: 1, column: 1 };
      const before = first.get(stepId);
      if (before) found.push(error(at, `the step "${stepId}" is also in ${before.file}:${before.line}; keep one of them`));
      else first.set(stepId, at);
    }
  }
  return found;
}

function knobsOnce(knobs: Parsed['content/knobs.yaml'] | undefined, texts: ReadonlyMap<string, YamlText>): Problem[] {
  const file = 'content/knobs.yaml';
  const text = texts.get(file);
  if (!knobs || !text) return [];
  return KNOBS.flatMap((id) => {
    const at = knobs.flatMap((knob, index) => (knob.id === id ? [index] : []));
    if (at.length === 0) return [error({ file, line: 1, column: 1 }, `the adjustment "${id}" is missing; every one must be there once`)];
    return at.slice(1).map((index) => error(text.at([index, 'id']), `the adjustment "${id}" is there twice; keep one of them`));
  });
}

const HOME = {
  version: 'procedure', tolerance: 'procedure', chapters: 'procedure', ladders: 'ladders', inspections: 'inspections', rechecks: 'rechecks',
  cautions: 'cautions', glossary: 'glossary', sources: 'sources', phrases: 'phrases',
} as const satisfies Partial<Record<keyof Content, string>>;
const isHome = oneOf(namesOf(HOME));

function placesOf(parsed: Parsed, chapters: Chapters, texts: ReadonlyMap<string, YamlText>): Where {
  const stepFile = new Map(chapters.flatMap(({ file, value }) => Object.keys(value?.steps ?? {}).map((id) => [id, file] as const)));
  const knobIndex = new Map<string, number>(parsed['content/knobs.yaml'].map((knob, index) => [knob.id, index]));
  const inFile = (file: string, path: Path): Position => texts.get(file)?.at(path) ?? { file, line: 1, column: 1 };
  return (path) => {
    const [root, second, ...more] = path;
    if (root === 'steps') return inFile(stepFile.get(String(second)) ?? 'content/procedure.yaml', path);
    if (root === 'knobs') return inFile('content/knobs.yaml', [knobIndex.get(String(second)) ?? 0, ...more]);
    const home = isHome(root) ? HOME[root] : 'procedure';
    return inFile(`content/${home}.yaml`, home === 'procedure' ? path : path.slice(1));
  };
}
