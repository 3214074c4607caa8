// The examples in the comments above the functions of src/maths and src/archery, read out of the sources, so that they can be run.
// The form: below the doc comment one line `// Example: expression is value.`, or `... throws 'message'.`; more of them behind a `;`.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compileFunction } from 'node:vm';
import ts from 'typescript';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));
const FOLDERS = ['maths', 'archery'];

export interface Documented {
  /** Below src/. */
  readonly file: string;
  readonly name: string;
  /** The doc comment in one line, '' where there is none. */
  readonly doc: string;
  /** What stands behind "Example:", '' where nothing does. */
  readonly example: string;
  /** Whether it has checks, its own or those it is given, and so can throw. */
  readonly checked: boolean;
}

/** All exported functions, but for those that do nothing but put a unit on a number. */
export function documented(): readonly Documented[] {
  return FOLDERS.flatMap((folder) => readdirSync(join(SRC, folder), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts')).sort().flatMap((name) => {
    const text = readFileSync(join(SRC, folder, name), 'utf8');
    return functionsIn(`${folder}/${name}`, text);
  }));
}

export function functionsIn(file: string, text: string): readonly Documented[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  return source.statements.flatMap((statement) => {
    const name = nameOfFunction(statement);
    if (name === null || isUnitMaker(statement)) return [];
    const comments = (ts.getLeadingCommentRanges(text, statement.getFullStart()) ?? []).map(({ pos, end }) => text.slice(pos, end));
    const lines = comments.filter((comment) => comment.startsWith('//')).map((comment) => comment.slice(2).trim()).filter((line) => !line.startsWith('oxlint-'));
    const first = lines.findIndex((line) => line.startsWith('Example: '));
    return [{
      file, name,
      doc: comments.filter((comment) => comment.startsWith('/**')).at(-1)?.replace(/^\/\*\*|\*\/$/g, '').replace(/\s+\*?\s*/g, ' ').trim() ?? '',
      example: first < 0 ? '' : lines.slice(first).join(' ').slice('Example: '.length),
      checked: mentions(source, name) || takesChecks(statement),
    }];
  });
}

function nameOfFunction(statement: ts.Statement): string | null {
  const exported = ts.canHaveModifiers(statement) && ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
  if (!exported) return null;
  if (ts.isFunctionDeclaration(statement)) return statement.name?.text ?? null;
  const [declared] = ts.isVariableStatement(statement) ? statement.declarationList.declarations : [];
  const isFunction = declared?.initializer !== undefined && ts.isArrowFunction(declared.initializer);
  return isFunction && ts.isIdentifier(declared.name) ? declared.name.text : null;
}

const isUnitMaker = (statement: ts.Statement): boolean => /=> inUnit\(n, '[^']+'\);$/.test(statement.getText());

/** Whether `must.name` stands anywhere in the file. */
function mentions(source: ts.SourceFile, name: string): boolean {
  const visit = (node: ts.Node): boolean =>
    (ts.isPropertyAccessExpression(node) && node.name.text === name && node.expression.getText(source) === 'must') || ts.forEachChild(node, (child) => visit(child) || undefined) === true;
  return visit(source);
}

const takesChecks = (statement: ts.Statement): boolean => ts.isFunctionDeclaration(statement) && statement.parameters.some(({ type }) => type?.getText() === 'Checks');

export interface Example { readonly expression: string; readonly relation: 'is' | 'throws'; readonly value: string }

/** The examples behind one "Example:". Throws where it has not the form. */
export function examplesIn(text: string): readonly Example[] {
  const whole = text.endsWith('.') ? text.slice(0, -1) : text;
  return splitOutside(whole, '; ').map((one) => {
    for (const relation of ['is', 'throws'] as const) {
      const [expression, value, ...rest] = splitOutside(one, ` ${relation} `);
      if (expression !== undefined && value !== undefined && rest.length === 0) return { expression, relation, value };
    }
    throw new Error(`"${one}" has not the form "expression is value" or "expression throws 'message'"`);
  });
}

/** Parts of a text between the separators that stand outside of brackets and quotes. */
function splitOutside(text: string, separator: string): readonly string[] {
  const parts: string[] = [];
  let [depth, quote, from] = [0, '', 0];
  for (let i = 0; i < text.length; i++) {
    const at = text.charAt(i);
    if (quote !== '') quote = at === quote ? '' : quote;
    else if (`'"\``.includes(at)) quote = at;
    else if ('([{'.includes(at)) depth++;
    else if (')]}'.includes(at)) depth--;
    else if (depth === 0 && text.startsWith(separator, i)) {
      parts.push(text.slice(from, i));
      from = i + separator.length;
    }
  }
  return [...parts, text.slice(from)];
}

/** The value of an expression with these names in scope. */
export function evaluate(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const run = compileFunction(`return (${expression});`, Object.keys(scope));
  const value: unknown = run(...Object.values(scope));
  return value;
}

/** null where `found` is what is written, numbers to the digits written (whole numbers exactly); otherwise what is wrong. */
export function differs(found: unknown, written: string): string | null {
  const source = ts.createSourceFile('value.ts', `(${written})`, ts.ScriptTarget.ES2022, true);
  const [statement] = source.statements;
  if (statement === undefined || !ts.isExpressionStatement(statement) || !ts.isParenthesizedExpression(statement.expression)) return `"${written}" is no value`;
  return differsFrom(found, statement.expression.expression);
}

function differsFrom(found: unknown, written: ts.Expression): string | null {
  const text = written.getText();
  const other = `it is ${JSON.stringify(found) ?? String(found)}, not ${text}`;
  if (ts.isArrayLiteralExpression(written)) {
    if (!Array.isArray(found) || found.length !== written.elements.length) return other;
    const each: readonly unknown[] = found;
    return written.elements.map((element, i) => differsFrom(each[i], element)).find((one) => one !== null) ?? null;
  }
  if (ts.isObjectLiteralExpression(written)) {
    if (typeof found !== 'object' || found === null) return other;
    const fields = new Map<string, unknown>(Object.entries(found).filter(([, value]) => typeof value !== 'function'));
    if (fields.size !== written.properties.length) return other;
    return written.properties.map((property) => {
      if (!ts.isPropertyAssignment(property)) return `"${property.getText()}" is no value`;
      const key = property.name.getText().replace(/^'|'$/g, '');
      return fields.has(key) ? differsFrom(fields.get(key), property.initializer) : other;
    }).find((one) => one !== null) ?? null;
  }
  if (/^-?[\d.]/.test(text)) return typeof found === 'number' && Math.abs(found - Number(text)) <= allowed(text) ? null : other;
  return Object.is(found, evaluate(text, {})) ? null : other;
}

/** Half of the last digit; for a whole number only rounding. */
function allowed(number: string): number {
  const [, decimals = '', power = '0'] = /^-?\d*\.?(\d*)(?:e([+-]?\d+))?$/.exec(number) ?? [];
  const rounding = 1e-9 * Math.abs(Number(number));
  return decimals === '' ? rounding : 0.5 * 10 ** (Number(power) - decimals.length) + rounding;
}

/** The same expression with each of its numbers in turn replaced by another. */
export function withNumbers(expression: string, others: readonly string[]): readonly string[] {
  const start = '(';
  const source = ts.createSourceFile('expression.ts', `${start}${expression})`, ts.ScriptTarget.ES2022, true);
  const found: { readonly pos: number; readonly end: number }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node)) found.push({ pos: node.getStart() - start.length, end: node.getEnd() - start.length });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found.flatMap(({ pos, end }) => others.map((other) => `${expression.slice(0, pos)}(${other})${expression.slice(end)}`));
}
