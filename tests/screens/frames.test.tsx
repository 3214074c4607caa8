import fc from 'fast-check';
import { renderToString } from 'ink';
import { describe, expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import { liveLines } from '../../src/screens/live.ts';
import { lineText, lineWidth } from '../../src/screens/look.ts';
import { Rows } from '../../src/screens/transcript.tsx';
import { drive, DOWN, LEFT, UP } from './driven.ts';
import { ADVICE, ASKS, VIEWS, viewOf } from './fake-session.ts';

const SIZES = [{ columns: 40, rows: 20 }, { columns: 80, rows: 24 }, { columns: 120, rows: 40 }] as const;

/** The frames that are kept: every kind of question, the tear while it is entered, and a page. */
const FRAMES: readonly (readonly [string, View, readonly string[]])[] = [
  ['a choice', VIEWS.choice, []],
  ['a gate that has no default', VIEWS.gate, []],
  ['a chunk of checks, two marked', VIEWS.chunk, ['3', '4']],
  ['a number, half typed', VIEWS.number, ['64.5']],
  ['a shot, to be called', VIEWS.tear, []],
  ['a tear, moved to with the arrows', VIEWS.tear, ['g', `${UP}${UP}${UP}${LEFT}`]],
  ['an impact', VIEWS.impact, ['b', DOWN]],
  ['an impact, to be called', VIEWS.groups, []],
  ['an impact, moved to among those before', VIEWS.groups, ['g', '\u001b[1;2A'.repeat(2), LEFT]],
  ['an unfletched shot, typed', VIEWS.unfletched, ['g', 'low 3 right 2']],
  ['beside a plumb line', VIEWS.plumb, []],
  ['one arrow of the set', VIEWS.arrows, []],
  ['an advice', VIEWS.amount, []],
  ['an advice about one arrow', VIEWS.turn, []],
  ['a nock to be replaced', VIEWS.swap, []],
  ['something to be put back', VIEWS.back, []],
  ['yes or no', VIEWS.confirm, []],
  ['words', VIEWS.text, ['the green one']],
  ['stopped', VIEWS.stopped, []],
  ['correcting', VIEWS.correcting, []],
  ['the history', VIEWS.choice, ['h']],
  ['the way back to a point', VIEWS.choice, ['h', '1', '\r']],
  ['the review of answers', VIEWS.choice, ['r']],
  ['a change that nobody asked for', VIEWS.choice, ['o']],
  ['which way it was moved', VIEWS.choice, ['o', '1\r', '4\r']],
  ['done', VIEWS.done, []],
];

describe('frames', () => {
  for (const size of SIZES) {
    it.each(FRAMES)(`at ${size.columns} x ${size.rows}: %s`, (_, view, keys) => {
      const screen = drive([view], size);
      screen.press(...keys);
      const lines = liveLines(screen.store.getState(), screen.store.needs);
      const painted = renderToString(<Rows lines={lines} />, { columns: size.columns });
      // Ink must not wrap or cut what was measured before.
      expect(painted.split('\n').map((line) => line.trimEnd())).toEqual(screen.lines());
      expect(`\n${screen.frame()}\n`).toMatchSnapshot();
    });
  }
});

describe('the live part', () => {
  const LONG = 'Look at each thing in turn, slowly, in good light, with clean and dry hands, and touch it, and say what you found there. '.repeat(6);
  const TALLEST: View = viewOf(
    { ...ASKS.chunk, text: [LONG, LONG, LONG], caution: ['Do not draw the bow yet.', 'Point everything at the ground.'], correcting: 3 },
    { advice: { ...ADVICE, kind: 'inspect', why: LONG, undo: LONG }, picture: { kind: 'paper', shots: Array.from({ length: 12 }, (_, i) => ({ x: i / 8, y: -i / 8, counted: i % 3 > 0 })) } },
  );

  it.each(SIZES)('of the tallest step stays below rows - 3 at $columns x $rows, with question, options and care', (size) => {
    const screen = drive([TALLEST], size);
    expect(screen.lines().length).toBeLessThanOrEqual(size.rows - 3);
    expect(screen.words()).toContain('Is all of this true?');
    expect(screen.words()).toContain('All of this is true');
    expect(screen.words()).toContain('Do not draw the bow yet.');
    expect(screen.words()).toContain('? more');
  });

  it('shows all of it on ? that had no room', () => {
    const screen = drive([TALLEST], { columns: 40, rows: 20 });
    screen.press('?');
    const seen = new Set<string>();
    for (let page = 0; page < 200 && !screen.frame().includes('(the end)'); page += 1) {
      for (const line of screen.lines()) seen.add(line.trim());
      screen.press(DOWN);
    }
    const all = [...seen].join(' ');
    for (const words of ['Point everything at the', 'good light', 'found there.']) expect(all).toContain(words);
  });

  it('scrolls a long list with the cursor', () => {
    const screen = drive([VIEWS.chunk], { columns: 40, rows: 20 });
    expect(screen.frame()).toContain('more below');
    screen.press(UP);
    expect(screen.frame()).toContain('more above');
    expect(screen.words()).toContain('> 9 The loop is tied fast');
  });

  it('is never wider than columns - 1 nor taller than rows - 3, whatever the words are and whatever is pressed', () => {
    const words = fc.string({ unit: fc.constantFrom('a', 'bc', ' ', '  ', '\u00e9', '\u5f13', '\u{1f3f9}', 'long-unbroken-word', '\u001b[31m', '\t', '\n', '-'), maxLength: 60 });
    const keys = fc.array(fc.constantFrom('?', 'g', 'b', 'h', 'n', 'o', '1', '2', '\r', UP, DOWN, LEFT, '\u001b', ' ', 'high 1/2 left 1/8', '\u5f13', '9.5', '\t'), { maxLength: 8 });
    const names = fc.constantFrom(...(Object.keys(VIEWS) as (keyof typeof VIEWS)[]));
    fc.assert(fc.property(names, words, words, fc.array(words, { maxLength: 4 }), fc.integer({ min: 24, max: 130 }), fc.integer({ min: 16, max: 50 }), keys,
      (name, short, title, texts, columns, rows, pressed) => {
        const base: View = VIEWS[name];
        const view: View = {
          ...base, where: { ...base.where, part: title }, ask: base.ask === null ? null : { ...base.ask, short, text: texts, caution: texts.slice(0, 1) },
          advice: base.advice === null ? null : { ...base.advice, why: texts.join(' ') },
        };
        const screen = drive([view], { columns, rows });
        screen.press(...pressed);
        expect(screen.mistakes).toEqual([]);
        const lines = liveLines(screen.store.getState(), screen.store.needs);
        expect(lines.length).toBeLessThanOrEqual(rows - 3);
        for (const line of lines) expect(lineWidth(line)).toBeLessThanOrEqual(columns - 1);
        for (const line of lines) expect(lineText(line)).not.toMatch(/[\u0000-\u001f\u007f]/);
        // The scroll-back is held to the same width.
        for (const line of screen.store.getState().items.flatMap((item) => item.lines)) expect(lineWidth(line)).toBeLessThanOrEqual(columns - 1);
      }), { numRuns: 300, seed: 7 });
  });

  it('keeps its place after a resize, with what was typed', () => {
    const screen = drive([VIEWS.tear], { columns: 120, rows: 40 });
    screen.press('g', 'high 1/2');
    screen.store.resize({ columns: 40, rows: 20 });
    expect(screen.frame()).toContain('> high 1/2_');
    expect(Math.max(...screen.lines().map((line) => line.length))).toBeLessThanOrEqual(39);
    expect(screen.lines().length).toBeLessThanOrEqual(17);
  });
});
