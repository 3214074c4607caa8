// What a walked tune left behind, worked out by the test's own arithmetic from what was said and answered.

import type { Advice, Ledger } from '../../src/machine/types.ts';
import type { Walked } from './walk-through.ts';

const PLUS = ['right', 'up', 'add', 'in'];

/** The bow after every change that was advised and made as told, put-backs too. Knobs back at their start stand at 0. */
export function ledgerOfAdvice({ lines, asked }: Walked): Ledger {
  const ledger: Record<string, { value: number; unit: string }> = {};
  for (const [i, { about, answer }] of asked.entries()) {
    if (about !== 'moved' || answer !== 'as told') continue;
    const { knob, direction, amount } = lines[linesBefore(lines, i)]?.advice as Advice;
    if (knob === undefined || amount === undefined) throw new Error(`answer ${i} moved what was never advised`);
    const sign = PLUS.includes(direction ?? '') ? 1 : -1;
    ledger[knob] = { value: (ledger[knob]?.value ?? 0) + sign * amount.value, unit: amount.unit };
  }
  return ledger as Ledger;
}

/** Where the walk was not interrupted, line i is the one that answer i answers. */
const linesBefore = (_lines: Walked['lines'], i: number): number => i;

/** The rows of one section of the record, as `name: value`. */
export function recordRows({ last }: Walked, title: string): readonly string[] {
  if (last.type !== 'done' || last.record === undefined) throw new Error('this tune has no record');
  return last.record.sections.find((section) => section.title === title)?.rows.map(({ name, value }) => `${name}: ${value}`) ?? [];
}
