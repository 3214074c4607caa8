// Closed lists of names: whether a word is one of them, and tables that have an entry for each.

/** Tells whether a word is one of these. */
// Example: oneOf(['up', 'down'])('left') is false.
export const oneOf = <const T extends string>(names: readonly T[]) => (word: unknown): word is T => names.some((name) => name === word);

/** The names of a table that is written out in the source, and so has no others. */
// Example: namesOf({ up: 1, down: 2 }) is ['up', 'down'].
// oxlint-disable-next-line typescript/consistent-type-assertions -- of a table that is written out the compiler forgets the names
export const namesOf = <K extends string>(table: Readonly<Record<K, unknown>>): readonly K[] => Object.keys(table) as K[];

/** A table with an entry for each of these names. */
// Example: tableOf(['up', 'down'], (name) => name.length) is { up: 2, down: 4 }.
export const tableOf = <K extends string, V>(names: readonly K[], entry: (name: K) => V): Record<K, V> =>
  // oxlint-disable-next-line typescript/consistent-type-assertions -- there is an entry for each name; the compiler forgets which
  Object.fromEntries(names.map((name) => [name, entry(name)])) as Record<K, V>;
