// Knows what one step is worth on this very bow, and so needs its shots only to see where the bow stands: what nobody can beat who does not know it.
// It moves along the same line, over half of the travel at once, and sees at once where the travel will not do.

import { alongLine, type Habits } from './blended-line.ts';
import { LEFT, shootHere, Tried, type Rule } from './one-knob.ts';

const SHOTS = 3;
/** As good as certain, inches a step. */
const CERTAIN = 1e-6;
/** Its line needs no check, and a better setting is always known: it moves rather than doubts. */
const HABITS: Habits = { ownSure: 0, worthAShot: 0.8, mostHere: 9, mostAtBest: Infinity, triedBeforeGivingUp: Infinity };

/** `fixable`: whether any setting would do. */
export const oracle = (response: number, fixable: boolean): Rule => (bow, task) => {
  if (fixable) return alongLine(bow, { ...task, cap: task.reach / 2 }, { mean: response, sd: CERTAIN }, HABITS);
  shootHere(bow, new Tried(), SHOTS);
  return LEFT;
};
