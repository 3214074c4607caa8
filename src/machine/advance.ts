// Carries a decision on until a question stands: settles chapters, asks again what is due, judges a full set,
// picks the next change. Each turn makes one small step, so the order of rules can be read from top to bottom.

import { agenda, chapterOf, isOfFinish } from './agenda.ts';
import type { Deciding } from './deciding.ts';
import { chosen, holds } from './guards.ts';
import { turnFinish } from './turn-finish.ts';
import { arrowsWait, turnArrows } from './turn-arrows.ts';
import { turnFarther, turnPreparing } from './turn-broadheads.ts';
import { lookBeforeShot } from './target.ts';
import { turnLoop } from './turn-loop.ts';
import { CHAPTERS, type Chapter } from './types.ts';
import { step } from './walk.ts';

const MOST_TURNS = 60;

export function advance(d: Deciding): void {
  const begun = chapterOf(d.state);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    if (oneTurn(d) || lookBeforeShot(d)) continue;
    introduce(d, begun);
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
  const { place } = d;
  if (place === 'stopped') return false;
  if (place === 'record') return finishOnce(d);
  const pending = agenda(d.content, d.state);
  const open = pending.length > 0;
  if (place === 'asking') return open ? false : d.event({ type: 'clear' });
  if (place === 'safety' || place === 'baseline' || place === 'warmUp') return open ? false : d.event({ type: 'settled' });
  const { backTo } = d.state.notes;
  if (backTo !== null) {
    d.add({ events: [{ type: 'return', to: backTo }], loop: { backTo: null } });
    return true;
  }
  // The finish asks its own questions in place; everything else interrupts.
  if (open) return place.startsWith('finish.') && pending.every((p) => isOfFinish(d.content, p.step.id)) ? false : d.event({ type: 'due' });
  if (chosen(d.state, 'release') === 'fingers') return leavePaper(d);
  const [chapter = '', , phase = ''] = place.split('.');
  if (place === 'broadheads.preparing') return turnPreparing(d);
  if (place === 'broadheads.farther') return turnFarther(d);
  if (chapter === 'arrows') return turnArrows(d);
  // A change on the bow was taken back: the arrows wait.
  if (d.state.notes.of === 'arrows') return arrowsWait(d);
  return chapter === 'finish' ? turnFinish(d, place) : turnLoop(d, phase);
}

// From wherever it stands to the end: a put-back, a proof or an offer that is under way is left first.
function leavePaper(d: Deciding): boolean {
  return d.event({ type: step(d.state.walk, { type: 'settled' }) === null ? 'looked' : 'settled' });
}

function finishOnce(d: Deciding): boolean {
  if (d.state.notes.done) return false;
  d.say('done');
  d.add({ loop: { done: true } });
  return false;
}
