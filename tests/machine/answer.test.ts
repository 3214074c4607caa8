import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ERRORS } from '../../src/errors.ts';
import { MAX_SHOTS_AT_ONCE, MAX_TEAR, parseShots } from '../../src/machine/answer-shots.ts';
import { hint, MAX_TEXT, parseAnswer } from '../../src/machine/answer.ts';
import type { Answer, Ask } from '../../src/machine/types.ts';
import { anyText } from '../tools/any-text.ts';

const base = { about: 'x', step: 'x', short: 'x', text: [], why: [], caution: [] };
const plan = { distance: { value: 7, unit: 'ft' as const }, shaft: 'fletched' as const, head: 'field' as const, arrow: null, nockTurn: 0, shots: { taken: 0, wanted: 3 } };
const ASKS = {
  choice: { ...base, kind: 'choice', options: [{ value: 'release-aid', label: 'With a release aid' }, { value: 'fingers', label: 'With fingers' }] },
  withUnknown: { ...base, kind: 'choice', unknown: true, options: [{ value: 'clean', label: 'All clean', pass: true }, { value: 'found', label: 'Found' }] },
  unknownOption: { ...base, kind: 'choice', unknown: true, options: [{ value: 'unknown', label: 'I do not know' }] },
  many: { ...base, kind: 'choice', many: true, options: [{ value: 'all true', label: 'All true', pass: true }, { value: 'gap', label: 'The gap' }, { value: 'lane', label: 'The lane, shut' }] },
  inches: { ...base, kind: 'number', unit: 'in', min: -1, max: 40, unknown: true },
  turns: { ...base, kind: 'number', unit: 'turn', min: 0, max: 12 },
  count: { ...base, kind: 'number', unit: 'count', min: 0, max: 6 },
  confirm: { ...base, kind: 'confirm' },
  text: { ...base, kind: 'text' },
  amount: { ...base, kind: 'amount', unit: 'in', max: 0.5 },
  tear: { ...base, kind: 'tear', ...plan },
  impact: { ...base, kind: 'impact', ...plan },
} as const satisfies Record<string, Ask>;

function taken(ask: Ask, raw: unknown): Answer {
  const parsed = parseAnswer(ask, raw);
  if (!parsed.ok) throw new Error(`${parsed.code}: ${parsed.message}`);
  return parsed.answer;
}
const refused = (ask: Ask, raw: unknown): string => { const parsed = parseAnswer(ask, raw); return parsed.ok ? `taken: ${JSON.stringify(parsed.answer)}` : parsed.code; };
const pick = (...values: string[]): Answer => ({ kind: 'choice', values });

describe('choices', () => {
  test.each([['release-aid'], ['RELEASE-AID'], [' release-aid '], ['With a release aid'], [1], ['1'], [['release-aid']]])('%j is the first', (raw) =>
    expect(taken(ASKS.choice, raw)).toEqual(pick('release-aid')));
  test.each([['3', 'not-an-option'], [0, 'not-an-option'], ['', 'empty'], [null, 'empty'], [[], 'empty'], [['release-aid', 'fingers'], 'not-an-option'], ['not known', 'not-known-not-taken'], [{}, 'not-an-option'], [true, 'not-an-option']])('%j is refused as %s', (raw, code) =>
    expect(refused(ASKS.choice, raw)).toBe(code));
  test('several where several may be picked, each once', () => {
    expect(taken(ASKS.many, ['gap', 'lane', 'gap'])).toEqual(pick('gap', 'lane'));
    expect(taken(ASKS.many, 'gap, 3')).toEqual(pick('gap', 'lane'));
    expect(taken(ASKS.many, 'The lane, shut')).toEqual(pick('lane'));
    expect(taken(ASKS.many, 'all true')).toEqual(pick('all true'));
  });
  test('all true and one that is not cannot both be meant', () => expect(refused(ASKS.many, ['all true', 'gap'])).toBe('not-an-option'));
  test('"not known" only where it is an answer; an option of that name is that option', () => {
    for (const raw of ['not known', 'Unknown', 'not sure', "don't know"]) expect(taken(ASKS.withUnknown, raw)).toEqual({ kind: 'not known' });
    expect(taken(ASKS.unknownOption, 'unknown')).toEqual(pick('unknown'));
  });
});

