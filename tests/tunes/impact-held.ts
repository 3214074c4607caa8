// What holds for every tune with broadheads, whatever the luck.

import { expect } from 'vitest';
import type { Ask, Finding } from '../../src/machine/types.ts';
import { headOf, impactsOf, yardsOf } from './impact-course.ts';
import { ledgerOfAdvice } from './held.ts';
import { advicesOf, type Turn, type Walked } from './walk-through.ts';

const GATES = ['broadhead-place', 'broadhead-arrows', 'blades-ahead', 'first-broadhead'];

/** Rounds of a set, as they were shot: a new one begins where the coach counts from nought again. */
export function setsOf(turns: readonly Turn[]): readonly (readonly Turn[])[] {
  const sets: Turn[][] = [];
  for (const turn of turns) {
    const { ask } = turn;
    if (ask.kind !== 'impact') continue;
    const begins = headOf(ask) === 'broadhead' && ask.shots.taken === 0;
    if (begins || sets.length === 0) sets.push([]);
    sets.at(-1)?.push(turn);
  }
  return sets;
}

export function holdsForAnyHunt(walk: Walked, mostShots: number): void {
  const { turns, lines, last } = walk;
  expect(last.type).toBe('done');
  expect(last.bow).toEqual(ledgerOfAdvice(walk));
  const impacts = impactsOf(walk);
  expect(impacts.length).toBeGreaterThan(0);
  expect(impacts.length).toBeLessThanOrEqual(mostShots);
  holdsBeforeTheFirst(walk);
  for (const set of setsOf(turns)) holdsForSet(set, turns);
  // Each distance farther back only where the archer said so, the place looked at again first.
  const yards = impacts.map(({ ask }) => yardsOf(ask));
  for (const at of yards.flatMap((distance, i) => (i > 0 && distance > (yards[i - 1] ?? 0) ? [i] : []))) {
    const between = turns.slice(turns.indexOf(impacts[at - 1]!) + 1, turns.indexOf(impacts[at]!));
    expect(between.map(({ ask, answer }) => (ask.about === 'broadheads-farther' ? answer : ask.about))).toEqual(['farther', 'gate:backstop', 'gate:broadhead-place']);
  }
  // The sight is set before the first broadhead counts, and then not touched until all is settled and tight.
  const sight = turns.map(({ ask }, i) => (/sight/.test(ask.about) ? i : -1)).filter((i) => i >= 0);
  expect(sight.map((i) => turns[i]?.ask.about)).toEqual(['sight-at-20', 'sight-last']);
  expect(sight[0]).toBeLessThan(turns.indexOf(impacts[0]!));
  expect(sight[1]).toBeGreaterThan(turns.indexOf(impacts.at(-1)!));
  for (const advice of advicesOf(lines)) expect(`${advice.what} ${advice.undo ?? ''}`.toLowerCase()).not.toContain('sight');
}

function holdsBeforeTheFirst({ turns }: Walked): void {
  const first = turns.findIndex(({ ask }) => headOf(ask) === 'broadhead');
  const found = turns.slice(0, first).flatMap(({ reply }) => reply.findings as readonly Finding[]);
  for (const gate of GATES) expect(found).toContainEqual({ kind: 'gate', gate, result: 'passed' });
}

// In turn, the broadhead first; judged only in whole pairs; the heads change shafts once, where the second half begins.
function holdsForSet(set: readonly Turn[], turns: readonly Turn[]): void {
  const good = set.filter(({ answer }) => typeof answer === 'object' && answer !== null && 'x' in answer && !('called' in answer));
  expect(good.map(({ ask }) => headOf(ask))).toEqual(good.map((_, i) => (i % 2 === 0 ? 'broadhead' : 'field')));
  expect(good.length % 2).toBe(0);
  const swaps = turns.slice(turns.indexOf(set[0]!), turns.indexOf(set.at(-1)!)).filter(({ ask }) => ask.about === 'gate:heads-swapped');
  expect(swaps).toHaveLength(good.length > 6 ? 1 : 0);
  const [swap] = swaps;
  if (swap !== undefined) expect(good.filter((turn) => turns.indexOf(turn) < turns.indexOf(swap))).toHaveLength(6);
  for (const { ask, reply } of set) if (decided(reply.findings as readonly Finding[], ask, reply.advice)) expect(good.length).toBeGreaterThanOrEqual(6);
}

const decided = (findings: readonly Finding[], ask: Ask, advice: unknown): boolean => ask.kind === 'impact' && (advice !== null || findings.some(({ kind }) => kind === 'axis'));
