// The bench of the decision methods: every table of published figures that the kernel's own functions are held against.

import { A3_LIMITS } from './a3-limits.ts';
import { A3_STAGES } from './a3-stages.ts';
import { A4_SHOTS } from './a4-shots.ts';
import { A4_VERDICTS } from './a4-verdicts.ts';
import { B1 } from './b1.ts';
import { C1 } from './c1.ts';
import { C2 } from './c2.ts';
import { C4 } from './c4.ts';
import { D1 } from './d1.ts';
import { D2 } from './d2.ts';
import { STATED } from './stated.ts';
import type { Outcome, Table } from './table.ts';

export const TABLES: readonly Table[] = [A3_LIMITS, A3_STAGES, A4_SHOTS, A4_VERDICTS, B1, C1, C2, C4, D1, D2, STATED];

/** Seconds are the processor's: other work on the machine does not count. */
export interface Ran extends Outcome { readonly table: Table; readonly seconds: number }

/** What the program ends with: 0 where every figure is within its error. */
export const codeOf = (ran: readonly Ran[]): 0 | 1 => (ran.every(({ cells }) => cells.every((cell) => cell.ok)) ? 0 : 1);

/** Runs the tables whose ids are asked for, one after another; each has its own seed, so that one alone gives the same figures. */
export function runTables(tables: readonly Table[], seed: number, onTable: (ran: Ran) => void = () => {}): readonly Ran[] {
  return tables.map((table) => {
    const began = process.cpuUsage();
    const outcome = table.run(1_000_000 * seed + 10_000 * TABLES.indexOf(table));
    const { user, system } = process.cpuUsage(began);
    const ran = { ...outcome, table, seconds: (user + system) / 1e6 };
    onTable(ran);
    return ran;
  });
}
