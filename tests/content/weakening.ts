// One change to the content at a time, without touching what was handed in.

import type { Content } from '../../src/content/types.ts';

/** One way in which the shipped content could be made to hurt somebody. */
export interface Weakening { readonly group: string; readonly name: string; readonly content: Content }

export type Path = readonly (string | number)[];

/** `whole` with the value at `path` replaced; a key is taken out where `value` is undefined. Shares all that did not change. */
export function put<T>(whole: T, path: Path, value: unknown): T {
  const [key, ...rest] = path;
  if (key === undefined) return value as T;
  if (Array.isArray(whole)) return whole.map((one: unknown, index) => (index === key ? put(one, rest, value) : one)) as T;
  const before = whole as Record<string, unknown>;
  const after = { ...before, [key]: put(before[key], rest, value) };
  if (after[key] === undefined) delete after[key];
  return after as T;
}

export const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, at) => at !== index);

/** `from` taken out of its place and put in at `to`, counted after it was taken out. */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const one = list[from];
  const rest = without(list, from);
  return one === undefined ? rest : [...rest.slice(0, to), one, ...rest.slice(to)];
}
