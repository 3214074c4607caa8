// A store that forgets: for the practice bow, for benches and for tests. It keeps to the same rules as the file.

import { CodedError } from '../errors.ts';
import type { Fact, Store } from '../machine/types.ts';
import { prepareLine } from './read.ts';

/**
 * A store in memory, beginning with `facts`. Each fact goes through the line of the journal and back, so that what would
 * be lost on disk is lost here too; `skipCodec` leaves that out where a bench counts every microsecond.
 */
export function memoryStore(facts: readonly Fact[] = [], opts: { readonly skipCodec?: boolean } = {}): Store {
  const kept: Fact[] = [];
  let open = true;
  const keep = (fact: Fact): void => {
    if (opts.skipCodec === true) kept.push(fact);
    else kept.push(prepareLine(fact, kept.length + 1).fact);
  };
  facts.forEach(keep);
  return {
    facts: kept,
    notices: [],
    append(fact) {
      if (!open) throw new CodedError('internal', 'A line was to be written after the journal was closed.');
      keep(fact);
    },
    close() {
      open = false;
    },
  };
}
