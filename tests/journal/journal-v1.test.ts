// A journal of version 1, frozen: every later program must read it. Never write this file anew to make a test pass;
// a change of the lines is a new version, with a way up in src/journal/versions.ts.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { encodeLine } from '../../src/journal/line.ts';
import { readJournal } from '../../src/journal/read.ts';

const bytes = readFileSync(new URL('../fixtures/journal-v1.jsonl', import.meta.url));

describe('the journal of version 1', () => {
  const { facts, bad, torn, good } = readJournal(bytes);

  it('is read to its end', () => {
    expect(bad).toBeNull();
    expect(torn.length).toBe(0);
    expect(good).toBe(bytes.length);
    expect(facts.map((fact) => fact.kind)).toEqual([
      'begun', 'answered', 'answered', 'answered', 'answered', 'answered', 'answered', 'answered',
      'corrected', 'moved', 'wanted-back', 'noted', 'changed', 'stopped', 'resumed',
    ]);
  });

  it('still says what it said', () => {
    const [first, , peak, press, , name, found] = facts;
    expect(first).toMatchObject({ v: 1, known: [{ bow: 'the blue one', spread: { sd: 0.11, df: 24 }, gains: { 'rest-height': { mean: -6.2 } } }] });
    expect(peak).toMatchObject({ about: 'peak-weight', answer: { kind: 'number', value: 62.5 } });
    expect(press).toMatchObject({ answer: { kind: 'not known' } });
    expect(name).toMatchObject({ answer: { value: 'the blue one \u2014 \u201cold\u201d' } });
    expect(found).toMatchObject({
      answer: { shots: [{ x: -0.375, y: 0.75 }, { called: 'good' }, { called: 'bad' }, { missed: true }] },
      decided: { events: [{ type: 'verdict', verdict: 'out' }], advice: { knob: 'rest-height', to: { value: 0.03125, unit: 'in' } }, loop: { note: { nested: [1, null, 'x'] } } },
    });
    expect(facts[8]).toMatchObject({ of: 8, answer: { moved: { value: 1, unit: 'mm' } } });
  });

  it('is what this program would write, byte for byte, while 1 is its version', () => {
    expect(facts.map(encodeLine).join('')).toBe(bytes.toString('utf8'));
  });

  it('is the file that was frozen', () => {
    expect(createHash('sha256').update(bytes).digest('hex')).toBe('d4458739c1cebe568277170fecb1f6d09c5c60e88f3c3a9f6b2e0555fb09037e');
  });
});
