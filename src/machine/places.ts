// Where the walk can stand, and what can happen there, as types: read off the table of the walk (walk-table.ts), so that an
// event that cannot happen at a place does not compile.
//
// What types cannot say: where `clear` leads back to (that is the machine's memory), and that a place is left by an event.
// So an event is the last thing that a turn does with its place; the machine itself refuses whatever still does not fit.

import type { EventNamed, Signal, WalkNode } from './signals.ts';
import { WALK } from './walk-table.ts';

/** Pairs of a place and all that may happen there, for every place inside `N`; `Above` is what its groups allow. */
type Rows<N, Path extends string, Above> =
  N extends { readonly type: 'history' } ? never
  : N extends { readonly states: infer Inner } ? { [K in keyof Inner & string]: Rows<Inner[K], `${Path}.${K}`, Above | On<N>> }[keyof Inner & string]
  : { readonly place: Named<Path>; readonly signals: Above | On<N> };
type On<N> = N extends { readonly on: infer O } ? keyof O & Signal : never;
// `walk.` goes without saying.
type Named<Path extends string> = Path extends `.walk.${infer Rest}` ? Rest : Path extends `.${infer Rest}` ? Rest : never;

type Row = Rows<typeof WALK, '', never>;
/** Every place where the walk can stand, as a dotted path: `safety`, `paper.height.advising`, `asking`, `stopped`. */
export type Place = Row['place'];
type SignalsAt = { readonly [R in Row as R['place']]: R['signals'] };

/** The events that can happen at `P`; of several places, those that can happen at each of them. */
export type EventAt<P extends Place> = EventNamed<{ [S in Signal]: [P] extends [PlaceWith<S>] ? S : never }[Signal]>;
/** The places where this can happen. */
export type PlaceWith<S extends Signal> = { [P in Place]: S extends SignalsAt[P] ? P : never }[Place];
/** The verdicts that shots may give at `P`. */
export type VerdictAt<P extends Place> = Extract<EventAt<P>, { readonly type: 'verdict' }>['verdict'];

/** The first word of a place: its chapter, or the interruption. */
export type Part = Place extends infer P ? (P extends `${infer First}.${string}` ? First : P) : never;
/** The last word of a place: what is done there. */
export type Phase = Last<Place>;
type Last<P> = P extends `${string}.${infer Rest}` ? Last<Rest> : P;
/** The word in the middle of a place: the axis, or the round. */
export type Stage = Place extends infer P ? (P extends `${string}.${infer Middle}.${string}` ? Middle : never) : never;

/** Every place of a chapter. */
export type PlaceIn<C extends string> = Extract<Place, C | `${C}.${string}`>;
/** Every place whose last word this is: `PlaceOf<'shooting'>`. */
export type PlaceOf<Phase extends string> = Extract<Place, Phase | `${string}.${Phase}`>;

function rowsOf(node: WalkNode, path: readonly string[], above: readonly string[]): readonly (readonly [string, readonly string[]])[] {
  const signals = [...above, ...Object.keys(node.on ?? {})];
  if (node.type === 'history') return [];
  if (node.states === undefined) return [[path.join('.').replace(/^walk\./, ''), signals]];
  return Object.entries(node.states).flatMap(([name, inner]) => rowsOf(inner, [...path, name], signals));
}

/** The same at run time: every place, and the names of what may happen there. */
export const SIGNALS_AT: ReadonlyMap<string, readonly string[]> = new Map(rowsOf(WALK, [], []));

export const isPlace = (path: string): path is Place => SIGNALS_AT.has(path);
