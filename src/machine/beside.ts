// What a view tells besides the walk: a record in sections of rows, and, where the bow is invented, what is seen of it.

import type { Direction, KnobId } from '../content/types.ts';

export interface RecordRow { readonly name: string; readonly value: string }

/** The bow record as data; `src/report` makes Markdown of it. */
export interface BowRecord {
  readonly title: string;
  readonly invented?: true;
  readonly sections: readonly { readonly title: string; readonly rows: readonly RecordRow[] }[];
}

/** Inches, right and high above 0, as everywhere. */
interface Spot { readonly x: number; readonly y: number }

/** What the arrow of a practice bow left: a tear in a sheet, a hole in a target from its own dot, or nothing that can be found. Inches, as they truly are. */
export type PracticeHole =
  | { readonly kind: 'sheet'; readonly tail: Spot; readonly vanes: 3 | 4 }
  | { readonly kind: 'target'; readonly at: Spot }
  | { readonly kind: 'none' };

/** Present where the bow is invented: what is seen beside the question, and what the arrow does that is asked for. */
export interface PracticeView {
  /** Which bow this is, in a few words. */
  readonly of: string;
  /** What the learner sees at the bow, standing there. The question is answered from it. */
  readonly seen: readonly string[];
  /** How letting go felt, and the hole: to be shown in this order. */
  readonly shot?: { readonly felt: string; readonly hole: PracticeHole };
  /** At the end: what was true all along. */
  readonly debrief?: BowRecord;
}

/** Of a practice bow alone: something is turned and the coach is not told; the practice is left, and the truth wanted. */
export type PracticeIntent =
  | { readonly kind: 'turned'; readonly knob: KnobId; readonly direction: Direction; readonly amount: unknown }
  | { readonly kind: 'debrief' };
