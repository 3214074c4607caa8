import { describe, expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import { openingLines, takenLines } from '../../src/screens/items.ts';
import { lineText } from '../../src/screens/look.ts';
import { ASKS, SHOTS, VIEWS, viewOf } from './fake-session.ts';

const LOOK = { width: 79, braille: false };
const next = (view: View): View => ({ ...view, seq: view.seq + 1 });
const answered = { kind: 'answer', answer: 'left' } as const;
const text = (lines: ReturnType<typeof takenLines>): string[] => lines.map((line) => lineText(line).trimEnd());

describe('what an answer leaves in the scroll-back', () => {
  it('is the question and the answer, where the session tells only the answer', () => {
    const lines = takenLines(VIEWS.choice, answered, VIEWS.gate, [{ seq: 1, who: 'archer', text: 'left-handed' }], LOOK);
    expect(text(lines)).toEqual(['  coach  Which hand holds the bow?', '  you    left-handed']);
  });

  it('is what the session tells, in its order, and nothing twice', () => {
    const after = viewOf(ASKS.gate, { say: ['Noted.'] });
    const lines = takenLines(VIEWS.choice, answered, next(after), [
      { seq: 1, who: 'coach', text: 'Which hand holds the bow?' }, { seq: 1, who: 'archer', text: 'left-handed' }, { seq: 1, who: 'coach', text: 'Noted.' },
    ], LOOK);
    expect(text(lines)).toEqual(['  coach  Which hand holds the bow?', '  you    left-handed', '  coach  Noted.']);
  });

  it('parts a line that holds both the question and the answer', () => {
    const lines = takenLines(VIEWS.choice, answered, VIEWS.gate, [{ seq: 1, who: 'archer', text: 'Which hand holds the bow?: Left: right-handed' }], LOOK);
    expect(text(lines)).toEqual(['  coach  Which hand holds the bow?', '  you    Left: right-handed']);
  });

  it('has the finished set before what the coach makes of it', () => {
    const after = viewOf(ASKS.amount, { say: ['Not there yet.'], picture: { kind: 'paper', shots: SHOTS } });
    const lines = text(takenLines(VIEWS.tear, answered, next(after), [{ seq: 1, who: 'archer', text: 'high 1/2' }], LOOK));
    const row = (part: string): number => lines.findIndex((line) => line.includes(part));
    expect(row('you    high 1/2')).toBeLessThan(row('.----'));
    expect(row('\'----')).toBeLessThan(row('Not there yet.'));
    expect(row('you    high 1/2')).toBeGreaterThanOrEqual(0);
  });

  it('repeats nothing when an answer is only opened again', () => {
    const said = viewOf(ASKS.choice, { say: ['Stop here.'] });
    expect(takenLines(said, { kind: 'back' }, { ...said, ask: VIEWS.correcting.ask }, [], LOOK)).toEqual([]);
    expect(text(takenLines(VIEWS.gate, answered, next(said), [], LOOK))).toContain('  coach  Stop here.');
  });

  it('shows no set while more shots are wanted', () => {
    const lines = text(takenLines(VIEWS.tear, answered, VIEWS.tear, [], LOOK));
    expect(lines.join('\n')).not.toContain('.----');
  });

  it('keeps escape sequences out, whoever wrote them', () => {
    const lines = takenLines(VIEWS.choice, answered, VIEWS.gate, [{ seq: 1, who: 'archer', text: 'a\u001b[2Jb\u0007\u202ec' }], LOOK);
    expect(text(lines).at(-1)).toBe('  you    abc');
  });
});

describe('what is written before the first frame', () => {
  it('is the notices, what was said, and the record of a finished tune', () => {
    const lines = text(openingLines({ ...VIEWS.done, say: ['Welcome back.'] }, [{ seq: 1, who: 'archer', text: 'left' }], ['A stale lock was taken over.'], 79));
    expect(lines).toEqual([
      '', '  note   A stale lock was taken over.', '  you    left', '  coach  Welcome back.',
      '', '  Old Faithful, day 2', '', '  Settings', '    rest, up and down: 1/16 in up from where it began',
    ]);
  });
});
