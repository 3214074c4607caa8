import { describe, expect, it } from 'vitest';
import { DOWN, drive, ESC, UP } from './driven.ts';
import { ANSWERS, ASKS, LONG_HISTORY, VIEWS, viewOf } from './fake-session.ts';

/** A screen of the smallest size that is promised. */
const SMALL = { columns: 40, rows: 20 };

describe('the history', () => {
  it('tells of the point under the cursor what is to be put back, in order, and how the bow was set', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('h');
    expect(screen.words()).toContain('back nothing: the bow stands there bow the rest, up and down: 1/16 in up');
    screen.press(UP);
    expect(screen.words()).toContain('> 2 REST UP 1/32 in: 0.47 in high, from 2 shots');
    expect(screen.words()).toContain('back 1. REST DOWN 1/32 in bow the rest, up and down: 1/32 in up');
    screen.press(UP);
    expect(screen.words()).toContain('back 1. REST DOWN 1/16 in bow as it was found');
  });

  it('asks first, with the steps, and then sends the line from which on to undo', () => {
    const screen = drive([VIEWS.choice, VIEWS.amount]);
    screen.press('h', '1\r');
    expect(screen.words()).toContain('Bring the bow back to this point: as found? To be put back, in this order: 1. REST DOWN 1/16 in Then it is set: as it was found');
    screen.press('\r');
    expect(screen.words()).toContain('choose one first');
    screen.press('y\r');
    expect(screen.session.sent).toEqual([{ kind: 'putBack', to: 8 }]);
  });

  it('leaves the bow alone on no, on Escape, and where it stands already', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('h', '2\r', 'n\r');
    screen.press('h', '2\r', ESC);
    screen.press('h', '\r');
    expect(screen.words()).toContain('! the bow stands there already: nothing is to be put back');
    screen.press(ESC);
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('Which hand holds the bow?');
  });

  it('with nothing in it says so', () => {
    const empty = drive({ views: [VIEWS.choice], history: [] });
    empty.press('h', '\r');
    expect(empty.words()).toContain('Nothing was done to the bow yet.');
    expect(empty.words()).toContain('nothing is there to choose');
  });

  it('of fifteen changes scrolls on a small screen, and each point tells its first step', () => {
    const screen = drive({ views: [VIEWS.choice, VIEWS.amount], history: LONG_HISTORY }, SMALL);
    screen.press('h');
    expect(screen.words()).toMatch(/\d+ more above/);
    const seen = new Set<string>();
    for (let at = 15; at >= 0; at -= 1) {
      expect(screen.lines().length).toBeLessThanOrEqual(SMALL.rows - 3);
      expect(Math.max(...screen.lines().map((line) => line.length))).toBeLessThanOrEqual(SMALL.columns - 1);
      const here = /> (?:\d )?.*?from 3 shots/.exec(screen.words())?.[0] ?? '';
      seen.add(here);
      expect(screen.words()).toContain(at === 15 ? 'back nothing: the bow stands' : 'back 1. YOKE, out of the right leg');
      screen.press(UP);
    }
    expect(seen.size).toBe(16);
    screen.press('\u001b[H', '\r');
    expect(screen.words()).toContain('2. REST DOWN 1/64 in');
    screen.press('y\r');
    expect(screen.session.sent).toEqual([{ kind: 'putBack', to: 21 }]);
  });

  it('says how many steps have no room, and keeps the answer in sight', () => {
    const steps = Array.from({ length: 10 }, (_, at) => `ADJUSTMENT ${at} BACK BY A GOOD DEAL, SLOWLY, 1/32 in`);
    const screen = drive({ views: [VIEWS.choice], history: [{ seq: 0, time: '', what: 'as found', bow: {}, back: { to: 4, steps } }] }, SMALL);
    screen.press('h', '\r');
    expect(screen.lines().length).toBeLessThanOrEqual(SMALL.rows - 3);
    expect(screen.words()).toMatch(/1\. ADJUSTMENT 0 BACK .* more: each told in turn/);
    expect(screen.words()).toContain('y yes, back n no, leave it as it is');
  });
});

describe('the review of answers', () => {
  it('opens with the newest in view, and Enter opens one for change', () => {
    const screen = drive([VIEWS.choice, VIEWS.correcting]);
    screen.press('r');
    expect(screen.words()).toContain('> 4 Shot: tail 1/2 in high yes it may be changed; the bow is not touched');
    screen.press(UP, '\r');
    expect(screen.session.sent).toEqual([{ kind: 'back', to: 9 }]);
    expect(screen.frame()).toContain('Correcting an earlier answer');
  });

  it('tells of an answer that is not to be changed why, before Enter and after', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('r', '2');
    expect(screen.words()).toContain('no that question led out of a stop; stop again if it was wrong');
    screen.press('\r');
    expect(screen.words()).toContain('! not that one: that question led out of a stop');
    expect(screen.session.sent).toEqual([]);
  });

  it('of two hundred answers is scrolled, and the chosen one is sent', () => {
    const answers = Array.from({ length: 200 }, (_, at) => ({ seq: at + 2, question: `What does the tape read at number ${at}?`, answer: `${at} in`, change: true as const }));
    const screen = drive({ views: [VIEWS.choice, VIEWS.correcting], answers }, SMALL);
    screen.press('r');
    expect(screen.words()).toContain('199 in');
    expect(screen.words()).toMatch(/\d+ more above/);
    screen.press(`${UP}${UP}`, '\u001b[5~', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'back', to: 194 }]);
  });

  it('is reached while typing, and from a finished tune', () => {
    const typing = drive([VIEWS.text]);
    typing.press('half', ESC, 'r');
    expect(typing.words()).toContain('All your answers, oldest first.');
    typing.press(ESC);
    expect(typing.frame()).toContain('half');
    const done = drive({ views: [VIEWS.done], answers: ANSWERS.map((one) => ({ ...one, change: 'the tune is finished' })) });
    done.press('r', '\r');
    expect(done.words()).toContain('! not that one: the tune is finished');
  });

  it('with nothing in it says so', () => {
    const empty = drive({ views: [VIEWS.choice], answers: [] });
    empty.press('r', '\r');
    expect(empty.words()).toContain('Nothing was answered yet.');
  });
});

