// "Did you mean …?": the closest known word to a mistyped one.

/** The number of single letters to add, drop, change or swap with a neighbour to make one word the other. */
export function distance(from: string, to: string): number {
  const rows: number[][] = [Array.from({ length: to.length + 1 }, (_, column) => column)];
  for (let r = 1; r <= from.length; r += 1) {
    const above = rows[r - 1] ?? [];
    const row = [r];
    for (let c = 1; c <= to.length; c += 1) {
      const same = from[r - 1] === to[c - 1] ? 0 : 1;
      let best = Math.min((above[c] ?? 0) + 1, (row[c - 1] ?? 0) + 1, (above[c - 1] ?? 0) + same);
      const swapped = r > 1 && c > 1 && from[r - 1] === to[c - 2] && from[r - 2] === to[c - 1];
      if (swapped) best = Math.min(best, (rows[r - 2]?.[c - 2] ?? 0) + 1);
      row.push(best);
    }
    rows.push(row);
  }
  return rows[from.length]?.[to.length] ?? 0;
}

/** The closest word, or null where none is close enough to be a slip of the hand. Ties go to the first. */
export function nearest(word: string, words: Iterable<string>): string | null {
  const limit = Math.max(1, Math.floor(word.length / 3));
  let best: string | null = null;
  let least = limit + 1;
  for (const one of words) {
    const d = distance(word.toLowerCase(), one.toLowerCase());
    if (d < least) [best, least] = [one, d];
  }
  return best;
}

/** The second half of a message: the closest word, else the whole list where it is short enough to read. */
export function suggest(word: string, words: Iterable<string>): string {
  const all = [...words];
  const close = nearest(word, all);
  if (close !== null) return `did you mean "${close}"?`;
  if (all.length === 0) return 'none is known here';
  return all.length <= 30 ? `write one of ${all.join(', ')}` : `it is none of the ${all.length} that are known`;
}
