// What stands in the live part of the screen must fit the smallest terminal: taller, it leaves torn lines behind.

import { error } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Check, Content, GuardName, Step } from '../types.ts';

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

const sum = (texts: readonly string[]): number => texts.reduce((lines, one) => lines + wrappedLines(one, COLUMNS), 0);
/** A mark and a blank stand before each thing that can be picked. */
const picks = (labels: readonly string[]): number => labels.reduce((lines, one) => lines + wrappedLines(one, COLUMNS - 2), 0);
const warned = (ids: readonly string[], content: Content): string[] => ids.flatMap((id) => content.cautions[id] ?? []);

/** Lines of the live part: the question, its text, its cautions, and what can be picked. */
export function liveLines(step: Step, content: Content): number {
  const words = sum([step.short, ...step.text, ...warned(step.cautions, content)]);
  if (step.kind === 'choice') return words + picks(step.options.map((one) => one.label));
  // One more line says that all of it is true.
  return step.kind === 'chunk' ? words + 1 + tallest(step.checks) : words;
}

const RESTS: readonly GuardName[] = ['cable-driven', 'limb-driven', 'blade', 'containment', 'prong'];

/** A bow has one rest, so checks for different rests never stand together. */
function tallest(checks: readonly Check[]): number {
  return Math.max(...RESTS.map((rest) =>
    picks(checks.filter((one) => !one.when.some((guard) => RESTS.includes(guard) && guard !== rest)).map((one) => one.label))));
}

export function height(content: Content, where: Where): Problem[] {
  const found: Problem[] = [];
  const fit = (lines: number, what: string, path: readonly (string | number)[]): void => {
    if (lines > LINES) found.push(error(where(path), `${what} takes ${lines} lines at 40 columns; ${LINES} fit: shorten it, or move words to where they are asked for`));
  };
  for (const step of Object.values(content.steps)) {
    fit(liveLines(step, content), `"${step.id}" with its text, cautions and options`, ['steps', step.id]);
    if (step.kind !== 'chunk') continue;
    step.checks.forEach((check, index) => {
      // Asked alone, a check shows what to look at, what to do, and three answers.
      const lines = sum([check.label, check.how, check.thenDo]) + 3;
      fit(lines, `the check "${check.id}" asked alone`, ['steps', step.id, 'checks', index]);
    });
  }
  for (const knob of Object.values(content.knobs)) {
    fit(sum([...knob.how, ...warned(knob.cautions, content)]), `how to move "${knob.id}", with its cautions,`, ['knobs', knob.id, 'how']);
  }
  for (const one of Object.values(content.inspections)) {
    fit(sum(one.say) + picks(one.options.map((option) => option.label)), `the inspection "${one.id}"`, ['inspections', one.id]);
  }
  return found;
}
