// What follows from what simply happened: a beginning, a resume, a stop word, a note, a change that was not advised.

import type { Changed } from './types.ts';
import type { Trigger } from '../content/types.ts';
import { chapterOf } from './agenda.ts';
import type { Deciding, FactDraft } from './deciding.ts';
import { undoAdvice } from './loop/advise.ts';
import { gaugeOf } from './loop/gauge.ts';
import { settingNow } from './loop/sets.ts';
import type { Move } from './state.ts';
import { stopOver } from './stops.ts';
import { undoRuns } from './undo.ts';
import { amountInWords, headlineOf } from './words.ts';

/** Less than this away, in the same place, with nothing happened: the standing question simply goes on. */
export const SHORT_BREAK_MS = 4 * 60 * 60 * 1000;

export function afterHappening(d: Deciding, draft: Exclude<FactDraft, { kind: 'answered' | 'corrected' }>): void {
  switch (draft.kind) {
    case 'begun':
      d.say('welcome');
      if (draft.known.length > 0) d.add({ due: ['bow'] });
      return;
    case 'resumed':
      resumed(d, draft.away);
      if (draft.setAside !== undefined) {
        d.add({ loop: { setAside: draft.setAside } });
        d.say('set-aside', { from: draft.setAside.from, n: draft.setAside.to - draft.setAside.from + 1 });
      }
      return;
    case 'stopped':
      d.add({ events: d.place === 'stopped' ? [] : [{ type: 'stop' }], loop: { stop: stopOver(d.state.stop, { cause: 'word', ask: ['what-happened'], from: 'word' }) } });
      d.say('stopped-by-word', { words: draft.words.slice(0, 80) });
      return;
    case 'noted':
      d.say('noted');
      return;
    case 'moved':
      movedUnasked(d, draft.knob, draft.delta);
      return;
    case 'changed':
      changed(d, draft.what);
      return;
    case 'wanted-back':
      wantedBack(d, draft.to);
  }
}

function resumed(d: Deciding, away: number): void {
  d.say('resumed');
  d.trigger('start');
  if (away >= SHORT_BREAK_MS) longBreak(d);
}

/** Another day or another place: the bow is looked at again, and the last accepted set is shot again. */
export function longBreak(d: Deciding): void {
  d.trigger('long-break');
  if (chapterOf(d.state) === 'broadheads') d.trigger('broadheads-long-break');
  if (d.state.sets.some((set) => set.shots.length > 0)) d.add({ loop: { resumeSet: true } });
}

// The bow is where it is: the ledger takes the move, what it asks for again is asked, and the next shots judge it.
function movedUnasked(d: Deciding, knobId: Move['knob'], delta: number): void {
  const knob = d.content.knobs[knobId];
  d.trigger(knob.trigger);
  d.trigger('unadvised-move');
  d.add({ advice: null, loop: { newSet: true, wanted: gaugeOf(d.state).first, purpose: 'judge', reshoot: true, ...(isCableWork(knobId) ? { cablesAt: d.draft.seq } : {}) } });
  d.say('moved-unasked', { what: `${headlineOf(knob, delta)} ${amountInWords({ value: Math.abs(delta), unit: knob.unit })}` });
  const now = settingNow(d.state, knobId);
  if (Math.abs(now) > knob.hard + 1e-9) d.say('beyond-hard-limit', { knob: knob.name, limit: amountInWords({ value: knob.hard, unit: knob.unit }) });
}

export const isCableWork = (knob: Move['knob']): boolean => ['yoke', 'cam-spacers', 'cam-screw', 'cam-sync'].includes(knob);

const TRIGGER_OF: Readonly<Record<Changed, Trigger | null>> = {
  string: 'string-replaced', rest: 'rest-replaced', release: 'release-replaced', arrow: 'arrow-changed',
  loop: 'nock-height', sight: 'sight-moved', fell: 'heat-or-fall', other: 'something-moved',
};

function changed(d: Deciding, what: Changed): void {
  const trigger = TRIGGER_OF[what];
  if (trigger !== null) d.trigger(trigger);
  d.say('changed', { what });
  if (what === 'sight') return;
  const { epoch } = d.state.notes;
  // What the old string, rest, release or arrow showed no longer counts; a fall leaves the shots but not their setting.
  const forgets = what === 'string' || what === 'rest' || what === 'release' || what === 'arrow';
  d.add({ advice: null, loop: { epoch: epoch + 1, newSet: true, wanted: gaugeOf(d.state).first, purpose: 'judge', reshoot: true, ...(forgets ? { forgetBefore: epoch, learned: {}, ended: {}, worse: {}, axis: {} } : {}) } });
}

function wantedBack(d: Deciding, to: number): void {
  const moves = [...d.state.moves].reverse().filter((m) => m.seq >= to);
  d.add({ events: [{ type: 'put back' }], loop: { undo: moves.map((m) => m.seq), reshoot: false } });
  nextUndo(d);
}

/** Advises how to undo what is still to be undone: the newest move, with all others of its adjustment at once. */
export function nextUndo(d: Deciding): void {
  const { state, content } = d;
  const moves = state.moves.filter((move) => state.notes.undo.includes(move.seq));
  const [run] = undoRuns(moves);
  if (run === undefined) {
    if (state.notes.undo.length > 0) d.add({ loop: { undo: [] } });
    return;
  }
  d.add({ advice: undoAdvice(content, state, run), loop: { undoing: run.map((move) => move.seq) } });
}
