// An archer who scatters honestly (one bell curve, no cause) is not tuned to luck: measured over many, since a few shots can lie
// close together by chance whatever the rule.

import { describe, expect, it } from 'vitest';
import { play } from '../tunes/play.ts';

const TUNES = 24;

function share(sd: number): { advised: number; inconsistent: number } {
  let advised = 0;
  let inconsistent = 0;
  for (let seed = 0; seed < TUNES; seed++) {
    const { views, findings } = play({ start: { x: 0.1, y: 0.1 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 } }, sd, seed: 500 + seed }, { most: 300 });
    if (views.some((view) => view.advice?.kind === 'adjust')) advised += 1;
    if (findings.some((finding) => finding.kind === 'axis' && finding.result === 'inconsistent')) inconsistent += 1;
  }
  return { advised, inconsistent };
}

describe('scatter', () => {
  it('of 0.6 in a shot ends as scatter, and hardly ever in an adjustment first', () => {
    const { advised, inconsistent } = share(0.6);
    expect(inconsistent).toBe(TUNES);
    expect(advised).toBeLessThanOrEqual(TUNES / 6);
  });

  it('of 0.15 in, a usual archer, is never taken for scatter', () => {
    expect(share(0.15).inconsistent).toBe(0);
  });
});
