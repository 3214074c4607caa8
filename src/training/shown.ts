// The coach's view with the invented bow beside it.

import type { PracticeWords } from '../content/practice-words.ts';
import type { Content } from '../content/types.ts';
import type { PracticeOf } from '../journal/practice-mark.ts';
import type { Ask, BowRecord, PracticeHole, PracticeView, View } from '../machine/types.ts';
import { askedOf } from '../practice/answers.ts';
import type { Flight } from '../practice/flight.ts';
import type { Memory } from '../practice/memory.ts';
import { seenAt } from '../practice/seen.ts';
import { NO_IMPACT, NO_TEAR, shoot } from '../practice/shoot.ts';
import type { World } from '../practice/world.ts';
import { lookWords } from './look-words.ts';
import { nameOf } from './world-of.ts';

export interface Showing {
  readonly content: Content;
  readonly words: PracticeWords;
  readonly of: PracticeOf;
  readonly world: World;
  readonly memory: Memory;
  readonly flight: Flight;
  readonly ended: boolean;
  readonly debrief: BowRecord | null;
}

/** Never a view without its mark: whatever face shows it can say that this is practice. */
export function shownOf(view: View, showing: Showing): View {
  const { words, of, ended, debrief } = showing;
  const name = nameOf(of, words);
  const ask = ended ? null : markedAsk(view.ask);
  const first = view.seq === 1 ? [words.says.begin] : [];
  const practice: PracticeView = { of: name, ...seenFor(ask, showing), ...(debrief === null ? {} : { debrief }) };
  return {
    ...view, ask, practice, say: [...first, ...view.say],
    ...(ended ? { type: 'done' as const, step: 'debrief', advice: null, where: { ...view.where, title: words.says.over, part: '' }, may: { back: words.says['is-over'], putBack: words.says['is-over'] } } : {}),
    ...(view.record === undefined ? {} : { record: asPractice(view.record, name) }),
  };
}

/** Shots are let go here, and hands need not do what is told. */
function markedAsk(ask: Ask | null): Ask | null {
  if (ask === null || ask.correcting !== undefined) return ask;
  return ask.kind === 'tear' || ask.kind === 'impact' || ask.kind === 'amount' ? { ...ask, practice: true } : ask;
}

export const asPractice = (record: BowRecord, name: string): BowRecord => ({ ...record, invented: true, title: `PRACTICE, ${name}: ${record.title}` });

function seenFor(ask: Ask | null, { content, words, world, memory, flight }: Showing): Pick<PracticeView, 'seen' | 'shot'> {
  if (ask === null) return { seen: [] };
  if (ask.kind === 'amount') return { seen: ask.practice === true && ask.unit !== 'count' ? [words.says.move] : [] };
  if (ask.kind === 'tear' || ask.kind === 'impact') return ask.practice === true ? { seen: [], shot: shotFor(ask, world, memory, flight, words) } : { seen: [] };
  return { seen: lookWords(words, content, ask, seenAt(world, memory, ask, flight)) };
}

function shotFor(ask: Extract<Ask, { kind: 'tear' | 'impact' }>, world: World, memory: Memory, flight: Flight, words: PracticeWords): NonNullable<PracticeView['shot']> {
  const { called, hole } = shoot(world, memory.condition, askedOf(world, ask), flight);
  const farthest = Math.max(Math.abs(hole.x), Math.abs(hole.y));
  const lost = farthest > (ask.kind === 'tear' ? NO_TEAR : NO_IMPACT);
  const made: PracticeHole = lost ? { kind: 'none' } : ask.kind === 'tear' ? { kind: 'sheet', tail: { x: hole.x, y: hole.y }, vanes: world.set.vanes } : { kind: 'target', at: { x: hole.x, y: hole.y } };
  return { felt: words.felt[called], hole: made };
}