describe('numbers', () => {
  test.each([['1/32', 1 / 32], ['1 1/8', 1.125], ['1 1/8 in', 1.125], ['-1/16', -1 / 16], [0.5, 0.5], ['.5', 0.5], ['25.4 mm', 1], ['2,54 cm', 1], [{ value: 25.4, unit: 'mm' }, 1], [{ value: '1/2' }, 0.5], [{ value: '1', unit: 'ft' }, 12]])('%j', (raw, value) => {
    const answer = taken(ASKS.inches, raw);
    expect(answer.kind === 'number' ? answer.value : NaN).toBeCloseTo(value, 12);
  });
  test('what is counted has no halves', () => {
    expect([taken(ASKS.count, 3), taken(ASKS.count, '4'), taken(ASKS.count, '4.0')].map((answer) => (answer.kind === 'number' ? answer.value : NaN))).toEqual([3, 4, 4]);
    expect([refused(ASKS.count, 2.5), refused(ASKS.count, '1/2'), refused(ASKS.count, 3.0001)]).toEqual(['not-a-number', 'not-a-number', 'not-a-number']);
    expect(parseAnswer(ASKS.count, 2.5)).toMatchObject({ message: '2.5 is no whole number. It can be from 0 to 6.' });
  });
  test('the ends of the range are inside it', () => {
    expect(taken(ASKS.inches, 40)).toEqual({ kind: 'number', value: 40 });
    expect(taken(ASKS.inches, -1)).toEqual({ kind: 'number', value: -1 });
    expect(refused(ASKS.inches, 40.001)).toBe('out-of-range');
    expect(refused(ASKS.inches, '-1 1/64')).toBe('out-of-range');
    // A key that stuck.
    expect(parseAnswer(ASKS.inches, '1'.repeat(60))).toMatchObject({ ok: false, code: 'out-of-range', message: expect.stringMatching(/^That number is outside /) });
  });
  test.each([['high', 'not-a-number'], [NaN, 'not-a-number'], [Infinity, 'not-a-number'], ['1/0', 'not-a-number'], ['1 kg', 'not-a-number'], [true, 'not-a-number'], [[1], 'not-a-number'], [{ value: 1, unit: 'furlong' }, 'not-a-number'], [{ value: 1, unit: 'lb' }, 'not-a-number'], [{}, 'not-a-number'], ['1 2', 'not-a-number'], ['\u0000', 'unreadable']])('%j is refused as %s', (raw, code) =>
    expect(refused(ASKS.inches, raw)).toBe(code));
  test('a text longer than can be kept is refused as that', () => expect(refused(ASKS.inches, 'x'.repeat(MAX_TEXT + 1))).toBe('too-long'));
  test('not known where it is an answer', () => {
    expect(taken(ASKS.inches, 'not known')).toEqual({ kind: 'not known' });
    expect(refused(ASKS.turns, 'not known')).toBe('not-known-not-taken');
  });
});

describe('yes and no, text, amounts', () => {
  test('yes and no in their usual forms', () => {
    for (const raw of [true, 'y', 'YES', 'true', 'done']) expect(taken(ASKS.confirm, raw)).toEqual({ kind: 'confirm', value: true });
    for (const raw of [false, 'n', 'no', 'not yet']) expect(taken(ASKS.confirm, raw)).toEqual({ kind: 'confirm', value: false });
    expect(refused(ASKS.confirm, 'perhaps')).toBe('not-a-confirm');
    expect(refused(ASKS.confirm, 1)).toBe('not-a-confirm');
  });
  test('text is kept as written, within its length', () => {
    expect(taken(ASKS.text, ' seen by the shop ')).toEqual({ kind: 'text', value: 'seen by the shop' });
    expect(taken(ASKS.text, 'not known')).toEqual({ kind: 'text', value: 'not known' });
    expect(refused(ASKS.text, 3)).toBe('unreadable');
    expect(refused(ASKS.text, '  ')).toBe('empty');
    expect(refused(ASKS.text, 'x'.repeat(MAX_TEXT))).toContain('taken');
    expect(refused(ASKS.text, 'x'.repeat(MAX_TEXT + 1))).toBe('too-long');
  });
  test('as told, not now, or the amount in truth', () => {
    for (const raw of ['as told', 'As Told', 'done', 'yes']) expect(taken(ASKS.amount, raw)).toEqual({ kind: 'moved', moved: 'as told' });
    for (const raw of ['not now', 'no', 'later', 0, '0']) expect(taken(ASKS.amount, raw)).toEqual({ kind: 'moved', moved: 'not now' });
    expect(taken(ASKS.amount, '1/16')).toEqual({ kind: 'moved', moved: { value: 1 / 16, unit: 'in' } });
    expect(taken(ASKS.amount, { value: 12.7, unit: 'mm' })).toEqual({ kind: 'moved', moved: { value: 0.5, unit: 'in' } });
    expect(refused(ASKS.amount, 0.51)).toBe('out-of-range');
    expect(refused(ASKS.amount, 'a bit')).toBe('not-an-amount');
  });
});

