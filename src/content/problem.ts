// A mistake in the content: where it stands, what is wrong, and what to write instead.

export interface Position { readonly file: string; readonly line: number; readonly column: number }

export interface Problem extends Position {
  /** A warning is told and does no harm; an error keeps the content from being used. */
  readonly level: 'error' | 'warning';
  readonly text: string;
}

/** Finds a place by its path in a file, or in the content (see read.ts). */
export type Path = readonly (string | number)[];

export const error = (at: Position, text: string): Problem => ({ ...at, level: 'error', text });
export const warning = (at: Position, text: string): Problem => ({ ...at, level: 'warning', text });

/** `file:line:column: text`, one line. */
export function sayProblem(problem: Problem): string {
  const mark = problem.level === 'warning' ? 'warning: ' : '';
  return `${problem.file}:${problem.line}:${problem.column}: ${mark}${problem.text}`;
}

/** In reading order, each only once. */
export function inOrder(problems: readonly Problem[]): Problem[] {
  const seen = new Map(problems.map((one) => [sayProblem(one), one]));
  return [...seen.values()].sort((a, b) =>
    compare(a.file, b.file) || a.line - b.line || a.column - b.column || compare(a.text, b.text));
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
