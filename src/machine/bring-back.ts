// Bringing the bow back: which chapter the walk goes back to, each put-back as it was really made, and the end of it.

import { chapterOf, isOfFinish } from './agenda.ts';
import type { Deciding } from './deciding.ts';
import { pointBefore } from './history.ts';
import { undoAdvice } from './loop/advise.ts';
import { gaugeOf } from './loop/gauge.ts';
import { FIRST_AT_TARGET } from './loop/gauge-groups.ts';
import { standsOver, wouldBeOver } from './loop/inside.ts';
import { FIRST_DISTANCE } from './loop/sets.ts';
import { NOT_REACHED, type LoopNotes } from './notes.ts';
import { seenBy } from './record-impacts.ts';
import type { Move, State } from './state.ts';
import { openAgain, voided } from './standing.ts';
import { bowKnobOf } from './types.ts';
import { movesFrom, undoRuns } from './undo.ts';

/** The archer wants the bow as it was before line `to`: the walk goes where that is put back and proved. */
export function wantedBack(d: Deciding, to: number): void {
  const moves = movesFrom(d.state, to);
  const runs = undoRuns(moves);
  const backTo = chapterToProve(d.state, moves);
  d.say(runs.length === 1 ? 'bring-back-one' : 'bring-back', { point: pointBefore(d.content, d.state, to), n: runs.length });
  d.add({
    advice: null,
    loop: { undo: moves.map((move) => move.seq), bringing: d.draft.seq, backTo, purpose: 'judge', reshoot: false, inspection: null, offered: null, declined: [], ...subjectIn(d.state, backTo) },
  });
  nextUndo(d);
  if (d.state.notes.undo.length === 0) putBackDone(d);
}

// What was moved while broadheads were shot is proved with broadheads; everything else at paper, or what stands in for it.
function chapterToProve(state: State, moves: readonly Move[]): 'paper' | 'broadheads' {
  const lastShotBefore = (seq: number): string | undefined => state.sets.findLast((set) => set.shots.some((shot) => shot.seq < seq))?.of;
  return chapterOf(state) === 'broadheads' && moves.every((move) => lastShotBefore(move.seq) === 'broadheads') ? 'broadheads' : 'paper';
}

/**
 * What is shot there, and from where. Broadheads begin again at the first distance: at a setting that nothing is known of,
 * far out is no place to find out. Single arrows are left by their own rule.
 */
export function subjectIn(state: State, chapter: 'paper' | 'broadheads'): Partial<LoopNotes> {
  if (chapter === 'broadheads') return { distance: FIRST_AT_TARGET, broadReached: NOT_REACHED };
  if (state.notes.of === 'arrows') return {};
  const of = seenBy(state);
  return { of, distance: of === 'paper' ? FIRST_DISTANCE : FIRST_AT_TARGET };
}

/** Advises how to undo what is still to be undone: the newest move, with all others of its adjustment at once. */
export function nextUndo(d: Deciding): void {
  const { state, content } = d;
  const runs = undoRuns(state.moves.filter((move) => state.notes.undo.includes(move.seq)));
  // What stands beyond its hard limit goes first.
  const over = standsOver(content, state)?.knob;
  const run = runs.find(([move]) => move?.knob === over) ?? runs[0];
  if (run === undefined) {
    if (state.notes.undo.length > 0) d.add({ loop: { undo: [], undoing: [] } });
    return;
  }
  const advice = undoAdvice(content, state, run);
  const knob = bowKnobOf(advice);
  if (knob !== null && wouldBeOver(content, state, knob, advice?.to?.value ?? 0)) {
    d.say('put-back-beyond', { knob: content.knobs[knob].name });
    d.add({ loop: { undo: state.notes.undo.filter((seq) => state.moves.some((move) => move.seq === seq && move.knob !== knob)), undoing: [] } });
    return nextUndo(d);
  }
  d.add({ advice, loop: { undoing: run.map((move) => move.seq) } });
}

