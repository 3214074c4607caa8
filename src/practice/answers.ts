// Answers every question of the walk for a practice bow, truthfully: what is there is said, what is shot is read from its hole, what is not in
// order fails its gate. A bench plays whole tunes with it; in practice it shoots for whoever answers the rest.

import { bowKnobOf, type Advice, type Ask, type Quantity, type View } from '../machine/types.ts';
import { checks } from '../maths/check.ts';
import { feet, yards } from '../maths/units.ts';
import { chanceOf, happens, oneOfThese } from './chance.ts';
import type { Danger } from './danger.ts';
import { FACTS, type Said as SaidFact } from './facts.ts';
import { byTable, type Flight, type Flying } from './flight.ts';
import { inspected, looked } from './looks.ts';
import { caughtUp, type Memory } from './memory.ts';
import { read, shoot, type Asked, type Happened, type Told } from './shoot.ts';
import type { World } from './world.ts';

const must = checks('answerTo');

/** An answer as it is typed or sent: the session reads it. */
export type Said = SaidFact | Told | Quantity;

export interface Answering {
  /** Null where nobody at the bow can answer: it is at the dealer's, and the practice ends here. */
  readonly said: Said | null;
  readonly memory: Memory;
  /** What really happened, where a shot was asked for. */
  readonly happened?: Happened;
}

type Shown = Pick<View, 'ask' | 'bow' | 'advice'>;

/** The archer's answer to the standing question. Throws RangeError where nothing is asked, or something that no practice archer knows of. */
export function answerTo(world: World, before: Memory, { ask, bow, advice }: Shown, flight: Flight = byTable): Answering {
  if (ask === null) throw must.answerTo.error('nothing is asked');
  const memory = caughtUp(world, before, bow);
  if (ask.kind === 'tear' || ask.kind === 'impact') return shotFor(world, memory, ask, flight);
  const failed = ofDanger(world, memory, ask);
  if (failed !== null) return failed;
  if (ask.kind === 'amount') return moveFor(world, memory, ask, advice);
  return inspected(world, memory, ask) ?? looked(world, memory, ask, flight) ?? { said: known(world, memory, ask), memory };
}

/** The next shot that is asked for: fired, read and counted. */
function shotFor(world: World, memory: Memory, ask: Extract<Ask, { kind: 'tear' | 'impact' }>, flight: Flight): Answering {
  const asked = askedOf(world, ask);
  const happened = shoot(world, memory.condition, asked, flight);
  const said = read(world, memory.condition, happened, asked.at);
  return { said, happened, memory: { ...memory, condition: { ...memory.condition, shots: memory.condition.shots + 1 } } };
}

/** A shot as the walk asks for it. */
export function askedOf({ archer }: World, { kind, distance: { value }, shaft, head, arrow, nockTurn }: Extract<Ask, { kind: 'tear' | 'impact' }>): Asked {
  const blades: Flying = archer.heads === 'mechanical' ? 'mechanical' : 'fixed';
  const flying = shaft === 'unfletched' ? 'unfletched' : head === 'broadhead' ? blades : 'field';
  return { arrow, nockTurn, flying, at: kind === 'tear' ? { paper: feet(value) } : { target: yards(value) } };
}

/** What the archer does when told to move something. */
function moveFor(world: World, memory: Memory, ask: Extract<Ask, { kind: 'amount' }>, advice: Advice | null): Answering {
  const knob = bowKnobOf(advice);
  if (advice?.knob === 'nock-swap' && advice.arrow !== undefined) {
    const { condition } = memory;
    return { said: 'as told', memory: { ...memory, condition: { ...condition, newNocks: [...condition.newNocks, advice.arrow] } } };
  }
  const one = knob === null ? undefined : world.bow.adjustments[knob];
  // A turned nock is told with the next shot of that arrow; what a bow has no adjustment for cannot be moved.
  if (knob === null) return { said: 'as told', memory };
  if (one === undefined || advice?.amount === undefined || advice.to === undefined) return { said: 'not now', memory };
  const { value: amount, unit } = advice.amount;
  const chance = chanceOf(world.seed, 'move', SLIPS + memory.condition.moves);
  const [slips, seen, more] = [happens(chance, world.archer.wrongAmount.often), happens(chance, world.archer.wrongAmount.told), oneOfThese(chance, [1, -1] as const)];
  const way = Math.sign(advice.to.value - (memory.told[knob] ?? 0));
  const stands = memory.condition.settings[knob] ?? 0;
  // Back goes as far as it came, also where it ended a little beside.
  const room = advice.kind === 'put-back' ? amount : inSteps(way > 0 ? one.travel.high - stands : stands - one.travel.low, one.step);
  const meant = slips ? (amount + more * one.step > 0 ? amount + more * one.step : amount + one.step) : amount;
  const made = Math.min(meant, room, ask.max);
  if (made <= 0) return { said: advice.kind === 'put-back' ? 'not now' : 'at its end', memory };
  if (made === amount) return { said: 'as told', memory };
  // A screw that ends is felt; a step too many is not always seen.
  if (made === meant && !seen) return { said: 'as told', memory: { ...memory, slip: { knob, by: way * (made - amount) } } };
  return { said: { value: made, unit }, memory };
}
const SLIPS = 10_000;
/** The last step that fits; a little beside, by its play, counts as it was meant. */
const inSteps = (room: number, step: number): number => Math.floor(room / step + 0.6) * step;

/** What is wrong with the bow, where it is asked for and not mended yet. */
function ofDanger(world: World, memory: Memory, ask: Ask): Answering | null {
  const { danger } = world.bow;
  if (ask.about === 'released') return { said: null, memory };
  if (danger === null || memory.mended.includes(nameOf(danger))) return null;
  if ('check' in danger.at) {
    const { check } = danger.at;
    if (ask.kind === 'choice' && ask.options.some(({ value }) => value === check)) return { said: [check], memory };
    if (ask.about !== `gate:${check}`) return null;
  } else if (ask.about !== danger.at.about) {
    return null;
  }
  return { said: danger.says, memory: danger.mends === 'archer' ? { ...memory, mended: [...memory.mended, nameOf(danger)] } : memory };
}

const nameOf = ({ at }: Danger): string => ('check' in at ? at.check : at.about);

/** What is known of this bow, or in order with it. */
function known(world: World, { condition, told }: Memory, ask: Ask): Said {
  const fact = FACTS[ask.about];
  if (fact !== undefined) {
    const said = fact(world, { side: told['rest-side'] ?? 0, nock: told['nock-height'] ?? 0 });
    return typeof said === 'number' && ask.kind === 'number' ? Math.min(ask.max, Math.max(ask.min, said)) : said;
  }
  // 0: no other is out.
  if (ask.about === 'arrow-out') return Number(condition.leftOut.at(-1) ?? 0);
  if (ask.kind === 'choice') {
    const pass = ask.options.find((option) => option.pass === true);
    if (pass !== undefined) return pass.value;
  }
  if (ask.kind === 'confirm') return true;
  throw must.answerTo.error(`a practice archer has no answer about "${ask.about}" (${ask.kind})`);
}
