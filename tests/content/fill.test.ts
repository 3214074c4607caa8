import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fill, holesOf } from '../../src/content/fill.ts';

const name = fc.stringMatching(/^[a-z][A-Za-z0-9]{0,6}$/);
const plain = fc.string().map((text) => text.replace(/[{}]/g, ''));
const value = fc.oneof(fc.string(), fc.integer());

test('every hole is filled with its value, whatever the value holds, and the words around it stay', () => {
  fc.assert(fc.property(fc.array(fc.tuple(plain, name)), plain, fc.dictionary(name, value), (parts, end, extra) => {
    const holes: Record<string, string | number> = { ...extra };
    for (const [, hole] of parts) holes[hole] ??= `<${hole}> {x} $&`;
    const phrase = parts.map(([text, hole]) => `${text}{${hole}}`).join('') + end;
    expect(fill(phrase, holes)).toBe(parts.map(([text, hole]) => `${text}${String(holes[hole])}`).join('') + end);
  }));
});

test('a hole without a value throws and names it', () => {
  fc.assert(fc.property(plain, name, plain, (before, hole, after) => {
    expect(() => fill(`${before}{${hole}}${after}`, {})).toThrow(`{${hole}}`);
  }));
  expect(() => fill('the {constructor} of it', {})).toThrow('no value for {constructor} in "the {constructor} of it"');
});

test('a number that is none throws: a sentence never says NaN', () => {
  expect(() => fill('{n} in', { n: Number.NaN })).toThrow('{n} is NaN');
  expect(() => fill('{n} in', { n: Number.POSITIVE_INFINITY })).toThrow('{n} is Infinity');
});

test('holes are listed once, in order', () => {
  expect(holesOf('It was {before}, is {after}, was {before}.')).toEqual(['before', 'after']);
  expect(holesOf('none {Here} {1}')).toEqual([]);
});
