// A decision under construction: what has been decided about one fact so far, and the state that it would lead to.

import type { Content, Trigger } from '../content/types.ts';
import { routeSoFar } from './agenda.ts';
import { evolve, type State } from './state.ts';
import type { Decided, Fact, Finding, LoopPatch, MachineEvent } from './types.ts';
import { placeOf } from './walk.ts';
import { phrase } from './words.ts';

type WithoutDecision<F> = F extends Fact ? Omit<F, 'decided'> : never;
/** A fact before anything was decided about it. */
export type FactDraft = WithoutDecision<Fact>;

export interface Patch {
  readonly events?: readonly MachineEvent[];
  readonly say?: readonly string[];
  readonly findings?: readonly Finding[];
  readonly advice?: Decided['advice'];
  readonly due?: readonly string[];
  readonly loop?: LoopPatch;
}

export class Deciding {
  private decided: Decided = { events: [], say: [], findings: [] };
  private cache: State | null = null;

  constructor(
    readonly content: Content,
    /** The state before this fact. */
    readonly before: State,
    readonly draft: FactDraft,
  ) {}

  /** The state that the decision so far leads to. */
  get state(): State {
    this.cache ??= evolve(this.content, this.before, this.fact());
    return this.cache;
  }

  get place(): string {
    return placeOf(this.state.walk);
  }

  fact(): Fact {
    return { ...this.draft, decided: this.decided } as Fact;
  }

  add(patch: Patch): void {
    const d = this.decided;
    const advice = patch.advice !== undefined ? { advice: patch.advice } : d.advice !== undefined ? { advice: d.advice } : {};
    const due = [...(d.due ?? []), ...(patch.due ?? [])];
    const loop = { ...d.loop, ...patch.loop };
    this.decided = {
      events: [...d.events, ...(patch.events ?? [])],
      // What two turns of one decision have to say is said once.
      say: [...new Set([...d.say, ...(patch.say ?? [])])],
      findings: [...d.findings, ...(patch.findings ?? [])],
      ...advice,
      ...(due.length > 0 ? { due } : {}),
      ...(Object.keys(loop).length > 0 ? { loop } : {}),
    };
    this.cache = null;
  }

  say(id: string, holes: Readonly<Record<string, string | number>> = {}): void {
    this.add({ say: [phrase(this.content, id, holes)] });
  }

  /** Moves the machine; true, so that a turn can end with it. */
  event(event: MachineEvent): true {
    this.add({ events: [event] });
    return true;
  }

  /** Asks again what this kind of happening asks again (content's table); but shots that the walk has yet to come to are made in their place. */
  trigger(trigger: Trigger): void {
    const { steps, rechecks } = this.content;
    const cameTo = [...routeSoFar(this.content, this.state), ...Object.keys(this.state.answers)];
    this.add({ due: rechecks[trigger].filter((id) => steps[id]?.pause !== 'shoot' || steps[id].onDemand || cameTo.includes(id)) });
  }
}
