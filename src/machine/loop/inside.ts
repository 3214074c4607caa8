// How far each adjustment may stand away at the most, and which one stands beyond that, whoever moved it: nothing is drawn there.

import type { Content, KnobId } from '../../content/types.ts';
import { measured } from '../guards.ts';
import { onceForBoth } from '../../maths/once.ts';
import { tidy, UNSEEN, type Move, type State } from '../state.ts';
import type { Changed } from '../types.ts';
import { settingsBefore } from '../undo.ts';
import { offsetFromMaker } from './ladder.ts';
import { settingNow } from './sets.ts';

/** An adjustment that stands beyond its hard limit: its setting now, and the setting that it goes back to. */
export interface Over { readonly knob: KnobId; readonly from: number; readonly to: number }

/** What goes with a part that was replaced: moves of the old one say nothing about the new one. */
const GOES_WITH: Readonly<Record<Changed, readonly KnobId[]>> = {
  string: ['yoke', 'cam-sync', 'nock-height', 'drop-cord'], rest: ['rest-height', 'rest-side', 'drop-cord'], loop: ['nock-height'],
  arrow: ['point-weight'], release: [], sight: [], fell: [], other: [], place: [],
};

/** The nocking point stays between level and this much above level, inches. */
const NOCK_ABOVE = 1 / 4;
/** Nobody measures a nock height closer, inches. */
const NOCK_READ = 1 / 64;

/** The newest moved adjustment that stands beyond its hard limit; null where all stand inside. */
export const standsOver: (content: Content, state: State) => Over | null = onceForBoth((content: Content, state: State) => {
  if (state.moves.length === 0) return null;
  const newestFirst = [...new Set([...state.moves].reverse().map((move) => move.knob))];
  return newestFirst.flatMap((knob) => overOf(content, state, knob) ?? [])[0] ?? null;
});

/** The same, but where it is being put back to inside its limits already. */
export const heldOver: (content: Content, state: State) => Over | null = onceForBoth((content: Content, state: State) => {
  const over = standsOver(content, state);
  const { advice, notes } = state;
  const goesBack = over !== null && notes.undo.length > 0 && advice?.kind === 'put-back' && advice.knob === over.knob
    && advice.to !== undefined && !wouldBeOver(content, state, over.knob, advice.to.value);
  return goesBack ? null : over;
});

/** Whether an adjustment would stand beyond its hard limit at this setting. As the bow was found is the ladder's affair. */
export function wouldBeOver(content: Content, state: State, knob: KnobId, setting: number): boolean {
  const since = partSince(state, knob);
  if (Math.abs(setting - since.setting) < UNSEEN) return false;
  const { lo, hi } = boundsOf(content, state, knob, since);
  const seen = knob === 'nock-height' ? NOCK_READ + UNSEEN : UNSEEN;
  return setting < lo - seen || setting > hi + seen;
}

function overOf(content: Content, state: State, knob: KnobId): Over | null {
  const from = settingNow(state, knob);
  if (!wouldBeOver(content, state, knob, from)) return null;
  const since = partSince(state, knob);
  const { lo, hi } = boundsOf(content, state, knob, since);
  // Where it last stood inside; else no farther than the limit itself.
  const stood = since.moves.map((move) => settingsBefore(state, move.seq)[knob] ?? 0);
  const to = stood.findLast((setting) => setting >= lo - UNSEEN && setting <= hi + UNSEEN) ?? tidy(Math.min(hi, Math.max(lo, from)));
  return { knob, from, to };
}

interface Since { readonly seq: number; readonly setting: number; readonly moves: readonly Move[] }

/** Since when this part is on the bow, what the ledger said then, and its moves from then on. */
function partSince(state: State, knob: KnobId): Since {
  const seq = state.facts.findLast((fact) => fact.kind === 'changed' && GOES_WITH[fact.what].includes(knob))?.seq ?? 0;
  return { seq, setting: settingsBefore(state, seq)[knob] ?? 0, moves: state.moves.filter((m) => m.knob === knob && m.seq >= seq) };
}

/** The settings, as the ledger counts, between which this adjustment may stand. */
function boundsOf(content: Content, state: State, knob: KnobId, since: Since): { readonly lo: number; readonly hi: number } {
  const { hard, from } = content.knobs[knob];
  const figureHolds = (step: string): boolean => (state.answers[step]?.seq ?? -1) >= since.seq;
  if (knob === 'nock-height' && figureHolds('nock-height')) return nockBetween(state, hard, since.setting);
  const origin = from === 'maker' && figureHolds('centre-shot') ? -offsetFromMaker(state) : since.setting;
  return { lo: origin - hard, hi: origin + hard };
}

// Its travel counts from where it was found, or from where it first came to stand right.
function nockBetween(state: State, hard: number, found: number): { readonly lo: number; readonly hi: number } {
  const height = measured(state, 'nock-height');
  if (height === undefined) return { lo: found - hard, hi: found + hard };
  const at = state.answers['nock-height']?.seq ?? 0;
  const moved = settingsBefore(state, at)['nock-height'] ?? 0;
  const level = tidy(moved - height);
  // Measured anew after it was moved, the figure is all that counts.
  if (moved !== 0) return { lo: level, hi: level + NOCK_ABOVE };
  const origin = Math.min(level + NOCK_ABOVE, Math.max(level, found));
  return { lo: Math.max(origin - hard, level), hi: Math.min(origin + hard, level + NOCK_ABOVE) };
}
