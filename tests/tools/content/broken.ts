// Lines no wider than a terminal of 80 columns.

export const COLUMNS = 80;

/** `head` and then the words, broken at blanks; every further line begins under `indent`. A word that is wider stays whole. */
export function broken(head: string, text: string, indent: number, columns: number = COLUMNS): string[] {
  const lines: string[] = [];
  let line = head;
  let empty = true;
  for (const word of text.split(' ')) {
    if (!empty && line.length + 1 + word.length > columns) {
      lines.push(line.trimEnd());
      line = ' '.repeat(indent);
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line.trimEnd()];
}
