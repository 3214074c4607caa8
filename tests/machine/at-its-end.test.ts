// A screw or a slot that ends: nothing is moved, nothing is forced, and the next rung goes on from there.

import { describe, expect, it } from 'vitest';
import type { Ask, View } from '../../src/machine/types.ts';
import { play } from '../tunes/play.ts';

/** Paper of a bow whose tail is left, up to the first view of which `until` holds. */
function walk(answers: Readonly<Record<string, unknown>>, until: (view: View) => boolean, gain = {}): ReturnType<typeof play> {
  return play({ seed: 2, sd: 0.04, start: { x: -0.5, y: 0.05 }, gain, answers: { press: 'none', ...answers } }, { until });
}
const isShop = ({ advice }: View): boolean => advice?.kind === 'shop';
const knobsOf = (views: readonly View[]): readonly string[] => [...new Set(views.flatMap(({ advice }) => (advice?.kind === 'adjust' ? [String(advice.knob)] : [])))];

describe('"it goes no further"', () => {
  it('moves nothing, says so, and asks for the next rung at once', () => {
    const { views, findings } = walk({ cams: 'screw-adjust', moved: 'at its end' }, isShop);
    expect(knobsOf(views)).toEqual(['cam-screw', 'rest-side']);
    expect(findings.filter(({ kind }) => kind === 'knob')).toEqual([{ kind: 'knob', knob: 'cam-screw', result: 'limit' }, { kind: 'knob', knob: 'rest-side', result: 'limit' }]);
    expect(views.at(-1)?.bow).toEqual({});
    expect(views.flatMap(({ say }) => say).filter((line) => line.startsWith('No further'))).toHaveLength(2);
  });

  it('leaves the last rung to the shop, and the axis is told as one that cannot be mended here', () => {
    const { views, findings } = walk({ cams: 'hybrid', moved: 'at its end' }, isShop);
    expect(knobsOf(views)).toEqual(['rest-side']);
    expect(findings).toContainEqual(expect.objectContaining({ kind: 'axis', axis: 'side', result: 'cannot' }));
    expect(views.at(-1)?.advice?.kind).toBe('shop');
  });

  it('after a move that helped leaves it where it stands', () => {
    let told = 0;
    const moved = (ask: Ask): unknown => (ask.step === 'make-the-move' ? (told++ === 0 ? 'as told' : 'at its end') : 'as told');
    const { views } = walk({ cams: 'screw-adjust', moved }, ({ advice }) => advice?.knob === 'rest-side', { 'cam-screw': { x: -0.4, y: 0 } });
    expect(views.at(-1)?.bow['cam-screw']).toEqual({ value: -0.25, unit: 'turn' });
  });

  it('is no answer where something is to be put back', () => {
    const moved = (ask: Ask): unknown => (ask.step === 'make-the-move' ? 'as told' : 'at its end');
    const { views } = walk({ cams: 'hybrid', moved }, ({ say }) => say.some((line) => line.includes('to be put back before')), { 'rest-side': { x: 9, y: 0 } });
    expect(views.at(-1)?.advice?.kind).toBe('put-back');
  });
});
