// What a judgement carries back to decide: a verdict for the machine, or null to shoot on.

import type { Finding, Verdict } from '../types.ts';
import type { LoopNotes } from '../notes.ts';

export interface Judgement {
  /** Null: one more shot (the notes say how many are wanted). */
  readonly verdict: Verdict | null;
  readonly say: readonly string[];
  readonly notes: Partial<LoopNotes>;
  readonly findings: readonly Finding[];
}

export const judgement = (verdict: Verdict | null, more: Partial<Omit<Judgement, 'verdict'>> = {}): Judgement =>
  ({ verdict, say: [], notes: {}, findings: [], ...more });
