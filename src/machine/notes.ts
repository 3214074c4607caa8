// What the measuring loop keeps between shots besides the facts: written by decide, adopted by replay.

import type { Axis, Inspection, KnobId } from '../content/types.ts';
import { feet, yards, type Feet, type Yards } from '../maths/units.ts';

/** What one unit of an adjustment does to the tail, inches of tear, and how well that is known (one standard deviation). */
export interface Gain { readonly mean: number; readonly sd: number }

export type AxisResult = 'tuned' | 'cannot' | 'accepted' | 'inconsistent';

/** Why the walk is stopped, and the questions that lead out, in order. */
export interface Stop {
  readonly cause: 'gate' | 'word';
  readonly ask: readonly string[];
  readonly from: string;
  /** The line whose answer raised it: only that answer, corrected, takes it back. Absent for a word, and in older journals. */
  readonly line?: number;
  /** An earlier stop that is not cleared yet. */
  readonly under?: Stop;
}

/** What a set of shots is for. */
export type Purpose = 'judge' | 'prove' | 'resume' | 'tightened';

/** What is being shot, and so how a set of shots is read. */
export type SetKind = 'paper' | 'unfletched' | 'plumb' | 'broadheads' | 'arrows';

/** What was shot, as far as it matters for the reading. */
export interface ShotTag {
  readonly shaft: 'fletched' | 'unfletched';
  readonly head: 'field' | 'broadhead';
  /** The arrow's number; null for any tuning arrow. */
  readonly arrow: string | null;
  readonly nockTurn: number;
  /** Feet from the bow hand, where one set is shot from several distances. */
  readonly distance?: Feet;
  /** A reference shot: any tuning arrow that watches the archer, not an arrow under test. */
  readonly reference?: true;
}

export type ArrowClass = 'first choice' | 'practice' | 'repair' | 'never again';

/** One arrow that stood out, and what was done about it. */
export interface ArrowCase {
  /** Whether its nock was replaced, and from which line on its shots are with the new one. */
  readonly swapped: number | null;
  /** Turns tried, in order; 0 is as found. */
  readonly tried: readonly number[];
  /** The turn that its nock stands at now. */
  readonly turn: number;
  /** Changes that the archer did not want, or could not make. */
  readonly declined: readonly ('nock-turn' | 'nock-swap')[];
}

/** The nocks of the whole set, turned together so that all arrows err the same way. */
export interface TurnedTogether {
  /** Offered; left as they are; turned, and being shot anew; kept so; or turned back. */
  readonly how: 'offered' | 'left' | 'turned' | 'kept' | 'back';
  /** Arrows whose nocks were to be turned and do not turn. */
  readonly stay: readonly string[];
  /** Vanes once round, and how the nocks that were turned stood before. */
  readonly vanes: number;
  readonly from: Readonly<Record<string, number>>;
  /** Sets (by id) that were shot before they were turned: after the first of these, up to the second. */
  readonly before: readonly [number, number];
  /** Turned back: sets up to this one were shot while they were turned. */
  readonly until: number;
}

export interface ArrowNotes {
  /** Arrows that the shots show to be odd and that are not dealt with yet, first one first. */
  readonly odd: readonly string[];
  readonly cases: Readonly<Record<string, ArrowCase>>;
  readonly classes: Readonly<Record<string, { readonly class: ArrowClass; readonly why: string }>>;
  /** More than a third stood out: how often the bow or the batch was looked at. */
  readonly manyOdd: number;
  readonly done: boolean;
  /** The arrows are numbered 1 to this; 0 before they were counted for this chapter. */
  readonly inSet: number;
  /** Sets of arrows up to this one (by id) no longer count. */
  readonly after: number;
  /** The stage of the shooting that was last told to the archer. */
  readonly told: string;
  /** How often the shots wandered. */
  readonly wandered: number;
  /** Absent until it is offered, and in older journals. */
  readonly together?: TurnedTogether;
}

