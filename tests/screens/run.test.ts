import { describe, expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import { addedRows } from '../../src/screens/ink-stdout.ts';
import { span } from '../../src/screens/look.ts';
import { runScreen } from '../../src/screens/run.tsx';
import { DOWN, ESC, UP } from './driven.ts';
import { ADVICE, ASKS, FakeSession, SHOTS, type Script, VIEWS, viewOf } from './fake-session.ts';
import { FakeKeyboard, FakeTerminal, until } from './terminal.ts';

const start = (views: readonly View[] | Script, size = { columns: 80, rows: 24 }, notices: readonly string[] = []) => {
  const session = new FakeSession('views' in views ? views : { views });
  const terminal = new FakeTerminal(size.columns, size.rows);
  const keyboard = new FakeKeyboard();
  const streams = { stdin: keyboard as unknown as NodeJS.ReadStream, stdout: terminal as unknown as NodeJS.WriteStream };
  const done = runScreen(session, { ...streams, now: () => new Date('2031-05-01T10:00:00Z'), notices, env: { LANG: 'C' } });
  const see = (text: string): Promise<void> => until(() => terminal.shown.includes(text), () => terminal.all);
  return { session, terminal, keyboard, done, see, type: (bytes: string | Buffer) => keyboard.write(bytes) };
};

const howOften = (text: string, part: string): number => text.split(part).length - 1;

describe('a run on a terminal', () => {
  it('asks, takes, goes on, and leaves the terminal as it was', async () => {
    const run = start([VIEWS.choice, VIEWS.gate]);
    await run.see('Which hand holds the bow?');
    expect(run.keyboard.rawMode).toBe(true);
    run.type(`${DOWN}\r`);
    await run.see('What stands behind the paper?');
    run.type('q');
    expect(await run.done).toBe(0);
    expect(run.session.given).toEqual(['left']);
    expect(run.terminal.shown).toMatch(/coach {2}Which hand holds the bow\?\n {2}you {4}left\n[\s\S]*all is kept; go on with: quarterturn$/);
    // The question that stood is gone from the live part, and nothing was painted twice.
    expect(howOften(run.terminal.all, 'What stands behind the paper?')).toBe(0);
    expect(howOften(run.terminal.all, 'Which hand holds the bow?')).toBe(1);
    expect(run.keyboard.rawMode).toBe(false);
    expect(run.terminal.raw).toContain('\u001b[?2004h');
    expect(run.terminal.raw.lastIndexOf('\u001b[?2004l')).toBeGreaterThan(run.terminal.raw.lastIndexOf('\u001b[?2004h'));
    expect(run.terminal.raw.lastIndexOf('\u001b[?25h')).toBeGreaterThan(run.terminal.raw.lastIndexOf('\u001b[?25l'));
  });

  it('takes an arrow that comes byte by byte, slowly', async () => {
    const run = start([VIEWS.choice, VIEWS.gate]);
    await run.see('Which hand');
    for (const byte of DOWN) {
      run.type(byte);
      await new Promise((later) => setTimeout(later, 20));
    }
    run.type('\r');
    await run.see('What stands behind');
    run.type('\u0003');
    expect(await run.done).toBe(130);
    expect(run.session.given).toEqual(['left']);
  });

  it('takes a lone Escape for an Escape after a moment', async () => {
    const run = start([VIEWS.correcting, VIEWS.choice]);
    await run.see('Correcting');
    run.type(ESC);
    await run.see('Which hand');
    run.type('q');
    await run.done;
    expect(run.session.sent).toEqual([{ kind: 'keep' }]);
  });

  it.each([['SIGTERM', 143], ['SIGHUP', 129], ['SIGINT', 130]] as const)('gives the terminal back on %s, with %i', async (signal, exit) => {
    const before = process.listenerCount(signal);
    const run = start([VIEWS.choice]);
    await run.see('Which hand');
    process.emit(signal);
    expect(await run.done).toBe(exit);
    expect(run.terminal.shown).toMatch(/all is kept; go on with: quarterturn$/);
    expect(run.keyboard.rawMode).toBe(false);
    expect(process.listenerCount(signal)).toBe(before);
  });

  it('leaves when the input ends', async () => {
    const run = start([VIEWS.choice]);
    await run.see('Which hand');
    run.keyboard.end();
    expect(await run.done).toBe(0);
  });

  it('tells what was noticed, and only the last lines of an earlier day', async () => {
    const transcript = Array.from({ length: 500 }, (_, i) => ({ seq: i, who: 'coach' as const, text: `line number ${i}` }));
    const run = start({ views: [VIEWS.choice], transcript }, { columns: 80, rows: 60 }, ['A torn last line was set aside.']);
    await run.see('Which hand');
    expect(run.terminal.all).toContain('A torn last line was set aside.');
    expect(run.terminal.all).toContain('480 earlier lines: r shows all answers');
    expect(run.terminal.all).not.toContain('line number 479');
    expect(howOften(run.terminal.all, 'line number ')).toBe(20);
    run.type('q');
    await run.done;
  });

  it('puts the coach\'s words, a finished set and the record into the scroll-back once', async () => {
    const judged = viewOf(ASKS.amount, { say: ['Not there yet, and going the right way.'], advice: ADVICE, picture: { kind: 'paper', shots: SHOTS, mean: { x: -0.41, y: 0.47 }, likely: { x: 0.2, y: 0.2 } } });
    const run = start([VIEWS.tear, judged, VIEWS.done], { columns: 80, rows: 60 });
    await run.see('Called good or bad?');
    run.type('g');
    run.type(`${UP}\r`);
    await run.see('Did you move it?');
    await run.see('+: the middle, 0.47 in high, 0.41 in left');
    run.type('1\r');
    await run.see('1/16 in up from where it began');
    run.type('q');
    await run.done;
    for (const once of ['Not there yet, and going the right way.', '+: the middle', 'rest, up and down: 1/16', 'REST UP 1/32 in', 'To put it back: REST DOWN']) {
      expect([once, howOften(run.terminal.all, once)]).toEqual([once, 1]);
    }
  });

  it('ends in one plain line and 70 when the program itself makes a mistake on a key', async () => {
    const run = start([VIEWS.choice]);
    await run.see('Which hand');
    run.session.fail = new TypeError('x is not a function\n    at secret (file.ts:1:2)');
    run.type('\r');
    expect(await run.done).toBe(70);
    expect(run.terminal.shown.replace(/\s+/g, ' ')).toMatch(/a mistake in the program itself \(x is not a function\); all is kept; go on with: quarterturn$/);
    expect(run.terminal.all).not.toContain('file.ts');
    expect(run.keyboard.rawMode).toBe(false);
  });

  it('ends in the same way when drawing makes the mistake', async () => {
    const broken: View = { ...VIEWS.choice, get where(): never { throw new RangeError('no such place'); } };
    const run = start([VIEWS.choice, broken]);
    await run.see('Which hand');
    run.type('\r');
    expect(await run.done).toBe(70);
    expect(run.terminal.shown.replace(/\s+/g, ' ')).toMatch(/a mistake in the program itself \(no such place\); all is kept; go on with: quarterturn$/);
    expect(run.terminal.all).not.toContain('    at ');
  });
});

describe('a terminal that changes its size', () => {
  it('never has its screen or scroll-back cleared, however low it gets', async () => {
    const run = start([VIEWS.amount, VIEWS.choice], { columns: 80, rows: 40 });
    await run.see('Did you move it?');
    run.terminal.resize(80, 20);
    run.type('?');
    await run.see('esc close');
    run.type(ESC);
    await run.see('3 not now');
    run.terminal.resize(120, 12);
    await run.see('enter take');
    run.terminal.resize(100, 40);
    run.type('3\r');
    await run.see('Which hand');
    run.type('q');
    await run.done;
    expect(run.terminal.cleared).toBe(0);
    expect(run.terminal.raw).not.toMatch(/\u001b\[[23]?J/);
  });

  it('goes on with the same question and what was typed', async () => {
    const run = start([VIEWS.number], { columns: 120, rows: 40 });
    await run.see('peak weight');
    run.type('64.5');
    await run.see('> 64.5_');
    run.terminal.resize(40, 20);
    await run.see('> 64.5_');
    run.type('\r');
    await until(() => run.session.sent.length === 1, () => run.terminal.all);
    expect(run.session.given).toEqual(['64.5']);
    run.type('\u0003');
    await run.done;
  });

  it('has the rows erased that it added itself by breaking lines anew', () => {
    const line = (length: number) => [span('x'.repeat(length))];
    expect(addedRows([line(79), line(39), line(40), line(41), []], 40)).toBe(2);
    expect(addedRows([line(119)], 40)).toBe(2);
  });
});
