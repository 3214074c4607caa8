import fc from 'fast-check';
import { expect, expectTypeOf, test } from 'vitest';
import { wrappedLines } from '../../src/content/lint/height.ts';
import { distance, nearest } from '../../src/content/nearest.ts';
import { CAUSES } from '../../src/content/schema.ts';
import type { toContent } from '../../src/content/schema.ts';
import { readNumber } from '../../src/content/schema/words.ts';
import type { Content } from '../../src/content/types.ts';
import type { Finding } from '../../src/machine/types.ts';

test('numbers are read as an archer writes them', () => {
  const read: readonly (readonly [string, number | null])[] = [
    ['0.25', 0.25], ['.5', 0.5], ['12', 12], ['-3/16', -0.1875], ['1/32', 0.03125], ['1 1/8', 1.125], ['-1 1/2', -1.5], [' 3 ', 3],
    ['', null], ['1/0', null], ['1/', null], ['1e3', null], ['0x10', null], ['NaN', null], ['Infinity', null], ['1,5', null], ['3 in', null],
  ];
  for (const [text, number] of read) expect([text, readNumber(text)]).toEqual([text, number]);
});

test('a fraction of the tape reads back as itself', () => {
  fc.assert(fc.property(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 63 }), fc.boolean(), (whole, over, less) => {
    const text = `${less ? '-' : ''}${whole} ${over}/64`;
    const size = whole + over / 64;
    expect(readNumber(text)).toBe(less ? -size : size);
  }));
});

test('distance is a distance', () => {
  const word = fc.stringMatching(/^[a-d]{0,6}$/);
  fc.assert(fc.property(word, word, (a, b) => {
    expect(distance(a, b)).toBe(distance(b, a));
    expect(distance(a, b) === 0).toBe(a === b);
    expect(distance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
    expect(distance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
  }));
  expect([distance('kitten', 'sitting'), distance('puase', 'pause')]).toEqual([3, 1]);
});

test('only a slip of the hand is taken for a known word', () => {
  expect(nearest('growin', ['growing', 'adult'])).toBe('growing');
  expect(nearest('tuesday', ['growing', 'adult'])).toBeNull();
});

/** Slow and plain: one line after another, as a terminal would break them. */
function broken(text: string, columns: number): number {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1] ?? '';
    if (last !== '' && last.length + 1 + word.length <= columns) lines[lines.length - 1] = `${last} ${word}`;
    else {
      const pieces = word.match(new RegExp(`.{1,${columns}}`, 'g')) ?? [''];
      lines.splice(last === '' ? lines.length - 1 : lines.length, last === '' ? 1 : 0, ...pieces);
    }
  }
  return lines.length;
}

test('lines are counted as they break', () => {
  const text = fc.array(fc.stringMatching(/^[a-z]{1,15}$/), { minLength: 1 }).map((words) => words.join(' '));
  fc.assert(fc.property(text, fc.integer({ min: 5, max: 40 }), (one, columns) => {
    expect(wrappedLines(one, columns)).toBe(broken(one, columns));
  }));
  expect([wrappedLines('a'.repeat(39), 39), wrappedLines('a'.repeat(40), 39), wrappedLines(`${'a'.repeat(38)} b`, 39)]).toEqual([1, 2, 2]);
});

test('what the schemas give is the content that the program reads (held by the type checker)', () => {
  expectTypeOf<ReturnType<typeof toContent>>().toEqualTypeOf<Content>();
  expectTypeOf<(typeof CAUSES)[number]>().toEqualTypeOf<Extract<Finding, { kind: 'cause' }>['cause']>();
  expect(new Set(CAUSES).size).toBe(CAUSES.length);
});
