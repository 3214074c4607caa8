// Which caution belongs to which class of work, told by the words of a step. Common practice.
// The work is meant, not what is said about it: a step that only talks ("pause: talk") is left alone. Of the press: ../safety.ts.

import type { Book } from './shape.ts';

export const HANDLING: Book['handling'] = [
  // Splinters: a shaft that breaks while it is bent.
  { what: 'flexing', when: /(?<!\bwas )\bflex(ed|ing)?\b/i, cautions: ['flex'], said: /away from (your|the) face/i },
  // Unlike bolts, or one that leaves its thread.
  { what: 'turning limb bolts', when: /\b(turn(ed|ing)?|loosen(ed)?|set|count(ed)?)\b[^.,:]*\bbolts?\b/i, cautions: ['bolts'] },
  // A loop that lets go at full draw.
  { what: 'the knots of the loop', when: /\b(burnt|knots)\b/i, cautions: ['loop'] },
  // Most who are hurt in the hunt cut themselves: read in excerpt.
  { what: 'broadheads', when: /\bbroadheads?\b|\bblades\b/i, cautions: ['blades', 'broadheads'] },
  // A hook that slips is a dry fire.
  { what: 'a draw board', when: /\bdraw board\b|\bon the rig\b/i, cautions: ['rig'], said: /cannot let go/i },
  { what: 'a draw', when: /^/, cautions: ['draw', 'rig'], pauses: ['draw', 'shoot'] },
];
