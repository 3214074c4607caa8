// The demo, whole, with its time faked: it ends with a finished record, says on every frame that it is invented, obeys the visitor's
// two keys and no other, and has no way to a file.

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PassThrough } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { key, textKeys } from '../../src/screens/key-names.ts';
import { openingLines } from '../../src/screens/items.ts';
import { liveLines, liveWidth } from '../../src/screens/live.ts';
import { lineText, lineWidth } from '../../src/screens/look.ts';
import type { ScreenState } from '../../src/screens/state.ts';
import { recordOf } from '../../src/session.ts';
import type { Fact } from '../../src/machine/types.ts';
import { FakeKeyboard, FakeTerminal } from '../screens/terminal.ts';
import { importsOf } from '../tools/floors.ts';
import { shippedContent } from '../tunes/play.ts';
import { FIRST, NIGHT, OVER, playDays } from './days.ts';
import { createPace, type Pace } from './pace.ts';
import { plainDemo } from './plain.ts';
import { screenDemo, visit } from './screen.tsx';
import { STORY } from './story.ts';

const content = shippedContent();
const MINUTE = 60_000;

interface Frame { readonly text: string; readonly tall: number; readonly wide: number; readonly at: number; readonly state: ScreenState }

/** Between the first frame of a question and the one that is taken, every so many-th key is looked at. */
const EVERY = 8;

/** The demo's frames; `visitor` may press something at each tick. */
async function watched(columns: number, rows: number, visitor: (pace: Pace, frames: readonly Frame[], ticks: number) => void = () => {}) {
  const frames: Frame[] = [];
  const told: string[] = [];
  let unmarked = 0;
  const openings: number[] = [];
  let [ms, ticks] = [0, 0];
  const pace = createPace(async (step) => {
    ms += step;
    visitor(pace, frames, ticks += 1);
  });
  const { end, facts } = await playDays(content, STORY, pace, {
    size: () => ({ columns, rows }), braille: true,
    tell: (text) => told.push(text),
    mistake: (error) => { throw error; },
    show: ({ session }, store) => {
      openings.push(...openingLines(session.view(), session.transcript(), [], liveWidth(columns)).map(lineWidth));
      let [seq, since] = [-1, 0];
      const look = (): void => {
        const state = store.getState();
        if (!state.view.where.title.startsWith('Invented demo')) unmarked += 1;
        since = state.view.seq === seq && !pace.paused() ? since + 1 : 0;
        seq = state.view.seq;
        if (state.leaving !== null || since % EVERY !== 0) return;
        const lines = liveLines(state, store.needs);
        frames.push({ text: lines.map(lineText).join('\n'), tall: lines.length, wide: Math.max(...lines.map(lineWidth)), at: ms, state });
      };
      look();
      const off = store.subscribe(look);
      return async () => off();
    },
  });
  return { frames, unmarked, openings, told, end, facts, ms };
}

const usual = watched(80, 24);

const kinds = (facts: readonly Fact[]): readonly string[] => facts.map(({ kind }) => kind);
const rowsOf = (facts: readonly Fact[]): string => JSON.stringify(recordOf(content, facts)?.sections);

describe.each([[80, 24], [40, 20]])('the demo at %i x %i', (columns, rows) => {
  it('is played to its record, in no frame too large, and calls itself invented in each', async () => {
    const { frames, unmarked, openings, told, end, facts, ms } = await (columns === 80 ? usual : watched(columns, rows));
    expect(end).toBe('finished');
    expect(told).toEqual([FIRST, NIGHT, OVER]);
    expect(frames.filter(({ text }) => !text.includes('Invented demo'))).toEqual([]);
    expect(frames.length).toBeGreaterThan(facts.length);
    expect(unmarked).toBe(0);
    expect(frames.filter(({ tall, wide }) => tall > rows - 3 || wide > columns - 1).map(({ text }) => text)).toEqual([]);
    const last = frames.at(-1)?.state;
    expect(last?.view.record?.invented).toBe(true);
    expect(last?.items.flatMap(({ lines }) => lines).map(lineText).join('\n')).toContain('(invented, for practice)');
    expect(Math.max(...openings, ...(last?.items.flatMap(({ lines }) => lines).map(lineWidth) ?? []))).toBeLessThan(columns);
    // Long enough to be read, short enough to be watched.
    expect(ms).toBeGreaterThan(6 * MINUTE);
    expect(ms).toBeLessThan(9.5 * MINUTE);
    expect(kinds(facts)).toContain('resumed');
    expect(kinds(facts)).toContain('stopped');
    const chapters = new Set(frames.map(({ state }) => state.view.chapter));
    expect([...chapters].sort()).toEqual(['arrows', 'baseline', 'broadheads', 'finish', 'paper', 'record', 'safety', 'stopped', 'warm-up']);
    const record = rowsOf(facts);
    for (const part of ['(put back)', 'near the others with a new nock', 'someone is in front']) expect(record).toContain(part);
    // The second day is held against the first before anything goes on.
    expect(frames.some(({ state }) => state.view.where.day === 2 && state.view.say.some((line) => line.startsWith('No clear difference from last time')))).toBe(true);
  });
});

