// A practice in plain lines and over the pipe, from the menu on.

import { describe, expect, it } from 'vitest';
import type { PracticeOf } from '../../src/journal/practice-mark.ts';
import type { SessionLike } from '../../src/machine/types.ts';
import { runPipe } from '../../src/screens/pipe.ts';
import { outSchema, type OutLine } from '../../src/screens/pipe-schema.ts';
import { runPlain } from '../../src/screens/plain.ts';
import { openLobby } from '../../src/training/lobby.ts';
import { input, sink } from '../faces/fake-session.ts';
import { CONTENT } from '../practice/play.ts';
import { NOON } from '../tunes/play.ts';
import { playLearner, practiceOn, WORDS } from './learner.ts';

const now = (): Date => new Date(NOON + 3_600_000);
const lobby = (opened: PracticeOf[] = []): SessionLike => openLobby({
  content: CONTENT, words: WORDS, next: () => 4, halfDone: [{ id: '2026-03-01-a', of: { lesson: 'one bad arrow', seed: 2 }, shots: 7, when: '2026-03-01 12:00' }],
  open: (choice) => {
    const of = 'id' in choice ? { lesson: 'one bad arrow', seed: 2 } : choice.of;
    opened.push(of);
    return { session: practiceOn(of), notices: ['A notice of the store.'] };
  },
});
const plain = async (session: SessionLike, ...typed: readonly string[]): Promise<string> => {
  const output = sink();
  await runPlain(session, { input: input(typed.map((line) => `${line}\n`).join('')), output, now, echo: true });
  return output.text();
};
const pipe = async (session: SessionLike, ...lines: readonly unknown[]): Promise<OutLine[]> => {
  const output = sink();
  await runPipe(session, { input: input(lines.map((line) => `${JSON.stringify(line)}\n`).join('')), output, now });
  return output.lines().map((line) => outSchema.parse(JSON.parse(line)));
};
const atShot = () => {
  const session = practiceOn({ lesson: 'the first guess is wrong', seed: 1 });
  while (session.view().ask?.kind !== 'tear') playLearner(session, () => null, 1);
  return session;
};

describe('the menu', () => {
  it('names what is half done, every lesson with its sentence, and bows by number', async () => {
    const said = await plain(lobby());
    expect(said).toContain('PRACTICE, on an invented bow.');
    expect(said).toContain('1. Go on: lesson: one bad arrow, bow 2, 7 shots, last 2026-03-01 12:00');
    for (const [name, { menu }] of Object.entries(WORDS.lessons)) expect(said).toContain(`${name}: ${menu}`);
    expect(said).toContain(`7. ${WORDS.says['menu-number']}`);
  });

  it.each([
    [['1'], { lesson: 'one bad arrow', seed: 2 }],
    [['it is the archer'], { lesson: 'it is the archer', seed: 4 }],
    [['7', '12'], { lesson: null, seed: 12 }],
    [['7', '0', 'half', 'back', '2'], { lesson: 'two things wrong', seed: 4 }],
  ])('leads by %j to %j', async (typed, of) => {
    const opened: PracticeOf[] = [];
    const said = await plain(lobby(opened), ...typed);
    expect(opened).toEqual([of]);
    expect(said).toContain('A notice of the store.');
    expect(said).toContain(WORDS.says.begin);
    expect(said).toContain('== PRACTICE. Safety');
  });

  it('takes nothing that belongs to a bow', async () => {
    const opened: PracticeOf[] = [];
    const said = await plain(lobby(opened), 'note something', 'put back', 'limb cracked', 'quit');
    expect([opened, said.match(/not taken: /g)?.length]).toEqual([[], 3]);
    expect(said).toContain('"quarterturn practice" goes on with it.');
  });
});

