// A journal under content that has changed since: what fits is replayed, the rest is set aside for good, nothing is lost.

import { describe, expect, it } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { replay } from '../../src/machine/replay.ts';
import type { Fact } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher } from '../tunes/archer.ts';
import { NOON, play, shippedContent } from '../tunes/play.ts';

const content = shippedContent();
const bow = { start: { x: 0.02, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -8 } }, sd: 0.08, seed: 4 } as const;
const untilAdvised = () => play(bow, { until: (view) => view.advice?.kind === 'adjust' });

// A fact whose event cannot happen where the walk stands, as an older engine might have written it.
const misfit = (facts: readonly Fact[], at: number): Fact[] =>
  facts.map((fact) => (fact.seq === at ? { ...fact, decided: { ...fact.decided, events: [{ type: 'moved' as const }] } } : fact));

describe('replay under other content', () => {
  it('says from where it no longer fits, goes on from there, and stays so at every later replay', () => {
    const kept = untilAdvised().store.facts.slice();
    const facts = misfit(kept, 20);
    expect(replay(content, facts).unfit).toEqual({ from: 20, to: kept.length });

    const store = memoryStore(facts);
    const session = openSession({ content, store, startAt: new Date(NOON + 3_600_000), engine: 'test', tune: 'test-tune', known: [] });
    expect(session.view().say.join(' ')).toContain('From line 20 on');
    expect(session.view().seq).toBe(kept.length + 1);
    expect(store.facts.slice(0, kept.length)).toEqual(facts);

    const archer = new TestArcher(bow);
    for (let turn = 0; turn < 8; turn++) {
      const reply = session.send({ kind: 'answer', answer: archer.answer(session.view()) }, new Date(NOON + 3_700_000 + turn));
      expect(reply.error).toBeUndefined();
    }
    const again = replay(content, store.facts);
    expect(again.unfit).toBeNull();
    expect(again.state.facts.map((f) => f.seq)).toEqual(store.facts.map((f) => f.seq).filter((seq) => seq < 20 || seq > kept.length));
  });

  it('adopts what was decided, whatever this engine would decide', () => {
    const { store } = untilAdvised();
    const at = store.facts.find((f) => f.decided.events.some((e) => e.type === 'verdict'))?.seq ?? 0;
    const other = store.facts.slice(0, at).map((f) => (f.seq !== at ? f : {
      ...f, decided: { ...f.decided, events: [{ type: 'verdict' as const, verdict: 'in tolerance' as const }] },
    }));
    const { state, unfit } = replay(content, other);
    expect(at).toBeGreaterThan(0);
    expect(unfit).toBeNull();
    expect(JSON.stringify(state.walk.value)).toContain('second');
  });
});
