// The types that say which event can happen where, held against what the machine itself does; the lines marked as errors
// are checked by `tsc`, which fails where one of them compiles.

import { describe, expect, expectTypeOf, test } from 'vitest';
import { adoptAxis, adoptReturn } from '../../src/machine/adopt-judgement.ts';
import { Deciding } from '../../src/machine/deciding.ts';
import { judgement } from '../../src/machine/loop/judgement.ts';
import { SIGNALS_AT, type EventAt, type Place, type PlaceIn, type PlaceOf, type PlaceWith } from '../../src/machine/places.ts';
import { signalOf, type Signal } from '../../src/machine/signals.ts';
import type { MachineEvent } from '../../src/machine/types.ts';
import { emptyState } from '../../src/machine/state.ts';
import { step, walkMachine } from '../../src/machine/walk.ts';
import { content } from './state-of.ts';

const EVERY: Readonly<Record<Signal, MachineEvent>> = {
  'settled': { type: 'settled' }, 'skipped': { type: 'skipped' }, 'farther': { type: 'farther' }, 'due': { type: 'due' }, 'clear': { type: 'clear' },
  'stop': { type: 'stop' }, 'released': { type: 'released' }, 'moved': { type: 'moved' }, 'looked': { type: 'looked' }, 'put back': { type: 'put back' },
  'verdict: inconsistent': { type: 'verdict', verdict: 'inconsistent' }, 'verdict: gross': { type: 'verdict', verdict: 'gross' },
  'verdict: in tolerance': { type: 'verdict', verdict: 'in tolerance' }, 'verdict: out': { type: 'verdict', verdict: 'out' },
  'verdict: worse': { type: 'verdict', verdict: 'worse' }, 'verdict: cannot': { type: 'verdict', verdict: 'cannot' },
  'verdict: borderline': { type: 'verdict', verdict: 'borderline' }, 'verdict: returned': { type: 'verdict', verdict: 'returned' },
  'verdict: not returned': { type: 'verdict', verdict: 'not returned' }, 'verdict: odd arrows': { type: 'verdict', verdict: 'odd arrows' },
  'verdict: many odd': { type: 'verdict', verdict: 'many odd' },
  'verdict: set differs': { type: 'verdict', verdict: 'set differs' },
  'chosen: accept': { type: 'chosen', choice: 'accept' }, 'chosen: go on': { type: 'chosen', choice: 'go on' }, 'chosen: finish step': { type: 'chosen', choice: 'finish step' },
  'return: paper': { type: 'return', to: 'paper' }, 'return: broadheads': { type: 'return', to: 'broadheads' },
};

type Value = string | { readonly [key: string]: Value };
const valueOf = ([first = '', ...rest]: readonly string[]): Value => (rest.length === 0 ? first : { [first]: valueOf(rest) });
const at = (place: string) => {
  const path = place === 'asking' || place === 'stopped' ? [place] : ['walk', ...place.split('.')];
  return walkMachine.resolveState({ value: valueOf(path) });
};

describe('the places of the walk', () => {
  test('are those of the machine', () => {
    interface Node { readonly type: string; readonly path: readonly string[]; readonly states: Readonly<Record<string, Node>> }
    const nodes = (node: Node): readonly Node[] => [node, ...Object.values(node.states).flatMap(nodes)];
    const leaves = nodes(walkMachine.root).filter((node) => node.type === 'atomic').map((node) => node.path.join('.').replace(/^walk\./, ''));
    expect([...SIGNALS_AT.keys()].sort()).toEqual(leaves.sort());
  });

  test('allow in their types what the machine takes there, and nothing else', () => {
    for (const [name, event] of Object.entries(EVERY)) expect(signalOf(event)).toBe(name);
    for (const [place, signals] of SIGNALS_AT) {
      const taken = Object.keys(EVERY).filter((name) => step(at(place), EVERY[name as Signal]) !== null);
      expect([...new Set(signals)].sort(), place).toEqual(taken.sort());
    }
  });

  test('are a closed list: a place that is none does not compile', () => {
    const shooting: Place = 'paper.height.shooting';
    // @ts-expect-error -- no such place
    const none: Place = 'paper.height.resting';
    // @ts-expect-error -- a chapter is no place while something is done inside it
    const chapter: Place = 'paper';
    expect(SIGNALS_AT.has(shooting)).toBe(true);
    for (const wrong of [none, chapter]) expect(SIGNALS_AT.has(wrong)).toBe(false);
  });
});

