// How the book of common practice is written: short rows, read by harm/. Lists are words with a blank between them;
// `name@condition+condition` is asked only where these hold. Content may be stricter than a row, never looser.

import type { GateFail, KnobId, Pause, Step, Trigger } from '../../types.ts';
import type { Unit } from '../../../maths/units.ts';

/** What an answer to a choice means, or what a failed check of a chunk means: the names of those that mean it. */
export interface Outcomes {
  readonly shop?: string;
  readonly fix?: string;
  readonly lookUp?: string;
  readonly note?: string;
  readonly pass?: string;
  /** Of a choice that is no gate: answers that must be there. */
  readonly route?: string;
}

export interface StepRow extends Outcomes {
  readonly as: Step['kind'];
  /** `gate` where it is not said. */
  readonly effect?: Step['effect'];
  readonly pause: Pause;
  /** Of `everyTune noDefault unknown`, those that must stay on; `onDemand`, where it need not be asked of everybody. */
  readonly flags?: string;
  /** It stands in no block: the machine or a list of re-checks asks it. */
  readonly anywhere?: true;
  /** The only conditions that it may have: any other would leave somebody out. */
  readonly when?: string;
  /** Conditions that it must have: they keep somebody away. */
  readonly only?: string;
  /** The name by which the machine reads it, where it is not the step's own. */
  readonly about?: string;
  readonly cautions?: string;
  /** Unit, and the lowest and highest figure that can be entered: what cannot be entered cannot fail. */
  readonly range?: readonly [Unit, number, number];
  /** The pass of a number: it may be narrower. */
  readonly least?: number;
  readonly most?: number;
  /** What a number outside its pass means; of a choice, what "not known" means. */
  readonly fails?: GateFail;
}

/** By chapter, by step. */
export type StepRows = Readonly<Record<string, Readonly<Record<string, StepRow>>>>;

export interface KnobRow {
  readonly press: boolean;
  readonly from: 'start' | 'maker';
  readonly trigger: Trigger;
  readonly cautions?: string;
  readonly needs?: string;
  /** The only other adjustment that may be offered in its place. */
  readonly instead?: KnobId;
  /** The answers to "cams" for which a ladder may name it; `any`, or none where it is no rung at all. */
  readonly cams: string;
  /** Adjustments that come before it where a ladder names both. */
  readonly after?: string;
  /** A closer limit where the other one stands on the same ladder. */
  readonly beside?: Readonly<Partial<Record<KnobId, number>>>;
  /** What telling how to move it must say. */
  readonly says: readonly RegExp[];
}

/** A class of work, told by its words, and the caution that it must have. */
export interface HandlingRow {
  readonly what: string;
  readonly when: RegExp;
  /** One of these is enough. */
  readonly cautions: readonly string[];
  /** Words beside it that warn as well. */
  readonly said?: RegExp;
  /** Only at these pauses. */
  readonly pauses?: readonly Pause[];
}

export interface Book {
  readonly steps: readonly StepRows[];
  /** Chapters in their order. */
  readonly chapters: string;
  /** The first of two comes before the second, in the order of the procedure. */
  readonly before: readonly (readonly [string, string])[];
  readonly again: Readonly<Record<Trigger, string>>;
  readonly knobs: Readonly<Record<KnobId, KnobRow>>;
  readonly cautions: Readonly<Record<string, readonly RegExp[]>>;
  /** By step: what its words must say, wherever in it they stand. */
  readonly says: Readonly<Record<string, readonly RegExp[]>>;
  /** By phrase: what a sentence of the coach must say. */
  readonly phrases: Readonly<Record<string, readonly RegExp[]>>;
  readonly handling: readonly HandlingRow[];
  /** By inspection: what may be found, with the cause that the walk then knows (`_` for a blank). */
  readonly found: Readonly<Record<string, string>>;
  /** By what was found: what is then said. */
  readonly foundSays: Readonly<Record<string, RegExp>>;
  /** What the glossary explains wherever it is used. */
  readonly tradeWords: readonly string[];
}
