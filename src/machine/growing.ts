// Somebody who still grows draws farther from month to month: how far the shaft reaches is no figure to go on from.

import type { Deciding } from './deciding.ts';
import { chosen } from './guards.ts';

/** The shaft's reach holds for one day: after a long break it is measured again before a shot. */
export function reachAfterBreak(d: Deciding): void {
  if (chosen(d.state, 'growing') === 'growing') dueAgain(d, ['shaft-ahead']);
}

/**
 * It comes to light that the archer still grows. Another limit holds for the shaft: what passed for a grown archer is measured
 * again. And an adult must be there: what asks for one was answered as by a grown archer, and comes before the draw.
 */
export function growsAfterAll(d: Deciding): void {
  d.say('growing');
  dueAgain(d, ['backstop', 'shaft-ahead']);
}

// What was not answered yet comes in its own place.
const dueAgain = (d: Deciding, steps: readonly string[]): void => {
  const answered = steps.filter((id) => d.state.answers[id] !== undefined);
  if (answered.length > 0) d.add({ due: answered });
};
