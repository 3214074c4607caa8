// Carries a decision on until a question stands: settles chapters, asks again what is due, judges a full set,
// picks the next change. Each turn makes one small step, so the order of rules can be read from top to bottom.

import { agenda, chapterOf, isOfFinish, type Pending } from './agenda.ts';
import { tellOver } from './brought-inside.ts';
import type { Deciding } from './deciding.ts';
import { chosen, holds } from './guards.ts';
import { heldOver } from './loop/inside.ts';
import { turnFinish } from './turn-finish.ts';
import { lookForMisses } from './turn-missed.ts';
import { arrowsWait, turnArrows } from './turn-arrows.ts';
import { tellWhatPaperLeaves, turnFarther, turnPreparing } from './turn-broadheads.ts';
import type { PlaceIn } from './places.ts';
import { broadheadsAreOff, coverBlades, lookBeforeShot } from './target.ts';
import { turnLoop } from './turn-loop.ts';
import { CHAPTERS, type Chapter } from './types.ts';

const MOST_TURNS = 60;

export function advance(d: Deciding): void {
  const begun = chapterOf(d.state);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    if (oneTurn(d) || lookBeforeShot(d)) continue;
    introduce(d, begun);
    tellOver(d);
    coverBlades(d);
    tellWhatPaperLeaves(d);
    return;
  }
  const events = d.fact().decided.events.map((event) => event.type).join(' ');
  throw new RangeError(`the walk does not come to a question from ${d.place} (${events}; due ${d.state.due.join(' ')})`);
}

// A new chapter begins with a word on what it is for, and why it comes here.
function introduce(d: Deciding, begun: Chapter): void {
  const now = chapterOf(d.state);
  if (CHAPTERS.indexOf(now) <= CHAPTERS.indexOf(begun) || d.place === 'stopped' || chosen(d.state, 'release') === 'fingers') return;
  if (now === 'paper' && holds(d.state, ['no-paper'])) { d.say('no-paper-told'); return; }
  d.add({ say: d.content.chapters.find((chapter) => chapter.id === now)?.intro ?? [] });
}

/** One automatic step; false where a question stands. */
function oneTurn(d: Deciding): boolean {
  if (d.isAt('stopped')) return false;
  if (d.isAt('record')) return finishOnce(d);
  const pending = agenda(d.content, d.state);
  const open = pending.length > 0;
  const held = heldOver(d.content, d.state) !== null;
  if (d.isAt('asking')) return open || held ? false : d.event({ type: 'clear' });
  if (d.isAt('safety', 'baseline', 'warmUp')) return held ? d.event({ type: 'due' }) : open ? false : d.event({ type: 'settled' });
  return d.isIn(...SHOOTING) && turnOfShooting(d, pending);
}

/** The chapters in which is shot: all that are left. */
const SHOOTING = ['paper', 'broadheads', 'arrows', 'finish'] as const;

function turnOfShooting(d: Deciding<PlaceIn<(typeof SHOOTING)[number]>>, pending: readonly Pending[]): boolean {
  const { backTo } = d.state.notes;
  if (backTo !== null) return d.event({ type: 'return', to: backTo }, { loop: { backTo: null } });
  // What stands beyond its hard limit is brought back before anything else of the walk.
  if (heldOver(d.content, d.state) !== null) return d.event({ type: 'due' });
  // The finish asks its own questions in place; everything else interrupts.
  if (pending.length > 0) return d.isIn('finish') && pending.every((p) => isOfFinish(d.content, p.step.id)) ? false : d.event({ type: 'due' });
  if (chosen(d.state, 'release') === 'fingers') return leave(d);
  if (d.isIn('broadheads') && broadheadsAreOff(d.state)) return leave(d, 'broadheads-left');
  if (lookForMisses(d)) return true;
  if (d.isAt('broadheads.preparing')) return turnPreparing(d);
  if (d.isAt('broadheads.farther')) return turnFarther(d);
  if (d.isIn('arrows')) return turnArrows(d);
  // A change on the bow was taken back: the arrows wait.
  if (d.state.notes.of === 'arrows') return arrowsWait(d);
  if (d.isIn('finish')) return turnFinish(d);
  return d.isIn('paper', 'broadheads') && turnLoop(d);
}

// From wherever it stands to the end of the chapter: a put-back, a proof or an offer that is under way is left first.
function leave(d: Deciding, why?: string): boolean {
  d.add({ advice: null, loop: { undo: [], undoing: [], bringing: 0, offered: null } });
  if (why !== undefined) d.say(why);
  return d.may('settled') ? d.event({ type: 'settled' }) : d.where('looked').event({ type: 'looked' });
}

function finishOnce(d: Deciding): boolean {
  if (d.state.notes.done) return false;
  d.say('done');
  d.add({ loop: { done: true } });
  return false;
}
