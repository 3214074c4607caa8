// The screen in practice: that it is practice stands on every page at every size, an arrow is let go before it is called and called before it is
// looked at, and what hands do is the learner's own.

import { describe, expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import { liveLines } from '../../src/screens/live.ts';
import { lineText } from '../../src/screens/look.ts';
import { openPage } from '../../src/screens/pages.ts';
import { promptFor, type Page, type ScreenState } from '../../src/screens/state.ts';
import { screenOn } from '../faces/screen-on.ts';
import { playLearner, practiceOn, WORDS } from './learner.ts';

const SIZES = [{ columns: 80, rows: 24 }, { columns: 40, rows: 20 }, { columns: 120, rows: 40 }] as const;
/** Shortly before the screen's own time: nothing is asked anew. */
const START = Date.parse('2026-03-02T17:50:00Z');
const needs = { preview: () => ({ ok: false as const, code: 'empty' as const, message: '' }), glossary: {}, braille: false };
const state = (view: View, size: ScreenState['size']): ScreenState =>
  ({ size, view, prompt: promptFor(view.ask), overlay: null, menu: false, run: null, message: null, items: [], leaving: null });
const frame = (of: ScreenState): string[] => liveLines(of, needs).map((line) => lineText(line).trimEnd());

describe('PRACTICE', () => {
  const session = practiceOn({ lesson: 'it is the archer', seed: 1 });
  const { views } = playLearner(session);
  const PAGES: readonly Page[] = [
    { id: 'help', top: 0 }, { id: 'history', entries: session.history() }, { id: 'answers', entries: session.answers() }, { id: 'note' }, { id: 'stop' }, { id: 'other' },
    { id: 'words' }, { id: 'end' }, { id: 'knob', quiet: true }, { id: 'way', knob: 'yoke', quiet: true }, { id: 'how much', knob: 'yoke', way: 'left', quiet: true },
  ];

  it.each(SIZES)('stands at the top of every question, every stage of a shot and every page ($columns x $rows)', (size) => {
    const frames = views.flatMap((view) => {
      const plain = state(view, size);
      const shot = view.practice?.shot === undefined ? [] : [{ loosed: true }, { loosed: true, called: 'good' as const }].map((more) => ({ ...plain, prompt: { ...plain.prompt, ...more } }));
      return [plain, { ...plain, message: 'something about the last key, in more words than one line of a small screen can hold' }, ...shot];
    });
    const [first = views[0]] = views.slice(-1);
    const pages = first === undefined ? [] : PAGES.map((page) => ({ ...state(views[20] ?? first, size), overlay: openPage(page) }));
    expect(frames.length + pages.length).toBeGreaterThan(140);
    for (const one of [...frames, ...pages]) {
      const lines = frame(one);
      expect(lines.find((line) => line !== '')).toMatch(/^ {2}PRACTICE\./);
      expect(lines.length).toBeLessThanOrEqual(size.rows - 3);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThan(size.columns);
    }
  });

  it.each(SIZES)('leaves room for what is to be seen: some of it at every question, the drawing with both of its rules at every hole ($columns x $rows)', (size) => {
    for (const view of views.slice(0, -1)) {
      const lines = frame(state(view, size));
      const [seen] = view.practice?.seen ?? [];
      if (seen !== undefined) expect(lines.some((line) => line.startsWith('  see    '))).toBe(true);
      if (view.practice?.shot?.hole.kind !== 'sheet') continue;
      const at = state(view, size);
      const hole = frame({ ...at, prompt: { ...at.prompt, loosed: true, called: 'good' } });
      expect(hole.some((line) => /^ *\+[-+~]{8,}/.test(line))).toBe(true);
      expect(hole.filter((line) => /^ *(\d[\d /]*)?[+|]/.test(line)).length).toBeGreaterThan(4);
      expect(hole.some((line) => line.includes('called good'))).toBe(true);
      // The figure is nowhere: it is read.
      expect(hole.filter((line) => !line.includes('or type: ')).join(' ')).not.toMatch(/the tail is|high \d|low \d/);
    }
  });

  it('is in no frame of a real bow', () => {
    const { practice: _practice, ...real } = views[3] ?? session.view();
    expect(frame(state(real, SIZES[0])).join(' ')).not.toContain('PRACTICE');
  });
});

describe('a shot', () => {
  const atShot = (size: ScreenState['size'] = SIZES[0]) => {
    const session = practiceOn({ lesson: 'the first guess is wrong', seed: 1 }, undefined, START);
    while (session.view().ask?.kind !== 'tear') playLearner(session, () => null, 1, START);
    return { session, screen: screenOn(session, size) };
  };

  it('is let go, told how it felt, called, looked at and read, in this order', () => {
    const { session, screen } = atShot();
    const before = session.view().seq;
    expect(screen.words()).toContain('Enter lets the arrow go.');
    screen.press('g');
    expect([session.view().seq, screen.words().includes('felt')]).toEqual([before, false]);
    screen.press('\u001b', '\u001b', '\r');
    expect(screen.words()).toMatch(/felt (It went off clean|You felt it).*Called good or bad\?/);
    expect(screen.words()).not.toContain('the point\'s hole');
    screen.press('g');
    expect(screen.words()).toContain('the point\'s hole');
    // What needs a draw was done: its caution stood before the arrow was let go.
    expect(screen.words()).not.toContain('Draw only with');
    screen.press('h', 'i', 'g', 'h', ' ', '1', '/', '4', '\r');
    expect(session.view().seq).toBe(before + 1);
    // The next arrow is held again.
    expect(screen.words()).toContain('Enter lets the arrow go.');
    expect(screen.mistakes).toEqual([]);
  });

  it('by the arrow keys is told in words and not drawn over the hole', () => {
    const { screen } = atShot();
    screen.press('\r', 'b', '\u001b[A', '\u001b[C');
    expect(screen.words()).toContain('= the tail is 1/16 in high, 1/16 in right of the point');
    expect(screen.lines().filter((line) => /^ *(\d[\d /]*)?[+|]/.test(line)).join('')).not.toContain('T');
  });

  it('a word of danger is heard before the arrow is let go, too', () => {
    const { session, screen } = atShot();
    screen.press('c', 'r', 'a', 'c', 'k', '\r');
    expect(session.view().type).toBe('stop');
  });
});

describe('hands', () => {
  const atMove = () => {
    const session = practiceOn({ lesson: 'the first guess is wrong', seed: 1 }, undefined, START);
    while (session.view().ask?.kind !== 'amount') playLearner(session, () => null, 1, START);
    return { session, screen: screenOn(session) };
  };

  it('may do nothing where it is said that they did', () => {
    const { session, screen } = atMove();
    expect(screen.words()).toContain('3 say "as told" and turn nothing');
    screen.press('3', '\r');
    expect([session.view().bow['rest-side']?.unit, session.hidden().condition.settings]).toEqual(['in', {}]);
  });

  it('may turn what nobody is told of, and leave for the debrief', () => {
    const { session, screen } = atMove();
    screen.press('t', '1', '\r', '1', '\r', '1', '/', '3', '2', '\r');
    expect(screen.message()).toBe('turned, and the coach was not told');
    expect([session.view().bow, Object.keys(session.hidden().condition.settings)]).toEqual([{}, ['rest-height']]);
    screen.press('d', 'n', '\r');
    expect(session.view().type).toBe('ask');
    screen.press('d', 'y', '\r');
    expect([session.view().type, session.view().practice?.debrief?.title]).toEqual(['done', 'PRACTICE, the debrief: what was true of lesson: the first guess is wrong, bow 1']);
    expect(screen.words()).toContain('PRACTICE. Debrief');
    screen.press('d');
    expect(screen.message()).toContain('the tune is finished');
  });

  it('are told of on the ? page, and of a real bow neither key is there', () => {
    const { session, screen } = atMove();
    screen.press('?');
    for (let i = 0; i < 12; i += 1) screen.press(' ');
    expect(screen.words()).toContain('in practice: ');
    expect(session.view().practice?.of).toBe('lesson: the first guess is wrong, bow 1');
    expect(WORDS.says.move).toBe(session.view().practice?.seen[0]);
  });
});

describe('what has no room', () => {
  it('is looked at before a gate is passed: on a small screen what is wrong may stand in the part that was cut', () => {
    const session = practiceOn({ lesson: 'it is the archer', seed: 1 }, undefined, START);
    while (session.view().ask?.about !== 'gate:bow-at-rest') playLearner(session, () => null, 1, START);
    const screen = screenOn(session, SIZES[1]);
    expect(screen.words()).not.toContain('The release closes');
    // Through the whole list, and then all of it taken: twice refused, each for its reason.
    screen.press('1', '\r', ...Array.from({ length: 10 }, () => '\u001b[B'), '1', '\r');
    expect([screen.message(), session.view().ask?.about]).toEqual(['there is more to see than has room here: ? shows all of it', 'gate:bow-at-rest']);
    screen.press('?');
    expect(screen.words()).toContain('see Riser and pockets');
    screen.press('\u001b', '\r');
    expect(session.view().ask?.about).not.toBe('gate:bow-at-rest');
  });
});
