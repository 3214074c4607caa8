// Chart and notebook: three shots, then one fixed step of 1/32 in to the side that the book names, until the mean lies within tolerance. `confirm`
// shoots on until the shots themselves show it. Common practice; rival of the coach.

import { backToBest } from './blended-line.ts';
import { clamp, LEFT, mayGoOn, shootHere, Tried, TUNED, type OneKnob, type Rule, type Said, type Task } from './one-knob.ts';
import { chanceByShots, seenSoFar } from './own-shots.ts';

const SHOTS = 3;
const [SURE, MOST_HERE] = [0.95, 12];

/** Decides at one setting by its shots: tuned, one more shot, or on to the next. */
export type Stop = (tried: Tried, at: number, task: Task) => 'tuned' | 'shoot' | 'move';

/** The mean of the shots, however few they are and however they scatter. */
export const byMean: Stop = (tried, at, { within }) => (Math.abs(plainMean(tried.at(at))) <= within ? 'tuned' : 'move');

/** Tuned only where the shots here leave no doubt. */
export const confirmed: Stop = (tried, at, { within }) => {
  const shots = tried.at(at);
  if (chanceByShots(seenSoFar(tried), at, within) >= SURE) return 'tuned';
  return Math.abs(plainMean(shots)) <= within && shots.length < MOST_HERE ? 'shoot' : 'move';
};

export const plainMean = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0) / values.length;

/** `step` in steps of the adjustment. */
export const chart = (stop: Stop, step: number): Rule => (bow: OneKnob, task: Task): Said => {
  const tried = new Tried();
  shootHere(bow, tried, SHOTS);
  while (mayGoOn(bow)) {
    const next = stop(tried, bow.at, task);
    if (next === 'tuned') return TUNED;
    if (next === 'shoot') { shootHere(bow, tried, 1); continue; }
    const to = clamp(bow.at - Math.sign(plainMean(tried.at(bow.at)) * task.book) * step, -task.reach, task.reach);
    // At the end of the travel the chart knows no more: it is shot again.
    if (to !== bow.at) bow.moveTo(to);
    shootHere(bow, tried, SHOTS);
  }
  toSmallest(bow, tried);
  return LEFT;
};

/** Back to where the mean was smallest: that much the notebook tells. */
export const toSmallest = (bow: OneKnob, tried: Tried): void => backToBest(bow, tried.settings().map((x) => ({ x, tear: plainMean(tried.at(x)) })));
