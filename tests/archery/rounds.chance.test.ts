// A set that is shot in rounds: how often the third is spared, what that loses, and how often a drift is seen. By simulation.
import { describe, expect, it } from 'vitest';
import { screenArrows } from '../../src/archery/arrow-set.ts';
import { judgeDrift } from '../../src/archery/drift.ts';
import { thirdRoundTells } from '../../src/archery/third-round.ts';
import { seededRandom } from '../../src/maths/random.ts';

const SHOT = 0.08;
const toMark = (inches: number): number => Math.round(inches * 16) / 16;

/** Sets of twelve by an archer whose spread is known on 16 df: the fourth arrow lies `off` spreads away, all others differ by `differ`. */
function sets(trials: number, differ: number, off: number): { spared: number; found: number; foundByThree: number } {
  const random = seededRandom(6406);
  const seen = { spared: 0, found: 0, foundByThree: 0 };
  for (let i = 0; i < trials; i += 1) {
    const sd = SHOT * Math.sqrt(Array.from({ length: 16 }, () => random.normal() ** 2).reduce((t, x) => t + x, 0) / 16);
    const three = Array.from({ length: 12 }, (_, arrow) => {
      const angle = 2 * Math.PI * random.uniform();
      const own = arrow === 3 ? off * SHOT : 0;
      const at = { x: own * Math.cos(angle) + differ * SHOT * random.normal(), y: own * Math.sin(angle) + differ * SHOT * random.normal() };
      return { arrow: `${arrow}`, shots: [0, 1, 2].map(() => ({ x: toMark(at.x + SHOT * random.normal()), y: toMark(at.y + SHOT * random.normal()) })) };
    });
    const two = three.map((one) => ({ ...one, shots: one.shots.slice(0, 2) }));
    const third = thirdRoundTells(two, { sd, df: 8 });
    const odd = (set: typeof three): boolean => screenArrows(set, { sd, df: 8 }).arrows[3]!.odd;
    if (!third) seen.spared += 1;
    if (odd(three)) seen.foundByThree += 1;
    if (odd(third ? three : two)) seen.found += 1;
  }
  return { spared: seen.spared / trials, found: seen.found / trials, foundByThree: seen.foundByThree / trials };
}

describe('the third round', () => {
  // The closest archer: the tear limits of common practice (1/4 in) are three of its spreads, so nothing else asks for a third look.
  it('is spared in more than half of the sets whose arrows are alike, and loses no arrow that is 4 spreads off', () => {
    expect(sets(150, 0, 0).spared).toBeGreaterThan(0.5);
    const far = sets(300, 0, 4);
    expect(far.foundByThree).toBeGreaterThan(0.9);
    expect(far.foundByThree - far.found).toBeLessThanOrEqual(0.01);
  });
  it('of those 2.5 spreads off at most 1 in 100 that three rounds would have found', () => {
    for (const differ of [0, 0.5]) {
      const near = sets(300, differ, 2.5);
      expect(near.foundByThree).toBeGreaterThan(0.2);
      expect(near.foundByThree - near.found).toBeLessThanOrEqual(0.01 + 2 * Math.sqrt((0.01 * 0.99) / 300));
    }
  });
});

describe('a drift', () => {
  const seen = (arrows: number, rounds: number, spreads: number, trials = 300): number => {
    const random = seededRandom(6407);
    const drifts = Array.from({ length: trials }, () => {
      const angle = 2 * Math.PI * random.uniform();
      return judgeDrift(Array.from({ length: arrows }, (_, arrow) => Array.from({ length: rounds }, (__, round) => {
        const at = round * arrows + arrow;
        const drift = (0.12 * spreads * at) / (rounds * arrows - 1);
        return { at, tear: { x: toMark(drift * Math.cos(angle) + 0.12 * random.normal()), y: toMark(drift * Math.sin(angle) + 0.12 * random.normal()) } };
      })));
    });
    return drifts.filter((one) => one?.drifts === true).length / trials;
  };
  it.each([[12, 2, 0.98], [12, 3, 0.99], [6, 2, 0.84]])('of six spreads over %i arrows in %i rounds is seen in %f at least; none hardly ever', (arrows, rounds, least) => {
    expect(seen(arrows, rounds, 6)).toBeGreaterThan(least);
    expect(seen(arrows, rounds, 0)).toBeLessThan(0.035);
  });
});
