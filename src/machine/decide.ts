// What follows from one fact: rulings on gates, what is asked again, verdicts, the next single change.
// Runs only on live facts; replay adopts what was decided here.

import type { Content } from '../content/types.ts';
import { Deciding, type FactDraft } from './deciding.ts';
import { advance } from './advance.ts';
import { afterAnswer } from './after-answer.ts';
import { afterCorrection } from './after-correction.ts';
import { afterHappening, longBreak } from './after-happening.ts';
import type { State } from './state.ts';
import type { Fact } from './types.ts';

/** The whole fact with its decision. Pure: time came in with the draft. */
export const decide = (content: Content, state: State, draft: FactDraft): Fact => decideOn(content, state, draft).fact;

/** The same, with the state that it leads to, which `evolve` makes of the fact as well. */
export function decideOn(content: Content, state: State, draft: FactDraft): { readonly fact: Fact; readonly next: State } {
  const d = new Deciding(content, state, draft);
  switch (draft.kind) {
    case 'answered':
      afterAnswer(d, draft.step, draft.answer);
      break;
    case 'corrected':
      afterCorrection(d, draft.of, draft.answer);
      break;
    case 'begun':
    case 'resumed':
    case 'stopped':
    case 'noted':
    case 'moved':
    case 'changed':
    case 'wanted-back':
      afterHappening(d, draft);
  }
  if (draft.kind !== 'begun' && draft.kind !== 'resumed') longGap(d);
  advance(d);
  return { fact: d.fact(), next: d.state };
}

/** A program left standing is no different from one that was closed: after this long the range and the bow are looked at again. */
const LONG_GAP_MS = 2 * 60 * 60 * 1000;

function longGap(d: Deciding): void {
  const { facts } = d.before;
  const takenBack = d.fact().decided.loop?.rewindTo ?? Infinity;
  // A choice that is taken back whole takes back what was asked after the gap before it, too: that gap counts again.
  const from = facts.findIndex((f) => f.seq >= takenBack);
  const times = [...facts.slice(from < 0 ? -1 : Math.max(0, from - 1)), d.draft].map((f) => Date.parse(f.time));
  if (!times.some((time, i) => time - (times[i - 1] ?? time) >= LONG_GAP_MS)) return;
  d.say('long-gap');
  d.trigger('start');
  longBreak(d);
}
