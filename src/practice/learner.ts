// What becomes of a practice bow by one line of its journal, where a learner answers: what was shot, what the hands truly turned, what was
// found and cured. The fold of all lines is the hidden bow: nothing else is kept of it, so a practice that was broken off goes on where it was.

import { isNotMoved, type Answer, type Fact, type KnobId } from '../machine/types.ts';
import { moved, type Condition } from './condition.ts';
import type { Danger } from './danger.ts';
import { putRight } from './looks.ts';
import type { Memory } from './memory.ts';
import type { World } from './world.ts';

export interface Turned { readonly knob: KnobId; readonly by: number }

/** What a line says besides its fact, where the hands did something else than the coach was told. */
export interface Hands {
  readonly turned?: readonly Turned[];
  readonly newNock?: string;
}

/** What the coach was told that was turned, in the adjustment's own unit; null where nothing was. */
export function toldTurn(fact: Fact): Turned | null {
  if (fact.kind === 'moved') return { knob: fact.knob, by: fact.delta };
  if (fact.kind !== 'answered' || fact.answer.kind !== 'moved') return null;
  const told = fact.decided.loop?.told;
  const { moved: answer } = fact.answer;
  if (told === undefined || isNotMoved(answer)) return null;
  return { knob: told.knob, by: answer === 'as told' ? told.delta : Math.sign(told.delta) * answer.value };
}

/** What was truly turned with this line: what was told, unless the line says otherwise. A correction of words turns nothing. */
export function trulyTurned(fact: Fact, hands: Hands | null): readonly Turned[] {
  if (hands?.turned !== undefined) return hands.turned;
  const told = toldTurn(fact);
  return told === null ? [] : [told];
}

/** The bow after this line. */
export function afterLine(world: World, memory: Memory, fact: Fact, hands: Hands | null): Memory {
  const turned = trulyTurned(fact, hands).reduce((at, { knob, by }) => moved(world, at, knob, by), memory.condition);
  const condition = hands?.newNock === undefined ? turned : { ...turned, newNocks: [...turned.newNocks, hands.newNock] };
  const next = condition === memory.condition ? memory : { ...memory, condition };
  return fact.kind === 'answered' ? answered(world, next, fact.about, fact.answer) : next;
}

/** Questions at which something is looked for: each look has luck of its own. */
const LOOKS: readonly string[] = ['inspected', 'contact', 'grip', 'lean', 'arrow-look', 'gate:fit-to-shoot'];

function answered(world: World, memory: Memory, about: string, answer: Answer): Memory {
  const { condition } = memory;
  if (answer.kind === 'shots') return { ...memory, condition: { ...condition, shots: condition.shots + answer.shots.length } };
  const looks = memory.looks + (LOOKS.includes(about) ? 1 : 0);
  const mended = mends(world.bow.danger, about, answer);
  return {
    ...memory, looks,
    condition: { ...condition, ...cured(world, condition, about, answer) },
    mended: mended === null || memory.mended.includes(mended) ? memory.mended : [...memory.mended, mended],
  };
}

/** Which cause is named by an answer, in the words of a look for causes. */
const NAMES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'contact': { smear: 'contact' }, 'grip': { moved: 'grip' }, 'gate:fit-to-shoot': { tired: 'tired' },
  'inspected': { 'contact': 'contact', 'loose-part': 'loose-part', 'grip': 'grip', 'tired': 'tired' },
};

function cured(world: World, condition: Condition, about: string, answer: Answer): Partial<Condition> {
  if (about === 'arrow-out' && answer.kind === 'number') {
    return answer.value > 0 ? { leftOut: [...condition.leftOut, `${answer.value}`] } : {};
  }
  const named = answer.kind === 'choice' ? NAMES[about]?.[answer.values[0] ?? ''] : undefined;
  if (named === undefined) return {};
  // Who says that they are tired rests, whether they were or not.
  return named === 'tired' ? { rested: condition.shots } : putRight(world, condition, named);
}

/** What is told of as not in order is put right by the archer, where an archer can. */
function mends(danger: Danger | null, about: string, answer: Answer): string | null {
  return danger !== null && danger.mends === 'archer' && tells(danger, about, answer) ? nameOf(danger) : null;
}

/** Whether this answer says what is wrong with the bow. */
export function tells({ at, says }: Danger, about: string, answer: Answer): boolean {
  if ('check' in at) return answer.kind === 'choice' && (answer.values.includes(at.check) || (about === `gate:${at.check}` && answer.values.includes(String(says))));
  if (about !== at.about) return false;
  return answer.kind === 'number' ? Math.abs(answer.value - Number(says)) < 1 : answer.kind === 'choice' && answer.values.includes(String(says));
}

/** By what a fault is known once it is mended. */
const nameOf = ({ at }: Danger): string => ('check' in at ? at.check : at.about);
