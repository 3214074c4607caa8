import { describe, expect, it } from 'vitest';
import { DOWN, drive, ESC, LEFT, paste, RIGHT, UP } from './driven.ts';
import { ADVICE, ASKS, diskFull, VIEWS, viewOf } from './fake-session.ts';

describe('a choice', () => {
  it('takes the new option when Down and Enter come in one read', () => {
    const screen = drive([VIEWS.choice]);
    screen.press(`${DOWN}\r`);
    expect(screen.session.given).toEqual(['left']);
  });

  it('takes the first, the one with a number, or goes round', () => {
    for (const [keys, value] of [['\r', 'right'], ['2\r', 'left'], [`${UP}\r`, 'left'], [`${DOWN}${DOWN}\r`, 'right']] as const) {
      const screen = drive([VIEWS.choice]);
      screen.press(keys);
      expect(screen.session.given).toEqual([value]);
    }
  });

  it('chooses nothing by a number that is not there, and says what to press', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('9');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('"9" is no key here');
  });

  it('has nothing preselected where an option passes a gate: Enter alone asks for a choice', () => {
    const screen = drive([VIEWS.gate]);
    screen.press('\r');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('choose one first');
    screen.press('1', '\r');
    expect(screen.session.given).toEqual(['stops']);
  });

  it('that must be picked is not taken by an Enter in one read with the pick; the pick stays', () => {
    for (const keys of ['1\r', `${DOWN}\r`, '\r1\r\r']) {
      const screen = drive([VIEWS.gate]);
      screen.press(keys);
      expect(screen.session.sent).toEqual([]);
      expect(screen.words()).toContain('! not in one go: choose, look once more, then Enter by itself');
      screen.press('\r');
      expect(screen.session.given).toEqual(['stops']);
    }
  });

  it('that must be picked drops what was pressed before it stood there', () => {
    for (const keys of ['1\r1\r1\r', '1\r1', '\r\r\r']) {
      const screen = drive([VIEWS.choice, VIEWS.gate, VIEWS.text]);
      screen.press(keys, '\r', '\r');
      expect(screen.session.given).toEqual(['right']);
    }
    const told = drive([VIEWS.choice, VIEWS.gate]);
    told.press('1\r2');
    expect(told.words()).toContain('! pressed before this question stood here, and not taken: read it first');
  });

  it('has nothing preselected in a gate even with no noDefault, nor from a suggestion', () => {
    const { noDefault: _, ...ask } = ASKS.gate;
    const screen = drive([viewOf({ ...ask, suggestion: { kind: 'choice', values: ['stops'] } })]);
    expect(screen.words()).toContain('(your answer before)');
    screen.press('\r');
    expect(screen.session.sent).toEqual([]);
  });

  it('starts on the answer of before where no gate is passed', () => {
    const screen = drive([viewOf({ ...ASKS.choice, suggestion: { kind: 'choice', values: ['left'] } })]);
    screen.press('\r');
    expect(screen.session.given).toEqual(['left']);
  });

  it('offers "not known" last, and sends it as such', () => {
    const screen = drive([VIEWS.gate]);
    screen.press(UP, '\r');
    expect(screen.session.given).toEqual(['not known']);
  });

  it('tells a paste of 10 kB in one line and keeps the question', () => {
    const screen = drive([VIEWS.choice]);
    const before = screen.lines();
    screen.press(paste('q\r'.repeat(5120)));
    expect(screen.session.sent).toEqual([]);
    const after = screen.lines();
    expect(after.filter((line) => !before.includes(line))).toEqual(['  ! this is answered by choosing, not by pasting; nothing was taken']);
    expect(before.every((line) => after.includes(line))).toBe(true);
  });
});

