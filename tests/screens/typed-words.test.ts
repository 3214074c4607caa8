// Words typed where single letters are keys: they are heard whole, and what their letters did is undone.

import { describe, expect, it } from 'vitest';
import { DOWN, drive, ESC } from './driven.ts';
import { ASKS, VIEWS, viewOf } from './fake-session.ts';

describe('a word typed at a list', () => {
  it('opens a line of its own with its first letter, and Esc leaves it', () => {
    const screen = drive([VIEWS.choice]);
    const before = screen.frame();
    screen.press(...'windy');
    expect(screen.frame()).toContain('> windy_');
    screen.press(ESC);
    expect(screen.frame()).toBe(before);
    expect(screen.session.sent).toEqual([]);
  });

  it('of danger stops, though its first letter opened a correction, which is closed again', () => {
    const screen = drive([VIEWS.choice, VIEWS.correcting, VIEWS.choice, VIEWS.choice]);
    screen.press(...'cracked', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'back' }, { kind: 'keep' }, { kind: 'say', words: 'cracked' }]);
  });

  it('keeps what was marked', () => {
    const screen = drive([VIEWS.chunk, VIEWS.correcting, VIEWS.chunk]);
    screen.press('3', ...'cra', ESC, '\r');
    expect(screen.session.given).toEqual([['check-2']]);
  });

  it('that answers is found in the list, where Enter takes it', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice]);
    screen.press(...'left', '\r');
    expect(screen.session.sent).toEqual([]);
    expect(screen.words()).toContain('! found: Enter takes it');
    screen.press('\r');
    expect(screen.session.given).toEqual(['left']);
  });

  it('that is not understood stops on the second Enter, and only with the same words', () => {
    const screen = drive([VIEWS.amount, VIEWS.choice]);
    screen.press(...'aargh', '\r');
    expect(screen.words()).toContain('Enter again stops here with these words');
    screen.press('h', '\r');
    expect(screen.session.sent).toEqual([]);
    screen.press('\r');
    expect(screen.session.sent).toEqual([{ kind: 'stop', words: 'aarghh' }]);
  });

  it('of one stray letter is passed over by an arrow, a number or Backspace', () => {
    for (const keys of [[DOWN], ['2'], ['\u007f', DOWN]]) {
      const screen = drive([VIEWS.choice]);
      screen.press('l', ...keys, '\r');
      expect(screen.session.given).toEqual(['left']);
    }
  });
});

describe('a word whose letters answer', () => {
  it('yes and no may be spelled out', () => {
    const screen = drive([VIEWS.confirm, VIEWS.confirm, VIEWS.confirm]);
    screen.press(...'yes', '\r', ...'no', '\r');
    expect(screen.session.given).toEqual([true, false]);
  });

  it('behind the call of a shot is heard together with it', () => {
    const screen = drive([VIEWS.tear, VIEWS.choice]);
    screen.press(...'blood', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'say', words: 'blood' }]);
  });

  it('behind the key for a miss, or for "not known", is another word', () => {
    const shot = drive([VIEWS.tear]);
    shot.press(...'my arm');
    expect(shot.frame()).toContain('> my arm_');
    shot.press(ESC);
    expect(shot.frame()).toContain('Called good or bad?');
    const number = drive([VIEWS.number]);
    number.press(...'unsafe');
    expect(number.frame()).toContain('> unsafe_');
  });

  it('begun with s is kept whole with the stop', () => {
    const screen = drive([VIEWS.choice, VIEWS.choice, VIEWS.choice]);
    screen.press(...'stop', '\r', ...'s', ...'the limb', '\r');
    expect(screen.session.sent).toEqual([{ kind: 'stop', words: 'stop' }, { kind: 'stop', words: 'the limb' }]);
  });

  it('on a page is heard, and s stops there as everywhere', () => {
    for (const page of ['?', 'h', 'r', 'o', 'p']) {
      const screen = drive([VIEWS.choice, VIEWS.choice]);
      screen.press(page, ...'cracked', '\r');
      expect([page, screen.session.sent]).toEqual([page, [{ kind: 'say', words: 'cracked' }]]);
      const stopped = drive([VIEWS.choice, VIEWS.choice]);
      stopped.press(page, 's', '\r');
      expect([page, stopped.session.sent]).toEqual([page, [{ kind: 'stop', words: 'stop' }]]);
    }
  });

  it('at a finished tune does nothing', () => {
    const screen = drive([viewOf(null, { type: 'done' })]);
    screen.press(...'it cracked', '\r');
    expect(screen.session.sent.filter(({ kind }) => kind !== 'back')).toEqual([]);
  });

  it('is typed as it is where words are the answer', () => {
    const screen = drive([viewOf(ASKS.text), VIEWS.choice]);
    screen.press(...'cracker barrel', '\r');
    expect(screen.session.given).toEqual(['cracker barrel']);
  });
});
