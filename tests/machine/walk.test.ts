import { describe, expect, test } from 'vitest';
import { initialWalk, placeOf, step, type WalkSnapshot } from '../../src/machine/walk.ts';
import { exploreMachine } from '../explore/machine-graph.ts';

const { states, edges, places, unreached, defined, untaken } = exploreMachine();

describe('the walk, explored whole', () => {
  test('reaches every state of the machine', () => {
    expect(places.length).toBeGreaterThan(30);
    expect(unreached).toEqual([]);
  });

  test('takes every edge that the machine defines', () => {
    expect(defined).toBeGreaterThan(60);
    expect(untaken).toEqual([]);
  });

  test('can be stopped from everywhere', () => {
    for (const walk of states.values()) expect(placeOf(step(walk, { type: 'stop' }) ?? walk), placeOf(walk)).toBe('stopped');
  });

  test('leaves "stopped" by "released" alone, and then asks before it goes on', () => {
    const leaving = edges.filter(({ from, to }) => placeOf(from) === 'stopped' && placeOf(to) !== 'stopped');
    expect(leaving.length).toBeGreaterThan(0);
    for (const { event, to } of leaving) expect([event.type, placeOf(to)]).toEqual(['released', 'asking']);
  });

  test('is released only from "stopped"', () => {
    for (const { from, event } of edges) if (event.type === 'released') expect(placeOf(from)).toBe('stopped');
  });

  test('comes back exactly to where it was interrupted, by a question or by a stop', () => {
    const go = (walk: WalkSnapshot, ...types: ('due' | 'clear' | 'stop' | 'released')[]): string =>
      placeOf(types.reduce((at, type) => step(at, { type }) ?? at, walk));
    let held = 0;
    for (const walk of states.values()) {
      const place = placeOf(walk);
      if (place === 'stopped' || place === 'asking') continue;
      held++;
      expect(go(walk, 'due', 'clear')).toBe(place);
      expect(go(walk, 'stop', 'released', 'clear')).toBe(place);
      expect(go(walk, 'due', 'stop', 'released', 'clear')).toBe(place);
      expect(go(walk, 'stop', 'stop', 'released', 'clear')).toBe(place);
    }
    expect(held).toBeGreaterThan(30);
  });

  test('advises only after shots that say so, or when the archer asks for the finishing step', () => {
    const into = edges.filter(({ from, to }) => placeOf(to).endsWith('.advising') && !['asking', 'stopped'].includes(placeOf(from)) && placeOf(from) !== placeOf(to));
    expect(into.length).toBeGreaterThan(0);
    for (const { from, event, to } of into) {
      if (placeOf(to).startsWith('arrows.')) continue;
      const by = event.type === 'verdict' ? event.verdict : event.type === 'chosen' ? event.choice : event.type;
      expect([placeOf(from).split('.').at(-1), by]).toSatisfy(([phase, why]: string[]) =>
        (phase === 'shooting' && (why === 'out' || why === 'cannot')) || (phase === 'passed' && why === 'finish step'));
    }
  });

  test('changes an arrow only after the whole set was shot and found it odd, and goes from one odd arrow to the next', () => {
    const into = edges.filter(({ from, to }) => placeOf(to) === 'arrows.mending.advising' && !['asking', 'stopped', placeOf(to)].includes(placeOf(from)));
    expect(new Set(into.map(({ from, event }) => `${placeOf(from)}: ${event.type === 'verdict' ? event.verdict : event.type}`))).toEqual(new Set([
      'arrows.screening.shooting: odd arrows', 'arrows.mending.shooting: out', 'arrows.mending.shooting: in tolerance', 'arrows.mending.looking: looked',
    ]));
  });

  test('shoots to prove after a put-back, before anything else is advised', () => {
    const out = edges.filter(({ from, to }) => placeOf(from).endsWith('.puttingBack') && placeOf(to) !== placeOf(from) && !['asking', 'stopped'].includes(placeOf(to)));
    expect(new Set(out.map(({ event, to }) => `${event.type} ${placeOf(to).split('.').at(-1)}`))).toEqual(new Set(['moved proving', 'looked shooting', 'return puttingBack']));
  });

  test('stays in the record: nothing but a stop or a question leads out', () => {
    const out = edges.filter(({ from, to }) => placeOf(from) === 'record' && placeOf(to) !== 'record');
    expect(new Set(out.map(({ event }) => event.type))).toEqual(new Set(['stop', 'due']));
  });

  test('refuses what cannot happen, and changes nothing by it', () => {
    const walk = initialWalk();
    expect(step(walk, { type: 'moved' })).toBeNull();
    expect(step(walk, { type: 'verdict', verdict: 'out' })).toBeNull();
    expect(step(walk, { type: 'clear' })).toBeNull();
    expect(placeOf(walk)).toBe('safety');
  });
});
