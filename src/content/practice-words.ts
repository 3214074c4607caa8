// The words of the practice bow, from content/practice.yaml. They are no part of the walk's content: what a learner sees beside a question
// may be told better at any time, and no tune replays otherwise for it.

import { z } from 'zod';
import { readYaml } from './yaml-text.ts';
import { sayIssue } from './say-issue.ts';
import type { Problem } from './problem.ts';

const SAYS = [
  'bow', 'lesson', 'begin', 'menu-short', 'menu-text', 'menu-why', 'menu-number', 'menu-on', 'menu-new', 'number-short', 'number-text', 'number-why',
  'move', 'hidden-turn', 'ended', 'one-shot', 'shop', 'over', 'is-over',
] as const;
const DEBRIEF = [
  'title', 'about', 'lesson', 'any', 'wrong', 'adjustments', 'nothing-wrong', 'other-wrong', 'stood-off', 'works-book', 'works-other', 'works-not', 'gain', 'gain-no-book',
  'contact', 'contact-cured', 'contact-not', 'loose', 'loose-found', 'loose-not', 'creep', 'hand', 'hand-found', 'hand-not',
  'arrow-bent', 'arrow-nock', 'arrow-insert', 'danger-told', 'danger-missed', 'danger-open', 'rest-sound', 'archer', 'spread',
  'did', 'shots', 'changes', 'change-words', 'worse', 'worst', 'hidden', 'otherwise', 'overlooked', 'overlooked-words',
  'reading', 'read-off', 'read-most', 'read-at', 'read-mirror', 'read-none', 'left', 'as-found', 'as-left', 'set-at', 'coach', 'coach-result', 'coach-stopped',
  'coach-note', 'note', 'real',
] as const;

const text = z.string().min(1);
const byName = z.record(z.string(), text);
export const practiceWords = z.strictObject({
  lessons: z.record(z.string(), z.strictObject({ menu: text, about: text })),
  /** What is seen where something is chosen: by what is asked (without "gate:"), then by the answer that it stands for. */
  'looks': z.record(z.string(), byName),
  'numbers': byName,
  'not-known': byName,
  'texts': byName,
  /** By the step; '' where each check is told by itself. */
  'chunks': z.record(z.string(), z.string()),
  'checks': z.record(z.string(), z.strictObject({ fine: text, not: text.exactOptional() })),
  'felt': z.record(z.enum(['good', 'bad']), text),
  'says': z.record(z.enum(SAYS), text),
  'debrief': z.record(z.enum(DEBRIEF), text),
});
export type PracticeWords = z.infer<typeof practiceWords>;

/** Words as they are shipped, or all that is wrong with them. Pure: the text is handed in. */
export function readPracticeWords(file: string, source: string): { readonly words: PracticeWords | null; readonly problems: readonly Problem[] } {
  const yaml = readYaml(file, source);
  if (yaml.problems.length > 0) return { words: null, problems: yaml.problems };
  const read = practiceWords.safeParse(yaml.value);
  return read.success ? { words: read.data, problems: [] } : { words: null, problems: read.error.issues.flatMap((issue) => sayIssue(issue, yaml)) };
}
