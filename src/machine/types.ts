// The words that every floor above shares: what happened (facts), what was decided, and what is shown (view).
// Axes: x right, y high, as the archer sees it looking at the target; a tear is tail minus point, in inches.

import type { ErrorCode } from '../errors.ts';
import type { Unit } from '../maths/units.ts';
import { KNOBS, type Axis, type Direction, type KnobId } from '../content/types.ts';
import type { AxisResult, Gain, LoopPatch } from './notes.ts';
import type { BowRecord, PracticeIntent, PracticeView } from './beside.ts';

export type { Axis, Direction, KnobId } from '../content/types.ts';
export type { AxisResult, Gain, LoopPatch } from './notes.ts';
export type { BowRecord, PracticeHole, PracticeView, RecordRow } from './beside.ts';

/** Steps the archer walks through, in order; `stopped` interrupts any of them. */
export const CHAPTERS = ['safety', 'baseline', 'warm-up', 'paper', 'broadheads', 'arrows', 'finish', 'record'] as const;
export type Chapter = (typeof CHAPTERS)[number];

export interface Tear { readonly x: number; readonly y: number }
export interface Quantity { readonly value: number; readonly unit: Unit }

// ---- answers -------------------------------------------------------------------------------------------------------

/** One shot at paper as reported. `called: 'bad'` was said before the hole was looked at; `missed` left no hole. */
export type ShotAnswer =
  | { readonly x: number; readonly y: number; readonly called?: 'good' | 'bad' }
  | { readonly missed: true };

/**
 * What really happened to a knob: as advised, another amount (signed by `direction`), not at all for now, "another equally
 * right adjustment, please", or not at all because it goes no further.
 */
export type MovedAnswer = 'as told' | 'not now' | 'another' | 'at its end' | Quantity;
export const isNotMoved = (moved: unknown): moved is Exclude<MovedAnswer, 'as told' | Quantity> => moved === 'not now' || moved === 'another' || moved === 'at its end';

/** An answer after parsing: canonical, in the unit of the ask. */
export type Answer =
  | { readonly kind: 'choice'; readonly values: readonly string[] }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'confirm'; readonly value: boolean }
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'shots'; readonly shots: readonly ShotAnswer[] }
  | { readonly kind: 'moved'; readonly moved: MovedAnswer }
  | { readonly kind: 'not known' };

/** An answer in force: with the line that gave it. */
export interface Answered { readonly answer: Answer; readonly seq: number; readonly time: string }

// ---- asks ----------------------------------------------------------------------------------------------------------

export interface Option { readonly value: string; readonly label: string; readonly pass?: true }

interface AskBase {
  /** What is asked, from the closed list that the schema prints: one name a fact. */
  readonly about: string;
  /** The content step (or loop step) that asks. */
  readonly step: string;
  /** The question in the fewest words, for who knows the work. */
  readonly short: string;
  /** The question in full, one paragraph an entry. */
  readonly text: readonly string[];
  /** Why it is asked, and the words in it (shown on `?`). */
  readonly why: readonly string[];
  /** Cautions that belong to this very step, always shown. */
  readonly caution: readonly string[];
  /** True where "not known" is an answer. */
  readonly unknown?: true;
  /** True where no key and no Enter may answer without a deliberate pick. */
  readonly noDefault?: true;
  /** An earlier answer that no longer counts, offered to be taken again. */
  readonly suggestion?: Answer;
  /** Set while an earlier answer is being corrected: the seq of that answer's line. */
  readonly correcting?: number;
  /** The bow is invented: the arrow is let go here, and hands need not do what the coach is told. */
  readonly practice?: true;
}

export interface ShotPlan {
  readonly distance: Quantity;
  readonly shaft: 'fletched' | 'unfletched';
  readonly head: 'field' | 'broadhead';
  /** Its number, or null for any tuning arrow. */
  readonly arrow: string | null;
  /** Vanes by which the nock was turned, 0 as found. */
  readonly nockTurn: number;
  readonly shots: { readonly taken: number; readonly wanted: number };
  readonly axis?: Axis;
}

