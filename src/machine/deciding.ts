// A decision under construction: what has been decided about one fact so far, and the state that it would lead to.

import type { Content, Trigger } from '../content/types.ts';
import { routeSoFar } from './agenda.ts';
import { figuresGoneWith } from './figures/list.ts';
import { adoptDecision, record, RECORDED_WITH, type State } from './state.ts';
import { SIGNALS_AT, type EventAt, type Part, type Phase, type Place, type PlaceIn, type PlaceOf, type PlaceWith } from './places.ts';
import type { Signal } from './signals.ts';
import type { Decided, Fact, Finding, LoopPatch, MachineEvent } from './types.ts';
import { partOfPlace, phaseOfPlace, placeOf } from './walk.ts';
import { phrase } from './words.ts';

type WithoutDecision<F> = F extends Fact ? Omit<F, 'decided'> : never;
/** A fact before anything was decided about it. */
export type FactDraft = WithoutDecision<Fact>;

export interface Patch {
  readonly say?: readonly string[];
  readonly findings?: readonly Finding[];
  readonly advice?: Decided['advice'];
  readonly due?: readonly string[];
  readonly loop?: LoopPatch;
}

/**
 * `P` is where the walk is known to stand: what can happen there is all that `event` takes. It is learned by asking (`isAt`,
 * `isIn`, `inPhase`, `may`) and is out of date once an event was raised: whoever raises another one asks again.
 */
export class Deciding<P extends Place = Place> {
  private decided: Decided = { events: [], say: [], findings: [] };
  // Worked out when asked for, and kept until a patch changes them: many patches, and few that change what is recorded.
  private made: Fact | null = null;
  private recorded: State | null = null;
  private cache: State | null = null;

  constructor(
    readonly content: Content,
    /** The state before this fact. */
    readonly before: State,
    readonly draft: FactDraft,
  ) {}

  /** The state that the decision so far leads to. */
  get state(): State {
    this.recorded ??= record(this.content, this.before, this.fact());
    this.cache ??= adoptDecision(this.recorded, this.fact());
    return this.cache;
  }

  get place(): P {
    // oxlint-disable-next-line typescript/consistent-type-assertions -- nobody has a `Deciding<P>` without having asked where it stands
    return placeOf(this.state.walk) as P;
  }

  isAt<Q extends P>(...places: readonly Q[]): this is Deciding<Q> {
    return places.some((place) => place === this.place);
  }

  /** In one of these chapters. */
  isIn<C extends Part>(...parts: readonly C[]): this is Deciding<Extract<P, PlaceIn<C>>> {
    return parts.some((part) => part === partOfPlace(this.place));
  }

  /** Shooting, advising, ..., in whatever chapter. */
  inPhase<F extends Phase>(...phases: readonly F[]): this is Deciding<Extract<P, PlaceOf<F>>> {
    return phases.some((phase) => phase === phaseOfPlace(this.place));
  }

  /** Where this can happen. */
  may<S extends Signal>(signal: S): this is Deciding<Extract<P, PlaceWith<S>>> {
    return SIGNALS_AT.get(this.place)?.includes(signal) === true;
  }

  /** The same as a demand. Throws RangeError where this cannot happen: then an answer was taken where nobody asked for it. */
  where<S extends Signal>(signal: S): Deciding<Extract<P, PlaceWith<S>>> {
    if (this.may(signal)) return this;
    throw new RangeError(`"${signal}" cannot happen at ${this.place}; look at what was asked there`);
  }

  fact(): Fact {
    // oxlint-disable-next-line typescript/consistent-type-assertions -- a draft with its decision is one of the facts again
    this.made ??= { ...this.draft, decided: this.decided } as Fact;
    return this.made;
  }

  add(patch: Patch): void {
    this.adopt(patch, []);
  }

  private adopt(patch: Patch, events: readonly MachineEvent[]): void {
    const d = this.decided;
    const advice = patch.advice !== undefined ? { advice: patch.advice } : d.advice !== undefined ? { advice: d.advice } : {};
    const due = [...(d.due ?? []), ...(patch.due ?? [])];
    const suggest = [...new Set([...(d.loop?.suggest ?? []), ...(patch.loop?.suggest ?? [])])];
    const loop = { ...d.loop, ...patch.loop, ...(suggest.length > 0 ? { suggest } : {}) };
    this.decided = {
      events: [...d.events, ...events],
      // What two turns of one decision have to say is said once.
      say: [...new Set([...d.say, ...(patch.say ?? [])])],
      findings: [...d.findings, ...(patch.findings ?? [])],
      ...advice,
      ...(due.length > 0 ? { due } : {}),
      ...(Object.keys(loop).length > 0 ? { loop } : {}),
    };
    this.made = null;
    this.cache = null;
    const { loop: order } = patch;
    if (order !== undefined && RECORDED_WITH.some((part) => part in order)) this.recorded = null;
  }

  say(id: string, holes: Readonly<Record<string, string | number>> = {}): void {
    this.add({ say: [phrase(this.content, id, holes)] });
  }

  /** Moves the machine, and adds what goes with that; true, so that a turn can end with it. */
  event(event: EventAt<P>, patch: Patch = {}): true {
    this.adopt(patch, [event]);
    return true;
  }

  /**
   * Asks again what this kind of happening asks again (content's table), but for some steps; what draws or shoots and was not
   * come to yet is asked in its place, after the first slow draw. Figures that no longer hold are no longer told.
   */
  trigger(trigger: Trigger, without: readonly string[] = []): void {
    const { steps, rechecks } = this.content;
    const { answers, due } = this.state;
    // Until it is told which bow it is, a known one may yet bring its old answer along.
    const anyBow = due.includes('bow') || due.includes('which-bow');
    const cameTo = [...routeSoFar(this.content, this.state), ...Object.keys(answers)];
    const inItsPlace = (id: string): boolean => {
      const step = steps[id];
      if (step === undefined || step.onDemand) return false;
      return step.pause === 'draw' ? answers[id] === undefined && !anyBow : step.pause === 'shoot' && !cameTo.includes(id);
    };
    const gone = figuresGoneWith(trigger).filter((id) => answers[id] !== undefined);
    this.add({ due: rechecks[trigger].filter((id) => !without.includes(id) && !inItsPlace(id)), ...(gone.length > 0 ? { loop: { suggest: gone } } : {}) });
  }
}