/** A put-back was made, by as much as the archer says: what is left of it is still to be undone, and then the rest. */
export function madePutBack(d: Deciding, knob: Move['knob']): void {
  const { undo, undoing } = d.before.notes;
  const run = d.state.moves.filter((move) => undoing.includes(move.seq) || move.seq === d.draft.seq);
  const short = undoRuns(run).length > 0;
  if (short) d.say('put-back-short');
  const left = undo.filter((seq) => !undoing.includes(seq));
  d.add({ advice: null, loop: { undo: short ? [d.draft.seq, ...undoing, ...left] : left, undoing: [], newSet: true, purpose: 'prove', wanted: gaugeOf(d.state).first } });
  if (d.state.notes.bringing !== 0) unmade(d, knob);
  nextUndo(d);
  if (d.state.notes.undo.length === 0) putBackDone(d);
}

/** An amount was corrected while something is put back: it is undone by what was really moved, and to the same point as before. */
export function undoAnew(d: Deciding): void {
  const { undo, bringing } = d.state.notes;
  if (undo.length === 0 && bringing === 0) return;
  const wanted = d.state.facts.find((fact) => fact.seq === bringing);
  d.add({ advice: null, loop: { undoing: [], ...(wanted?.kind === 'wanted-back' ? { undo: movesFrom(d.state, wanted.to).map((move) => move.seq) } : {}) } });
  nextUndo(d);
  if (d.state.notes.undo.length === 0) putBackDone(d);
}

// What was said of the settings that are undone no longer stands; what was learned from them does.
function unmade(d: Deciding, knob: Move['knob']): void {
  const { state } = d;
  const wanted = state.facts.find((fact) => fact.seq === state.notes.bringing);
  const from = wanted?.kind === 'wanted-back' ? wanted.to : Infinity;
  d.add({ loop: { ...voided(d.content, state, knob), ...openAgain(state, knob, from) } });
}

/** Nothing is left to be put back. */
export function putBackDone(d: Deciding): void {
  if (d.state.notes.bringing === 0) return;
  d.add({ loop: { bringing: 0 } });
  setOtherwise(d);
}

/** The bow is set otherwise, and perhaps shot from elsewhere: the range before anything that is drawn for it, the finish once it comes. */
export function setOtherwise(d: Deciding): void {
  const last = d.state.sets.findLast((set) => set.shots.length > 0);
  if (last !== undefined && last.distance !== d.state.notes.distance) d.trigger('distance-changed');
  finishAnew(d);
}

/**
 * Something was moved by hand while a put-back is under way: true where that was so. On the way to an earlier point it is
 * undone with the rest; so is the adjustment that goes back. It may well have been the put-back itself: then nothing is left.
 */
export function movedInBetween(d: Deciding, knob: Move['knob'], what: string): boolean {
  const { undo, bringing } = d.state.notes;
  if (undo.length === 0) return false;
  const joins = bringing !== 0 || d.state.moves.some((move) => undo.includes(move.seq) && move.knob === knob);
  d.add({ advice: null, loop: { undo: joins ? [d.draft.seq, ...undo] : undo, undoing: [], newSet: true, purpose: 'prove', wanted: gaugeOf(d.state).first, ...voided(d.content, d.state, knob) } });
  nextUndo(d);
  d.say(d.state.advice === null ? 'moved-by-hand-back' : 'moved-in-between', { what });
  if (d.state.advice === null) putBackDone(d);
  return true;
}

/** Nothing was moved yet, and the archer thinks better of it. */
export function leaveAsItIs(d: Deciding): boolean {
  const { bringing } = d.state.notes;
  if (bringing === 0 || d.state.moves.some((move) => move.seq > bringing)) return false;
  d.add({ advice: null, loop: { undo: [], undoing: [], bringing: 0, wanted: gaugeOf(d.state).first } });
  d.say('bring-back-left');
  return true;
}

/** Screws were loosened after all: what was tightened, proved and set at the finish is asked again when the walk is there. */
export function finishAnew(d: Deciding): void {
  const again = Object.keys(d.state.answers).filter((id) => {
    const step = id.split('/')[0] ?? '';
    return isOfFinish(d.content, step) && d.content.steps[step]?.everyTune === true;
  });
  if (again.length === 0) return;
  d.add({ loop: { suggest: again } });
  d.say('finish-again');
}
