import { describe, expect, it } from 'vitest';
import { checkContent } from '../../src/content/lint.ts';
import { KNOBS } from '../../src/content/types.ts';
import { parseQuantity } from '../../src/maths/fractions.ts';
import { decimalsFrom, formatImpact, KNOB_WORDS, ledgerWords } from '../../src/screens/words.ts';
import { contentFiles } from '../tools/compile-content.mjs';

const { content } = checkContent(contentFiles(new URL('../..', import.meta.url).pathname));
if (content === null) throw new Error('the content does not compile');
const { knobs } = content;

describe('the words of the adjustments', () => {
  it.each(KNOBS)('of %s have plus first, as the content has it, and an example in its unit', (knob) => {
    const { plus, minus, unit, hard } = knobs[knob];
    expect(KNOB_WORDS[knob].ways.map(([way]) => way)).toEqual([plus, minus]);
    const read = parseQuantity(KNOB_WORDS[knob].like, unit);
    expect(read.ok && read.value > 0 && read.value <= hard * 4).toBe(true);
    expect(KNOB_WORDS[knob].like).toMatch(/[a-z]$/);
  });

  it('tell how a bow is set, and nothing of what stands as it was found', () => {
    expect(ledgerWords({ 'limb-bolts': { value: -0.25, unit: 'turn' }, 'rest-side': { value: 1 / 32, unit: 'in' }, 'yoke': { value: 0, unit: 'half-twist-pair' } })).toEqual([
      'the rest, sideways: 1/32 in to the right', 'both limb bolts: 1/4 turn out',
    ]);
    expect(ledgerWords({})).toEqual([]);
  });
});

describe('places on a face', () => {
  it('are told from the dot, and from another spot', () => {
    expect([{ x: 0, y: 0 }, { x: -1.5, y: 3 }, { x: 0, y: -0.25 }, { x: 2, y: 0 }].map(formatImpact)).toEqual(['on its dot', '3 in high, 1 1/2 in left of its dot', '1/4 in below its dot', '2 in right of its dot']);
    expect([{ x: 0, y: 0.001 }, { x: 0, y: -0.5 }, { x: 1, y: 0.5 }, { x: -1, y: 0 }].map(decimalsFrom)).toEqual(['right on', '0.50 in below', '0.50 in above and 1.00 in right of', '1.00 in left of']);
  });
});
