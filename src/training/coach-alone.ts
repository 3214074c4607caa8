// The same bow, the same luck, and a learner who does to the letter what the coach says and reads by a rule: what a debrief is held against.

import type { Content } from '../content/types.ts';
import { memoryStore } from '../journal/memory-store.ts';
import { answerTo } from '../practice/answers.ts';
import type { Flight } from '../practice/flight.ts';
import { caughtUp, FRESH } from '../practice/memory.ts';
import { quietTear } from '../practice/trace.ts';
import type { World } from '../practice/world.ts';
import { bowKnobOf, isNotMoved, type Tear } from '../machine/types.ts';
import { openSession } from '../session.ts';

export interface CoachAlone {
  readonly shots: number;
  readonly changes: number;
  /** Where it is left, luck aside. */
  readonly tear: Tear;
  /** Its end: the walk is done; or the bow is at a dealer's. */
  readonly ends: 'done' | 'stopped';
}

const BEGINS = Date.parse('2000-01-01T12:00:00Z');
const MINUTE = 60_000;
/** More answers than any walk takes. */
const MOST = 800;

/** The same archer, who neither slips on a screw nor on a rule: those are the learner's own in practice. */
const byTheLetter = (world: World): World =>
  ({ ...world, archer: { ...world.archer, reads: { ...world.archer.reads, error: 0, mirrored: 0 }, wrongAmount: { often: 0, told: 1 } } });

/** Throws Error where the walk refuses what the practice archer says: a mistake in the program. */
export function coachAlone(content: Content, of: World, flight: Flight): CoachAlone {
  const world = byTheLetter(of);
  const session = openSession({ content, store: memoryStore([], { skipCodec: true }), startAt: new Date(BEGINS), engine: 'practice', tune: 'practice', known: [] });
  let [memory, shots, changes] = [FRESH, 0, 0];
  const left = (ends: CoachAlone['ends']): CoachAlone => ({ shots, changes, tear: quietTear(world, caughtUp(world, memory, session.view().bow).condition, flight), ends });
  for (let turn = 1; turn <= MOST; turn += 1) {
    const view = session.view();
    if (view.type === 'done') return left('done');
    const { said, memory: next, happened } = answerTo(world, memory, view, flight);
    memory = next;
    if (said === null) return left('stopped');
    if (happened !== undefined) shots += 1;
    if (view.ask?.kind === 'amount' && bowKnobOf(view.advice) !== null && !isNotMoved(said)) changes += 1;
    const { error } = session.send({ kind: 'answer', answer: said }, new Date(BEGINS + turn * MINUTE));
    if (error !== undefined) throw new Error(`the practice archer's answer about ${view.ask?.about ?? ''} was refused: ${error.message}`);
  }
  throw new Error(`the walk of practice bow ${world.seed} does not end`);
}
