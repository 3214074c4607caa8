// Every event of the machine by one name, and the shape of the table that is written in these names (walk-table.ts).

import type { MachineEvent, Verdict } from './types.ts';

/** An event by one name, as the table is written: `settled`, `verdict: out`, `chosen: accept`, `return: paper`. */
export type Signal = NameOf<MachineEvent>;
type NameOf<E> =
  E extends { readonly type: 'verdict'; readonly verdict: infer V extends string } ? `verdict: ${V}`
  : E extends { readonly type: 'chosen'; readonly choice: infer C extends string } ? `chosen: ${C}`
  : E extends { readonly type: 'return'; readonly to: infer T extends string } ? `return: ${T}`
  : E extends { readonly type: infer T extends string } ? T : never;

/** The event behind a name. */
export type EventNamed<S extends Signal> =
  S extends `verdict: ${infer V extends Verdict}` ? { readonly type: 'verdict'; readonly verdict: V }
  : S extends `chosen: ${infer C extends ChoiceMade}` ? { readonly type: 'chosen'; readonly choice: C }
  : S extends `return: ${infer T extends ChapterBack}` ? { readonly type: 'return'; readonly to: T }
  : S extends MachineEvent['type'] ? { readonly type: S } : never;
type ChoiceMade = Extract<MachineEvent, { readonly type: 'chosen' }>['choice'];
type ChapterBack = Extract<MachineEvent, { readonly type: 'return' }>['to'];

export function signalOf(event: MachineEvent): Signal {
  switch (event.type) {
    case 'verdict': return `verdict: ${event.verdict}`;
    case 'chosen': return `chosen: ${event.choice}`;
    case 'return': return `return: ${event.to}`;
    case 'settled': case 'skipped': case 'farther': case 'due': case 'clear': case 'stop': case 'released': case 'moved': case 'looked': case 'put back':
      return event.type;
  }
}

/** One place of the table, or a group of places; what may happen in a group may happen at each place in it. */
export interface WalkNode {
  readonly id?: string;
  readonly initial?: string;
  readonly on?: Readonly<Partial<Record<Signal, string>>>;
  readonly states?: Readonly<Record<string, WalkNode>>;
  /** Not a place, but the way back to where it was interrupted. */
  readonly type?: 'history';
  readonly history?: 'deep';
}
