// What was true of a practice bow all along: for a debrief after the tune, and for tests. Never shown before.

import { knobEntries, type Axis, type KnobId } from '../content/types.ts';
import type { Works } from './adjustment.ts';
import type { ArrowFault } from './arrows.ts';
import type { Danger } from './danger.ts';
import type { Lesson } from './lesson-names.ts';
import { outOfReach, reachOfOptimum, type Reach } from './reach.ts';
import { usualSpeed } from './shoot.ts';
import type { World } from './world.ts';

export interface Truth {
  readonly practice: true;
  readonly seed: number;
  readonly lesson: Lesson | null;
  /** Where each adjustment should stand against as found, and how it works. */
  readonly adjustments: readonly { readonly knob: KnobId; readonly optimum: number; readonly works: Works; readonly wrong: boolean; readonly reach: Reach }[];
  /** Axes that nothing which this archer has can bring into tolerance: a note for the shop is the right end there. */
  readonly outOfReach: readonly Axis[];
  readonly arrows: readonly { readonly arrow: string; readonly fault: ArrowFault }[];
  readonly trouble: { readonly contact: boolean; readonly loose: KnobId | null; readonly stringSettles: boolean; readonly handTwists: boolean };
  readonly danger: Danger | null;
}

export function truth(world: World): Truth {
  const { seed, lesson, bow, archer, set } = world;
  return {
    practice: true, seed, lesson,
    adjustments: knobEntries(bow.adjustments).map(([knob, one]) => {
      const { optimum, works } = one;
      return { knob, optimum, works, wrong: optimum !== 0 && works !== 'not at all', reach: reachOfOptimum(bow, knob, one) };
    }),
    outOfReach: outOfReach(bow, usualSpeed(world)),
    arrows: set.arrows.flatMap(({ number, fault }) => (fault === null ? [] : [{ arrow: number, fault }])),
    trouble: { contact: bow.contact !== null, loose: bow.loose?.knob ?? null, stringSettles: bow.creep !== null, handTwists: archer.torque !== null },
    danger: bow.danger,
  };
}
