// For each promise one planted fault that it catches; all of them are planted by `npm run explore`.

import { describe, expect, test } from 'vitest';
import { isCaught, plant } from './fault-table.ts';
import { FAULTS, type Fault } from './faults.ts';
import { INVARIANTS } from './invariants.ts';

const first = (promise: string): Fault[] => FAULTS.filter(({ breaks }) => breaks === promise).slice(0, 1);

describe('a promise is worth as much as the fault that it catches', () => {
  test('each has one that is planted for it, and each fault has its promise and a name of its own', () => {
    expect(INVARIANTS.filter(({ id }) => first(id).length === 0).map(({ id }) => id)).toEqual([]);
    expect(FAULTS.filter(({ breaks }) => !INVARIANTS.some(({ id }) => id === breaks)).map(({ id }) => id)).toEqual([]);
    expect(new Set(FAULTS.map(({ id }) => id)).size).toBe(FAULTS.length);
  });

  test.each(INVARIANTS.flatMap(({ id }) => first(id)).map((fault) => [fault.breaks, fault] as const))('%s', { timeout: 600_000 }, async (_, fault) => {
    const caught = await plant(fault);
    expect(caught.found?.how ?? 'every walk kept every promise').toSatisfy(() => isCaught(caught));
  });

  test('a fault that does not fit the sources any more is told, not passed by', async () => {
    const [fault] = FAULTS.filter(({ patch }) => patch !== undefined);
    await expect(plant({ ...fault!, patch: { ...fault!.patch!, find: 'no such line' } })).rejects.toThrow('stands there 0 times');
  });
});
