// What there is to see at a practice bow for one question: the answer of somebody who looks well. In practice it is put into words, and
// the learner makes the answer of it.

import { knobEntries } from '../content/types.ts';
import type { Ask, Ledger } from '../machine/types.ts';
import { answerTo, type Said } from './answers.ts';
import type { Flight } from './flight.ts';
import { oddAmongTuning } from './looks.ts';
import type { Memory } from './memory.ts';
import type { World } from './world.ts';

/** Null where nobody at the bow can see it, or nothing is there to be looked at: a shot, a move. Throws RangeError on a question that nobody knows. */
export function seenAt(world: World, memory: Memory, ask: Ask, flight: Flight): Said | null {
  if (ask.kind === 'tear' || ask.kind === 'impact' || ask.kind === 'amount') return null;
  if (ask.about === 'arrow-out') return Number(oddAmongTuning(world, memory.condition)[0] ?? 0);
  // A tape reads where things stand, whatever was told of them.
  const { settings } = memory.condition;
  const bow: Ledger = Object.fromEntries(knobEntries(settings).map(([knob, value]) => [knob, { value, unit: 'count' }]));
  return answerTo(world, { ...memory, told: settings, slip: null }, { ask, bow, advice: null }, flight).said;
}
