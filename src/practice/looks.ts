// What a look finds on a practice bow: powder, a relaxed hand, loose parts, the last look at an arrow. It finds only what is there, and
// not always.

import type { Ask } from '../machine/types.ts';
import { feet, fps } from '../maths/units.ts';
import type { ArrowFault } from './arrows.ts';
import { chanceOf, happens } from './chance.ts';
import type { Condition } from './condition.ts';
import { departureOf } from './departure.ts';
import type { Flight } from './flight.ts';
import type { Memory } from './memory.ts';
import { tuningArrows } from './shoot.ts';
import type { World } from './world.ts';

interface Found { readonly said: string; readonly memory: Memory }

/** What a look may find, in the order in which it is looked for: whether it is there, and what is put right with it. */
interface Cause {
  readonly option: string;
  readonly there: (world: World, condition: Condition) => boolean;
  readonly right: (world: World, condition: Condition) => Partial<Condition>;
}

const CAUSES: readonly Cause[] = [
  { option: 'contact', there: touches, right: () => ({ contactCured: true }) },
  { option: 'loose-part', there: isLoose, right: () => ({ tightened: true }) },
  {
    option: 'one-arrow',
    there: (world, condition) => oddAmongTuning(world, condition).length > 0,
    right: (world, condition) => ({ leftOut: [...condition.leftOut, ...oddAmongTuning(world, condition).slice(0, 1)] }),
  },
  { option: 'grip', there: twists, right: () => ({ handRelaxed: true }) },
  { option: 'tired', there: isTired, right: (_world, { shots }) => ({ rested: shots }) },
];

function touches({ bow }: World, { contactCured }: Condition): boolean {
  return bow.contact !== null && !contactCured;
}

function isLoose({ bow: { loose } }: World, { shots, tightened }: Condition): boolean {
  return loose !== null && !tightened && shots > loose.from;
}

export const oddAmongTuning = (world: World, condition: Condition): readonly string[] =>
  tuningArrows(world, condition).flatMap(({ number, fault }) => (fault === null ? [] : [number]));

function twists({ archer: { torque } }: World, { handRelaxed }: Condition): boolean {
  return torque !== null && !handRelaxed;
}

function isTired({ archer: { tires } }: World, { shots, rested }: Condition): boolean {
  return tires.each > 0 && shots - rested > tires.from;
}

/** An inspection: what is found first, or nothing. */
export function inspected(world: World, memory: Memory, ask: Ask): Found | null {
  if (ask.about !== 'inspected' || ask.kind !== 'choice') return null;
  const offered = CAUSES.filter(({ option }) => ask.options.some(({ value }) => value === option));
  const [seen, after] = seeing(world, memory);
  const cause = offered.find(({ there }) => seen && there(world, memory.condition));
  if (cause === undefined) return { said: 'nothing', memory: after };
  return { said: cause.option, memory: { ...after, condition: { ...memory.condition, ...cause.right(world, memory.condition) } } };
}

/** What is put right where this is named as the cause and is there; nothing otherwise. */
export function putRight(world: World, condition: Condition, option: string): Partial<Condition> {
  const cause = CAUSES.find((one) => one.option === option && one.there(world, condition));
  return cause === undefined ? {} : cause.right(world, condition);
}

/** Whether this look sees what is there. */
function seeing(world: World, memory: Memory): readonly [boolean, Memory] {
  return [happens(chanceOf(world.seed, 'look', memory.looks + 1), world.archer.finds), { ...memory, looks: memory.looks + 1 }];
}

/** A relaxed hand changes a tear from here on (in), at 7 ft: less than that nobody sees. */
const SEEN = 1 / 8;
const USUAL_SPEED = fps(280);
/** From here on, in half-twist pairs, a cam that leans is seen. */
const LEANS = 2;

/** Trials and looks that are asked by themselves; null where it is none. */
export function looked(world: World, memory: Memory, ask: Ask, flight: Flight): Found | null {
  const { condition } = memory;
  const put = (said: string, change: Partial<Condition> = {}): Found => ({ said, memory: { ...seeing(world, memory)[1], condition: { ...condition, ...change } } });
  const [seen] = seeing(world, memory);
  switch (ask.about) {
    case 'contact':
      return touches(world, condition) && seen ? put('smear', { contactCured: true }) : put('clean');
    case 'grip':
      return twists(world, condition) && seen && torqueShows(world, flight) ? put('moved', { handRelaxed: true }) : put('same');
    case 'lean':
      return put(leanOf(world, memory));
    case 'arrow-look':
      return put(ARROW_LOOKS[faultOf(world, ask.short)]);
    case 'gate:fit-to-shoot':
      // Tired is said once; what is asked after it is answered after a rest.
      return isTired(world, condition) ? put('tired', { rested: condition.shots }) : put('fresh');
    default:
      return null;
  }
}

function torqueShows({ archer: { torque } }: World, flight: Flight): boolean {
  const push = { x: Math.hypot(torque?.always ?? 0, torque?.spread ?? 0), y: 0 };
  return Math.abs(flight.tear(departureOf(push), USUAL_SPEED, feet(7)).x) > SEEN;
}

/** A leg that lacks twists lets the top of its cam lean away: a yoke that must go right leans left. */
function leanOf({ bow: { adjustments } }: World, { told }: Memory): string {
  const yoke = adjustments.yoke;
  const off = yoke === undefined ? 0 : yoke.optimum - (told.yoke ?? 0);
  return Math.abs(off) < LEANS ? 'straight' : off > 0 ? 'leans-left' : 'leans-right';
}

const ARROW_LOOKS: Readonly<Record<ArrowFault | 'none', string>> = { bent: 'wobble', insert: 'wobble', nock: 'nothing', none: 'nothing' };

const faultOf = ({ set }: World, words: string): ArrowFault | 'none' => {
  const number = /\d+/.exec(words)?.[0];
  return set.arrows.find((arrow) => arrow.number === number)?.fault ?? 'none';
};
