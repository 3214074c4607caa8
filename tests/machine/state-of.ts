// States for tests of the machine floor: what was answered, where the knobs stand, what was shot. No facts behind them.

import type { KnobId } from '../../src/content/types.ts';
import { NO_NOTES, type LoopNotes } from '../../src/machine/notes.ts';
import { emptyState, type Move, type Shot, type ShotSet, type State } from '../../src/machine/state.ts';
import type { Answer } from '../../src/machine/types.ts';
import { feet } from '../../src/maths/units.ts';
import { shippedContent } from '../tunes/play.ts';

export const content = shippedContent();

/** A number is a number, a text a choice, null "not known". */
export type Plain = number | string | boolean | null;

export function answerOf(plain: Plain): Answer {
  if (plain === null) return { kind: 'not known' };
  if (typeof plain === 'number') return { kind: 'number', value: plain };
  return typeof plain === 'boolean' ? { kind: 'confirm', value: plain } : { kind: 'choice', values: [plain] };
}

export interface Given {
  readonly answers?: Readonly<Record<string, Plain>>;
  readonly moves?: readonly (readonly [KnobId, number, Move['why']?])[];
  /** Sets in order: the settings at which each was shot, and its shots as [x, y]. */
  readonly sets?: readonly { readonly at?: Partial<Record<KnobId, number>>; readonly shots: readonly (readonly [number, number])[]; readonly distance?: number; readonly epoch?: number; readonly purpose?: ShotSet['purpose'] }[];
  readonly notes?: Partial<LoopNotes>;
  readonly due?: readonly string[];
}

export function stateOf(given: Given = {}): State {
  const answers = Object.fromEntries(Object.entries(given.answers ?? {}).map(([id, plain], i) => [id, { answer: answerOf(plain), seq: i + 1, time: '2026-03-02T12:00:00.000Z' }]));
  const moves = (given.moves ?? []).map(([knob, delta, why], i): Move => ({ seq: 1000 + i, knob, delta, why: why ?? 'advice' }));
  const sets = (given.sets ?? []).map((set, i): ShotSet => ({
    id: i + 1, of: 'paper' as const, epoch: set.epoch ?? 1, distance: feet(set.distance ?? 7), settings: set.at ?? {}, purpose: set.purpose ?? 'judge', missed: 0,
    shots: set.shots.map(([x, y], j): Shot => ({ x, y, good: true, seq: 100 + 10 * i + j })),
  }));
  return { ...emptyState(), answers, moves, sets, due: given.due ?? [], notes: { ...NO_NOTES, ...given.notes } };
}
