// The walk as one state machine: small enough to read (walk-table.ts), no timers, no invoked work, no context.
// Which question is asked inside a state is data (agenda.ts); what the shots say comes in as a verdict. So the machine
// is finite and can be explored whole in tests.

import { setup, initialTransition, transition, type SnapshotFrom } from 'xstate';
import { once } from '../maths/once.ts';
import { isPlace, SIGNALS_AT, type Part, type Phase, type Place, type Stage } from './places.ts';
import { signalOf, type WalkNode } from './signals.ts';
import type { Axis, Chapter, MachineEvent } from './types.ts';
import { WALK } from './walk-table.ts';

// oxlint-disable-next-line typescript/consistent-type-assertions -- how the library is told its events
const walk = setup({ types: { events: {} as MachineEvent } });
type Config = Parameters<typeof walk.createMachine>[0];

/** A row of the table as the machine reads it: an event's kind, and under it which of that kind leads where. */
function configOf({ id, initial, on = {}, states, type, history }: WalkNode): Config {
  const ways: Record<string, { guard: (args: { event: MachineEvent }) => boolean; target: string }[]> = {};
  for (const [signal, target] of Object.entries(on)) {
    const [kind = ''] = signal.split(':');
    (ways[kind] ??= []).push({ guard: ({ event }) => signalOf(event) === signal, target });
  }
  return {
    on: ways,
    ...(id === undefined ? {} : { id }), ...(initial === undefined ? {} : { initial }),
    ...(type === undefined ? {} : { type }), ...(history === undefined ? {} : { history }),
    ...(states === undefined ? {} : { states: Object.fromEntries(Object.entries(states).map(([name, node]) => [name, configOf(node)])) }),
  };
}

export const walkMachine = walk.createMachine({ ...configOf(WALK), id: 'quarterturn' });

export type WalkSnapshot = SnapshotFrom<typeof walkMachine>;

// Without context or invoked work a snapshot is told whole by where it stands and where it would come back to: of equal ones
// the first is kept, so that there are only as many as places, and each step out of one is worked out once.
const snapshots = new Map<string, WalkSnapshot>();
function theOne(snapshot: WalkSnapshot): WalkSnapshot {
  const comesBack = Object.entries(snapshot.historyValue).map(([id, nodes]) => [id, nodes.map((node) => node.id)]);
  const key = JSON.stringify([snapshot.value, comesBack]);
  const first = snapshots.get(key) ?? snapshot;
  snapshots.set(key, first);
  return first;
}

const begin = theOne(initialTransition(walkMachine)[0]);
export const initialWalk = (): WalkSnapshot => begin;

const stepsFrom = once((_from: WalkSnapshot) => new Map<string, WalkSnapshot | null>());

/** One step of the machine; null where this event cannot happen here (a fact that no longer fits). */
export function step(snapshot: WalkSnapshot, event: MachineEvent): WalkSnapshot | null {
  const steps = stepsFrom(snapshot);
  // All that the table asks of an event.
  const signal = signalOf(event);
  const known = steps.get(signal);
  if (known !== undefined) return known;
  const next = snapshot.can(event) ? theOne(transition(walkMachine, snapshot, event)[0]) : null;
  steps.set(signal, next);
  return next;
}

/** Where the walk stands. */
export const placeOf: (snapshot: WalkSnapshot) => Place = once((snapshot: WalkSnapshot) => {
  const path: string[] = [];
  let value: unknown = snapshot.value;
  while (typeof value === 'object' && value !== null) {
    const [inner]: readonly (readonly [string, unknown])[] = Object.entries(value);
    if (inner === undefined) break;
    path.push(inner[0]);
    value = inner[1];
  }
  if (typeof value === 'string') path.push(value);
  if (path[0] === 'walk') path.shift();
  return placeNamed(path);
});

function placeNamed(path: readonly string[]): Place {
  const place = path.join('.');
  if (!isPlace(place)) throw new RangeError(`"${place}" is no place of the walk; look at walk-table.ts`);
  return place;
}

const CHAPTER_OF: Readonly<Record<Part, Chapter | null>> = {
  safety: 'safety', baseline: 'baseline', warmUp: 'warm-up', paper: 'paper', broadheads: 'broadheads', arrows: 'arrows', finish: 'finish',
  record: 'record', asking: null, stopped: null,
};
const AXIS_OF: Readonly<Record<Stage, Axis | null>> = {
  asFound: null, height: 'height', side: 'side', heightAgain: 'height', second: null, screening: null, mending: null,
};

const isPart = (word: string): word is Part => Object.hasOwn(CHAPTER_OF, word);
const isStage = (word: string): word is Stage => Object.hasOwn(AXIS_OF, word);
const PHASES: ReadonlySet<string> = new Set([...SIGNALS_AT.keys()].map(lastWord));
const isPhase = (word: string): word is Phase => PHASES.has(word);

/** The first word of a place. */
export function partOfPlace(place: Place): Part {
  const [first = ''] = place.split('.');
  if (!isPart(first)) throw new RangeError(`"${place}" begins with no part of the walk; look at walk-table.ts`);
  return first;
}

/** The last word of a place. */
export function phaseOfPlace(place: Place): Phase {
  const last = lastWord(place);
  if (!isPhase(last)) throw new RangeError(`"${place}" ends with no phase of the walk; look at walk-table.ts`);
  return last;
}

function lastWord(place: string): string {
  return place.slice(place.lastIndexOf('.') + 1);
}

/** The word in the middle; null where there is none. */
export function stageOfPlace(place: Place): Stage | null {
  const [, middle = '', last] = place.split('.');
  return last !== undefined && isStage(middle) ? middle : null;
}

/** The axis that a place works on; null where both are looked at, or none. */
export function axisOf(place: Place): Axis | null {
  const stage = stageOfPlace(place);
  return stage === null ? null : AXIS_OF[stage];
}

/** The chapter of a place; null in `asking` and `stopped`, which interrupt a chapter. */
export const chapterOfPlace = (place: Place): Chapter | null => CHAPTER_OF[partOfPlace(place)];

/** Places in which a change on the bow can be put back: from the first sheet on, while no question interrupts. */
export const canPutBackAt = (place: Place): boolean => /^(paper|broadheads|arrows|finish)\./.test(place);

/** Where the walk stands under a question or a stop that interrupts it. */
export const placeUnder: (snapshot: WalkSnapshot) => Place = once((snapshot: WalkSnapshot) => {
  const place = placeOf(snapshot);
  if (place !== 'asking' && place !== 'stopped') return place;
  const under = Object.values(snapshot.historyValue ?? {})[0] ?? [];
  const deepest = [...under].sort((a, b) => b.path.length - a.path.length)[0];
  // Nothing can interrupt the walk before it has begun.
  return deepest === undefined ? 'safety' : placeNamed(deepest.path.slice(1));
});
