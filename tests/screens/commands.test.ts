import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/screens/key-table.ts';
import { drive, ESC } from './driven.ts';
import { ASKS, VIEWS, viewOf } from './fake-session.ts';

describe('leaving', () => {
  it('q and Ctrl-C end with 0 and 130, from pages and from typing too', () => {
    for (const [keys, exit] of [[['q'], 0], [['\u0003'], 130], [['?', '\u0003'], 130], [['n', 'abc', '\u0003'], 130]] as const) {
      const screen = drive([VIEWS.choice]);
      screen.press(...keys);
      expect(screen.store.getState().leaving).toBe(exit);
      expect(screen.lines()).toEqual([]);
    }
  });

  it('takes no key of the same read after it', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('q\r\r');
    expect(screen.session.sent).toEqual([]);
  });
});

describe('going back', () => {
  it('c corrects, and Escape keeps the answer as it was', () => {
    const screen = drive([VIEWS.choice, VIEWS.correcting, VIEWS.choice]);
    screen.press('c');
    expect(screen.frame()).toContain('Correcting an earlier answer');
    expect(screen.frame()).toContain('esc keep old answer');
    screen.press(ESC);
    expect(screen.session.sent).toEqual([{ kind: 'back' }, { kind: 'keep' }]);
  });

  it('says why not, when there is nothing to correct or to put back', () => {
    const screen = drive([viewOf(ASKS.choice, { may: { back: 'this is the first question', putBack: 'nothing was adjusted yet' } })]);
    screen.press('c');
    expect(screen.frame()).toContain('not now: this is the first question');
    screen.press('p');
    expect(screen.frame()).toContain('not now: nothing was adjusted yet');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).not.toContain('p put back');
    screen.press('?', ' ', ' ', ' ', ' ');
    expect(screen.words()).toContain('not now: nothing was adjusted yet');
  });

  it('p asks first, with nothing preselected, and n leaves the bow alone', () => {
    const screen = drive([VIEWS.choice, VIEWS.amount]);
    screen.press('p', '\r');
    expect(screen.frame()).toContain('choose one first');
    screen.press('n\r');
    expect(screen.session.sent).toEqual([]);
    expect(screen.frame()).toContain('Which hand holds the bow?');
    screen.press('p', 'y\r');
    expect(screen.session.sent).toEqual([{ kind: 'putBack' }]);
  });
});

describe('telling', () => {
  it('n keeps a note, and the same question stands with what was typed for it', () => {
    const screen = drive([VIEWS.number]);
    screen.press('64', ESC, 'n', 'windy', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'note', note: 'windy' }]);
    expect(screen.frame()).toContain('noted');
    expect(screen.frame()).toContain('> 64_');
  });

  it('s stops with words or without', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice]);
    screen.press('s', 'a crack in the upper limb\r', 's', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'stop', words: 'a crack in the upper limb' }, { kind: 'stop', words: 'stop' }]);
  });

  it('s is reached from every kind of question', () => {
    for (const name of ['choice', 'gate', 'chunk', 'number', 'tear', 'impact', 'amount', 'confirm', 'text', 'correcting'] as const) {
      const screen = drive([VIEWS[name]]);
      if (name === 'text') screen.press(ESC);
      screen.press('s', '\r');
      expect([name, screen.session.sent]).toEqual([name, [{ kind: 'stop', words: 'stop' }]]);
    }
  });

  it('o tells of a move that was not advised: what, which way, how much', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice]);
    screen.press('o', '1\r', '1\r', '2\r');
    expect(screen.frame()).toContain('How much did you move the rest, up and down?');
    screen.press('1/32 in\r');
    expect(screen.session.sent).toEqual([{ kind: 'moved', knob: 'rest-height', direction: 'down', amount: '1/32 in' }]);
  });

  it('o tells of something replaced, with words or without', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice, VIEWS.choice]);
    screen.press('o', '2\r', 'a new one of 24 strands\r', 'o', '8\r', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'changed', what: 'string', note: 'a new one of 24 strands' }, { kind: 'changed', what: 'fell' }]);
  });

  it('what was typed on a page is one line, and a paste that is too long is not taken', () => {
    const screen = drive([VIEWS.choice]);
    screen.press('n', '\u001b[200~one\rtwo\u001b[201~', `\u001b[200~${'x'.repeat(3000)}\u001b[201~`);
    expect(screen.frame()).toContain('2000 fit here');
    screen.press('\r');
    expect(screen.session.sent).toEqual([{ kind: 'note', note: 'one two' }]);
  });
});

describe('Escape', () => {
  it('opens the other keys while typing and goes back to it, and loses nothing', () => {
    const screen = drive([VIEWS.text]);
    screen.press('half', ESC);
    expect(screen.frame()).toContain('esc back to typing');
    screen.press('+');
    expect(screen.frame()).toContain('"+" is no key here');
    screen.press(ESC, ' done\r');
    expect(screen.session.given).toEqual(['half done']);
  });

  it('and a letter may come as Alt and the letter', () => {
    const screen = drive([VIEWS.text]);
    screen.press('half', '\u001bq');
    expect(screen.store.getState().leaving).toBe(0);
  });

  it('leads out of every page', () => {
    for (const key of ['?', 'h', 'n', 's', 'o', 'p']) {
      const screen = drive([VIEWS.choice]);
      const before = screen.frame();
      screen.press(key);
      expect(screen.frame()).not.toBe(before);
      screen.press(ESC);
      expect(screen.frame()).toBe(before);
      expect(screen.session.sent).toEqual([]);
    }
  });
});

describe('the ? page', () => {
  const whole = (view: Parameters<typeof drive>[0]): string => {
    const screen = drive(view, { columns: 80, rows: 100 });
    screen.press('?');
    return screen.words();
  };

  it('tells why, the words of the step and no others, and every key', () => {
    const frame = whole([VIEWS.choice]);
    expect(frame).toContain('Left and right on the sheet are the same for both');
    expect(frame).toContain('riser: The stiff middle part of the bow.');
    expect(frame).not.toContain('yoke:');
    for (const command of COMMANDS.filter((one) => one.here === undefined)) expect(frame).toContain(command.help);
  });

  it('opens from an empty line of typing and by F1 at any time', () => {
    for (const keys of [['g', '?'], ['g', 'high', '\u001bOP']]) {
      const screen = drive([VIEWS.tear]);
      screen.press(...keys);
      expect(screen.frame()).toContain('esc close');
    }
  });

  it('scrolls to its end and back at once', () => {
    const screen = drive([VIEWS.tear], { columns: 40, rows: 20 });
    screen.press('?');
    const first = screen.frame();
    for (let i = 0; i < 30; i += 1) screen.press(' ');
    expect(screen.frame()).toContain('(the end)');
    expect(screen.frame()).toContain('press Esc, then the key');
    const end = screen.frame();
    screen.press('\u001b[A');
    expect(screen.frame()).not.toBe(end);
    screen.press('\u001b[H');
    expect(screen.frame()).toBe(first);
  });
});

describe('the key table', () => {
  it('gives no key twice, and no key that means an answer elsewhere', () => {
    const keys = COMMANDS.map((command) => command.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.filter((key) => /^[gby1-9 ]$/.test(key))).toEqual([]);
  });

  it('ends the key line with an ellipsis where it is cut, and never without', () => {
    expect(drive([VIEWS.choice], { columns: 40, rows: 20 }).lines().at(-1)).toMatch(/^ {2}enter take .* \u2026$/);
    expect(drive([VIEWS.choice], { columns: 160, rows: 40 }).lines().at(-1)).toMatch(/\u2026$|other$/);
  });
});
