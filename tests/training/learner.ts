// A learner by script: answers from what is there to be seen, reads every hole by the rule, turns what is told; a test changes what it likes.

import { readFileSync } from 'node:fs';
import type { PracticeWords } from '../../src/content/practice-words.ts';
import type { PracticeOf } from '../../src/journal/practice-mark.ts';
import type { Intent, View } from '../../src/machine/types.ts';
import { byModel } from '../../src/practice/by-model.ts';
import { seenAt } from '../../src/practice/seen.ts';
import { openPractice, type PracticeSession } from '../../src/training/practice-session.ts';
import { CONTENT } from '../practice/play.ts';
import { NOON } from '../tunes/play.ts';
import { markedMemory } from './marked-memory.ts';

export const WORDS = JSON.parse(readFileSync(new URL('../../dist/practice.json', import.meta.url), 'utf8')) as PracticeWords;
const MINUTE = 60_000;
const FLIGHT = byModel();

export const practiceOn = (of: PracticeOf, store = markedMemory(), startAt = NOON): PracticeSession =>
  openPractice({ content: CONTENT, words: WORDS, store, of, startAt: new Date(startAt), engine: 'test', tune: 'practice' });

const byRule = (value: number, mark: number): number => Math.sign(value) * mark * Math.round(Math.abs(value) / mark) + 0;

/** What the script answers: what is seen, what the rule shows, "as told". */
export function usual(session: PracticeSession): unknown {
  const { ask, practice } = session.view();
  if (ask === null || practice === undefined) throw new Error('nothing is asked, or this is no practice');
  const hole = practice.shot?.hole;
  if (hole?.kind === 'none') return { missed: true };
  if (hole?.kind === 'sheet') return { x: byRule(hole.tail.x, 1 / 16), y: byRule(hole.tail.y, 1 / 16), ...called(practice.shot?.felt) };
  if (hole?.kind === 'target') return { x: byRule(hole.at.x, 1 / 4), y: byRule(hole.at.y, 1 / 4), ...called(practice.shot?.felt) };
  if (ask.kind === 'amount') return 'as told';
  const seen = seenAt(session.world, session.hidden(), ask, FLIGHT);
  return seen ?? 'no dealer';
}
const called = (felt: string | undefined): { readonly called?: 'bad' } => (felt === WORDS.felt.bad ? { called: 'bad' } : {});

export interface Played { readonly views: readonly View[]; readonly intents: readonly Intent[] }

/** Until the practice is over, or it stands at a dealer's. `instead` says something else at a view; null answers as usual. Throws where an answer is refused. */
export function playLearner(session: PracticeSession, instead: (view: View, turn: number) => Intent | null = () => null, most = 600, startAt = NOON): Played {
  const views: View[] = [session.view()];
  const intents: Intent[] = [];
  for (let turn = 1; turn <= most; turn += 1) {
    const view = session.view();
    if (view.type === 'done' || view.ask?.about === 'released') return { views, intents };
    const intent = instead(view, turn) ?? { kind: 'answer', answer: usual(session) };
    const { error } = session.send(intent, new Date(startAt + turn * MINUTE));
    if (error !== undefined) throw new Error(`"${view.ask?.about ?? ''}": ${error.message} (${JSON.stringify(intent)})`);
    intents.push(intent);
    views.push(session.view());
  }
  if (most === 600) throw new Error('this practice does not end');
  return { views, intents };
}
