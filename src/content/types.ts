// The shape of the content as the rest of the program sees it, after reading and checking.
// Content holds words, order and limits as data; it never holds arithmetic or expressions.

import { oneOf } from '../maths/closed.ts';
import type { Unit } from '../maths/units.ts';

export const KNOBS = [
  'rest-height', 'rest-side', 'nock-height', 'yoke', 'cam-spacers',
  'cam-screw', 'cam-sync', 'limb-bolts', 'point-weight', 'drop-cord',
] as const;
export type KnobId = (typeof KNOBS)[number];
export const isKnob = oneOf(KNOBS);

/** What stands in a table by adjustment, in the table's own order. */
export const knobEntries = <V>(table: Readonly<Partial<Record<KnobId, V>>>): readonly (readonly [KnobId, V])[] =>
  Object.entries(table).flatMap(([id, value]) => (isKnob(id) ? [[id, value] as const] : []));

export const AXES = ['height', 'side'] as const;
export type Axis = (typeof AXES)[number];

export const DIRECTIONS = ['left', 'right', 'up', 'down', 'add', 'remove', 'out', 'in'] as const;
export type Direction = (typeof DIRECTIONS)[number];

/** Named conditions, the only ones that content may use. The machine implements each by this name. */
export const GUARDS = [
  'release-aid', 'fingers', 'growing', 'adult',
  'new-bow', 'known-bow',
  'right-handed', 'left-handed',
  'bolts-turned-out', 'arrow-set-aside', 'mass-not-weighed', 'mass-added-up', 'mass-is-close', 'peak-not-measured',
  'drop-away', 'cable-driven', 'limb-driven', 'blade', 'containment', 'prong',
  'yoke-bow', 'two-cams', 'spacer-bow', 'screw-bow',
  'press-trained', 'press-at-shop', 'no-press',
  'was-adjusted', 'nock-was-turned', 'needs-shop',
  'arrows-by-paper', 'all-arrows',
  'figures-wanted', 'length-not-told', 'speed-told', 'second-arrow-told', 'papers-tell-speed', 'spine-not-printed',
  'paper', 'no-paper', 'not-at-broadheads', 'unfletched', 'plumb-line', 'hunts', 'launch-settled', 'shoots-broadheads', 'shoots-groups',
] as const;
export type GuardName = (typeof GUARDS)[number];

/** When something happened, which steps are asked again. The names are closed; the lists are data. */
export const TRIGGERS = [
  'start', 'long-break', 'heat-or-fall',
  'place-changed', 'distance-changed', 'broadheads-distance', 'broadheads-long-break', 'broadheads-again', 'broadheads-away',
  'limb-bolts', 'arrow-changed', 'yoke', 'cam-spacers', 'cam-sync', 'cam-screw', 'nock-height', 'rest-height', 'rest-side', 'drop-cord',
  'clash', 'forty-shots', 'string-replaced', 'part-replaced', 'rest-replaced', 'release-replaced', 'sight-moved',
  'released-by-dealer', 'someone-hurt', 'something-moved', 'unadvised-move',
] as const;
export type Trigger = (typeof TRIGGERS)[number];

/** What the body and the bow do while this is answered. Order in the procedure never lets a later one come before an earlier. */
export type Pause = 'talk' | 'undrawn' | 'draw' | 'shoot';

/** What a failed gate means. `note` goes on, recorded. */
export type GateFail = 'shop' | 'fix' | 'look-up' | 'note';

export interface Check {
  readonly id: string;
  readonly label: string;
  /** What to look at and how, for the single question and for `?`. */
  readonly how: string;
  readonly fail: GateFail;
  /** Said when it fails or is not known: what to do now. */
  readonly thenDo: string;
  readonly when: readonly GuardName[];
  readonly source: readonly string[];
}

interface StepBase {
  readonly id: string;
  /** The fact it asks for: `ask.about`. A gate's is `gate:ID`. */
  readonly about: string;
  readonly pause: Pause;
  readonly when: readonly GuardName[];
  /** Asked only when the ladder or another step calls for it by id. */
  readonly onDemand: boolean;
  /** Asked in every tune, also of a bow that was tuned here before. */
  readonly everyTune: boolean;
  /** Correcting it changes the route (chosen), a number in a judgement (measured), or a gate. */
  readonly effect: 'chosen' | 'measured' | 'gate';
  readonly short: string;
  readonly text: readonly string[];
  readonly why: readonly string[];
  readonly cautions: readonly string[];
  readonly unknown: boolean;
  readonly noDefault: boolean;
  readonly source: readonly string[];
}

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
  /** Where the step is a gate: what this answer means for it. */
  readonly gate?: 'pass' | GateFail;
  /** Said when it is picked. */
  readonly say?: string;
  /** Offered only where all of these hold. */
  readonly when?: readonly GuardName[];
}

