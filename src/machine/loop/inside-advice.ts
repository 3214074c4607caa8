// What stands beyond its hard limit goes back inside, before anything else.

import type { Content } from '../../content/types.ts';
import type { State } from '../state.ts';
import type { Advice } from '../types.ts';
import { amountInWords, phrase } from '../words.ts';
import { plainMove } from './advise.ts';
import { heldOver } from './inside.ts';

/** The put-back that holds the walk; null where nothing stands beyond its limit, or it is being put back already. */
export function insideAdvice(content: Content, state: State): Advice | null {
  const over = heldOver(content, state);
  if (over === null) return null;
  const knob = content.knobs[over.knob];
  return plainMove(content, state, knob, over.from, over.to, beyondInWords(content, over.knob), 'put-back');
}

/** What is wrong with it, and that nothing else comes first. */
export const beyondInWords = (content: Content, id: keyof Content['knobs']): string => {
  const { name, hard, unit, from } = content.knobs[id];
  if (id === 'nock-height') return phrase(content, 'beyond-level', { limit: amountInWords({ value: hard, unit }) });
  return phrase(content, from === 'maker' ? 'beyond-maker' : 'beyond-hard-limit', { knob: name, limit: amountInWords({ value: hard, unit }) });
};
