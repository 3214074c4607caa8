// Which sets are shot once more, on sets small enough to see why. How often that is right is counted in rounds.chance.test.ts.

import { describe, expect, it } from 'vitest';
import { thirdRoundTells } from '../../src/archery/third-round.ts';

interface P { readonly x: number; readonly y: number }
const set = (...arrows: readonly (readonly P[])[]) => arrows.map((shots, i) => ({ arrow: `${i + 1}`, shots }));
const at = (x: number, y = 0): P => ({ x, y });
const USUAL = { sd: 0.1, df: 16 };

describe('a third round', () => {
  it('is spared where two shots of one arrow lie as far apart as two arrows do', () => {
    expect(thirdRoundTells(set([at(0, 0.1), at(0.1)], [at(0.1, 0.1), at(0)], [at(0), at(0.1, 0.1)]), USUAL)).toBe(false);
  });

  it('is shot where the arrows differ beside what each of them scatters, however near one another all of them lie', () => {
    expect(thirdRoundTells(set([at(0), at(0.02)], [at(0.1), at(0.12)], [at(0.2), at(0.22)]), { sd: 1, df: 16 })).toBe(true);
  });

  // One shot each says nothing of how an arrow scatters: only what is known of the archer is left.
  it('is shot where one of them lies more than two of the archer\'s spreads from the typical one', () => {
    expect(thirdRoundTells(set([at(0)], [at(0.02)], [at(0.04)], [at(0.5)]), USUAL)).toBe(true);
    expect(thirdRoundTells(set([at(0)], [at(0.02)], [at(0.04)], [at(0.5)]), { sd: 0.4, df: 16 })).toBe(false);
  });

  it('looks at the arrows that were shot, and refuses a set of which none was', () => {
    expect(thirdRoundTells(set([at(0)], [], [at(0.02)]), USUAL)).toBe(false);
    expect(() => thirdRoundTells(set([], []), USUAL)).toThrow('thirdRoundTells: no arrow has a shot; shoot each arrow twice first');
  });
});
