// Puts values into the {holes} of a sentence from the content. Words stay in content, numbers in maths; they meet here.

/** A hole is a name in braces: letters and digits, a letter first. */
export const HOLE = /\{([a-z][A-Za-z0-9]*)\}/g;

/** The names of the holes in a sentence, in order, each once. */
export function holesOf(phrase: string): string[] {
  return [...new Set([...phrase.matchAll(HOLE)].map((match) => match[1] ?? ''))];
}

/**
 * The sentence with every hole filled. Values that no hole asks for are left out.
 * Throws where a hole has no value or a number is not finite: a sentence with a gap is never shown.
 */
export function fill(phrase: string, holes: Readonly<Record<string, string | number>>): string {
  return phrase.replace(HOLE, (_, name: string) => {
    const value = Object.hasOwn(holes, name) ? holes[name] : undefined;
    if (value === undefined) throw new Error(`no value for {${name}} in "${phrase}"`);
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`{${name}} is ${value} in "${phrase}"`);
    return String(value);
  });
}