describe('tears', () => {
  test.each<[unknown, number, number]>([
    ['high 1/2 left 1/8', -1 / 8, 1 / 2], ['1/2 high, 1/8 left', -1 / 8, 1 / 2], ['left 1/8 high 1/2', -1 / 8, 1 / 2], ['HIGH 1/2 LEFT 1/8', -1 / 8, 1 / 2], ['h 1/2 l 1/8', -1 / 8, 1 / 2],
    ['low 1 1/8 in right 3/16 in', 3 / 16, -1.125], ['up 12.7 mm', 0, 0.5], ['down 0.25', 0, -0.25], ['right 1/4', 0.25, 0], ['-0.1 0.5', -0.1, 0.5], ['-0.1, 0.5', -0.1, 0.5], ['0 0', 0, 0],
    ['clean', 0, 0], ['bullet hole', 0, 0], [{ x: -0.1, y: 0.5 }, -0.1, 0.5], [{ x: '-1/8', y: '1/2' }, -1 / 8, 1 / 2], ['good: high 1/2', 0, 0.5], ['high 4 left 4', -MAX_TEAR, MAX_TEAR],
  ])('%j', (raw, x, y) => {
    const answer = taken(ASKS.tear, raw);
    const shot = answer.kind === 'shots' ? answer.shots[0] : undefined;
    expect(shot !== undefined && 'x' in shot ? [shot.x, shot.y] : shot).toEqual([expect.closeTo(x, 12), expect.closeTo(y, 12)]);
    expect(taken(ASKS.impact, raw)).toEqual(answer);
  });
  test('missed, and called bad', () => {
    for (const raw of ['missed', 'Miss', 'missed the paper', { missed: true }]) expect(taken(ASKS.tear, raw)).toEqual({ kind: 'shots', shots: [{ missed: true }] });
    for (const raw of ['bad: high 1/2', 'called bad, high 1/2', { x: 0, y: 0.5, called: 'bad' }]) expect(taken(ASKS.tear, raw)).toEqual({ kind: 'shots', shots: [{ x: 0, y: 0.5, called: 'bad' }] });
    expect(taken(ASKS.tear, { x: 0, y: 0.5, called: 'good' })).toEqual({ kind: 'shots', shots: [{ x: 0, y: 0.5 }] });
  });
  test('a list keeps its order; one bad entry refuses all of it', () => {
    expect(taken(ASKS.tear, 'high 1/2; missed; -0.1 0.2')).toEqual({ kind: 'shots', shots: [{ x: 0, y: 0.5 }, { missed: true }, { x: -0.1, y: 0.2 }] });
    expect(taken(ASKS.tear, [{ x: 1, y: 2 }, 'clean'])).toEqual({ kind: 'shots', shots: [{ x: 1, y: 2 }, { x: 0, y: 0 }] });
    expect(refused(ASKS.tear, [{ x: 1, y: 2 }, 'sideways'])).toBe('not-a-tear');
    expect(refused(ASKS.tear, Array.from({ length: MAX_SHOTS_AT_ONCE }, () => 'clean'))).toContain('taken');
    expect(refused(ASKS.tear, Array.from({ length: MAX_SHOTS_AT_ONCE + 1 }, () => 'clean'))).toBe('too-long');
    expect(refused(ASKS.tear, [])).toBe('empty');
  });
  test.each<[unknown, string]>([
    ['high', 'not-a-tear'], ['high 1/2 low 1/4', 'not-a-tear'], ['high -1/2', 'not-a-tear'], ['1/2', 'not-a-tear'], ['1 2 3', 'not-a-tear'], ['sideways 1', 'not-a-tear'], ['high 3 wright 1', 'not-a-tear'], ['2 high 3', 'not-a-tear'],
    [{ x: 1 }, 'not-a-tear'], [{ x: NaN, y: 0 }, 'not-a-tear'], [{ x: 0, y: 0, called: 'ugly' }, 'not-a-tear'], [5, 'not-a-tear'], [{ missed: false }, 'not-a-tear'], [[[]], 'not-a-tear'],
    ['high 4 1/64', 'too-large-tear'], [{ x: -4.01, y: 0 }, 'too-large-tear'], ['', 'empty'],
  ])('%j is refused as %s', (raw, code) => expect(refused(ASKS.tear, raw)).toBe(code));
  test('never a minus zero, which no journal could tell from zero', () => {
    const answer = taken(ASKS.tear, [{ x: -0, y: -0 }, 'low 0 left 0']);
    for (const shot of answer.kind === 'shots' ? answer.shots : []) expect('x' in shot && Object.is(shot.x, 0) && Object.is(shot.y, 0)).toBe(true);
  });
});

