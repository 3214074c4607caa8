// The arrows of the bow record, one by one: what each is good for, why, and how its nock stands.

import type { Content } from '../content/types.ts';
import { vanesInWords } from './arrows/words.ts';
import type { State } from './state.ts';
import type { RecordRow } from './types.ts';
import { phrase } from './words.ts';

export function eachArrowRows(content: Content, state: State): readonly RecordRow[] {
  const { classes, cases } = state.notes.arrows;
  return Object.entries(classes)
    .toSorted(([a], [b]) => Number(a) - Number(b))
    .map(([arrow, { class: as, why }]) => {
      // Where the turn mended it, the reason says so already.
      const turn = as === 'first choice' ? 0 : (cases[arrow]?.turn ?? 0);
      const holes = { class: as, why, vanes: vanesInWords(turn) };
      return { name: phrase(content, 'record-arrow', { arrow }), value: phrase(content, turn === 0 ? 'record-arrow-value' : 'record-arrow-kept', holes) };
    });
}