describe('the visitor', () => {
  it('holds it up and lets it go on with space, and nothing moves meanwhile', async () => {
    let [from, to] = [0, 0];
    const { frames, end } = await watched(80, 24, (pace, seen, ticks) => {
      if (ticks === 500 || ticks === 1500) visit(pace, textKeys(' '));
      if (ticks === 501) from = seen.length;
      if (ticks === 1499) to = seen.length;
      if (ticks === 2000) visit(pace, textKeys('q'));
    });
    expect(from).toBeGreaterThan(5);
    expect(to).toBe(from);
    expect(frames[from - 1]?.text).toContain('PAUSED: space goes on');
    expect(frames.length).toBeGreaterThan(to + 1);
    expect(end).toBe('ended');
  });

  it.each([['q', textKeys('q')], ['Ctrl-C', [{ ...key('c'), ctrl: true }]], ['q while it is held up', textKeys(' q')]])('ends it with %s', async (_name, keys) => {
    const { end, facts, told } = await watched(80, 24, (pace, _seen, ticks) => { if (ticks === 300) visit(pace, keys); });
    expect(end).toBe('ended');
    expect(told.at(-1)).toBe(OVER);
    expect(facts.length).toBeLessThan(10);
  });

  it('has no other key', async () => {
    const others = [...textKeys('sghpcrno?1yu'), key('enter'), key('escape'), key('up'), { ...key('paste'), text: 'q ' }, { ...key('d'), ctrl: true }];
    const until = (pace: Pace, ticks: number): void => { if (ticks === 1500) pace.end(); };
    const alone = await watched(80, 24, (pace, _seen, ticks) => until(pace, ticks));
    const pressed = await watched(80, 24, (pace, _seen, ticks) => { visit(pace, others); until(pace, ticks); });
    expect(pressed.frames.map(({ text }) => text)).toEqual(alone.frames.map(({ text }) => text));
  });
});

it('leaves a terminal as it was when it is ended', async () => {
  const [terminal, keyboard] = [new FakeTerminal(80, 24), new FakeKeyboard()];
  let ticks = 0;
  const pace = createPace(async () => {
    ticks += 1;
    // Ink paints in its own time: now and then it gets some.
    if (ticks % 50 === 0) await new Promise((done) => { setTimeout(done, 1); });
    if (ticks === 200) keyboard.write('xq');
  });
  await screenDemo(content, STORY, pace, { stdin: keyboard as unknown as NodeJS.ReadStream, stdout: terminal as unknown as NodeJS.WriteStream, env: { LANG: 'C' } });
  expect(terminal.all).toContain('invented demo: an invented bow');
  expect(terminal.shown.trimEnd().split('\n').slice(-2).join(' ')).toContain('End of the invented demo; nothing of it was kept.');
  expect(keyboard.rawMode).toBe(false);
  expect(terminal.raw.lastIndexOf('\u001b[?2004l')).toBeGreaterThan(terminal.raw.lastIndexOf('\u001b[?2004h'));
  expect(terminal.raw.lastIndexOf('\u001b[?25h')).toBeGreaterThan(terminal.raw.lastIndexOf('\u001b[?25l'));
});

it('without a terminal tells the same tune in plain lines', async () => {
  const out = new PassThrough();
  const chunks: string[] = [];
  out.on('data', (chunk: Buffer) => chunks.push(String(chunk)));
  const facts = await plainDemo(content, STORY, out);
  const text = chunks.join('');
  expect(text).not.toContain('not taken:');
  expect(text).toContain('(an invented bow, for practice)');
  expect(text.split('\n').filter((line) => line.startsWith('== ') && / Day \d/.test(line) && !line.includes('Invented demo'))).toEqual([]);
  expect(rowsOf(facts)).toBe(rowsOf((await usual).facts));
});

it('can reach no folder of tunes and write no file', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const reached = new Set<string>();
  const visitFile = (path: string): void => {
    if (reached.has(path)) return;
    reached.add(path);
    for (const name of importsOf(readFileSync(join(root, path), 'utf8'))) {
      const to = join(dirname(path), name);
      if (name.startsWith('.') && existsSync(join(root, to))) visitFile(to);
    }
  };
  visitFile('tests/demo/demo.ts');
  expect([...reached]).toContain('src/screens/app.tsx');
  expect([...reached].filter((path) => /src\/(main|commands|arguments)|src\/journal\/(home|list|lock|file-store|create-only|disk)/.test(path))).toEqual([]);
  const files = [...reached].flatMap((path) => [...readFileSync(join(root, path), 'utf8').matchAll(/import (?:type )?(.*) from 'node:(?:fs|child_process|net|http|https)[^']*'/g)].map(([, what]) => `${path}: ${what}`));
  expect(files).toEqual(['tests/tunes/play.ts: { readFileSync }']);
});
