// Figures of a debrief in words.

import { knobEntries, type Content } from '../content/types.ts';
import type { Tear } from '../machine/types.ts';
import { formatInches, formatQuantity } from '../maths/fractions.ts';
import type { KnobId } from '../content/types.ts';
import { standing, type Condition } from '../practice/condition.ts';
import type { World } from '../practice/world.ts';

export const inInches = (inches: number): string => `${formatInches(Math.abs(inches), 32)} in`;

/** `1/2 in high, 1/8 in left`, to the 1/32; `clean` below that. */
export function tailWords({ x, y }: Tear): string {
  const along = (value: number, plus: string, minus: string): string[] => (formatInches(Math.abs(value), 32) === '0' ? [] : [`${inInches(value)} ${value > 0 ? plus : minus}`]);
  return [...along(y, 'high', 'low'), ...along(x, 'right', 'left')].join(', ') || 'clean';
}

/** A setting against as found: `1/16 in up`, to the least that can be set; `as found`. */
export function settingIn(content: Content, id: KnobId, value: number): string {
  const { plus, minus, unit, smallest } = content.knobs[id];
  const read = Math.round(Math.abs(value) / smallest) * smallest;
  return read === 0 ? 'as found' : `${formatQuantity({ value: read, unit })} ${value > 0 ? plus : minus}`;
}

/** Every adjustment that was moved, or should have been: where it truly stands and where it should. */
export function settingWords(content: Content, world: World, condition: Condition): readonly { readonly name: string; readonly at: string; readonly right: string }[] {
  const stands = standing(world, condition);
  return knobEntries(world.bow.adjustments)
    .filter(([id, { optimum, works }]) => settingIn(content, id, stands[id] ?? 0) !== 'as found' || (optimum !== 0 && works !== 'not at all'))
    .map(([id, { optimum }]) => ({ name: content.knobs[id].name, at: settingIn(content, id, stands[id] ?? 0), right: settingIn(content, id, optimum) }));
}
