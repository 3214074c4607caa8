// Vanes that touch make tears that lie: powder is asked for once, before the first adjustment of whatever axis.

import { describe, expect, it } from 'vitest';
import type { Tear } from '../../src/machine/types.ts';
import { play } from '../tunes/play.ts';

const GAINS = { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 } };
const asked = (start: Tear, answers: Readonly<Record<string, unknown>> = {}): readonly string[] =>
  play({ start, gain: GAINS, sd: 0.05, seed: 4, answers }, { most: 300 }).views.flatMap(({ ask, type }) => (type === 'stop' || ask === null ? [] : [ask.about]));

describe('powder', () => {
  it.each([['up and down', { x: 0, y: 0.6 }], ['sideways', { x: 0.6, y: 0.06 }]] as const)('comes before the first adjustment %s', (_axis, start) => {
    const all = asked(start);
    expect(all.indexOf('contact')).toBeGreaterThan(0);
    expect(all.indexOf('contact')).toBeLessThan(all.indexOf('moved'));
    expect(all.filter((about) => about === 'contact')).toHaveLength(1);
  });

  it('is not asked for where nothing is adjusted', () => {
    expect(asked({ x: 0, y: 0.06 })).not.toContain('contact');
  });

  it('that is wiped lets nothing be adjusted by those shots: they are shot anew', () => {
    let touches = true;
    const tear = (_ask: unknown, shot: () => Tear): Tear => { const { x, y } = shot(); return { x, y: y + (touches ? 0.6 : 0) }; };
    const contact = (): string => { const found = touches ? 'smear' : 'clean'; touches = false; return found; };
    expect(asked({ x: 0, y: 0.06 }, { tear, contact })).not.toContain('moved');
  });
});