export type Ask = AskBase &
  (
    | { readonly kind: 'choice'; readonly options: readonly Option[]; readonly many?: true }
    | {
        readonly kind: 'number'; readonly unit: Unit; readonly min: number; readonly max: number;
        /** Where the number is a gate: the range that passes it. Never preselected on a screen. */
        readonly pass?: { readonly min?: number; readonly max?: number };
      }
    | ({ readonly kind: 'tear' } & ShotPlan)
    | ({ readonly kind: 'impact' } & ShotPlan)
    | { readonly kind: 'amount'; readonly unit: Unit; readonly max: number }
    | { readonly kind: 'confirm' }
    | { readonly kind: 'text' }
  );

// ---- decisions -----------------------------------------------------------------------------------------------------

export type AdviceKind = 'adjust' | 'put-back' | 'inspect' | 'shop';

/** Changes of one arrow, not of the bow: its nock turned in the shaft by whole vanes, or replaced. */
export const ARROW_KNOBS = ['nock-turn', 'nock-swap'] as const;
export type ArrowKnob = (typeof ARROW_KNOBS)[number];

/** The adjustment of the bow that an advice is about; null where it is about an arrow, or about nothing to be moved. */
export const bowKnobOf = (advice: Advice | null): KnobId | null => KNOBS.find((id) => id === advice?.knob) ?? null;

/** One change on the bow or on one arrow, or none (`inspect`, `shop`): never two. */
export interface Advice {
  readonly kind: AdviceKind;
  readonly knob?: KnobId | ArrowKnob;
  /** Whose nock, where one arrow is changed. */
  readonly arrow?: string;
  readonly direction?: Direction;
  readonly amount?: Quantity;
  /** The knob's setting against the baseline after this change. */
  readonly to?: Quantity;
  readonly expect?: { readonly x: number; readonly y: number; readonly sdX: number; readonly sdY: number };
  /** True where the side is disputed or not yet learned on this bow. */
  readonly trial?: true;
  /** True where the move needs a bow press. */
  readonly press?: boolean;
  /** The headline: what to do, in the unit on the tool (also in turns or marks). */
  readonly what: string;
  readonly why: string;
  /** What would prove it wrong. */
  readonly wrongIf?: string;
  readonly undo?: string;
  readonly caution: readonly string[];
}

export type Finding =
  | { readonly kind: 'gate'; readonly gate: string; readonly result: 'passed' | 'failed' | 'unknown' | 'noted' }
  | { readonly kind: 'axis'; readonly axis: Axis; readonly chapter: Chapter; readonly result: AxisResult; readonly chance?: number }
  | { readonly kind: 'knob'; readonly knob: KnobId; readonly result: 'learned' | 'no response' | 'limit' }
  | { readonly kind: 'arrow'; readonly arrow: string; readonly class: 'first choice' | 'practice' | 'repair' | 'never again'; readonly why: string }
  | { readonly kind: 'cause'; readonly cause: 'contact' | 'grip' | 'face' | 'loose part' | 'one arrow' | 'tired archer' | 'other' };

// ---- what is shown -------------------------------------------------------------------------------------------------

export interface PaperPicture {
  readonly kind: 'paper';
  /** Tears of the set at the present setting, oldest first; `counted` is false for called-bad shots. */
  readonly shots: readonly (Tear & { readonly counted: boolean })[];
  /** Best estimate and its likely region (half-widths, inches), once there are two shots. */
  readonly mean?: Tear;
  readonly likely?: Tear;
}

/** Impacts of two groups, each from its own aiming dot: field points (a) and broadheads (b), or fletched and unfletched. */
export interface GroupsPicture {
  readonly kind: 'groups';
  readonly names: { readonly a: string; readonly b: string };
  readonly a: readonly (Tear & { readonly counted: boolean })[];
  readonly b: readonly (Tear & { readonly counted: boolean })[];
  /** Centres, once a group has a shot; and the margin of agreement, inches each way. */
  readonly means: { readonly a?: Tear; readonly b?: Tear };
  readonly margin?: number;
  /** Where the centre of b belongs, from that of a, where that is not beside it: blades brake, and land a little lower. */
  readonly aim?: Tear;
}

/** The arrows of a set side by side: where each one's tail goes, and which stands out. */
export interface ArrowsPicture {
  readonly kind: 'arrows';
  readonly typical: Tear | null;
  readonly arrows: readonly { readonly arrow: string; readonly mean: Tear; readonly shots: number; readonly standsOut: boolean }[];
}