describe('a chunk of checks', () => {
  it('is answered with one key and Enter when all are true', () => {
    const screen = drive([VIEWS.chunk]);
    screen.press('\r');
    expect(screen.frame()).toContain('choose one first');
    screen.press('1', '\r');
    expect(screen.session.given).toEqual([['all true']]);
  });

  it('marks with space or numbers, and never "all true" together with others', () => {
    const screen = drive([VIEWS.chunk]);
    screen.press('1', '3', `${DOWN} `, '\r');
    expect(screen.session.given).toEqual([['check-2', 'check-3']]);
  });

  it('unmarks by the same key', () => {
    const screen = drive([VIEWS.chunk]);
    screen.press('3', '4', '3', '\r');
    expect(screen.session.given).toEqual([['check-3']]);
  });

  it('takes no check that the cursor merely stands on: that would say that it fails', () => {
    const screen = drive([VIEWS.chunk]);
    screen.press(`${DOWN}${DOWN}`, '\r');
    expect(screen.session.given).toEqual([]);
    expect(screen.words()).toContain('! nothing is marked: space marks what is NOT true; 1 and Enter when all is true');
    screen.press(UP, '\r');
    expect(screen.session.given).toEqual([['all true']]);
  });

  it('shows a mark as NOT, so that it is never read as a tick', () => {
    const screen = drive([VIEWS.chunk], { columns: 120, rows: 40 });
    screen.press('3');
    expect(screen.frame()).toMatch(/3 NOT The string/);
    expect(screen.frame()).not.toContain('[x]');
    expect(screen.frame()).toContain('space NOT true');
  });

  it('takes "all true" only after the whole list was gone through, where the screen is too low for it', () => {
    const screen = drive([VIEWS.chunk], { columns: 40, rows: 20 });
    expect(screen.words()).toContain('Mark what is NOT true.');
    screen.press('1', '\r');
    expect(screen.session.given).toEqual([]);
    expect(screen.words()).toContain('! there are more below: go down through all of them, then 1 and Enter');
    screen.press(DOWN.repeat(9), '1', '\r');
    expect(screen.session.given).toEqual([['all true']]);
  });
});

describe('a number', () => {
  it('is sent as it was written, and told how it is understood before', () => {
    const screen = drive([VIEWS.number]);
    screen.press('64.5');
    expect(screen.frame()).toContain('= 64.5 lb');
    screen.press('\r');
    expect(screen.session.given).toEqual(['64.5']);
  });

  it('stays in the line when it is refused, with the reason', () => {
    const screen = drive([VIEWS.number]);
    screen.press('200\r');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('> 200_');
    expect(screen.frame()).toContain('! 200 lb is outside 20 to 90 lb');
    screen.press('\u007f\u007f\u007f64\r');
    expect(screen.session.given).toEqual(['64']);
  });

  it('is never filled in beforehand; Tab fetches the answer of before', () => {
    const screen = drive([VIEWS.number]);
    screen.press('\r');
    expect(screen.frame()).toContain('type a number first');
    screen.press('\t\r');
    expect(screen.session.given).toEqual(['62']);
  });

  it('may be not known, and letters are commands only while the line is empty', () => {
    const known = drive([VIEWS.number]);
    known.press('u');
    expect(known.session.sent).toEqual([]);
    expect(known.frame()).toContain('> not known_');
    known.press('\r');
    expect(known.session.given).toEqual(['not known']);
    const typing = drive([VIEWS.number]);
    typing.press('64 q', '\r');
    expect(typing.store.getState().leaving).toBeNull();
    expect(typing.frame()).toContain('> 64 q_');
  });

  it('is edited with the caret', () => {
    const screen = drive([VIEWS.number]);
    screen.press(`65${LEFT}4${RIGHT}.0`, '\u0001', '\u001b[3~', '\r');
    expect(screen.session.given).toEqual(['45.0']);
  });
});