describe('plain lines', () => {
  it('let an arrow go by Enter, tell how it felt and what a rule reads; a tear before that is not taken', async () => {
    const session = atShot();
    const { seq } = session.view();
    const said = await plain(session, 'high 1/2', 'draw', '', 'draw', 'low 1/8 left 3/8');
    expect(said).toContain('not taken: Let the arrow go first: press Enter.');
    expect(said).toMatch(/felt: (It went off clean|You felt it)/);
    expect(said).toMatch(/On the sheet the rule, laid from the point's hole to where the cuts of the vanes meet, reads /);
    expect(said).toMatch(/ {4}0\+.*@/);
    expect(said.match(/Press Enter to let the arrow go\./g)?.length).toBeGreaterThan(1);
    expect(session.view().seq).toBe(seq + 1);
    // At every question, in the prompt.
    expect(said.match(/^practice > /gm)?.length).toBe(6);
    expect(said).not.toMatch(/^> /m);
  });

  it('turn without telling, say without turning, and end in the debrief', async () => {
    const session = practiceOn({ lesson: 'the first guess is wrong', seed: 1 });
    while (session.view().ask?.kind !== 'amount') playLearner(session, () => null, 1);
    const said = await plain(session, 'turn', 'turn rest-height sideways', 'turn rest-height up 1/32', 'say as told', 'help', 'debrief');
    expect(said).toContain('not taken: Turn what? One of: rest-height');
    expect(said).toContain('Type it like: turn rest-height up 1/32 in.');
    expect(said).toContain('turned, and the coach was not told.');
    expect(said).toContain('debrief         end the practice');
    expect(said).toContain('PRACTICE, the debrief: what was true of lesson: the first guess is wrong, bow 1\n(an invented bow, for practice)');
    expect(said).toContain('The practice is over, and kept.');
    expect([Object.keys(session.hidden().condition.settings), Object.keys(session.view().bow)]).toEqual([['rest-height'], ['rest-side']]);
  });

  it('of a real bow know none of these words', async () => {
    const { readPractice } = await import('../../src/screens/plain-practice.ts');
    expect(readPractice('high 1/2', true)).toBeNull();
    const { sessionAt } = await import('../faces/real-session.ts');
    const said = await plain(sessionAt('tear').session, 'shoot', 'debrief', 'turn rest-height up 1/32');
    expect(said.match(/not taken: /g)?.length).toBe(3);
    expect(said).not.toContain('PRACTICE');
  });
});

describe('the pipe', () => {
  it('marks every line, and gives the hole as a rule reads it', async () => {
    const session = atShot();
    const [first, note] = await pipe(session, { note: 'x' });
    for (const line of [first, note]) expect(line).toMatchObject({ type: 'ask', practice: { of: 'lesson: the first guess is wrong, bow 1', shot: { hole: { kind: 'sheet' } } }, ask: { practice: true } });
    const hole = first !== undefined && 'practice' in first ? first.practice?.shot?.hole : undefined;
    if (hole?.kind !== 'sheet') throw new Error('no sheet is shown');
    expect([hole.tail.x * 16, hole.tail.y * 16].every(Number.isInteger)).toBe(true);
  });

  it('takes hands that are still, what is turned and the wish for the debrief; a real bow refuses them', async () => {
    const session = practiceOn({ lesson: 'the first guess is wrong', seed: 1 });
    while (session.view().ask?.kind !== 'amount') playLearner(session, () => null, 1);
    const told = await pipe(session, { answer: 'as told', hands: 'moving' }, { turned: { knob: 'rest-height', direction: 'up', amount: '1/32' } }, { answer: 'as told', hands: 'still' }, { debrief: true }, { answer: 1 });
    expect(told.map(({ type }) => type)).toEqual(['ask', 'error', 'ask', 'ask', 'done', 'error', 'left']);
    expect(told[4]).toMatchObject({ practice: { debrief: { invented: true } } });
    expect(Object.keys(session.hidden().condition.settings)).toEqual(['rest-height']);
    const { sessionAt } = await import('../faces/real-session.ts');
    const real = await pipe(sessionAt('amount').session, { turned: { knob: 'rest-height', direction: 'up', amount: '1/32' } }, { debrief: true });
    expect(real.slice(1, 3)).toMatchObject([{ type: 'error', code: 'not-now' }, { type: 'error', code: 'not-now' }]);
    expect(real.filter((line) => 'practice' in line)).toEqual([]);
  });
});
