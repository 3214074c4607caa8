// The line that gave a verdict, with the books as they would have stood there had all been told right at once.

import type { Deciding } from './deciding.ts';
import { booksAt, effectiveFacts, type State } from './state.ts';
import type { Answer, Fact } from './types.ts';

/** Nobody reads a hole closer: shots that were told wrong by no more than this in all show what they showed. Inches. */
const SLIP = 1 / 16 + 1e-9;

/** The books on the line `said`, where line `of`, now corrected, went into it; else null. A slip counts only where `slips` is set. */
export function thenOf(d: Deciding, of: number, said: Fact | undefined, slips = false): State | null {
  const { facts } = d.state;
  if (said === undefined || said.seq < of || (!slips && offBy(facts, said.seq) <= SLIP)) return null;
  return booksAt(d.content, facts, said.seq);
}

/** By how much the answers up to a line read otherwise now than on that line, inches; a move that does counts as far off. */
function offBy(facts: readonly Fact[], seq: number): number {
  const was = effectiveFacts(facts.filter((fact) => fact.seq <= seq));
  const is = effectiveFacts(facts);
  return was.reduce((sum, fact, i) => {
    const now = is[i];
    return fact.kind === 'answered' && now?.kind === 'answered' ? sum + apart(fact.answer, now.answer) : sum;
  }, 0);
}

function apart(was: Answer, is: Answer): number {
  if (was === is) return 0;
  if (was.kind !== 'shots' || is.kind !== 'shots') return is.kind === 'moved' ? Infinity : 0;
  if (was.shots.length !== is.shots.length) return Infinity;
  return was.shots.reduce((sum, a, i) => {
    const b = is.shots[i];
    if (b === undefined || 'missed' in a || 'missed' in b) return b !== undefined && 'missed' in a && 'missed' in b ? sum : Infinity;
    return (a.called === 'bad') !== (b.called === 'bad') ? Infinity : sum + Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));
  }, 0);
}
