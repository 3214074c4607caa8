// Every fault fits the sources and the content as they are, and each promise that keeps somebody from harm catches one. All of
// them are planted by `npm run explore`: that takes minutes.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../tools/build.mjs';
import { shippedContent } from '../tunes/play.ts';
import { isCaught, plant } from './fault-table.ts';
import { FAULTS, type Fault } from './faults.ts';
import { INVARIANTS } from './invariants.ts';

/** Of these one fault each is planted here as well. */
const KEEP_FROM_HARM = [
  'looked-at-before-drawn', 'gates-before-shots', 'not-known-never-passes', 'own-gate-of-each-shot', 'fingers-are-not-read', 'stop-word-is-heard',
  'stop-is-left-by-its-gate', 'caution-stands-there', 'inside-the-limits', 'nothing-beyond-a-limit', 'press-only-where-allowed', 'journal-tells-all',
];

const first = (promise: string): Fault[] => FAULTS.filter(({ breaks }) => breaks === promise).slice(0, 1);

describe('a promise is worth as much as the fault that it catches', () => {
  test('each has one that is planted for it, and each fault has its promise and a name of its own', () => {
    expect(INVARIANTS.filter(({ id }) => first(id).length === 0).map(({ id }) => id)).toEqual([]);
    expect(FAULTS.filter(({ breaks }) => !INVARIANTS.some(({ id }) => id === breaks)).map(({ id }) => id)).toEqual([]);
    expect(new Set(FAULTS.map(({ id }) => id)).size).toBe(FAULTS.length);
    expect(KEEP_FROM_HARM.filter((id) => first(id).length === 0)).toEqual([]);
  });

  test.each(FAULTS.map((fault) => [fault.id, fault] as const))('%s fits what it spoils', (_, { patch, spoil }) => {
    if (patch !== undefined) expect(readFileSync(join(ROOT, patch.file), 'utf8').split(patch.find)).toHaveLength(2);
    else expect(spoil?.(shippedContent()) ?? shippedContent()).not.toEqual(shippedContent());
  });

  test.each(KEEP_FROM_HARM.flatMap(first).map((fault) => [fault.breaks, fault] as const))('%s', { timeout: 600_000 }, async (_, fault) => {
    const caught = await plant(fault);
    expect(caught.found?.how ?? 'every walk kept every promise').toSatisfy(() => isCaught(caught));
  });

  test('a fault that does not fit the sources any more is told, not passed by', async () => {
    const [fault] = FAULTS.filter(({ patch }) => patch !== undefined);
    await expect(plant({ ...fault!, patch: { ...fault!.patch!, find: 'no such line' } })).rejects.toThrow('stands there 0 times');
  });
});
