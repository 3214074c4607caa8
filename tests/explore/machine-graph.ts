// The walk as a graph: every state that any sequence of events leads to, and every step between them, found by xstate's own
// traversal. The machine has no context, so where it stands and where it would go back to is all that it remembers.

import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import type { MachineEvent, Verdict } from '../../src/machine/types.ts';
import { namesOf } from '../../src/maths/closed.ts';
import { placeOf, walkMachine, type WalkSnapshot } from '../../src/machine/walk.ts';

const VERDICTS: Record<Verdict, true> = {
  'inconsistent': true, 'gross': true, 'in tolerance': true, 'out': true, 'worse': true, 'cannot': true, 'borderline': true, 'returned': true, 'not returned': true,
  'odd arrows': true, 'many odd': true, 'set differs': true,
};
type Plain = Exclude<MachineEvent['type'], 'verdict' | 'chosen' | 'return'>;
const PLAIN: Record<Plain, true> = { 'settled': true, 'skipped': true, 'farther': true, 'due': true, 'clear': true, 'stop': true, 'released': true, 'moved': true, 'looked': true, 'put back': true };
const CHOICES: Record<Extract<MachineEvent, { type: 'chosen' }>['choice'], true> = { 'accept': true, 'go on': true, 'finish step': true };
const RETURNS: Record<Extract<MachineEvent, { type: 'return' }>['to'], true> = { paper: true, broadheads: true };

/** Every event that there is: the compiler refuses this list where one is missing. */
export const EVENTS: readonly MachineEvent[] = [
  ...namesOf(PLAIN).map((type): MachineEvent => ({ type })),
  ...namesOf(VERDICTS).map((verdict): MachineEvent => ({ type: 'verdict', verdict })),
  ...namesOf(CHOICES).map((choice): MachineEvent => ({ type: 'chosen', choice })),
  ...namesOf(RETURNS).map((to): MachineEvent => ({ type: 'return', to })),
];

/**
 * Where it stands and, while it is interrupted, where it would go back to. In the walk itself an older interruption is forgotten
 * by the next one, so it is no part of the state.
 */
export function keyOf(walk: WalkSnapshot): string {
  const place = placeOf(walk);
  if (place !== 'asking' && place !== 'stopped') return place;
  return `${place} < ${Object.values(walk.historyValue ?? {}).map((nodes) => nodes.map((node) => node.id).sort().join('+')).join()}`;
}

export interface Edge { readonly from: WalkSnapshot; readonly event: MachineEvent; readonly to: WalkSnapshot }
type Node = typeof walkMachine.root;

export interface MachineGraph {
  readonly states: ReadonlyMap<string, WalkSnapshot>;
  readonly edges: readonly Edge[];
  /** Places that the machine names, and those among them that nothing leads to. */
  readonly places: readonly string[];
  readonly unreached: readonly string[];
  /** Transitions that the machine defines, and those among them that were never taken. */
  readonly defined: number;
  readonly untaken: readonly string[];
}

/** Explores it whole. Throws where more than `limit` states turn up: then the walk is not finite any more. */
export function exploreMachine(limit = 5000): MachineGraph {
  const map = getAdjacencyMap(walkMachine, { events: [...EVENTS], serializeState: keyOf, limit });
  const steps = adjacencyMapToArray(map) as { state: WalkSnapshot; event: MachineEvent; nextState: WalkSnapshot }[];
  const states = new Map(Object.values(map).map(({ state }) => [keyOf(state as WalkSnapshot), state as WalkSnapshot]));
  // A refused event leaves the state as it is; an edge is what the machine takes.
  const edges = steps.filter(({ state, event }) => walkMachine.getTransitionData(state, event).length > 0).map(({ state, event, nextState }): Edge => ({ from: state, event, to: nextState }));
  const all = nodes(walkMachine.root);
  const places = all.filter((node) => node.type === 'atomic').map((node) => node.path.join('.').replace(/^walk\./, ''));
  const reached = new Set([...states.values()].map((walk): string => placeOf(walk)));
  const taken = new Set<unknown>(edges.flatMap(({ from, event }) => walkMachine.getTransitionData(from, event)));
  const defined = all.flatMap((node) => [...node.transitions.values()].flat());
  return {
    states, edges, places, defined: defined.length,
    unreached: places.filter((place) => !reached.has(place)),
    untaken: defined.filter((edge) => !taken.has(edge)).map((edge) => `${edge.source.id} on ${edge.eventType}`),
  };
}

const nodes = (node: Node): readonly Node[] => [node, ...Object.values(node.states).flatMap((child) => nodes(child))];