export type Step =
  | (StepBase & { readonly kind: 'choice'; readonly options: readonly ChoiceOption[]; readonly thenDo: string; readonly unknownFail: GateFail })
  | (StepBase & {
      readonly kind: 'number'; readonly unit: Unit; readonly min: number; readonly max: number;
      /** Where the number is a gate with a fixed limit. Limits that depend on other answers are held by the machine. */
      readonly pass?: { readonly min?: number; readonly max?: number };
      readonly fail: GateFail; readonly thenDo: string;
    })
  | (StepBase & { readonly kind: 'confirm' })
  | (StepBase & { readonly kind: 'text' })
  /** At most nine checks, answered at once when all are true, or by picking those that are not or are not known. */
  | (StepBase & { readonly kind: 'chunk'; readonly mode: 'read-do' | 'do-confirm'; readonly checks: readonly Check[] });

export interface Block { readonly id: string; readonly title: string; readonly steps: readonly string[] }
export interface ChapterPlan { readonly id: string; readonly title: string; readonly intro: readonly string[]; readonly blocks: readonly Block[] }

export interface Knob {
  readonly id: KnobId;
  /** Plain name on screen ("the rest, up and down"). */
  readonly name: string;
  readonly axis: Axis | 'none';
  readonly unit: Unit;
  /** The word for + and for −, as the archer sees it. */
  readonly plus: Direction;
  readonly minus: Direction;
  /** Headline words, by direction ("REST UP"). */
  readonly words: { readonly plus: string; readonly minus: string };
  /** How to do it by hand, in full. */
  readonly how: readonly string[];
  /** The book's change of tear (in) for a change of `per` units; null where the trade does not know. */
  readonly book: { readonly change: number; readonly per: number } | null;
  /** Where some bows differ: the first row that fits is taken, `book` where none does. */
  readonly books: readonly BookRow[];
  /** Where the book is null: how large (in of tear per unit, one standard deviation) a response may plausibly be. */
  readonly plausible: number;
  /** Chance that a bow answers to the other side than the book says, and that it does not answer at all. */
  readonly wrongSign: number;
  readonly dead: number;
  readonly first: number;
  /** A larger first move when the tear is further off than `over` inches. */
  readonly firstWhenFar: { readonly over: number; readonly step: number } | null;
  readonly later: number;
  readonly soft: number;
  readonly hard: number;
  readonly smallest: number;
  /** Limits count from where it began, or from the maker's figure. */
  readonly from: 'start' | 'maker';
  readonly press: boolean;
  readonly cautions: readonly string[];
  /** Steps that must be answered before it is first advised. */
  readonly needs: readonly string[];
  /** What fires after it moved. */
  readonly trigger: Trigger;
  /** The adjustment that is equally right, offered when the archer says "not now". */
  readonly alternative: KnobId | null;
  readonly source: readonly string[];
}

/** What the book says of an adjustment on some bows only: of these cams, with these rests. */
export interface BookRow {
  readonly cams: readonly string[] | 'any';
  readonly rest: readonly string[] | 'any';
  /** Change of tear (in) for a change of `per` units. */
  readonly change: number;
  readonly per: number;
  readonly wrongSign: number;
  readonly dead: number;
  readonly source: readonly string[];
}

/** Which adjustments, in which order, for which hardware. The first rule that fits is taken. */
export interface LadderRule {
  readonly axis: Axis;
  readonly cams: readonly string[] | 'any';
  readonly press: readonly string[] | 'any';
  readonly rungs: readonly { readonly knob: KnobId; readonly soft?: number; readonly trial?: boolean }[];
  /** What the note for the shop asks for when the rungs are used up. */
  readonly shop: string;
  readonly source: readonly string[];
}

export const INSPECTIONS = [
  'scatter', 'gross', 'very-gross', 'missed', 'not-returned', 'broadhead-scatter', 'plumb-bend', 'many-odd', 'references',
] as const;
export const isInspection = oneOf(INSPECTIONS);

/** Things to look at when no adjustment is right: scatter, a gross tear, shots that leave no hole, a return that did not. */
export interface Inspection {
  readonly id: (typeof INSPECTIONS)[number];
  readonly say: readonly string[];
  readonly options: readonly { readonly value: string; readonly label: string; readonly cause: string | null; readonly say: string }[];
  readonly source: readonly string[];
}

export interface Content {
  readonly version: string;
  /** A tear that is called tuned, inches on each axis. */
  readonly tolerance: Readonly<Record<Axis, { readonly low: number; readonly high: number }>>;
  readonly chapters: readonly ChapterPlan[];
  readonly steps: Readonly<Record<string, Step>>;
  readonly knobs: Readonly<Record<KnobId, Knob>>;
  readonly ladders: readonly LadderRule[];
  readonly inspections: Readonly<Record<Inspection['id'], Inspection>>;
  readonly rechecks: Readonly<Record<Trigger, readonly string[]>>;
  readonly cautions: Readonly<Record<string, string>>;
  readonly glossary: Readonly<Record<string, string>>;
  readonly sources: Readonly<Record<string, string>>;
  /** Sentences of the coach by id, with {holes}; the loop picks, content words. */
  readonly phrases: Readonly<Record<string, string>>;
}