describe('a shot', () => {
  it('is called first, and Enter calls nothing', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('\r');
    expect(screen.frame()).toContain('call it first');
    screen.press('g', `${UP}${UP}${LEFT}\r`);
    expect(screen.session.given).toEqual([{ x: -1 / 16, y: 1 / 8, called: 'good' }]);
  });

  it('is typed, drawn before it is taken, and read back in words', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('b', 'high 1/2 left 1/8');
    expect(screen.frame()).toContain('T: the tail is 1/2 in high, 1/8 in left');
    expect(screen.frame()).toContain('called bad');
    expect(screen.frame()).toContain('Read it from the shooter\'s side');
    screen.press('\r');
    expect(screen.session.given).toEqual([{ x: -1 / 8, y: 1 / 2, called: 'bad' }]);
  });

  it('takes x and y', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('g', '-0.1 0.5\r');
    expect(screen.session.given).toEqual([{ x: -0.1, y: 0.5, called: 'good' }]);
  });

  it('moves by 1/4 with Shift, PgUp, PgDn, Home and End, from what was typed', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('g', 'high 1/2 left 1/8', '\u001b[1;2A', '\u001b[5~', '\u001b[6~', '\u001b[F', '\u001b[1;2C', '\u001b[H', '\r');
    expect(screen.session.given).toEqual([{ x: 1 / 8, y: 3 / 4, called: 'good' }]);
  });

  it('stops at the edge of what a tear can be', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('g', '\u001b[5~'.repeat(40), '\r');
    expect(screen.session.given).toEqual([{ x: 0, y: 4, called: 'good' }]);
  });

  it('is not taken from nothing, nor from what is not a tear, nor several at once', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('g', '\r');
    expect(screen.frame()).toContain('move the tail with the arrows, or type it');
    screen.press('hello\r');
    expect(screen.frame()).toContain('a tear needs up or down');
    expect(screen.frame()).toContain('> hello_');
    screen.press('\u0015', 'high 1/2; high 1/4\r');
    expect(screen.frame()).toContain('one shot at a time');
    expect(screen.session.sent).toEqual([]);
  });

  it('that missed is chosen by m before or after the call, and taken by Enter', () => {
    for (const keys of [['m', '\r'], ['g', 'm', '\r'], ['b', 'missed', '\r']]) {
      const screen = drive([VIEWS.tear]);
      screen.press(...keys);
      expect(screen.session.given).toEqual([{ missed: true }]);
    }
  });

  it('is called anew after Backspace in an empty line', () => {
    const screen = drive([VIEWS.tear]);
    screen.press('g', '\u007f', 'b', `${UP}\r`);
    expect(screen.session.given).toEqual([{ x: 0, y: 1 / 16, called: 'bad' }]);
  });

  it('starts the next one fresh', () => {
    const screen = drive([VIEWS.tear, VIEWS.tear]);
    screen.press('g', `${UP}\r`, 'b', `${DOWN}\r`);
    expect(screen.session.given).toEqual([{ x: 0, y: 1 / 16, called: 'good' }, { x: 0, y: -1 / 16, called: 'bad' }]);
  });

  it('with broadheads is measured from its own dot in the same way', () => {
    const screen = drive([VIEWS.impact]);
    screen.press('g');
    expect(screen.frame()).toContain('from its own aiming dot');
    screen.press(`${RIGHT}\r`);
    expect(screen.session.given).toEqual([{ x: 1 / 4, y: 0, called: 'good' }]);
  });
});

describe('an advice', () => {
  it('is never taken as followed by a stray Enter', () => {
    const screen = drive([VIEWS.amount]);
    screen.press('\r');
    expect(screen.session.sent).toEqual([]);
    screen.press('1\r');
    expect(screen.session.given).toEqual(['as told']);
  });

  it('may be declined, or followed by another amount', () => {
    const not = drive([VIEWS.amount]);
    not.press('3\r');
    expect(not.session.given).toEqual(['not now']);
    const other = drive([VIEWS.amount]);
    other.press('2\r', '1/64');
    expect(other.frame()).toContain('= 1/64 in');
    other.press('\r');
    expect(other.session.given).toEqual(['1/64']);
  });

  it('leads back from typing by Escape', () => {
    const screen = drive([VIEWS.amount]);
    screen.press('2\r', '1/64', ESC);
    expect(screen.frame()).toContain('not now');
    screen.press('1\r');
    expect(screen.session.given).toEqual(['as told']);
  });

  it('is shown with its reason, what to expect, the way back, the press and the care', () => {
    const frame = drive([VIEWS.amount]).frame();
    for (const words of ['REST UP 1/32 in', 'It was 0.74 in high', 'Expect the tail about 0.15 in high', 'I was wrong', 'To put it back: REST DOWN', 'bow press', 'Hold the launcher']) {
      expect(frame).toContain(words);
    }
  });

  it('in plain words is put into capitals, and stays in the scroll-back when it was answered', () => {
    const screen = drive([viewOf(ASKS.amount, { advice: { ...ADVICE, what: 'turn it up', trial: true } }), VIEWS.choice]);
    expect(screen.frame()).toContain('next   TURN IT UP');
    expect(screen.frame()).toContain('This is a trial');
    screen.press('1\r');
    expect(screen.said()).toContain('TURN IT UP');
    expect(screen.said()).toContain('To put it back: REST DOWN 1/32 in');
  });
});