describe('an event that cannot happen at a place', () => {
  // What compiles is what the machine takes, at each place and in both directions: the rows are types and values at once.
  const possible = <P extends Place>(place: P, event: EventAt<P>): void => expect(step(at(place), event), `${place}: ${signalOf(event)}`).not.toBeNull();
  // Takes at run time what its type refuses, and holds that the machine refuses it as well.
  const refused = <P extends Place>(place: P, event: EventAt<P>): void => expect(step(at(place), event), `${place}: ${signalOf(event)}`).toBeNull();

  test('does not compile where the machine would refuse it', () => {
    possible('safety', { type: 'settled' });
    possible('safety', { type: 'due' });
    possible('asking', { type: 'clear' });
    possible('stopped', { type: 'released' });
    possible('stopped', { type: 'stop' });
    possible('paper.asFound.shooting', { type: 'return', to: 'broadheads' });
    possible('broadheads.side.offering', { type: 'put back' });
    possible('arrows.mending.shooting', { type: 'looked' });
    possible('paper.second.shooting', { type: 'verdict', verdict: 'many odd' });

    // @ts-expect-error -- nothing is moved before the first sheet
    refused('safety', { type: 'moved' });
    // @ts-expect-error -- and nothing is put back
    refused('warmUp', { type: 'return', to: 'paper' });
    // @ts-expect-error -- a stop is left by its gate alone
    refused('stopped', { type: 'clear' });
    // @ts-expect-error -- a question is left when it is answered
    refused('asking', { type: 'settled' });
    // @ts-expect-error -- nothing was moved yet that could be worse
    refused('paper.asFound.shooting', { type: 'verdict', verdict: 'worse' });
    // @ts-expect-error -- whether it came back is asked before anything else is judged
    refused('paper.side.proving', { type: 'verdict', verdict: 'in tolerance' });
    // @ts-expect-error -- a put-back is not left half done
    refused('paper.height.puttingBack', { type: 'settled' });
    // @ts-expect-error -- an advice is not accepted unseen
    refused('broadheads.height.advising', { type: 'chosen', choice: 'accept' });
    // @ts-expect-error -- single arrows are no matter of the bow
    refused('paper.height.shooting', { type: 'verdict', verdict: 'odd arrows' });
    // @ts-expect-error -- the record is the end
    refused('record', { type: 'settled' });
  });

  test('at several places is one that cannot happen at each of them', () => {
    expectTypeOf<EventAt<'safety' | 'baseline' | 'warmUp'>>().toEqualTypeOf<{ readonly type: 'settled' } | { readonly type: 'due' } | { readonly type: 'stop' }>();
    // Everywhere at once: only a stop.
    expectTypeOf<EventAt<Place>>().toEqualTypeOf<{ readonly type: 'stop' }>();
    expectTypeOf<EventAt<PlaceOf<'offering'>>['type']>().toEqualTypeOf<'chosen' | 'looked' | 'put back' | 'due' | 'stop' | 'return'>();
    expectTypeOf<PlaceWith<'released'>>().toEqualTypeOf<'stopped'>();
    expectTypeOf<PlaceIn<'finish'>>().toEqualTypeOf<'finish.tightening' | 'finish.proof' | 'finish.inspecting' | 'finish.closing'>();
  });
});

describe('a decision', () => {
  // Never run: these lines are there for `tsc`, which fails where one that is marked compiles, and where one that is not does not.
  const lines = (d: Deciding, asking: Deciding<'asking'>, proving: Deciding<'paper.height.proving'>, shooting: Deciding<'paper.side.shooting'>): void => {
    d.event({ type: 'stop' });
    // @ts-expect-error -- where the walk stands was not asked
    d.event({ type: 'settled' });
    if (d.isAt('safety', 'asking')) {
      d.event({ type: 'stop' });
      // @ts-expect-error -- it may stand at the other one of them
      d.event({ type: 'clear' });
    }
    if (d.isIn('finish')) d.event({ type: 'return', to: 'paper' });
    // @ts-expect-error -- nothing is moved any more
    if (d.isIn('finish')) d.event({ type: 'moved' });
    if (d.inPhase('offering')) d.event({ type: 'chosen', choice: 'accept' });
    // @ts-expect-error -- the finishing step is no offer
    if (d.inPhase('offering')) d.event({ type: 'chosen', choice: 'finish step' });
    d.where('moved').event({ type: 'moved' });
    // @ts-expect-error -- where something can be moved, not everything can be left
    d.where('moved').event({ type: 'settled' });
    asking.event({ type: 'clear' });
    // @ts-expect-error -- a place is not another one
    proving.isAt('asking');
    adoptReturn(proving, judgement('not returned'));
    // @ts-expect-error -- a return is proved where something was put back, and nowhere else
    adoptReturn(shooting, judgement('returned'));
    // @ts-expect-error -- a proof says whether it came back, and nothing of the tear
    adoptReturn(proving, judgement('in tolerance'));
    adoptAxis(shooting, judgement('worse'));
    // @ts-expect-error -- the arrows are no matter of an axis
    adoptAxis(shooting, judgement('odd arrows'));
    // @ts-expect-error -- events come with their place, never in a patch
    d.add({ events: [{ type: 'settled' }] });
  };

  test('knows where it stands only by asking, and says so where a demand does not hold', () => {
    expect(lines).toBeTypeOf('function');
    const d = new Deciding(content, emptyState(), { kind: 'noted', seq: 1, time: '', note: '' });
    expect([d.place, d.isAt('safety'), d.isAt('asking'), d.isIn('safety', 'paper'), d.inPhase('shooting'), d.may('due'), d.may('moved')])
      .toEqual(['safety', true, false, true, false, true, false]);
    expect(d.where('settled')).toBe(d);
    expect(() => d.where('moved')).toThrow('"moved" cannot happen at safety');
  });
});
