// A practice told from its lines: every shot as it truly was beside what was read of it, every turn with what it did to the tear, and the bow
// as it is left. The debrief is made of it; the bow goes on from its memory.

import type { Fact, Tear } from '../machine/types.ts';
import { feet, yards } from '../maths/units.ts';
import { speedFor } from '../archery/launch-speed.ts';
import type { Point } from '../archery/shots.ts';
import { massOf } from './arrows.ts';
import { bowDeparture } from './bow.ts';
import { standing, type Condition } from './condition.ts';
import { HEADS, type Flight } from './flight.ts';
import { afterLine, tells, toldTurn, trulyTurned, type Hands, type Turned } from './learner.ts';
import { FRESH, type Memory } from './memory.ts';
import { shoot, type Asked, type Happened } from './shoot.ts';
import type { World } from './world.ts';

/** What was shot, as a line keeps it. */
export interface KeptShot {
  readonly arrow: string | null;
  readonly nockTurn: number;
  readonly flying: string;
  readonly at: 'paper' | 'target';
  readonly distance: { readonly value: number };
}

export interface PracticeLine {
  readonly fact: Fact;
  readonly hands: (Hands & { readonly shot?: KeptShot; readonly overlooked?: string }) | null;
}

export interface ShotTraced {
  readonly nth: number;
  readonly asked: Asked;
  readonly happened: Happened;
  /** Null: told as missed. */
  readonly told: Tear | null;
}

export interface TurnTraced extends Turned {
  readonly putBack: boolean;
  /** The coach was told of it, and told the truth. */
  readonly told: 'as done' | 'otherwise' | 'not at all';
  readonly before: Tear;
  readonly after: Tear;
}

export interface Trace {
  readonly memory: Memory;
  readonly shots: readonly ShotTraced[];
  readonly turns: readonly TurnTraced[];
  /** What is wrong with the bow was told of. */
  readonly dangerTold: boolean;
  /** What was to be seen where it was answered otherwise, as it stood there. */
  readonly overlooked: readonly string[];
  /** The coach was told of a turn that was not made. */
  readonly onlyTold: number;
}

/** Feet in paper, yards at a target. */
export const askedIn = ({ arrow, nockTurn, flying, at, distance: { value } }: KeptShot): Asked => ({
  arrow, nockTurn, flying: HEADS.find((one) => one === flying) ?? 'field', at: at === 'paper' ? { paper: feet(value) } : { target: yards(value) },
});

/** Where the tail of a straight shot goes at 7 ft, from the bow alone: no luck, no hand, no arrow of its own, nothing that touches. */
export function quietTear(world: World, condition: Condition, flight: Flight): Point {
  const { bow, set } = world;
  return flight.tear(bowDeparture(bow, standing(world, condition)), speedFor(bow.throws, massOf(set.parts, set.vanes)), feet(7));
}

/** Folds the lines, oldest first. */
export function trace(world: World, lines: readonly PracticeLine[], flight: Flight): Trace {
  const corrected = new Map(lines.flatMap(({ fact }) => (fact.kind === 'corrected' ? [[fact.of, fact.answer] as const] : [])));
  const shots: ShotTraced[] = [];
  const turns: TurnTraced[] = [];
  let memory = FRESH;
  let [dangerTold, onlyTold] = [false, 0];
  for (const { fact, hands } of lines) {
    const next = afterLine(world, memory, fact, hands);
    if (hands?.shot !== undefined && fact.kind === 'answered') {
      const asked = askedIn(hands.shot);
      const answer = corrected.get(fact.seq) ?? fact.answer;
      const told = answer.kind === 'shots' ? answer.shots[0] : undefined;
      shots.push({ nth: shots.length + 1, asked, happened: shoot(world, memory.condition, asked, flight), told: told === undefined || 'missed' in told ? null : { x: told.x, y: told.y } });
    }
    turns.push(...turnsOf(world, memory, next, fact, hands, flight));
    if (toldTurn(fact) !== null && trulyTurned(fact, hands).length === 0) onlyTold += 1;
    if (fact.kind === 'answered' && world.bow.danger !== null && tells(world.bow.danger, fact.about, fact.answer)) dangerTold = true;
    memory = next;
  }
  const overlooked = lines.flatMap(({ hands }) => hands?.overlooked ?? []);
  return { memory, shots, turns, dangerTold, onlyTold, overlooked };
}

function turnsOf(world: World, before: Memory, after: Memory, fact: Fact, hands: Hands | null, flight: Flight): TurnTraced[] {
  const told = toldTurn(fact);
  return trulyTurned(fact, hands).map(({ knob, by }) => ({
    knob, by, putBack: fact.decided.loop?.told?.kind === 'put-back',
    told: told === null ? 'not at all' as const : told.knob === knob && told.by === by ? 'as done' as const : 'otherwise' as const,
    before: quietTear(world, before.condition, flight), after: quietTear(world, after.condition, flight),
  }));
}
