// What whoever plays for a practice bow must keep from one answer to the next. Plain data: it can be written down and read back.

import { knobEntries, type KnobId } from '../content/types.ts';
import type { Ledger } from '../machine/types.ts';
import { sum } from '../maths/sum.ts';
import type { Settings } from './adjustment.ts';
import { AS_FOUND, moved, type Condition } from './condition.ts';
import type { World } from './world.ts';

export interface Memory {
  readonly condition: Condition;
  /** The settings as the archer has told them: what the ledger showed last. */
  readonly told: Settings;
  /** The last move went farther or less far than was told, by so much of its unit. */
  readonly slip: { readonly knob: KnobId; readonly by: number } | null;
  /** Gates and figures that were not in order and are put right, by name. */
  readonly mended: readonly string[];
  /** How often something was looked for. */
  readonly looks: number;
}

export const FRESH: Memory = { condition: AS_FOUND, told: {}, slip: null, mended: [], looks: 0 };

/**
 * The bow is moved as its ledger was, whoever moved it: by the archer's answer, by hand, or put back over several lines. What really happens is a little beside
 * what the ledger says, by the play of the screws and by a slip of the archer.
 */
export function caughtUp(world: World, memory: Memory, ledger: Ledger): Memory {
  const now: Settings = Object.fromEntries(knobEntries(ledger).map(([id, { value }]) => [id, value]));
  const changed = knobEntries({ ...memory.told, ...now }).flatMap(([id]) => {
    const change = sum([now[id] ?? 0, -(memory.told[id] ?? 0)]);
    return change === 0 ? [] : [[id, change] as const];
  });
  if (changed.length === 0) return memory;
  const slipped = (id: KnobId): number => (memory.slip?.knob === id ? memory.slip.by : 0);
  const condition = changed.reduce((at, [id, change]) => moved(world, at, id, sum([change, slipped(id)])), memory.condition);
  return { ...memory, condition, told: now, slip: null };
}
