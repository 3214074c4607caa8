// What zod finds, put into words for an author: what is wrong, and what to write instead.

import type { core } from 'zod';
import { nearest, suggest } from './nearest.ts';
import { error } from './problem.ts';
import type { Path, Problem } from './problem.ts';
import type { YamlText } from './yaml-text.ts';

type Issue = core.$ZodIssue;

/** One issue may hold several mistakes (two unknown keys): each is told at its own place. */
export function sayIssue(issue: Issue, text: YamlText, above: Path = []): Problem[] {
  const path = text.real([...above, ...issue.path.map((part) => (typeof part === 'number' ? part : String(part)))]);
  const given = text.get(path);
  const missing = given === undefined && path.length > 0;
  const here = (says: string): Problem[] => [error(text.at(path), says)];
  const name = nameOf(path);
  if (missing && issue.code !== 'unrecognized_keys') return here(`${name} is missing; ${wanted(issue, path)}`);
  switch (issue.code) {
    case 'unrecognized_keys': {
      const keys = issue.message.split(' ');
      return issue.keys.map((key) => error(text.keyAt([...path, key]), unknownKey(key, keys)));
    }
    case 'invalid_union': {
      if (issue.errors.length === 0) return here(`${show(given)} is no ${name}; ${suggest(String(given), optionsOf(issue))}`);
      return likeliest(issue.errors).flatMap((inner) => sayIssue(inner, text, path));
    }
    case 'invalid_value':
      return here(`${show(given)} is no ${kindOfName(path)}; ${typeof given === 'string' ? suggest(given, issue.values.map(String)) : wanted(issue, path)}`);
    case 'invalid_key':
      return [error(text.keyAt(path), `"${String(path[path.length - 1])}" is no id; write lower-case words joined by hyphens`)];
    case 'invalid_format':
      return here(`${show(given)} is no id; write lower-case words joined by hyphens`);
    case 'invalid_type':
      return here(`${name} is ${whatIs(given)}; ${wanted(issue, path)}`);
    case 'too_small':
      return here(`${name} is empty; write at least a word`);
    case 'custom':
      if (issue.message === 'origin') return here(`${name} does not say where it is from; begin with "read:", "memory:" or "common practice:"`);
      return here(issue.message);
    case 'too_big':
    case 'not_multiple_of':
    case 'invalid_element':
      return here(`${name}: ${issue.message}`);
  }
}

function unknownKey(key: string, keys: readonly string[]): string {
  const close = nearest(key, keys);
  return close !== null
    ? `the key "${key}" is not known here; did you mean "${close}"?`
    : `the key "${key}" is not known here; the keys are ${keys.join(', ')}`;
}

/** The branch that came furthest into the value: the one the author meant. */
function likeliest(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]): number => Math.max(0, ...issues.map((one) => one.path.length));
  return branches.reduce((best, one) => (depth(one) >= depth(best) ? one : best));
}

function wanted(issue: Issue, path: Path): string {
  if (issue.code === 'invalid_value') return `write ${listed(issue.values.map(String))}`;
  if (issue.code === 'invalid_union') {
    const options = optionsOf(issue);
    return options.length > 0 ? `write ${listed(options)}` : 'write any, or a list: [a, b]';
  }
  if (issue.code !== 'invalid_type') return 'write it as the other entries do';
  if (path[path.length - 1] === 'source') return 'name one or more of content/sources.yaml: [a, b]';
  return `write ${EXPECTED[issue.expected] ?? `a ${issue.expected}`}`;
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'a text (numbers, dates and text with : in quotes)',
  number: 'a number, such as 0.5 or "1/32"',
  boolean: 'true or false',
  array: 'a list: [a, b], or - one a line; [] says none',
  object: 'keys and values, one a line',
  record: 'keys and values, one a line',
};

/** The names that tell the branches of a union apart. */
const optionsOf = (issue: core.$ZodIssueInvalidUnion): string[] =>
  'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];

const listed = (all: readonly string[]): string =>
  all.length === 1 ? (all[0] ?? '') : `one of ${all.join(', ')}`;

/** What an author calls this place: its key in quotes, or the list and the number of its entry. */
function nameOf(path: Path): string {
  const last = path[path.length - 1];
  if (last === undefined) return 'the file';
  const before = path[path.length - 2];
  return typeof last === 'number' ? `entry ${last + 1}${before === undefined ? '' : ` of "${before}"`}` : `"${last}"`;
}

const NAMES: Readonly<Record<string, string>> = { when: 'guard', id: 'known id', knob: 'adjustment', alternative: 'adjustment' };

function kindOfName(path: Path): string {
  const key = path.findLast((part) => typeof part === 'string');
  return key === undefined ? 'known word' : (NAMES[key] ?? `"${key}"`);
}

const show = (given: unknown): string => (typeof given === 'string' ? `"${given}"` : whatIs(given));

function whatIs(given: unknown): string {
  if (given === null || given === undefined) return 'left empty';
  if (Array.isArray(given)) return 'a list';
  if (typeof given === 'object') return 'a group of keys';
  return typeof given === 'string' ? `the text "${given}"` : `the ${typeof given} ${String(given)}`;
}