describe('yes or no, and words', () => {
  it('y and n choose, Enter takes, Enter alone does not', () => {
    const screen = drive([VIEWS.confirm, VIEWS.confirm]);
    screen.press('\r');
    expect(screen.session.sent).toEqual([]);
    screen.press('n\r', 'y\r');
    expect(screen.session.given).toEqual([false, true]);
  });

  it('words are typed with all letters, and two lines in one read answer two questions', () => {
    const screen = drive([VIEWS.text, VIEWS.text]);
    screen.press('hqsp\rsecond\r');
    expect(screen.session.given).toEqual(['hqsp', 'second']);
  });

  it('a paste becomes one line and is not sent by what is in it', () => {
    const screen = drive([VIEWS.text]);
    screen.press(paste('my\r\nbow\t\u001b[31mred\u001b[0m\u0007'));
    expect(screen.session.sent).toEqual([]);
    screen.press('\r');
    expect(screen.session.given).toEqual(['my bow red']);
  });

  it('a paste that is too long takes nothing and loses nothing', () => {
    const screen = drive([VIEWS.text]);
    screen.press('mine', paste('x'.repeat(10_240)));
    expect(screen.words()).toContain('has 10240 characters, and 2000 fit here; nothing of it was taken');
    screen.press('\r');
    expect(screen.session.given).toEqual(['mine']);
  });

  it('an empty line is not sent', () => {
    const screen = drive([VIEWS.text]);
    screen.press('  \r');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('write a few words first');
  });

  it('keeps graphemes whole', () => {
    const screen = drive([VIEWS.text]);
    screen.press('a\u{1f44d}\u{1f3fd}\u00e9', '\u007f\u007f', '\r');
    expect(screen.session.given).toEqual(['a']);
  });
});

describe('what goes wrong', () => {
  it('a disk that is full keeps the question and what was typed, and says what to do', () => {
    const screen = drive([VIEWS.text, VIEWS.choice]);
    screen.session.fail = diskFull();
    screen.press('mine\r');
    expect(screen.frame()).toContain('make room, then press Enter again');
    expect(screen.mistakes).toEqual([]);
    screen.press('\r');
    expect(screen.session.given).toEqual(['mine']);
  });

  it('a mistake in the program is handed on and shown nowhere', () => {
    const screen = drive([VIEWS.choice]);
    const mistake = new TypeError('x is not a function');
    screen.session.fail = mistake;
    screen.press('\r');
    expect(screen.mistakes).toEqual([mistake]);
  });

  it('unknown keys do nothing at all', () => {
    for (const [name, view] of Object.entries(VIEWS)) {
      const screen = drive([view]);
      const before = screen.frame();
      screen.press('\u001b[<0;10;10M', '\u001b[1;5P', '\u001b[99~', '\u001b[I', '\u0000', '\u0007', '\u001b[?62;22c');
      expect([name, screen.frame(), screen.session.sent]).toEqual([name, before, []]);
    }
  });

  it('the time of a key press goes with it', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('\r');
    expect(screen.session.times).toEqual([new Date('2031-05-01T10:00:00Z')]);
  });
});
