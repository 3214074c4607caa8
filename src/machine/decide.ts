// What follows from one fact: rulings on gates, what is asked again, verdicts, the next single change.
// Runs only on live facts; replay adopts what was decided here.

import type { Content } from '../content/types.ts';
import { Deciding, type FactDraft } from './deciding.ts';
import { advance } from './advance.ts';
import { afterAnswer } from './after-answer.ts';
import { afterCorrection } from './after-correction.ts';
import { afterHappening } from './after-happening.ts';
import type { State } from './state.ts';
import type { Fact } from './types.ts';

/** The whole fact with its decision. Pure: time came in with the draft. */
export function decide(content: Content, state: State, draft: FactDraft): Fact {
  const d = new Deciding(content, state, draft);
  switch (draft.kind) {
    case 'answered':
      afterAnswer(d, draft.step, draft.answer);
      break;
    case 'corrected':
      afterCorrection(d, draft.of, draft.answer);
      break;
    default:
      afterHappening(d, draft);
  }
  advance(d);
  return d.fact();
}
