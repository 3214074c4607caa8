// Books for the small content of the fixtures: one that demands nothing, and one that demands what that content holds.

import { COMMON_PRACTICE } from '../../src/content/lint/book.ts';
import type { Book } from '../../src/content/lint/book.ts';
import { KNOBS, TRIGGERS } from '../../src/content/types.ts';
import type { KnobId, Trigger } from '../../src/content/types.ts';

const MAKER: readonly KnobId[] = ['rest-side', 'cam-screw', 'limb-bolts'];

function knobs(more: Partial<Book['knobs']> = {}): Book['knobs'] {
  const rows = KNOBS.map((id) => {
    const { press, trigger, cams } = COMMON_PRACTICE.knobs[id];
    return [id, { press, trigger, cams: cams === '' ? 'any' : cams, from: MAKER.includes(id) ? 'maker' : 'start', says: [], ...more[id] }] as const;
  });
  return Object.fromEntries(rows) as unknown as Book['knobs'];
}

const again = (more: Partial<Book['again']> = {}): Book['again'] =>
  Object.fromEntries(TRIGGERS.map((one) => [one, more[one] ?? ''] as const)) as Record<Trigger, string>;

export const NO_BOOK: Book = {
  steps: [], chapters: '', before: [], again: again(), knobs: knobs(), cautions: {}, says: {}, phrases: {}, handling: [], found: {}, foundSays: {}, tradeWords: [],
};

export const SMALL_BOOK: Book = {
  steps: [{
    safety: {
      'backstop': { as: 'choice', pause: 'undrawn', flags: 'everyTune noDefault unknown', pass: 'solid', fix: 'weak', fails: 'look-up' },
      'strings': { as: 'chunk', pause: 'undrawn', shop: 'upper-limb lower-limb@growing' },
      'draw-once': { as: 'confirm', effect: 'measured', pause: 'draw', cautions: 'finger' },
      'peak': { as: 'number', pause: 'draw', about: 'peak-weight', range: ['lb', 10, 100], most: 80, fails: 'fix' },
    },
    baseline: {
      'press': { as: 'choice', effect: 'chosen', pause: 'talk', route: 'trained none' },
      'contact': { as: 'confirm', effect: 'measured', pause: 'undrawn', flags: 'onDemand', anywhere: true },
    },
  }],
  chapters: 'safety baseline',
  before: [['draw-once', 'peak']],
  again: again({ start: 'backstop' }),
  knobs: knobs({
    'rest-height': { press: false, from: 'start', trigger: 'rest-height', instead: 'nock-height', cams: 'any', says: [/a little at a time/i] },
    'rest-side': { press: false, from: 'maker', trigger: 'rest-side', needs: 'contact', cams: 'any', beside: { yoke: 1 / 32 }, says: [] },
    'nock-height': { press: false, from: 'start', trigger: 'nock-height', cams: 'any', after: 'rest-height', says: [] },
    'cam-sync': { press: true, from: 'start', trigger: 'cam-sync', cautions: 'press', cams: '', says: [] },
  }),
  cautions: { finger: [/off the trigger/i], press: [/maker allows/i] },
  phrases: { 'was-is': [/and is now/i] },
  says: { backstop: [/look through the frame/i] },
  handling: [
    { what: 'flexing', when: /\bflex(ed)?\b/i, cautions: ['finger'], said: /away from your face/i },
    { what: 'a draw', when: /^/, cautions: ['finger', 'press'], pauses: ['shoot'] },
  ],
  found: { scatter: 'found=loose_part nothing' },
  foundSays: { 'scatter/found': /mend it first/i },
  tradeWords: ['anchor', 'yoke', 'let-off'],
};