/** Sideways impacts from a plumb line, by distance. */
export interface PlumbPicture {
  readonly kind: 'plumb';
  readonly points: readonly { readonly distance: Quantity; readonly x: number; readonly shots: number }[];
}

export type Picture = PaperPicture | GroupsPicture | ArrowsPicture | PlumbPicture;

/** One point that the bow was at: as found (seq 0), or after a change. Oldest first. */
export interface HistoryEntry {
  readonly seq: number;
  readonly time: string;
  readonly what: string;
  /** What the shots at this point showed. */
  readonly came?: string;
  /** The bow's settings at this point, against the baseline. */
  readonly bow: Ledger;
  /**
   * How to bring the bow back to this point: the line to send with "put back", and what is to be undone, newest first.
   * Null where the bow stands at this point already.
   */
  readonly back: { readonly to: number; readonly steps: readonly string[] } | null;
}

/** One answer of the tune, for the review: oldest first. */
export interface AnswerEntry {
  readonly seq: number;
  readonly question: string;
  readonly answer: string;
  /** May be opened and changed; otherwise why not. */
  readonly change: true | string;
}

export interface Where {
  readonly title: string;
  readonly part: string;
  readonly day: number;
  readonly shots: number;
}

export type Ledger = Partial<Record<KnobId, Quantity>>;

export interface View {
  readonly type: 'ask' | 'stop' | 'done';
  readonly seq: number;
  readonly chapter: Chapter | 'stopped';
  readonly step: string;
  readonly where: Where;
  /** What the coach says about the line just taken (already decided; never worked out anew on replay). */
  readonly say: readonly string[];
  readonly ask: Ask | null;
  readonly bow: Ledger;
  readonly advice: Advice | null;
  readonly findings: readonly Finding[];
  readonly picture?: Picture;
  readonly record?: BowRecord;
  readonly practice?: PracticeView;
  /** May the archer do this now, and if not, why not. Faces grey the key and show the reason. */
  readonly may: { readonly back: true | string; readonly putBack: true | string };
}

// ---- what comes in -------------------------------------------------------------------------------------------------

export type Intent =
  /** `hands`: of a practice bow alone, where it is said and not done. */
  | { readonly kind: 'answer'; readonly answer: unknown; readonly hands?: 'still' }
  | PracticeIntent
  /** Opens an earlier answer for correction: the last one (and again, the one before it), or the one of that line. */
  | { readonly kind: 'back'; readonly to?: number }
  | { readonly kind: 'keep' }
  | { readonly kind: 'putBack'; readonly to?: number }
  | { readonly kind: 'stop'; readonly words: string }
  | { readonly kind: 'note'; readonly note: string }
  /** Words that answer nothing: one of danger among them stops, others are refused and nothing is written. */
  | { readonly kind: 'say'; readonly words: string }
  | { readonly kind: 'moved'; readonly knob: KnobId; readonly direction: Direction; readonly amount: unknown }
  | { readonly kind: 'changed'; readonly what: Changed; readonly note?: string };

export const CHANGED = ['string', 'rest', 'arrow', 'release', 'loop', 'sight', 'fell', 'other', 'place'] as const;
export type Changed = (typeof CHANGED)[number];

// ---- facts: the journal's lines ------------------------------------------------------------------------------------

/** What the coach decided about a line when it was live. Replay adopts it and never decides again. */
export interface Decided {
  readonly events: readonly MachineEvent[];
  readonly say: readonly string[];
  readonly findings: readonly Finding[];
  /** Present where the advice changed: null clears it. */
  readonly advice?: Advice | null;
  /** Steps that are to be asked (again) before the walk goes on. */
  readonly due?: readonly string[];
  /** What the loop keeps from here on, and orders for the fold (notes.ts). */
  readonly loop?: LoopPatch;
}

