// A practice that forgets, for tests. It goes through the same lines as the file.

import { OF_A_PRACTICE } from '../../src/journal/kinds.ts';
import type { PracticeMark } from '../../src/journal/practice-mark.ts';
import { prepareLine, readJournal } from '../../src/journal/read.ts';
import type { Fact } from '../../src/machine/types.ts';
import type { MarkedStore } from '../../src/training/riding-store.ts';

/** `text`: the journal so far, as it would lie on disk. */
export function markedMemory(before = ''): MarkedStore & { text(): string } {
  const reading = readJournal(Buffer.from(before), undefined, OF_A_PRACTICE);
  const facts: Fact[] = [...reading.facts];
  const marks = new Map<number, PracticeMark>(reading.marks);
  let text = before;
  return {
    facts, marks, notices: [],
    append: (fact, mark = null) => {
      const line = prepareLine(fact, facts.length + 1, { kind: OF_A_PRACTICE, mark });
      text += line.text;
      facts.push(line.fact);
      if (mark !== null) marks.set(fact.seq, mark);
    },
    close: () => undefined,
    text: () => text,
  };
}
