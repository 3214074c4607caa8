// The secant rule: first one step of the chart, then the line through the last two settings. No belief, so one unlucky group throws it far. Rival of the coach.

import { type Stop, plainMean, toSmallest } from './chart.ts';
import { clamp, LEFT, mayGoOn, shootHere, Tried, TUNED, wholeSteps, type OneKnob, type Rule, type Said, type Task } from './one-knob.ts';

const SHOTS = 3;
/** A slope below this share of the book's is taken for none. */
const FLAT = 0.1;
/** Nobody goes from one end of the travel to the other at once. */
const LONGEST = 1;

/** `first` in steps of the adjustment. */
export const secant = (stop: Stop, first: number): Rule => (bow: OneKnob, task: Task): Said => {
  const tried = new Tried();
  shootHere(bow, tried, SHOTS);
  let before: number | null = null;
  let flat = 0;
  while (mayGoOn(bow)) {
    const next = stop(tried, bow.at, task);
    if (next === 'tuned') return TUNED;
    if (next === 'shoot') { shootHere(bow, tried, 1); continue; }
    const mean = plainMean(tried.at(bow.at));
    const slope: number = before === null ? task.book : (mean - plainMean(tried.at(before))) / (bow.at - before);
    const isFlat = Math.abs(slope) < FLAT * Math.abs(task.book);
    flat = isFlat ? flat + 1 : 0;
    if (flat === 2) break;
    const step = clamp(before === null || isFlat ? -Math.sign(mean * task.book) * first : wholeSteps(-mean / slope), -LONGEST * task.reach, LONGEST * task.reach);
    const wish = step === 0 ? -Math.sign(mean * slope) : step;
    const to = clamp(bow.at + wish, -task.reach, task.reach);
    if (to === bow.at) break;
    before = bow.at;
    bow.moveTo(to);
    shootHere(bow, tried, SHOTS);
  }
  toSmallest(bow, tried);
  return LEFT;
};
