import { describe, expect, test } from 'vitest';
import type { MachineEvent, Verdict } from '../../src/machine/types.ts';
import { initialWalk, placeOf, step, walkMachine, type WalkSnapshot } from '../../src/machine/walk.ts';

const VERDICTS: Record<Verdict, true> = {
  'inconsistent': true, 'gross': true, 'in tolerance': true, 'out': true, 'worse': true, 'cannot': true, 'borderline': true, 'returned': true, 'not returned': true,
  'odd arrows': true, 'many odd': true,
};
const EVENTS: readonly MachineEvent[] = [
  { type: 'settled' }, { type: 'skipped' }, { type: 'farther' }, { type: 'due' }, { type: 'clear' }, { type: 'stop' }, { type: 'released' }, { type: 'moved' }, { type: 'looked' }, { type: 'put back' },
  ...(Object.keys(VERDICTS) as Verdict[]).map((verdict): MachineEvent => ({ type: 'verdict', verdict })),
  ...(['paper', 'broadheads'] as const).map((to): MachineEvent => ({ type: 'return', to })),
  ...(['accept', 'go on', 'finish step'] as const).map((choice): MachineEvent => ({ type: 'chosen', choice })),
];

// Where it stands and, while it is interrupted, where it would go back to: all that this machine can remember. In the walk
// itself an older interruption is forgotten by the next one.
const keyOf = (walk: WalkSnapshot): string => {
  const place = placeOf(walk);
  if (place !== 'asking' && place !== 'stopped') return place;
  return `${place} < ${Object.values(walk.historyValue ?? {}).map((nodes) => nodes.map((node) => node.id).sort().join('+')).join()}`;
};

interface Edge { readonly from: WalkSnapshot; readonly event: MachineEvent; readonly to: WalkSnapshot }

/** Every state that any sequence of events leads to, and every step between them. Throws beyond `limit` states. */
function explore(limit = 2000): { readonly states: ReadonlyMap<string, WalkSnapshot>; readonly edges: readonly Edge[] } {
  const states = new Map([[keyOf(initialWalk()), initialWalk()]]);
  const edges: Edge[] = [];
  for (const from of states.values()) {
    if (states.size > limit) throw new Error(`more than ${limit} states: the walk is not finite any more`);
    for (const event of EVENTS) {
      const to = step(from, event);
      if (to === null) continue;
      edges.push({ from, event, to });
      if (!states.has(keyOf(to))) states.set(keyOf(to), to);
    }
  }
  return { states, edges };
}

const { states, edges } = explore();
type Node = typeof walkMachine.root;
const nodes = (node: Node): readonly Node[] => [node, ...Object.values(node.states).flatMap((child) => nodes(child as Node))];

describe('the walk, explored whole', () => {
  test('reaches every state of the machine', () => {
    const leaves = nodes(walkMachine.root).filter((node) => node.type === 'atomic').map((node) => node.path.join('.').replace(/^walk\./, ''));
    expect(leaves.length).toBeGreaterThan(30);
    expect([...new Set([...states.values()].map(placeOf))].sort()).toEqual([...leaves].sort());
  });

  test('takes every edge that the machine defines', () => {
    const taken = new Set(edges.flatMap(({ from, event }) => walkMachine.getTransitionData(from, event)));
    const defined = nodes(walkMachine.root).flatMap((node) => [...node.transitions.values()].flat());
    expect(defined.length).toBeGreaterThan(60);
    const never = defined.filter((edge) => !taken.has(edge as never)).map((edge) => `${edge.source.id} on ${edge.eventType}`);
    expect(never).toEqual([]);
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
