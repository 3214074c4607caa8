import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CodedError } from '../../src/errors.ts';
import { BadLine, decodeLine, encodeLine } from '../../src/journal/line.ts';
import type { Fact } from '../../src/machine/types.ts';
import { anyFact, noted } from './facts.ts';

const plain = (fact: Fact): unknown => JSON.parse(JSON.stringify(fact));
const anyLine = fc.integer({ min: 1, max: 9 }).chain(anyFact);

describe('a fact and its line', () => {
  it('come back the same, whatever the fact holds, on one line', () => {
    fc.assert(fc.property(anyLine, (fact) => {
      const line = encodeLine(fact);
      expect(line.endsWith('\n')).toBe(true);
      expect(line.indexOf('\n')).toBe(line.length - 1);
      // Through bytes as on disk: half a surrogate pair must survive too.
      const read = decodeLine(Buffer.from(line, 'utf8').toString('utf8').slice(0, -1));
      expect(read).toEqual(fact);
      expect(JSON.stringify(read)).toBe(JSON.stringify(plain(fact)));
      expect(encodeLine(read)).toBe(line);
    }), { numRuns: 500 });
  });

  it('notice any one changed character', () => {
    const line = encodeLine(noted(2, 'left 1/8')).slice(0, -1);
    for (let at = 0; at < line.length; at += 1) {
      const other = line[at] === '0' ? '1' : '0';
      expect(() => decodeLine(line.slice(0, at) + other + line.slice(at + 1)), `character ${at}`).toThrow(BadLine);
    }
  });

  it('keep the sum of a known line for ever', () => {
    // Worked out apart: printf '%s' '{"seq":2,…,"findings":[]}}' | sha256sum
    expect(encodeLine(noted(2, 'x'))).toBe(
      '{"seq":2,"time":"2026-11-25T12:00:00.000Z","kind":"noted","note":"x","decided":{"events":[],"say":[],"findings":[]},"sum":"d2b78c1f"}\n',
    );
  });

  it.each([
    ['NaN', { ...noted(2), kind: 'moved', knob: 'rest-side', delta: Number.NaN }],
    ['infinity deep in the loop', { ...noted(2), decided: { events: [], say: [], findings: [], loop: { a: [{ b: Infinity }] } } }],
    ['a map', { ...noted(2), decided: { events: [], say: [], findings: [], loop: { a: new Map() } } }],
    ['a function', { ...noted(2), decided: { events: [], say: [], findings: [], loop: { a: () => 1 } } }],
    ['a field that no fact has', { ...noted(2), extra: 1 }],
    ['an event that the machine does not have', { ...noted(2), decided: { events: [{ type: 'explode' }], say: [], findings: [] } }],
    ['a correction of a later line', { ...noted(2), kind: 'corrected', note: undefined, of: 2, answer: { kind: 'confirm', value: true } }],
    ['seq 0', noted(0)],
    ['a time that is none', { ...noted(2), time: 'soon' }],
  ])('are not made from %s', (_, fact) => {
    let thrown: unknown;
    try { encodeLine(fact as unknown as Fact); } catch (cause) { thrown = cause; }
    expect(thrown).toBeInstanceOf(CodedError);
    expect((thrown as CodedError).code).toBe('internal');
    expect((thrown as CodedError).message).toContain('Nothing was written');
  });

  it('say where a line with a good sum has a bad shape', () => {
    const line = encodeLine(noted(2));
    expect(() => decodeLine(line.slice(0, -1).replace('"note 2"', '7'))).toThrow(/checksum/);
    expect(() => decodeLine('')).toThrow(/empty/);
    expect(() => decodeLine('{"seq":2}')).toThrow(/does not end with a checksum/);
  });
});
