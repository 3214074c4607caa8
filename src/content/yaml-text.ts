// One YAML file: its value, the place of every part of it, and what is wrong with it as YAML.
// Anchors, aliases and tags are refused: a reader of the file should see what each step says where it stands.

import { isAlias, isCollection, isMap, isNode, isPair, isScalar, LineCounter, parseDocument, visit } from 'yaml';
import type { Document, ErrorCode, Pair, YAMLError } from 'yaml';
import { textRules } from './text-rules.ts';
import { error } from './problem.ts';
import type { Path, Position, Problem } from './problem.ts';

export interface YamlText {
  readonly value: unknown;
  /** The path as it is written: the first entry of a list may stand for the list. */
  real(path: Path): Path;
  /** What stands at a path: undefined where nothing does. */
  get(path: Path): unknown;
  /** The place of a path: a scalar's own, a collection's key; where nothing is there, the nearest place above it. */
  at(path: Path): Position;
  /** The place of a key itself. */
  keyAt(path: Path): Position;
  readonly problems: readonly Problem[];
}

const SAID: Partial<Record<ErrorCode, string>> = {
  DUPLICATE_KEY: 'this key is written twice in one map; keep one of them',
  BAD_INDENT: 'the indentation does not fit the lines around it; use two spaces a level',
  BAD_ALIAS: 'aliases (*name) are not used in content; write the text out',
  MULTIPLE_DOCS: 'a second document starts here; keep one document a file, without ---',
  MISSING_CHAR: 'a quote or bracket that was opened is not closed, or a comma or colon is missing',
  UNEXPECTED_TOKEN: 'this cannot be read here; put text with : or # or { or [ in quotes',
  BLOCK_AS_IMPLICIT_KEY: 'a colon and a blank stand inside this text; put the text in quotes',
  MULTILINE_IMPLICIT_KEY: 'a line without a colon stands where a key is expected; indent it, or put the text in quotes',
  TAG_RESOLVE_FAILED: 'tags (!name) are not used in content; put the text in quotes',
};

export function readYaml(file: string, source: string): YamlText {
  const lines = new LineCounter();
  const doc = parseDocument(source, { lineCounter: lines, prettyErrors: false, logLevel: 'error' });
  const place = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const problems = [...tabs(file, source), ...anchors(doc, place)];
  for (const one of worthTelling([...doc.errors, ...doc.warnings], problems.length > 0)) {
    problems.push(error(place(one.pos[0]), SAID[one.code] ?? `this is not YAML: ${one.message.split('\n')[0] ?? ''}`));
  }
  visit(doc, { Scalar: (_, node) => {
    if (typeof node.value === 'string') problems.push(...textRules(node.value, place(node.range?.[0] ?? 0)));
  } });
  const value: unknown = problems.some((one) => one.level === 'error') ? undefined : doc.toJS();
  return {
    value,
    problems,
    real: (path) => realPath(doc, path),
    get: (path) => {
      const found: unknown = doc.getIn(path, true);
      if (!isNode(found)) return found;
      const plain: unknown = found.toJS(doc);
      return plain;
    },
    at: (path) => place(offsetOf(doc, realPath(doc, path))),
    keyAt: (path) => place(keyOffset(doc, path) ?? offsetOf(doc, path)),
  };
}

const ALONE: ReadonlySet<ErrorCode> = new Set(['DUPLICATE_KEY', 'TAG_RESOLVE_FAILED', 'MULTIPLE_DOCS']);

/** One slip of the form (a tab, a colon) makes the parser stumble over what follows: only the first stumble is told. */
function worthTelling(all: readonly YAMLError[], explained: boolean): YAMLError[] {
  const form = all.filter((one) => !ALONE.has(one.code));
  return [...all.filter((one) => ALONE.has(one.code)), ...(explained ? [] : form.slice(0, 1))];
}

/** `yaml` throws on an alias without anchor only when the value is made, and then without a place: so all are found here. */
function anchors(doc: Document, place: (offset: number) => Position): Problem[] {
  const found: Problem[] = [];
  visit(doc, {
    Node: (_, node) => {
      const at = place(node.range?.[0] ?? 0);
      if (isAlias(node)) found.push(error(at, `*${node.source} is an alias; write the text out instead`));
      else if ('anchor' in node && typeof node.anchor === 'string') {
        found.push(error(at, `&${node.anchor} is an anchor; take it out and write the text out where it is used`));
      }
    },
  });
  return found;
}

function tabs(file: string, source: string): Problem[] {
  return source.split('\n').flatMap((text, index) => {
    const column = text.indexOf('\t');
    return column < 0 ? [] : [error({ file, line: index + 1, column: column + 1 }, 'a tab stands here; write spaces instead')];
  });
}

function pairAt(doc: Document, path: Path): Pair | null {
  const parent: unknown = path.length <= 1 ? doc.contents : doc.getIn(path.slice(0, -1), true);
  if (!isMap(parent)) return null;
  const key = String(path[path.length - 1]);
  const pair: unknown = parent.items.find((one) => isPair(one) && isScalar(one.key) && String(one.key.value) === key);
  return isPair(pair) ? pair : null;
}

function keyOffset(doc: Document, path: Path): number | null {
  const pair = path.length === 0 ? null : pairAt(doc, path);
  return pair && isScalar(pair.key) ? (pair.key.range?.[0] ?? null) : null;
}

function realPath(doc: Document, path: Path): Path {
  if (path.length < 2 || path[path.length - 1] !== 0) return path;
  const list = path.slice(0, -1);
  return isScalar(doc.getIn(list, true)) ? list : path;
}

function offsetOf(doc: Document, path: Path): number {
  for (let length = path.length; length > 0; length -= 1) {
    const upTo = path.slice(0, length);
    const node: unknown = doc.getIn(upTo, true);
    const key = keyOffset(doc, upTo);
    if (key !== null && (!isNode(node) || isCollection(node) || length < path.length)) return key;
    if (isNode(node) && node.range) return node.range[0];
  }
  return doc.contents?.range?.[0] ?? 0;
}
