// What keeps a person whole, as it reaches them in the three faces, at real questions of whole tunes: a stop is heard in every
// state and however it is said; what must be picked is picked; every caution of a step is seen while the step stands.

import { describe, expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import {
  answeredByPick, cautionsInPipe, cautionsInPlain, cautionsOf, cautionsOnScreen, DEAF, DOWN, ESC, NO_CAUTION, PRESELECTED, SIZES, SMALLEST, stopsInPipe, stopsInPlain, stopsOnScreen, TAB,
  unansweredInLines, unansweredOnScreen, UP,
} from './harm.ts';
import { standings, type Standing } from './standing.ts';

const correcting = ({ ask }: View): string => (ask?.correcting === undefined ? '' : 'correcting');
const KIND = 'kind';
const STEP = 'step';
const FIVE = ['history', 'limbs', 'axle-clips', 'arrows-flexed', 'backstop'] as const;

const all = standings((view) => {
  const { ask, chapter, advice } = view;
  if (ask === null) return [];
  const shots = ask.kind === 'tear' || ask.kind === 'impact' ? ask.shots.taken > 0 : '';
  return [
    [KIND, ask.kind, ask.noDefault === true ? 'picked' : '', chapter, advice?.kind ?? '', correcting(view)].join(' | '),
    ...(cautionsOf(view).length > 0 || ask.noDefault === true ? [[STEP, ask.step, advice?.knob ?? '', shots, view.picture?.kind ?? '', correcting(view)].join(' | ')] : []),
  ];
});
const kinds = all.filter(({ name }) => name.startsWith(KIND));
const cautioned = all.filter(({ name, view }) => name.startsWith(STEP) && cautionsOf(view).length > 0);
const picked = all.filter(({ name, ask }) => name.startsWith(STEP) && ask.noDefault === true);
/** Keys as they are pressed there: where letters are typed, after Esc; with Alt in a correction, which Esc would leave. */
const keysAt = ({ ask }: Standing, [first = '', ...more]: readonly string[]): readonly string[] =>
  ask.kind !== 'text' ? [first, ...more] : ask.correcting === undefined ? [ESC, first, ...more] : [`${ESC}${first}`, ...more];
const isChunk = ({ ask }: Standing): boolean => ask.kind === 'choice' && ask.many === true;

it('the questions are of every kind, in every part of the walk', () => {
  const parts = new Set(kinds.map(({ view }) => view.chapter));
  for (const part of ['safety', 'baseline', 'warm-up', 'paper', 'broadheads', 'arrows', 'finish', 'stopped']) expect(parts).toContain(part);
  expect([...new Set(kinds.map(({ ask }) => ask.kind))].toSorted()).toEqual(['amount', 'choice', 'confirm', 'impact', 'number', 'tear', 'text']);
  expect([...new Set(kinds.map(({ view }) => view.advice?.kind))]).toEqual(expect.arrayContaining(['adjust', 'put-back', 'inspect', 'shop']));
  expect(kinds.length).toBeGreaterThan(50);
  for (const id of FIVE) expect(picked.map(({ ask }) => ask.step)).toContain(id);
  expect(cautioned.length).toBeGreaterThan(60);
});

describe('a stop', () => {
  /** Typed at a question, letter by letter. Every one has letters that are keys there. */
  const SHOUTS = ['it cracked', 'stop', 'STOP!', 'someone is in front of the target', 'blood', 'cut my hand', 'popped', 'new noise', 'nock broke', 'ouch', 'hurt', 'missed it, the string derailed', 'unsafe'];
  /** Where else the words may be typed: a page that is open, and an answer that is half given. */
  const PAGES = [['?'], ['h'], ['r'], ['o'], ['n'], ['s'], ['p'], ['o', '1', '\r'], ['o', '1', '\r', '1', '\r', '1', '\r'], ['o', '9', '\r']];
  const half = ({ ask }: Standing): readonly string[] => {
    switch (ask.kind) {
      case 'tear': return ['g', ...'high 1/2 '];
      case 'impact': return ['b', UP];
      case 'number': return [...'64 '];
      case 'text': return [...'Old B '];
      case 'amount': return ['2', '\r', ...'1/64 '];
      default: return [DOWN];
    }
  };

  it.each(kinds.map((at) => [at.name, at] as const))('is heard at %s', (_name, at) => {
    // Each question has its own share of all the words, so that every word meets every kind of question.
    const turn = kinds.indexOf(at);
    const some = SHOUTS.filter((_shout, i) => (i + turn) % 4 === 0);
    for (const shout of [...some, 'it cracked']) stopsOnScreen(at, [], shout);
    stopsOnScreen(at, half(at), 'it cracked');
    stopsOnScreen(at, half(at), 'stop');
    stopsOnScreen(at, keysAt(at, ['s']), '');
    stopsOnScreen(at, ['\u001b[200~the limb cracked\u001b[201~'], '');
    // Some of the pages at each: all of them at each kind would be the same again.
    for (const page of PAGES.filter((_page, i) => (i + turn) % 5 === 0)) stopsOnScreen(at, keysAt(at, page), turn % 2 === 0 ? 'cracked' : 'it snapped');
  });

  it.each([['stop'], ['STOP!'], ['it cracked'], ['note someone is in front of the target'], ['changed the limb cracked'], ['changed other the limb cracked'], ['moved it cracked'], ['moved rest-height up it cracked'], ['answer I am bleeding'], ['why', 'it snapped']])('in plain lines: %s', async (...lines) => {
    for (const at of kinds.filter((_at, i) => i % 2 === lines.join().length % 2)) await stopsInPlain(at, lines);
  });

  it.each([
    [{ stop: '' }], [{ stop: `cracked ${'x'.repeat(9000)}` }], [{ answer: 'it cracked' }], [{ answer: ['it cracked', 'badly'] }], [{ note: 'a splinter' }],
    [{ changed: 'fell', note: 'and now a limb is cracked' }], [{ moved: { knob: 'rest-height', direction: 'up', amount: 'it cracked' } }],
  ])('over the pipe: %j', async (line) => {
    for (const at of kinds) await stopsInPipe(at, line);
  });

  it('takes nothing that was typed before it, and single letters still are keys', () => {
    const at = kinds.find(({ ask }) => ask.kind === 'choice' && ask.about === 'release') as Standing;
    unansweredOnScreen(at, [...'release', ESC]);
    unansweredOnScreen(at, ['?', ESC, 'h', ESC, 'r', ESC, 'o', ESC, 'n', ESC, 's', ESC]);
  });

  it('that is swallowed by a session is found', async () => {
    for (const at of kinds.filter(({ view }, i) => view.type !== 'stop' && i % 3 === 0)) {
      expect(() => stopsOnScreen(at, [], 'it cracked', DEAF)).toThrow('is not stopped');
      await expect(stopsInPlain(at, ['stop'], DEAF)).rejects.toThrow('is not stopped');
      await expect(stopsInPipe(at, { stop: 'now' }, DEAF)).rejects.toThrow('is not stopped');
    }
  });
});

describe('a question that must be picked', () => {
  const ARROWS = [DOWN, UP, '\u001b[C', '\u001b[D', '\u001b[H', '\u001b[F', '\u001b[5~', '\u001b[6~'];
  /** What a careless thumb, a held key or a paste sends: each string is one read. */
  const CARELESS: readonly (readonly string[])[] = [
    ['\r'], [' ', '\r'], ['\r', '\r', '\r', '\r', '\r', '\r'], ['\r\r\r\r\r\r\r\r'], [' ', ' ', '\r', ' \r'], [`${TAB}\r`], ['\u001b[C', '\r'], ['\u001b[D', '\r'], ['\n'], ['\r\n\r\n'],
    ['1\r1\r1\r'], ['4\r'], ['y\r'], ['u\r'], ['\u001b[200~1\r1\r\u001b[201~'], ['\u001b[200~4\r\u001b[201~', ESC], ['?', '\r', '\r', '\r'], ['h', ESC, '\r'], ['0\r0\r'],
    ...ARROWS.map((arrow) => [`${arrow}${arrow}\r`]),
  ];

  it.each(picked.map((at) => [at.name, at] as const))('is not answered by chance: %s', async (_name, at) => {
    for (const reads of CARELESS) unansweredOnScreen(at, reads);
    await unansweredInLines(at);
    if (at.ask.kind === 'choice') answeredByPick(at);
  });

  it('has no list of checks in it that begins with "all true" chosen, or with what was marked before', () => {
    const chunks = picked.filter(isChunk);
    expect(chunks.length).toBeGreaterThan(10);
    expect(chunks.some(({ ask }) => ask.suggestion !== undefined)).toBe(true);
    for (const at of chunks) unansweredOnScreen(at, ['\r', ' ', '\r']);
  });

  it('that lost its "no default" is found', () => {
    const choices = picked.filter(({ ask }) => ask.kind === 'choice' && ask.many !== true);
    expect(choices.length).toBeGreaterThan(5);
    for (const at of choices) expect(() => unansweredOnScreen(at, ['\r'], PRESELECTED)).toThrow('answered on the screen');
    for (const at of picked.filter(({ ask }) => ask.kind === 'choice')) expect(() => unansweredOnScreen(at, [`${DOWN}\r`], PRESELECTED)).toThrow('answered on the screen');
  });
});

describe('a caution', () => {
  const LOOKED_UP = ['why', 'help', 'history', 'answers'];
  const pressedAt = ({ ask }: Standing): readonly (readonly string[])[] => {
    switch (ask.kind) {
      case 'tear': case 'impact': return [[], ['\r'], ['g'], ['g', ...'high 1/2 left 1/8'], ['b', UP, DOWN, '+']];
      case 'choice': case 'confirm': return [[], [DOWN], [DOWN, DOWN, DOWN, DOWN], ['+'], ...(ask.noDefault === true ? [['1\r']] : [])];
      default: return [[], ['\r'], ['+', '\r']];
    }
  };

  it.each(cautioned.map((at) => [at.name, at] as const))('is seen at every size: %s', async (_name, at) => {
    // After a key there may be less room: that is tried where there is least.
    for (const keys of pressedAt(at)) cautionsOnScreen(at, keys, keys.length === 0 ? SIZES : [SMALLEST]);
    for (const typed of ['nonsense', 'again', LOOKED_UP[cautioned.indexOf(at) % LOOKED_UP.length] ?? '']) await cautionsInPlain(at, typed);
    await cautionsInPipe(at);
  });

  it('that is left out is found', async () => {
    for (const at of cautioned.filter((_at, i) => i % 4 === 0)) {
      expect(() => cautionsOnScreen(at, [], SIZES, NO_CAUTION)).toThrow('is not seen');
      await expect(cautionsInPlain(at, 'again', NO_CAUTION)).rejects.toThrow('has left');
      await expect(cautionsInPipe(at, NO_CAUTION)).rejects.toThrow('is not on the line');
    }
  });
});
