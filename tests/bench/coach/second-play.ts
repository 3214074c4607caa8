// The same archer's second tune of the same bow, through the session: with what the first tune handed over, with the archer's spread alone, and as if there
// had been none. The bow has drifted by a quarter since.

import type { Content } from '../../../src/content/types.ts';
import type { Carried, Fact } from '../../../src/machine/types.ts';
import { carriedOf } from '../../../src/session.ts';
import { Coach, preparedFacts, TUNED, type CoachOutcome } from './coach.ts';
import type { Outcome } from './hands.ts';
import { playRival } from './rules.ts';
import { drifted } from './second-tune.ts';
import { knobBow, WORLDS, type WorldName } from './world.ts';

export interface SecondPiece { readonly world: WorldName; readonly seed: number; readonly from: number; readonly to: number }

/** One bow's second tune in each of these ways; `learned` says whether the first one taught how the adjustment answers. */
export interface SecondTune {
  readonly learned: boolean;
  readonly carried: CoachOutcome; readonly spreadAlone: CoachOutcome; readonly nothing: CoachOutcome; readonly oracle: Outcome;
}

export function playSecond(content: Content, { world: name, seed, from, to }: SecondPiece): readonly SecondTune[] {
  const world = WORLDS[name];
  const first = preparedFacts(content);
  const coach = new Coach(content, first, world);
  // Lines up to the first shot of a bow that is known: what it hands over is put in bow by bow.
  const told = carriedOf(content, coach.tune(knobBow(world, seed, from), first).facts);
  if (told === null) throw new Error('a tune that was shot hands something over');
  const again = preparedFacts(content, [told]);
  const knowing = (carried: Carried): readonly Fact[] => again.map((fact) => (fact.kind === 'begun' ? { ...fact, known: [{ ...told, spread: carried.spread, gains: carried.gains }] } : fact));
  return Array.from({ length: to - from }, (_, i) => {
    const bow = knobBow(world, seed, from + i);
    const carried = carriedOf(content, coach.tune(bow, first).facts) ?? told;
    const next = drifted(world, bow);
    return {
      learned: Object.keys(carried.gains).length > 0,
      carried: coach.tune(next, knowing(carried)).outcome, spreadAlone: coach.tune(next, knowing({ ...carried, gains: {} })).outcome,
      nothing: coach.play(next), oracle: playRival('oracle', world, next, TUNED),
    };
  });
}
