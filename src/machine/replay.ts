// A journal's facts -> state, also where the content has changed since: replay goes as far as facts fit, sets the rest
// aside (they stay in the file), and the line that resumes says which, so that every later replay does the same.

import type { Content } from '../content/types.ts';
import { emptyState, evolve, type State } from './state.ts';
import type { Fact } from './types.ts';

export interface Replayed {
  readonly state: State;
  /** Lines that no longer fit and are not yet set aside by a later line; null where all fit. */
  readonly unfit: { readonly from: number; readonly to: number } | null;
}

interface Range { readonly from: number; readonly to: number }

/** Folds what fits. Never throws on facts that an older content or engine wrote. */
export function replay(content: Content, facts: readonly Fact[]): Replayed {
  const aside = facts.flatMap((fact) => setAsideBy(fact) ?? []);
  const counting = facts.filter((fact) => !aside.some(({ from, to }) => fact.seq >= from && fact.seq <= to));
  let state = emptyState();
  for (const fact of counting) {
    const next = tryEvolve(content, state, fact);
    if (next === null) return { state, unfit: { from: fact.seq, to: facts.at(-1)?.seq ?? fact.seq } };
    state = next;
  }
  return { state, unfit: null };
}

function tryEvolve(content: Content, state: State, fact: Fact): State | null {
  try {
    const next = evolve(content, state, fact);
    return next.fits ? next : null;
  } catch {
    // A step, knob or sentence that this content no longer has: the fact does not fit.
    return null;
  }
}

function setAsideBy(fact: Fact): Range | null {
  const range = fact.decided.loop?.setAside;
  return fact.kind === 'resumed' && range !== undefined ? range : null;
}
