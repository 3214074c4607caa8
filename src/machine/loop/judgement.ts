// What a judgement carries back to decide: a verdict for the machine, or null to shoot on.

import type { Finding, Verdict } from '../types.ts';
import type { LoopNotes } from '../notes.ts';

/** `V` are the verdicts that this kind of judgement may come to: each judge names its own, and only where they fit they are taken. */
export interface Judgement<V extends Verdict = Verdict> {
  /** Null: one more shot (the notes say how many are wanted). */
  readonly verdict: V | null;
  readonly say: readonly string[];
  readonly notes: Partial<LoopNotes>;
  readonly findings: readonly Finding[];
}

export const judgement = <V extends Verdict>(verdict: V, more: Partial<Omit<Judgement, 'verdict'>> = {}): Judgement<V> =>
  ({ verdict, say: [], notes: {}, findings: [], ...more });

/** No verdict yet. */
export const shootOn = (more: Partial<Omit<Judgement, 'verdict'>>): Judgement<never> => ({ verdict: null, say: [], notes: {}, findings: [], ...more });
