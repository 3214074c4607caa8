// The real session, played by the usual archer up to one question; for the faces that are to be tried there.

import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Ask, SessionLike, Store } from '../../src/machine/types.ts';
import { play, shippedContent } from '../tunes/play.ts';

const content = shippedContent();
const BOW = { start: { x: 0.02, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -7 } }, sd: 0.05, seed: 3 };

/** One question of each kind, by what it asks. */
export const QUESTIONS = {
  choice: 'hand', gate: 'gate:limbs', chunk: 'gate:range', count: 'axle-clips', turns: 'bolts-top', weight: 'peak-weight', length: 'shaft-ahead',
  tear: 'tear', amount: 'moved', confirm: 'sight-last', text: 'released',
} as const;
export type Question = keyof typeof QUESTIONS;

export interface At { readonly session: SessionLike; readonly store: Store; readonly ask: Ask }

export function sessionAt(question: Question): At {
  const about = QUESTIONS[question];
  const answers = question === 'text' ? { 'gate:history': 'dry-fire' } : {};
  const store = memoryStore();
  const { session } = play({ ...BOW, answers }, { content, store, until: ({ ask }) => ask?.about === about });
  const { ask } = session.view();
  if (ask?.about !== about) throw new Error(`the walk never asks about ${about}`);
  return { session, store, ask };
}
