// Facts for the tests of the journal: a few by hand, and arbitrary ones of every kind.

import fc from 'fast-check';
import { CHANGED, type Answer, type Decided, type Fact, type MachineEvent, type Verdict } from '../../src/machine/types.ts';
import { DIRECTIONS, KNOBS } from '../../src/content/types.ts';
import { UNITS } from '../../src/maths/units.ts';
import { anyText as text } from '../tools/any-text.ts';

export const nothing: Decided = { events: [], say: [], findings: [] };
export const NOON = new Date('2026-11-25T12:00:00.000Z');

export function begun(over: Partial<Extract<Fact, { kind: 'begun' }>> = {}): Fact {
  return { seq: 1, time: NOON.toISOString(), kind: 'begun', v: 1, tune: 't', engine: '0.1.0', content: '1', known: [], decided: nothing, ...over };
}

export function noted(seq: number, note = `note ${seq}`): Fact {
  return { seq, time: NOON.toISOString(), kind: 'noted', note, decided: nothing };
}

/** A tune of `count` lines. */
export function tuneOf(count: number): Fact[] {
  return Array.from({ length: count }, (_, at) => (at === 0 ? begun() : noted(at + 1)));
}

// JSON has one zero; an arbitrary -0 would only test that.
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (n === 0 ? 0 : n));

const time = fc.date({ noInvalidDate: true, min: new Date('1970-01-01'), max: new Date('2200-01-01') }).map((d) => d.toISOString());
const quantity = fc.record({ value: number, unit: fc.constantFrom(...UNITS) });
const shot = fc.oneof(
  fc.constant({ missed: true as const }),
  fc.record({ x: number, y: number, called: fc.constantFrom('good' as const, 'bad' as const) }, { requiredKeys: ['x', 'y'] }),
);

const answer: fc.Arbitrary<Answer> = fc.oneof(
  fc.record({ kind: fc.constant('choice' as const), values: fc.array(text) }),
  fc.record({ kind: fc.constant('number' as const), value: number }),
  fc.record({ kind: fc.constant('confirm' as const), value: fc.boolean() }),
  fc.record({ kind: fc.constant('text' as const), value: text }),
  fc.record({ kind: fc.constant('shots' as const), shots: fc.array(shot) }),
  fc.record({ kind: fc.constant('moved' as const), moved: fc.oneof(fc.constantFrom('as told' as const, 'not now' as const), quantity) }),
  fc.constant({ kind: 'not known' as const }),
) as fc.Arbitrary<Answer>;

const verdicts: Verdict[] = ['gross', 'in tolerance', 'out', 'worse', 'cannot', 'returned', 'not returned'];
const event: fc.Arbitrary<MachineEvent> = fc.oneof(
  fc.constantFrom<MachineEvent>({ type: 'settled' }, { type: 'due' }, { type: 'put back' }, { type: 'chosen', choice: 'go on' }),
  fc.record({ type: fc.constant('verdict' as const), verdict: fc.constantFrom(...verdicts) }),
);

const advice = fc.record(
  {
    kind: fc.constantFrom('adjust' as const, 'put-back' as const, 'inspect' as const, 'shop' as const),
    knob: fc.constantFrom(...KNOBS), direction: fc.constantFrom(...DIRECTIONS), amount: quantity, to: quantity,
    expect: fc.record({ x: number, y: number, sdX: number, sdY: number }),
    what: text, why: text, caution: fc.array(text),
  },
  { requiredKeys: ['kind', 'what', 'why', 'caution'] },
);

// Keys as they come, `__proto__` among them: nothing of a fact may get lost.
const loop = fc.dictionary(fc.oneof(text, fc.constant('__proto__')), fc.jsonValue({ noUnicodeString: false }))
  .map((value) => JSON.parse(JSON.stringify(value)) as Record<string, unknown>);

const decided = fc.record(
  {
    events: fc.array(event), say: fc.array(text),
    findings: fc.array(fc.record({ kind: fc.constant('gate' as const), gate: text, result: fc.constantFrom('passed' as const, 'failed' as const) })),
    advice: fc.option(advice, { nil: null }), due: fc.array(text), loop,
  },
  { requiredKeys: ['events', 'say', 'findings'] },
) as fc.Arbitrary<Decided>;

const carried = fc.record({
  from: text, bow: text, answers: fc.dictionary(text, answer),
  spread: fc.option(fc.record({ sd: number, df: number }), { nil: null }),
  gains: fc.constant({ 'rest-side': { mean: -4, sd: 1.5 } }),
});

const earlier = (seq: number) => fc.integer({ min: 1, max: seq - 1 });

/** Any fact that may stand at line `seq`. */
export function anyFact(seq: number): fc.Arbitrary<Fact> {
  const base = { seq: fc.constant(seq), time, decided };
  const later = fc.option(fc.constant({ v: 1 as const }), { nil: {} });
  if (seq === 1) {
    return fc.record({
      ...base, kind: fc.constant('begun'), v: fc.constant(1), tune: text, engine: text, content: text, known: fc.array(carried, { maxLength: 2 }),
    }) as fc.Arbitrary<Fact>;
  }
  const facts = fc.oneof(
    fc.record({ ...base, kind: fc.constant('answered'), step: text, about: text, answer }),
    fc.record({ ...base, kind: fc.constant('corrected'), of: earlier(seq), answer }),
    fc.record({ ...base, kind: fc.constant('wanted-back'), to: earlier(seq) }),
    fc.record({ ...base, kind: fc.constant('stopped'), words: text }),
    fc.record({ ...base, kind: fc.constant('noted'), note: text }),
    fc.record({ ...base, kind: fc.constant('moved'), knob: fc.constantFrom(...KNOBS), delta: number }),
    fc.record({ ...base, kind: fc.constant('changed'), what: fc.constantFrom(...CHANGED), note: text }),
    fc.record({ ...base, kind: fc.constant('resumed'), away: number }),
  );
  return fc.tuple(facts, later).map(([fact, claim]) => ({ ...fact, ...claim })) as fc.Arbitrary<Fact>;
}
