// What stands in the live part of the screen must fit the smallest terminal: taller, it leaves torn lines behind.

import { error } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content, Step } from '../types.ts';

/** The smallest terminal is 40 by 20: one column stays free, and three lines are the heading, the input and the keys. */
export const COLUMNS = 39;
export const LINES = 17;

/** How many lines a text takes when it is broken at blanks; a word longer than the line is cut. */
export function wrappedLines(text: string, columns: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(' ')) {
    const length = [...word].length;
    if (used > 0 && used + 1 + length <= columns) {
      used += 1 + length;
      continue;
    }
    if (used > 0) lines += 1;
    lines += Math.max(0, Math.ceil(length / columns) - 1);
    used = length === 0 ? 0 : ((length - 1) % columns) + 1;
  }
  return lines;
}

/** Lines of the live part: the question, its text, its cautions, and what can be picked (a mark and a blank before each). */
export function liveLines(step: Step, cautions: Content['cautions']): number {
  const sum = (texts: readonly string[], columns: number): number => texts.reduce((lines, one) => lines + wrappedLines(one, columns), 0);
  const picks = step.kind === 'choice' ? step.options.map((one) => one.label)
    : step.kind === 'chunk' ? step.checks.map((one) => one.label) : [];
  const warned = step.cautions.flatMap((id) => cautions[id] ?? []);
  return sum([step.short, ...step.text, ...warned], COLUMNS) + sum(picks, COLUMNS - 2);
}

export function height(content: Content, where: Where): Problem[] {
  return Object.values(content.steps).flatMap((step) => {
    const lines = liveLines(step, content.cautions);
    if (lines <= LINES) return [];
    return [error(where(['steps', step.id]), `"${step.id}" takes ${lines} lines at 40 columns with its text, cautions and options; ${LINES} fit: shorten it, or move words to why`)];
  });
}
