// How often it is right and wrong, by simulation.

import { describe, expect, it } from 'vitest';
import { screenArrows, type ArrowShots } from '../../src/archery/arrow-set.ts';
import { seededRandom, type Random } from '../../src/maths/random.ts';

const at = (x: number, y = 0): { x: number; y: number } => ({ x, y });
const named = (shots: readonly (readonly { x: number; y: number }[])[]): ArrowShots[] => shots.map((s, i) => ({ arrow: `${i + 1}`, shots: s }));

describe('how often it is wrong (simulated; the archer\'s spread of one shot known on 16 df, arrows that truly differ by half a spread)', () => {
  const SHOT = 0.2;
  const round = (random: Random, n: number, x: number, y: number): { x: number; y: number }[] =>
    Array.from({ length: n }, () => at(x + SHOT * random.normal(), y + SHOT * random.normal()));
  const run = (arrows: number, n: number, off: number, trials: number): { good: number; bad: number } => {
    const random = seededRandom(6401 + arrows);
    const found = { good: 0, bad: 0 };
    for (let i = 0; i < trials; i++) {
      const sd = SHOT * Math.sqrt(Array.from({ length: 16 }, () => random.normal() ** 2).reduce((t, x) => t + x, 0) / 16);
      const set = Array.from({ length: arrows }, (_, arrow) => {
        const angle = 2 * Math.PI * random.uniform();
        const own = arrow === 0 ? off * SHOT : 0;
        return round(random, n, own * Math.cos(angle) + 0.5 * SHOT * random.normal(), own * Math.sin(angle) + 0.5 * SHOT * random.normal());
      });
      const { arrows: read } = screenArrows(named(set), { sd, df: 8 });
      if (off > 0 && read[0]!.odd) found.bad++;
      if (read.some((a, j) => a.odd && (off === 0 || j > 0))) found.good++;
    }
    return { good: found.good / trials, bad: found.bad / trials };
  };
  // An earlier, independent simulation of the rule (plain means, 3,000 sets) stayed below 6.4 % in every world; and found an arrow that
  // is 4 spreads off in 93 %. The robust centre, which is there for shots that stray, and the wider allowance cost 2 points of that.
  it('a good arrow of twelve is called odd in at most 6.4 % of sets', () => {
    const trials = 700;
    expect(run(12, 3, 0, trials).good).toBeLessThan(0.064 + 3 * Math.sqrt((0.064 * 0.936) / trials));
  });
  it('an arrow 4 spreads off among six is found in 91 %, and no other is called odd with it in more than 6.4 %', () => {
    const trials = 800;
    const { good, bad } = run(6, 3, 4, trials);
    expect(Math.abs(bad - 0.91)).toBeLessThan(3 * Math.sqrt((0.91 * 0.09) / trials) + 0.01);
    expect(good).toBeLessThan(0.064 + 3 * Math.sqrt((0.064 * 0.936) / trials));
  });
});