interface FactBase {
  readonly seq: number;
  readonly time: string;
  /** On the first line that a sitting writes: the version of the journal from here on. Others are of the version before them. */
  readonly v?: 1;
  readonly decided: Decided;
}
export type Fact = FactBase &
  (
    | {
        readonly kind: 'begun'; readonly v: 1; readonly tune: string; readonly engine: string; readonly content: string;
        /** Bows tuned here before, to choose from; replay reads no other file. */
        readonly known: readonly Carried[];
      }
    | { readonly kind: 'answered'; readonly step: string; readonly about: string; readonly answer: Answer }
    | { readonly kind: 'corrected'; readonly of: number; readonly answer: Answer }
    | { readonly kind: 'wanted-back'; readonly to: number }
    | { readonly kind: 'stopped'; readonly words: string }
    | { readonly kind: 'noted'; readonly note: string }
    | { readonly kind: 'moved'; readonly knob: KnobId; readonly delta: number }
    | { readonly kind: 'changed'; readonly what: Changed; readonly note: string }
    | {
        readonly kind: 'resumed';
        /** Milliseconds since the line before. */
        readonly away: number;
        /** Earlier lines that no longer fit the content and do not count. */
        readonly setAside?: { readonly from: number; readonly to: number };
      }
  );

/** What an earlier tune of the same bow and archer hands over. */
export interface Carried {
  readonly from: string;
  /** What it is called in the question: name, day and archer. */
  readonly bow: string;
  /** The same for every tune of one bow, and of one archer; absent in older journals, where each tune stands alone. */
  readonly bowId?: string;
  readonly archerId?: string;
  readonly answers: Readonly<Record<string, Answer>>;
  readonly spread: { readonly sd: number; readonly df: number } | null;
  readonly gains: Partial<Record<KnobId, Gain>>;
  /** What each adjustment does on the axis that it is not made for; absent where nothing of that was seen, and in older journals. */
  readonly besides?: Partial<Record<KnobId, Gain>>;
}

// ---- the machine's events: a closed union, so that the walk can be explored ------------------------------------------

export type Verdict =
  | 'inconsistent' | 'gross' | 'in tolerance' | 'out' | 'worse' | 'cannot' | 'borderline' | 'returned' | 'not returned'
  | 'odd arrows' | 'many odd' | 'set differs';

export type MachineEvent =
  | { readonly type: 'settled' }
  | { readonly type: 'skipped' }
  | { readonly type: 'farther' }
  | { readonly type: 'due' }
  | { readonly type: 'clear' }
  | { readonly type: 'stop' }
  | { readonly type: 'released' }
  | { readonly type: 'verdict'; readonly verdict: Verdict }
  | { readonly type: 'moved' }
  | { readonly type: 'looked' }
  | { readonly type: 'chosen'; readonly choice: 'accept' | 'go on' | 'finish step' }
  | { readonly type: 'put back' }
  | { readonly type: 'return'; readonly to: 'paper' | 'broadheads' };

// ---- the seams between floors ----------------------------------------------------------------------------------------

/** Where facts are kept: a file with fsync, or memory. */
export interface Store {
  /** Facts already kept, oldest first. */
  readonly facts: readonly Fact[];
  /** What was noticed while opening (a torn last line set aside, a stale lock): to be told once. */
  readonly notices: readonly string[];
  /** Durable when it returns; throws a CodedError('cannot-write') otherwise, and then nothing was kept. */
  append(fact: Fact): void;
  close(): void;
}

/** One line of the conversation as it is printed: once, and again in short when a tune is resumed. */
export interface TranscriptEntry {
  readonly seq: number;
  readonly who: 'coach' | 'archer';
  readonly text: string;
}

export interface Reply {
  readonly view: View;
  /** Set when nothing was taken: the standing ask still stands. */
  readonly error?: { readonly code: ErrorCode; readonly message: string };
  /** Set when a note was kept. */
  readonly noted?: true;
}

/** The only mover, as the faces see it. `src/session.ts` makes one. */
export interface SessionLike {
  view(): View;
  send(intent: Intent, now: Date): Reply;
  /** How an answer in any written form would be understood, without taking it (for previews). */
  preview(answer: unknown): { readonly ok: true; readonly answer: Answer; readonly words: string } | { readonly ok: false; readonly code: ErrorCode; readonly message: string };
  history(): readonly HistoryEntry[];
  answers(): readonly AnswerEntry[];
  transcript(): readonly TranscriptEntry[];
  /** Words of the trade that the text uses, for `?`. */
  glossary(): Readonly<Record<string, string>>;
  /** Called after each adopted line; returns the unsubscribe. */
  subscribe(listener: () => void): () => void;
  close(): void;
}
