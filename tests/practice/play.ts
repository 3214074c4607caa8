// Plays a whole tune of a practice bow through the session on a memory store, with no archer but the room's own.

import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Content } from '../../src/content/types.ts';
import type { Finding, View } from '../../src/machine/types.ts';
import { answerTo, type Said } from '../../src/practice/answers.ts';
import { byTable, type Flight } from '../../src/practice/flight.ts';
import { FRESH, type Memory } from '../../src/practice/memory.ts';
import type { Happened } from '../../src/practice/shoot.ts';
import type { World } from '../../src/practice/world.ts';
import { openSession } from '../../src/session.ts';
import { NOON, shippedContent } from '../tunes/play.ts';

export const CONTENT: Content = shippedContent();
export const KNOBS = CONTENT.knobs;

export interface Turn { readonly about: string; readonly said: Said; readonly view: View }
export interface PracticeTune {
  readonly last: View;
  /** Every question with what was answered, and the view before it. */
  readonly turns: readonly Turn[];
  readonly findings: readonly Finding[];
  /** Changes of the bow that were advised and answered, in order. */
  readonly moves: readonly string[];
  readonly shots: readonly Happened[];
  readonly memory: Memory;
}

export interface Playing {
  readonly flight?: Flight;
  /** What is done to the memory between two answers. */
  readonly keep?: (memory: Memory) => Memory;
  readonly until?: (view: View) => boolean;
}

const MINUTE = 60_000;
const MOST = 600;

/** Until the tune is done, or nobody at the bow can answer any more. Throws where an answer is refused. */
export function playPractice(world: World, { flight = byTable, keep = (memory) => memory, until = () => false }: Playing = {}): PracticeTune {
  const session = openSession({ content: CONTENT, store: memoryStore(), startAt: new Date(NOON), engine: 'test', tune: 'practice', known: [] });
  const turns: Turn[] = [];
  const findings: Finding[] = [];
  const moves: string[] = [];
  const shots: Happened[] = [];
  let memory = FRESH;
  while (session.view().type !== 'done' && !until(session.view())) {
    if (turns.length === MOST) throw new Error(`the tune of bow ${world.seed} does not end`);
    const view = session.view();
    const { said, memory: next, happened } = answerTo(world, memory, view, flight);
    memory = keep(next);
    if (said === null) break;
    if (happened !== undefined) shots.push(happened);
    const { advice, ask } = view;
    turns.push({ about: ask?.about ?? '', said, view });
    if (ask?.about === 'moved' && said !== 'not now') moves.push(`${advice?.kind ?? ''} ${advice?.knob ?? ''} ${advice?.direction ?? ''}`);
    const reply = session.send({ kind: 'answer', answer: said }, new Date(NOON + turns.length * MINUTE));
    if (reply.error !== undefined) throw new Error(`bow ${world.seed}, "${ask?.about ?? ''}": ${reply.error.message} (sent ${JSON.stringify(said)})`);
    findings.push(...reply.view.findings);
  }
  return { last: session.view(), turns, findings, moves, shots, memory };
}
