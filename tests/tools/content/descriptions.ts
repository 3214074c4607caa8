// The comments that stand above the fields in src/content/types.ts: what an author reads in the editor is what the code says.

/** Comment by field, by interface. A type that is a union of objects counts as one. */
export type Descriptions = ReadonlyMap<string, ReadonlyMap<string, string>>;

const TYPE = /^(?:export )?(?:interface (\w+)|type (\w+) =)/;
const COMMENT = /^\s*\/\*\* (.*) \*\/$/;
const FIELD = /^\s*readonly (\w+)\??:/;

export function descriptionsOf(source: string): Descriptions {
  const found = new Map<string, Map<string, string>>();
  let fields = new Map<string, string>();
  let comment: string | undefined;
  for (const line of source.split('\n')) {
    const type = TYPE.exec(line);
    if (type !== null) {
      fields = new Map();
      found.set(type[1] ?? type[2] ?? '', fields);
    }
    const field = FIELD.exec(line)?.[1];
    if (comment !== undefined && field !== undefined && type === null) fields.set(field, comment);
    // A comment is of the line under it alone.
    comment = COMMENT.exec(line)?.[1];
  }
  return found;
}
