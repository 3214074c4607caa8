// What follows from what simply happened: a beginning, a resume, a stop word, a note, a change that was not advised.

import type { Changed } from './types.ts';
import type { Trigger } from '../content/types.ts';
import { chapterOf } from './agenda.ts';
import type { Deciding, FactDraft } from './deciding.ts';
import { movedInBetween, setOtherwise, subjectIn, wantedBack } from './bring-back.ts';
import { sayOtherArrows, sayShift } from './figures/stiffness-said.ts';
import { reachAfterBreak } from './growing.ts';
import { chosen } from './guards.ts';
import { gaugeOf } from './loop/gauge.ts';
import { NOT_REACHED, otherArrows, type LoopNotes } from './notes.ts';
import { isCableWork, voided } from './standing.ts';
import { isImpact } from './plan.ts';
import type { Move, State } from './state.ts';
import { stopNow } from './stop-now.ts';
import { hasStopWord } from './stop-words.ts';
import { headsOn } from './target.ts';
import { placeUnder } from './walk.ts';
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
      stopNow(d, { cause: 'word', ask: ['what-happened'], from: 'word' });
      d.say('stopped-by-word', { words: draft.words.slice(0, 80) });
      return;
    case 'noted':
      d.say(d.before.notes.done && hasStopWord(draft.note) ? 'noted-since-done' : 'noted');
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
  reachAfterBreak(d);
  const { of } = d.state.notes;
  const chapter = chapterOf(d.state);
  if (chapter === 'broadheads' || (chapter === 'finish' && of === 'broadheads')) d.trigger('broadheads-long-break');
  // What these need of place, air and shafts is no part of the range's own questions.
  if (of === 'unfletched' || of === 'plumb') d.add({ due: [of === 'plumb' ? 'plumb-ready' : 'unfletched-ready'] });
  if (d.state.sets.some((set) => set.shots.length > 0)) d.add({ loop: { resumeSet: true } });
}

// The bow is where it is: the ledger takes the move, what it asks for again is asked, and the next shots judge it.
function movedUnasked(d: Deciding, knobId: Move['knob'], delta: number): void {
  const knob = d.content.knobs[knobId];
  const what = `${headlineOf(knob, delta)} ${amountInWords({ value: Math.abs(delta), unit: knob.unit })}`;
  d.trigger(knob.trigger);
  d.trigger('unadvised-move');
  if (isCableWork(knobId)) d.add({ loop: { cablesAt: d.draft.seq } });
  if (!movedInBetween(d, knobId, what)) {
    judgeAnew(d, voided(d.content, d.state, knobId), false);
    d.say('moved-unasked', { what });
  }
  sayShift(d, knobId, delta);
}

/** A fresh set, and where a result was taken back by it, from the chapter on that gave it. */
export function judgeAnew(d: Deciding, notes: Partial<LoopNotes>, wholeBow: boolean): void {
  const tookBack = Object.keys(d.state.notes.axis).length > Object.keys(notes.axis ?? d.state.notes.axis).length
    || Object.keys(d.state.notes.broadAxis).length > Object.keys(notes.broadAxis ?? d.state.notes.broadAxis).length;
  const backTo = chapterToJudge(d, tookBack, wholeBow);
  const atTarget = d.state.notes.of === 'broadheads' ? subjectIn(d.state, 'broadheads') : {};
  d.add({ advice: null, loop: { ...notes, rounds: 0, purpose: 'judge', reshoot: true, ...(backTo === null ? atTarget : { backTo, inspection: null, offered: null, ...subjectIn(d.state, backTo) }) } });
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
  if (backTo === 'paper') backAtPaper(d);
}

/**
 * The bow is another one than was shot, or set otherwise: what was said of it falls, and it is judged anew. What was to be put
 * back was measured on the bow as it was: it stays where it stands, in the ledger and in the history.
 */
export function judgeAsAnother(d: Deciding, besides: Partial<LoopNotes> = {}): void {
  const { epoch, undo } = d.state.notes;
  if (undo.length > 0) d.say('put-back-dropped');
  judgeAnew(d, {
    epoch: epoch + 1, undo: [], undoing: [], bringing: 0, axis: {}, broadAxis: {}, broadReached: NOT_REACHED, secondDistance: null, offeredFor: {}, ...besides,
  }, true);
}

/** What was shot and learned up to now, and brought along from earlier tunes, counts no more. */
export const forgotten = ({ notes: { epoch } }: State): Partial<LoopNotes> =>
  ({ forgetBefore: epoch, forgetCarried: true, learned: {}, besides: {}, besidesTold: [], ended: {}, worse: {} });

/** What going back to paper asks for again. */
export function backAtPaper(d: Deciding): void {
  // Before warm-up and powder too, which come before the first tear.
  if (headsOn(d.state)) d.trigger('broadheads-away');
  setOtherwise(d);
}

/** Where nothing was said yet that no longer stands, the walk is in the right place already: null. */
export function chapterToJudge(d: Deciding, tookBack: boolean, wholeBow: boolean): 'paper' | 'broadheads' | null {
  const [chapter = '', stage = ''] = placeUnder(d.state.walk).split('.');
  if (d.state.shotCount === 0 || chosen(d.state, 'release') === 'fingers') return null;
  if (chapter === 'paper') return stage === 'second' || (tookBack && stage !== 'asFound') ? 'paper' : null;
  if (chapter === 'broadheads' && stage !== 'preparing' && !wholeBow) return tookBack || stage === 'farther' ? 'broadheads' : null;
  return ['broadheads', 'arrows', 'finish'].includes(chapter) ? 'paper' : null;
}

const TRIGGER_OF: Readonly<Record<Exclude<Changed, 'place'>, Trigger>> = {
  string: 'string-replaced', rest: 'rest-replaced', release: 'release-replaced', arrow: 'arrow-changed',
  loop: 'nock-height', sight: 'sight-moved', fell: 'heat-or-fall', other: 'part-replaced',
};

function changed(d: Deciding, what: Changed): void {
  // As where somebody comes back and says so: the bow is the same, and was carried.
  if (what === 'place') {
    longBreak(d);
    d.say('changed-place');
    return;
  }
  d.trigger(TRIGGER_OF[what]);
  if (what === 'sight') { d.say(isImpact(d.state.notes.of) ? 'changed-sight-back' : 'changed-sight'); return; }
  if (what === 'other') d.say('changed-other');
  else d.say('changed', { what });
  if (what === 'arrow') sayOtherArrows(d);
  // What the old string, rest, release or arrow showed no longer counts, nor what was shot before a part that nobody knows; a
  // fall leaves the shots but not their setting.
  const forgets = what === 'string' || what === 'rest' || what === 'release' || what === 'arrow' || what === 'other';
  judgeAsAnother(d, { ...(forgets ? forgotten(d.state) : {}), ...(what === 'arrow' ? otherArrows(d.state) : {}) });
}
