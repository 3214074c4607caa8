// The course of a tune that is shot at a target, in short words: how many shots from where, what was asked in between, what
// was decided.

import type { Advice, Ask, Finding } from '../../src/machine/types.ts';
import { adviceInShort, findingInShort, otherThanGates, type Turn, type Walked } from './walk-through.ts';

/** Questions that tell of the course by themselves. */
const TOLD: Readonly<Record<string, string>> = {
  'gate:heads-swapped': 'heads swapped', 'broadheads-farther': 'farther', 'inspected': 'looked at', 'accept': 'accept',
};

export const impactsOf = ({ turns }: Walked): readonly Turn[] => turns.filter(({ ask }) => ask.kind === 'impact');
export const headOf = (ask: Ask): string => (ask.kind === 'impact' ? ask.head : '');
export const yardsOf = (ask: Ask): number => (ask.kind === 'impact' ? ask.distance.value : 0);

// A plumb line is shot from several distances in turn, always with the same arrow and head: that is one set.
function placeOf({ ask }: Turn, plumb: boolean): string | null {
  if (ask.kind !== 'impact') return ask.kind === 'tear' ? 'paper' : null;
  const what = plumb ? 'line' : `${ask.distance.value} yd`;
  return ask.step === 'shoot-shooting' ? what : `${ask.step.replace('shoot-', '')} ${what}`;
}

/** From the first impact on; a set at paper is one word, however many shots luck makes it. */
export function impactCourse(walk: Walked): readonly string[] {
  const { turns } = walk;
  const plumb = impactsOf(walk).every(({ ask }) => ask.kind === 'impact' && ask.head === 'field' && ask.shaft === 'fletched');
  const course: string[] = [];
  let row = { place: '', shots: 0 };
  const endRow = (): void => {
    if (row.shots > 0) course.push(row.place === 'paper' ? 'paper' : `${row.place} x${row.shots}`);
    row = { place: '', shots: 0 };
  };
  let shown = 'null';
  for (const turn of turns.slice(turns.findIndex(({ ask }) => ask.kind === 'impact'))) {
    const { ask, reply } = turn;
    const place = placeOf(turn, plumb);
    if (place !== null) {
      if (place !== row.place) endRow();
      row = { place, shots: row.shots + 1 };
    }
    const found = otherThanGates(reply.findings as readonly Finding[]).map(findingInShort);
    const advice = reply.advice as Advice | null;
    const advised = advice !== null && JSON.stringify(advice) !== shown;
    shown = JSON.stringify(advice);
    const told = TOLD[ask.about];
    if (told !== undefined || found.length > 0 || advised) endRow();
    course.push(...(told === undefined ? [] : [told]), ...found, ...(advised ? [adviceInShort(advice)] : []));
  }
  endRow();
  return course;
}
