// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { changesDirection, judgeConsistency } from '../../src/archery/consistency.ts';
import { seededRandom } from '../../src/maths/random.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });

describe('judgeConsistency', () => {
  it('false alarms with honest shots are as stated, spread on 16 df (simulated, within 3 standard errors)', () => {
    const random = seededRandom(16);
    const sets = 12_000;
    const s = (): number => Math.sqrt(Array.from({ length: 16 }, () => random.normal() ** 2).reduce((t, x) => t + x, 0) / 16);
    for (const [n, kinds, stated] of [[3, ['suspect', 'inconsistent'], 0.05], [3, ['inconsistent'], 0.01], [7, ['inconsistent'], 0.01]] as const) {
      let alarms = 0;
      for (let i = 0; i < sets; i++) {
        const { kind } = judgeConsistency(Array.from({ length: n }, () => at(random.normal(), random.normal())), { sd: s(), df: 16 });
        if ((kinds as readonly string[]).includes(kind)) alarms++;
      }
      expect(Math.abs(alarms / sets - stated)).toBeLessThan(3 * Math.sqrt((stated * (1 - stated)) / sets));
    }
  });
});

describe('changesDirection', () => {
  it('three honest shots around zero rarely do: at most 5 % on one axis (simulated; studentised range table: 3.31 at n = 3, from memory)', () => {
    const random = seededRandom(33);
    const sets = 8000;
    let alarms = 0;
    for (let i = 0; i < sets; i++) if (changesDirection(Array.from({ length: 3 }, () => at(0.2 * random.normal())), { sd: 0.2, df: 16 })) alarms++;
    expect(alarms / sets).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / sets));
    expect(alarms / sets).toBeGreaterThan(0.03);
  });
});
