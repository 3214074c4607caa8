import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TRIGGERS } from '../../src/content/types.ts';
import { agenda, isSettled, lookUp, type Pending } from '../../src/machine/agenda.ts';
import { step, type WalkSnapshot } from '../../src/machine/walk.ts';
import { content, stateOf, type Plain } from './state-of.ts';

const ORDER = ['undrawn', 'draw', 'shoot'];
const rank = ({ step: { pause } }: Pending): number => Math.max(0, ORDER.indexOf(pause));

/** Everything of the route answered, so that only what is due is on the agenda. */
const answered = Object.fromEntries(Object.values(content.steps).map((s): [string, Plain] => [s.id, s.kind === 'number' ? 1 : s.kind === 'choice' ? (s.options[0]?.value ?? '') : 'all true']));
const BOWS: readonly Readonly<Record<string, Plain>>[] = [
  { bow: 'another', release: 'release-aid', growing: 'grown', cams: 'yoke', rest: 'drop-away-cable', press: 'trained', 'bolts-top': 1, 'arrows-flexed': 'some-bad' },
  { bow: 'tune-1', release: 'release-aid', growing: 'growing', cams: 'screw-adjust', rest: 'blade', press: 'none', 'bolts-top': 0, 'bolts-bottom': 0, 'arrows-flexed': 'all' },
];
const inPaper = (): WalkSnapshot => ['settled', 'settled', 'settled', 'due'].reduce((at, type) => step(at, { type } as never) ?? at, stateOf().walk);

describe('the agenda', () => {
  test.each(TRIGGERS.map((trigger) => [trigger]))('%s: undrawn before draw before shoot, whatever its list says', (trigger) => {
    const list = content.rechecks[trigger];
    for (const bow of BOWS) {
      for (const due of [list, [...list].reverse()]) {
        const asked = agenda(content, { ...stateOf({ answers: { ...answered, ...bow }, due }), walk: inPaper() });
        expect(asked.map(rank)).toEqual(asked.map(rank).sort((a, b) => a - b));
        expect(asked.every((p) => due.includes(p.id))).toBe(true);
        // None of the list is lost but what does not belong to this bow.
        const belongs = due.filter((id) => { const s = content.steps[id]; return s !== undefined && s.when.every((g) => !['known-bow', 'new-bow', 'bolts-turned-out', 'arrow-set-aside', 'mass-is-close'].includes(g)); });
        for (const id of belongs) expect(asked.map((p) => p.id)).toContain(id);
      }
    }
  });

  test('any pile of lists comes out in the same order of pauses, and nothing twice', () => {
    const all = Object.values(content.rechecks).flat();
    fc.assert(fc.property(fc.subarray(all, { minLength: 1 }), fc.constantFrom(...BOWS), (due, bow) => {
      const asked = agenda(content, { ...stateOf({ answers: { ...answered, ...bow }, due: [...new Set(due)] }), walk: inPaper() });
      expect(asked.map(rank)).toEqual(asked.map(rank).sort((a, b) => a - b));
      expect(new Set(asked.map((p) => p.id)).size).toBe(asked.length);
    }), { seed: 11, numRuns: 200 });
  });

  test('of one kind, what was raised first is asked first', () => {
    const asked = (due: readonly string[]) => agenda(content, { ...stateOf({ answers: answered, due }), walk: inPaper() }).map((p) => p.id);
    expect(asked(['marks', 'limbs'])).toEqual(['marks', 'limbs']);
    expect(asked(['limbs', 'marks'])).toEqual(['limbs', 'marks']);
    expect(asked(['first-shot', 'slow-draw', 'limbs'])).toEqual(['limbs', 'slow-draw', 'first-shot']);
  });

  test('at the finish a screw that is not tight comes before any draw, and the calendar after the sight', () => {
    const asked = (due: readonly string[]) => agenda(content, { ...stateOf({ answers: answered, due }), walk: inPaper() }).map((p) => p.id);
    expect(asked(['slow-draw', 'tightened/tight-rest'])).toEqual(['tightened/tight-rest', 'slow-draw']);
    expect(asked(['sight-last', 'look-again'])).toEqual(['sight-last', 'look-again']);
  });

  test('at the very beginning it asks all of safety that is asked of everybody, and nothing of later chapters', () => {
    const asked = agenda(content, stateOf()).map((p) => p.id);
    expect(asked).toContain('limbs');
    expect(asked).not.toContain('axle-to-axle');
    expect(asked).not.toContain('cams');
    expect(asked.indexOf('limbs')).toBeLessThan(asked.indexOf('first-draw'));
  });

  test('looks up a check of a chunk, and nothing that content lacks', () => {
    expect(lookUp(content, 'range/range-gap')?.check?.id).toBe('range-gap');
    expect(lookUp(content, 'range')?.check).toBeUndefined();
    for (const id of ['nothing', 'range/nothing', 'limbs/clean', '']) expect(lookUp(content, id)).toBeNull();
  });

  test('a step is settled when it is answered and neither it nor a check of it is due', () => {
    expect(isSettled(stateOf({ answers: { range: 'all true' } }), 'range')).toBe(true);
    expect(isSettled(stateOf({ answers: { range: 'all true' }, due: ['range/range-gap'] }), 'range')).toBe(false);
    expect(isSettled(stateOf({ answers: { range: 'all true' }, due: ['range'] }), 'range')).toBe(false);
    expect(isSettled(stateOf({ answers: { range: 'all true' }, due: ['range-other'] }), 'range')).toBe(true);
    expect(isSettled(stateOf(), 'range')).toBe(false);
  });
});
