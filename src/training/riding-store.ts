// The store of a practice as the session sees it. What the learner's hands did rides along on the line that the session writes next:
// one line, one write to disk, or nothing.

import type { PracticeMark, PracticeOf } from '../journal/practice-mark.ts';
import type { Fact, Store } from '../machine/types.ts';
import type { PracticeLine } from '../practice/trace.ts';

/** Facts and what rides on them, on disk or in memory. */
export interface MarkedStore extends Store {
  readonly marks: ReadonlyMap<number, PracticeMark>;
  append(fact: Fact, mark?: PracticeMark | null): void;
}

export interface RidingStore {
  readonly store: Store;
  /** Does `work` with this mark on the line that it writes, if it writes one. */
  with<T>(mark: PracticeMark, work: () => T): T;
  lines(): readonly PracticeLine[];
}

/** A practice that is only just begun says on its first line which bow it is `of`. */
export function ridingStore(file: MarkedStore, of: PracticeOf): RidingStore {
  let riding: PracticeMark | null = null;
  const store: Store = {
    facts: file.facts,
    notices: file.notices,
    append: (fact) => file.append(fact, fact.kind === 'begun' ? { of } : riding),
    close: () => file.close(),
  };
  return {
    store,
    with: (mark, work) => {
      riding = Object.keys(mark).length === 0 ? null : mark;
      try {
        return work();
      } finally {
        riding = null;
      }
    },
    lines: () => file.facts.map((fact) => ({ fact, hands: file.marks.get(fact.seq) ?? null })),
  };
}