export interface LoopNotes {
  /** What is being shot now. */
  readonly of: SetKind;
  /** Broadheads against field points: how each axis ended, and the farthest distance at which both agreed. */
  readonly broadAxis: Partial<Record<Axis, { readonly result: AxisResult; readonly chance: number }>>;
  readonly broadReached: Yards;
  /** The heads change shafts at half-time: at which line of the journal that was done last. */
  readonly headsSwappedAt: number;
  readonly arrows: ArrowNotes;
  /** What an earlier tune of this bow handed over no longer holds. */
  readonly forgetCarried: boolean;
  /** Bow hand to paper or target. */
  readonly distance: Feet;
  readonly epoch: number;
  /** What the present set is for. */
  readonly purpose: Purpose;
  /** Shots wanted in the present set before it is judged. */
  readonly wanted: number;
  /** Adjustments that are done with on this bow, and how they ended. */
  readonly ended: Partial<Record<KnobId, 'no response' | 'limit'>>;
  /** How often a move of this knob made it worse: twice means that it is at its best. */
  readonly worse: Partial<Record<KnobId, number>>;
  readonly learned: Partial<Record<KnobId, Gain>>;
  /** What an adjustment does on the axis that it is not made for, inches of tear per unit; and of which that was told in this chapter. */
  readonly besides: Partial<Record<KnobId, Gain>>;
  readonly besidesTold: readonly KnobId[];
  readonly axis: Partial<Record<Axis, { readonly result: AxisResult; readonly chance: number }>>;
  /** Which inspection is open, and how many were made in this chapter. */
  readonly inspection: Inspection['id'] | null;
  readonly inspections: number;
  readonly grossSeen: boolean;
  /** Sets (by id) that scattered: neither a tear nor a usual spread may be read from them. */
  readonly scattered: readonly number[];
  /** Those in which nothing was found: then this is how the archer shoots, and they count. What was said by them alone stands no more. */
  readonly strayed: readonly number[];
  /** Moves (by seq) that are still to be undone, newest first. */
  readonly undo: readonly number[];
  /** Those of them that the standing advice undoes at once. */
  readonly undoing: readonly number[];
  /** The line at which the archer wanted the bow back at an earlier point, while that is under way; else 0. */
  readonly bringing: number;
  /** An earlier chapter that the walk goes back to as soon as no question is open. */
  readonly backTo: 'paper' | 'broadheads' | null;
  /** Go back to shooting as soon as the walk goes on: what was being advised no longer stands. */
  readonly reshoot: boolean;
  readonly offered: 'accept' | 'finish step' | null;
  readonly offeredFor: Partial<Record<Axis, boolean>>;
  readonly declined: readonly KnobId[];
  /** The seq of the last line at which work on cables was done, and at which the height was last settled. */
  readonly cablesAt: number;
  readonly heightAt: number;
  /** How often this chapter was gone through again because one axis was moved after the other had been judged. */
  readonly rounds: number;
  readonly shop: readonly string[];
  readonly cautionedShots: number;
  readonly resumeSet: boolean;
  /** Gains and spread of earlier sets no longer hold (a string, rest or arrow was replaced). */
  readonly forgetBefore: number;
  readonly secondDistance: 'confirmed' | 'not confirmed' | null;
  readonly done: boolean;
}

/** Broadheads have not agreed anywhere yet. */
export const NOT_REACHED = yards(0);

const NO_ARROWS: ArrowNotes = {
  odd: [], cases: {}, classes: {}, manyOdd: 0, done: false, inSet: 0, after: 0, told: '', wandered: 0,
};

/** Arrows were replaced: how nocks stood, and what was said of single arrows, was said of others. Once they are done with, the record keeps it. */
export const otherArrows = ({ notes: { arrows } }: { readonly notes: LoopNotes }): Partial<LoopNotes> => (arrows.done ? {} : { arrows: NO_ARROWS });

export const NO_NOTES: LoopNotes = {
  of: 'paper', broadAxis: {}, broadReached: NOT_REACHED, headsSwappedAt: 0, arrows: NO_ARROWS, forgetCarried: false,
  distance: feet(7), epoch: 1, purpose: 'judge', wanted: 3, ended: {}, worse: {}, learned: {}, besides: {}, besidesTold: [], axis: {},
  inspection: null, inspections: 0, grossSeen: false, strayed: [], scattered: [], undo: [], undoing: [], bringing: 0, backTo: null, reshoot: false, offered: null, offeredFor: {},
  declined: [], cablesAt: 0, heightAt: 0, rounds: 0, shop: [], cautionedShots: 0, resumeSet: false, forgetBefore: 0,
  secondDistance: null, done: false,
};

/** What a decision may change besides: notes to adopt, and orders for the fold itself. */
export interface LoopPatch extends Partial<LoopNotes> {
  /** Begin a new set at the settings that this fact leaves. */
  readonly newSet?: true;
  /** The move that was advised when "moved" was answered: its knob and signed amount. */
  readonly told?: { readonly knob: KnobId; readonly delta: number; readonly kind: 'adjust' | 'put-back' };
  /** What the shots of this very answer were shot with, one for each. */
  readonly tags?: readonly ShotTag[];
  /** What was done to the nock of one arrow when "moved" was answered; `by` counts vanes, or new nocks. */
  readonly arrowTold?: { readonly arrow: string; readonly knob: 'nock-turn' | 'nock-swap'; readonly by: number };
  readonly stop?: Stop | null;
  /** Answers that are no longer on the route: kept as suggestions only. */
  readonly suggest?: readonly string[];
  /** The walk goes back to just before this line, whose choice is taken back whole. */
  readonly rewindTo?: number;
  /** Earlier lines that do not fit this content. */
  readonly setAside?: { readonly from: number; readonly to: number };
}

const KEYS = new Set(Object.keys(NO_NOTES));

/** Adopts the notes of a patch; its orders (`told`, `stop`, `newSet`, ...) are for the fold. */
export function patchNotes(notes: LoopNotes, patch: LoopPatch | undefined): LoopNotes {
  if (patch === undefined) return notes;
  const known = Object.fromEntries(Object.entries(patch).filter(([key]) => KEYS.has(key)));
  // oxlint-disable-next-line typescript/consistent-type-assertions -- a patch without its orders, which are not among the keys
  return { ...notes, ...(known as Partial<LoopNotes>) };
}
