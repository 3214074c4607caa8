// A second ledger of the bow, kept from the journal's lines alone: what was moved, when, and by whose word. It shares no line
// of code with the program's own.

import type { KnobId } from '../../../src/content/types.ts';
import type { Fact, ShotAnswer } from '../../../src/machine/types.ts';

export interface Turned {
  readonly seq: number;
  readonly knob: KnobId;
  readonly why: 'advice' | 'put-back' | 'by hand';
  /** Signed, in the adjustment's unit; a later correction changes it. */
  delta: number;
  /** What was advised, signed. */
  readonly told: number;
}

export type Settings = Readonly<Partial<Record<KnobId, number>>>;

/** Finer than this nobody sets a bow: 0.8 mm, told of 1/32 in, is as told. */
const AS_TOLD = 1 / 512;
const DUST = 1e-7;

export class BowBook {
  readonly turned: Turned[] = [];
  /** The line at which a part was last changed. */
  private partsAt = 0;
  /** Good shots of each line that has any. */
  private readonly good = new Map<number, number>();

  read(fact: Fact): void {
    switch (fact.kind) {
      case 'answered':
        if (fact.answer.kind === 'moved') this.answered(fact);
        if (fact.answer.kind === 'shots') this.shot(fact.seq, fact.answer.shots);
        // What a dealer did to it is not known, nor what was changed because a figure failed.
        if (fact.step === 'released' || (fact.step === 'what-was-changed' && fact.answer.kind === 'choice' && !fact.answer.values.includes('nothing'))) this.partsAt = fact.seq;
        return;
      case 'corrected':
        if (fact.answer.kind === 'shots') this.shot(fact.of, fact.answer.shots);
        return this.corrected(fact);
      case 'moved':
        return this.put({ seq: fact.seq, knob: fact.knob, why: 'by hand', delta: fact.delta, told: fact.delta });
      case 'changed':
        if (fact.what !== 'sight' && fact.what !== 'place') this.partsAt = fact.seq;
        return;
      default:
    }
  }

  private shot(seq: number, shots: readonly ShotAnswer[]): void {
    this.good.set(seq, shots.filter((shot) => !('missed' in shot) && shot.called !== 'bad').length);
  }

  /** The line that last changed the bow in any way. */
  get changedAt(): number {
    return Math.max(this.partsAt, this.last()?.seq ?? 0);
  }

  /** Good shots since the bow was last changed. */
  get shotsHere(): number {
    const since = this.changedAt;
    return [...this.good].reduce((sum, [seq, count]) => (seq > since ? sum + count : sum), 0);
  }

  private answered(fact: Extract<Fact, { kind: 'answered' }>): void {
    const told = fact.decided.loop?.told;
    if (told === undefined || fact.answer.kind !== 'moved') return;
    const delta = amountOf(fact.answer.moved, told.delta);
    this.put({ seq: fact.seq, knob: told.knob, why: told.kind === 'put-back' ? 'put-back' : 'advice', delta, told: told.delta });
  }

  // The bow is where it is: only what is known of it changes.
  private corrected({ of, answer }: Extract<Fact, { kind: 'corrected' }>): void {
    const turn = this.turned.find((one) => one.seq === of);
    if (turn !== undefined && answer.kind === 'moved') turn.delta = amountOf(answer.moved, turn.told);
  }

  private put(turn: Turned): void {
    this.turned.push(turn);
  }

  /** Every adjustment that was ever touched, against where it began. */
  settings(): Settings {
    return sum(this.turned);
  }

  settingsBefore(seq: number): Settings {
    return sum(this.turned.filter((turn) => turn.seq < seq));
  }

  /** Everywhere that this adjustment has stood, the beginning first. */
  stood(knob: KnobId): readonly number[] {
    const places = [0];
    for (const turn of this.turned) if (turn.knob === knob) places.push((places.at(-1) ?? 0) + turn.delta);
    return places;
  }

  last(knob?: KnobId): Turned | undefined {
    return this.turned.findLast((turn) => turn.delta !== 0 && (knob === undefined || turn.knob === knob));
  }
}

function amountOf(moved: string | { readonly value: number }, told: number): number {
  if (moved === 'as told') return told;
  if (typeof moved === 'string') return 0;
  const delta = told < 0 ? -moved.value : moved.value;
  return Math.abs(delta - told) < AS_TOLD ? told : delta;
}

function sum(turned: readonly Turned[]): Settings {
  const at: Partial<Record<KnobId, number>> = {};
  for (const { knob, delta } of turned) if (delta !== 0) at[knob] = (at[knob] ?? 0) + delta;
  return at;
}

export const sameSetting = (a: number, b: number): boolean => Math.abs(a - b) < DUST;

export function sameSettings(a: Settings, b: Settings): boolean {
  const knobs = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<KnobId>;
  return [...knobs].every((knob) => sameSetting(a[knob] ?? 0, b[knob] ?? 0));
}
