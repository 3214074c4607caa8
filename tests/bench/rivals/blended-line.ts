// One straight line for the adjustment, its slope a blend of the book and of this bow. Rival of the coach: the same line, none of the walk's rules.
// Derived: weighted least squares with a normal belief about the slope (sd 0.6 of the book's) and a wide one about the tear at the start.

import { bestSetting, chanceNotReachable, fitLine, predict, type Line, type SlopePrior } from '../../../src/archery/response.ts';
import { chanceWithin } from '../../../src/archery/tolerance.ts';
import { clamp, LEFT, mayGoOn, shootHere, Tried, TUNED, wholeSteps, type OneKnob, type Rule, type Said, type Task } from './one-knob.ts';
import { chanceByShots, seenSoFar, type Seen } from './own-shots.ts';

const AROUND_BOOK = 0.6;
const SURE = 0.95;
const FIRST = 3;

/** How patient, and how careful. */
export interface Habits {
  /** Asked of the shots at this setting alone, beside what the line says. */
  readonly ownSure: number;
  /** From this chance on a shot is cheaper than a move. */
  readonly worthAShot: number;
  readonly mostHere: number; readonly mostAtBest: number;
  /** Steps tried before it gives up. */
  readonly triedBeforeGivingUp: number;
}

export const blendedLine: Rule = (bow, task) => alongLine(bow, task, { mean: task.book, sd: AROUND_BOOK * Math.abs(task.book) }, {
  ownSure: 0.8, worthAShot: 0.5, mostHere: 9, mostAtBest: 12, triedBeforeGivingUp: Math.min(task.cap, task.reach),
});

/** The same with any belief about the slope. */
export function alongLine(bow: OneKnob, task: Task, belief: SlopePrior, habits: Habits): Said {
  const tried = new Tried();
  shootHere(bow, tried, FIRST);
  while (mayGoOn(bow)) {
    const seen = seenSoFar(tried);
    const line = lineOf(seen, belief);
    const here = predict(line, bow.at);
    const within = chanceWithin(here.mean, here.sd, seen.df, -task.within, task.within);
    const shots = tried.at(bow.at).length;
    if (within >= SURE && chanceByShots(seen, bow.at, task.within) >= habits.ownSure) return TUNED;
    const settings = tried.settings();
    const out = chanceNotReachable(line, -task.reach, task.reach, -task.within, task.within, seen.df);
    if (out >= SURE && Math.max(...settings.map(Math.abs)) >= habits.triedBeforeGivingUp) break;
    if (within >= habits.worthAShot && shots < habits.mostHere) { shootHere(bow, tried, 1); continue; }
    const reached = clamp(bestSetting(line), Math.min(...settings) - task.cap, Math.max(...settings) + task.cap);
    let to = wholeSteps(clamp(reached, -task.reach, task.reach));
    if (to === bow.at) {
      if (shots < habits.mostAtBest) { shootHere(bow, tried, 1); continue; }
      to = clamp(bow.at - Math.sign(here.mean * line.slope), -task.reach, task.reach);
      if (to === bow.at) break;
    }
    bow.moveTo(to);
    shootHere(bow, tried, FIRST);
  }
  const seen = seenSoFar(tried);
  const line = lineOf(seen, belief);
  backToBest(bow, seen.points.map(({ x, mean }) => ({ x, tear: (predict(line, x).mean + mean) / 2 })));
  return LEFT;
}

const lineOf = ({ points, sd }: Seen, belief: SlopePrior): Line => fitLine(points.map((point) => ({ ...point, group: 0 })), sd, belief, 0);

/** The tried setting with the smallest tear; the start gets a small bonus. */
export function backToBest(bow: OneKnob, tried: readonly { readonly x: number; readonly tear: number }[]): void {
  const cost = ({ x, tear }: { readonly x: number; readonly tear: number }): number => tear ** 2 + (x === 0 ? 0 : 0.01);
  const [best] = tried.toSorted((a, b) => cost(a) - cost(b));
  if (best !== undefined && best.x !== bow.at) bow.moveTo(best.x);
}
