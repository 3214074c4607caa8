// What a walked tune left behind, worked out by the test's own arithmetic from what was said and answered.

import { bowKnobOf, type Advice, type KnobId, type Ledger, type Quantity } from '../../src/machine/types.ts';
import type { Walked } from './walk-through.ts';

const PLUS = ['right', 'up', 'add', 'in'];

/** The bow after every change that was advised and made as told, put-backs too. Knobs back at their start stand at 0. */
export function ledgerOfAdvice({ turns }: Walked): Ledger {
  const ledger: Partial<Record<KnobId, Quantity>> = {};
  for (const { line, ask, answer } of turns) {
    if (ask.about !== 'moved' || answer !== 'as told') continue;
    const { direction, amount } = line.advice as Advice;
    const knob = bowKnobOf(line.advice as Advice);
    if (knob === null || amount === undefined) throw new Error('something was moved that was never advised');
    const sign = PLUS.includes(direction ?? '') ? 1 : -1;
    ledger[knob] = { value: (ledger[knob]?.value ?? 0) + sign * amount.value, unit: amount.unit };
  }
  return ledger;
}

/** The rows of one section of the record, as `name: value`. */
export function recordRows({ last }: Walked, title: string): readonly string[] {
  if (last.type !== 'done' || last.record === undefined) throw new Error('this tune has no record');
  return last.record.sections.find((section) => section.title === title)?.rows.map(({ name, value }) => `${name}: ${value}`) ?? [];
}
