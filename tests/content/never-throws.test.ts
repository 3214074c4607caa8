// Whatever an author's slip leaves behind, the answer is a list of places, never a throw.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkContent } from '../../src/content/lint.ts';
import { sound } from './sound.ts';

const files = [...sound().keys()];
const shard = fc.constantFrom('- ', ': ', '{', '}', '[', ']', '"', "'", '|', '>', '&a ', '*a', '!t ', '#', '\n', '  ', '\t', '---\n', '? ', '<<: ', '%', '@', 'null', '1', 'x', '\u0000', '__proto__: ');

function holds(changed: Map<string, string>): void {
  const { content, problems } = checkContent(changed);
  if (content === null) expect(problems.length).toBeGreaterThan(0);
  for (const one of problems) {
    const lines = (changed.get(one.file) ?? '').split('\n');
    expect(one.line).toBeGreaterThanOrEqual(1);
    expect(one.line).toBeLessThanOrEqual(Math.max(1, lines.length));
    expect(one.column).toBeGreaterThanOrEqual(1);
    expect(one.column).toBeLessThanOrEqual((lines[one.line - 1] ?? '').length + 1);
    expect(one.text).not.toMatch(/undefined|\[object|NaN|Invalid/);
  }
}

test('a file of shards', () => {
  fc.assert(fc.property(fc.constantFrom(...files), fc.array(shard, { maxLength: 30 }), (file, shards) => {
    holds(sound().set(file, shards.join('')));
  }), { numRuns: 15 });
}, 20_000);

test('a file with a piece cut out, or a shard pushed in', () => {
  fc.assert(fc.property(fc.constantFrom(...files), fc.nat(), fc.nat(40), fc.option(shard, { nil: '' }), (file, from, length, put) => {
    const text = sound().get(file) ?? '';
    const at = from % (text.length + 1);
    holds(sound().set(file, text.slice(0, at) + put + text.slice(at + length)));
  }), { numRuns: 30 });
}, 20_000);