describe('what was not advised', () => {
  it('is told with o: something moved, in the unit of that adjustment', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice], SMALL);
    screen.press('o');
    expect(screen.words()).toContain('1 I moved something on the bow');
    screen.press('1\r', '4\r');
    expect(screen.words()).toContain('Which way did you move the yoke legs? 1 into the right leg, out of the left');
    screen.press('1\r');
    expect(screen.words()).toContain('With its unit, for example 1 half-twist pair.');
    screen.press('1/2 pair\r');
    expect(screen.session.sent).toEqual([{ kind: 'moved', knob: 'yoke', direction: 'right', amount: '1/2 pair' }]);
  });

  it('is told with o: something replaced, with words or without', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice, VIEWS.choice], SMALL);
    screen.press('o', '2\r', 'all three\r', 'o', '5\r', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'changed', what: 'string', note: 'all three' }, { kind: 'changed', what: 'release' }]);
  });

  it('an advice may be left for now, or another one asked for; what is to be put back has no other', () => {
    for (const [key, answer] of [['3', 'not now'], ['4', 'another']] as const) {
      const screen = drive([VIEWS.amount], SMALL);
      screen.press(key);
      expect(screen.words()).toContain(`> ${key} ${answer === 'another' ? 'another adjustment instead' : 'not now'}`);
      screen.press('\r');
      expect(screen.session.given).toEqual([answer]);
    }
    const back = drive([VIEWS.back], SMALL);
    expect(back.words()).toContain('3 not yet: the coach waits');
    expect(back.words()).not.toContain('another adjustment');
  });
});

describe('an advice about one arrow', () => {
  it('tells which arrow, what, and the way back; vanes are counted', () => {
    const screen = drive([VIEWS.turn]);
    expect(screen.words()).toContain('next ARROW 7: HOLD THE NOCK, TURN THE SHAFT 1 VANE CLOCKWISE');
    expect(screen.words()).toContain('To put it back: Turn the shaft back by 1 vane');
    screen.press('2\r');
    expect(screen.words()).toContain('by how many vanes');
    screen.press('2\r');
    expect(screen.session.given).toEqual(['2']);
  });

  it('of a new nock knows no amount: it is done or not', () => {
    const screen = drive([VIEWS.swap]);
    expect(screen.words()).toContain('1 done as told 2 not now 3 another change instead');
    screen.press('1\r');
    expect(screen.session.given).toEqual(['as told']);
  });
});

describe('where an arrow landed', () => {
  it('moves by quarters of an inch, with Shift by an inch, as far as two feet', () => {
    const screen = drive([VIEWS.impact, VIEWS.impact]);
    screen.press('g', `${UP}${DOWN}${DOWN}`, '\u001b[1;2C', '\u001b[1;2C', '\u001b[5~', '\r');
    screen.press('b', '\u001b[H'.repeat(30), '\r');
    expect(screen.session.given).toEqual([{ x: 2, y: 0.75, called: 'good' }, { x: -24, y: 0, called: 'bad' }]);
  });

  it('is drawn as it is typed, and told from its own dot', () => {
    const screen = drive([VIEWS.impact]);
    screen.press('g', 'low 3 right 2');
    expect(screen.words()).toContain('*: 3 in low, 2 in right of its dot');
    expect(screen.words()).toContain('Inches from its own aiming dot: left is your left as you shoot.');
    screen.press('\u0015');
    expect(screen.words()).toContain('arrows, or type: high 3 left 1 1/2');
    screen.press('\r');
    expect(screen.words()).toContain('move the star with the arrows, or type it: high 3 left 1 1/2. On the dot itself: type 0 0');
    screen.press('m', '\r');
    expect(screen.session.given).toEqual([{ missed: true }]);
  });

  it('says in capitals what is shot, and nothing where it is any tuning arrow at paper', () => {
    for (const [ask, words] of [[ASKS.impact, 'shoot ARROW 2, BROADHEAD, 20 YD'], [ASKS.unfletched, 'shoot UNFLETCHED (NO VANES), 20 YD'], [ASKS.plumb, 'shoot FLETCHED, FIELD POINT, 30 YD'], [ASKS.numbered, 'shoot ARROW 7, NOCK TURNED BY 1 VANE']] as const) {
      for (const size of [SMALL, { columns: 80, rows: 24 }]) {
        const screen = drive([viewOf(ask)], size);
        expect(screen.words()).toContain(words);
        screen.press('g');
        expect(screen.words()).toContain(words);
      }
    }
    expect(drive([viewOf({ ...ASKS.tear, arrow: null })]).frame()).not.toMatch(/^ {2}shoot {2}/m);
  });
});
