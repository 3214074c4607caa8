// Something is changed by chance, and kept where the group looks better. Common at ranges; rival of the coach.

import type { Random } from '../../../src/maths/random.ts';
import { type Stop, plainMean } from './chart.ts';
import { clamp, LEFT, mayGoOn, shootHere, Tried, TUNED, type OneKnob, type Rule, type Said, type Task } from './one-knob.ts';

const SHOTS = 3;
/** Changes are from one step to a third of the travel. */
const LARGEST = 1 / 3;

export const randomKeep = (stop: Stop, random: Random): Rule => (bow: OneKnob, task: Task): Said => {
  const tried = new Tried();
  shootHere(bow, tried, SHOTS);
  let best = { at: bow.at, off: Math.abs(plainMean(tried.at(bow.at))) };
  while (mayGoOn(bow)) {
    const next = stop(tried, bow.at, task);
    if (next === 'tuned') return TUNED;
    if (next === 'shoot') { shootHere(bow, tried, 1); continue; }
    const off = Math.abs(plainMean(tried.at(bow.at)));
    if (bow.at === best.at || off < best.off) best = { at: bow.at, off };
    const size = 1 + Math.floor(random.uniform() * Math.max(1, Math.round(LARGEST * task.reach)));
    const to = clamp(best.at + (random.uniform() < 0.5 ? -size : size), -task.reach, task.reach);
    // It goes back by the way; what counts is where it is shot next.
    if (to !== bow.at) bow.moveTo(to);
    shootHere(bow, tried, SHOTS);
  }
  if (best.at !== bow.at) bow.moveTo(best.at);
  return LEFT;
};