describe('any input at all', () => {
  const words = fc.constantFrom('high', 'low', 'left', 'right', 'bad', 'missed', 'clean', 'as told', 'not known', 'yes', '1/', '/', '1 1/8', '-', '.', ',', ';', 'mm', 'in', '"', '0', '9e9', '\u00bd', ' ', '\t', 'h', 'l');
  const anything = fc.oneof(
    fc.anything({ withBigInt: true, withDate: true, withMap: true, withSet: true, withNullPrototype: true, withSparseArray: true, withTypedArray: true }),
    anyText, fc.array(words).map((list) => list.join(' ')), fc.array(words).map((list) => list.join('')),
    fc.record({ x: fc.anything(), y: fc.anything(), called: fc.anything() }, { requiredKeys: [] }), fc.record({ value: fc.anything(), unit: fc.anything() }, { requiredKeys: [] }),
  );

  test('is answered: taken in the canonical form of the ask, or refused in one printable line with a code', () => {
    const KIND: Record<Ask['kind'], Answer['kind']> = { choice: 'choice', number: 'number', confirm: 'confirm', text: 'text', amount: 'moved', tear: 'shots', impact: 'shots' };
    fc.assert(fc.property(fc.constantFrom<Ask>(...Object.values(ASKS)), anything, (ask, raw) => {
      const parsed = parseAnswer(ask, raw);
      if (!parsed.ok) {
        expect(parsed.message).toMatch(/^.{6,}$/);
        expect(Object.keys(ERRORS)).toContain(parsed.code);
        return;
      }
      const { answer } = parsed;
      expect([KIND[ask.kind], 'not known']).toContain(answer.kind);
      if (answer.kind === 'not known') expect(ask.unknown).toBe(true);
      // What was taken is taken again as it stands, and survives the journal's line.
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    }), { seed: 5, numRuns: 3000 });
  });

  test('a shot that is taken is one that can be: finite, and within 4 in', () => {
    fc.assert(fc.property(anything, (raw) => {
      const parsed = parseShots(raw, 4);
      if (!parsed.ok || parsed.answer.kind !== 'shots') return;
      for (const shot of parsed.answer.shots) if ('x' in shot) expect(Math.max(Math.abs(shot.x), Math.abs(shot.y))).toBeLessThanOrEqual(MAX_TEAR);
    }), { seed: 6, numRuns: 1500 });
  });

  test('whatever an ask may be answered with, its hint names the way', () => {
    for (const ask of Object.values(ASKS)) expect(hint(ask)).toMatch(/^(Choose|Write|Answer) .+\.$/);
  });
});
