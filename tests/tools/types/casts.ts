// How many casts each source may have. A new one is a decision: it is counted here, with the reason, or it is not made.

import type { Problem } from './rules.ts';

export const CEILING: Readonly<Record<string, number>> = {
  // A brand is put on a number here and nowhere else.
  'src/maths/units.ts': 1,
  // What stands in a table that is written out, and one that has an entry for each name: the compiler forgets the names.
  'src/maths/closed.ts': 2,
  // Files by name, each with its own schema: once no problem was found, each was read by its schema.
  'src/content/read.ts': 2,
  // The visitor of the yaml library tells less of its nodes than it gives.
  'src/content/yaml-text.ts': 1,
  // Names in the table of common practice are texts, looked for among names of content.
  'src/content/lint/harm/adjusting.ts': 2, 'src/content/lint/harm/gates.ts': 3, 'src/content/lint/harm/order.ts': 1,
  // A line of the journal after its schema has passed it.
  'src/journal/line.ts': 1,
  // How the library of state machines is told its events.
  'src/machine/walk.ts': 1,
  // Where the walk stands, for who has asked; and a draft with its decision, which is again one of the facts.
  'src/machine/deciding.ts': 2,
  // A patch without its orders.
  'src/machine/notes.ts': 1,
  // The content beside the program, which was checked when it was built.
  'src/main.tsx': 1,
  // Node's types: an event by its name, and what a stream gives.
  'src/screens/ink-stdout.ts': 1, 'src/screens/lines.ts': 1,
};

/** Files that cast more than they may, and ceilings that are higher than need be. */
export function overCeiling(problems: readonly Problem[], ceiling = CEILING): readonly Pick<Problem, 'file' | 'line' | 'says'>[] {
  const casts = problems.filter(({ rule }) => rule === 'cast');
  const files = new Set([...casts.map(({ file }) => file), ...Object.keys(ceiling)]);
  return [...files].flatMap((file) => {
    const own = casts.filter((one) => one.file === file);
    const most = ceiling[file] ?? 0;
    if (own.length > most) return own.map(({ line, says }) => ({ file, line, says: `${says} (${own.length} casts here, ${most} allowed): show it by a guard, or count it in tests/tools/types/casts.ts` }));
    return own.length < most ? [{ file, line: 1, says: `${own.length} casts here, ${most} allowed: write the lower number in tests/tools/types/casts.ts` }] : [];
  });
}
