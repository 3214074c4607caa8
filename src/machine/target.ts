// Before the next shot: what stops the arrow is looked at again where target or distance changed since the last one, no
// broadhead is on an arrow that goes through paper, and none is shot that was not looked at since it was put on.

import type { Content } from '../content/types.ts';
import { agenda } from './agenda.ts';
import type { Deciding } from './deciding.ts';
import { standingAsk } from './ask.ts';
import type { State } from './state.ts';

/** True where something is to be looked at before the shot that is asked for now. */
export function lookBeforeShot(d: Deciding): boolean {
  if (!asksForShot(d.content, d.state)) return false;
  const { due } = d.state;
  if (d.state.notes.of === 'broadheads') broadheadsNow(d);
  else withoutBroadheads(d);
  return d.state.due.length > due.length;
}

function asksForShot(content: Content, state: State): boolean {
  // While a step of content is open, no shot is asked for.
  if (agenda(content, state).length > 0) return false;
  const kind = standingAsk(content, state)?.kind;
  return kind === 'tear' || kind === 'impact';
}

function broadheadsNow(d: Deciding): void {
  if (headsOn(d.state)) {
    if (!lookedAt(d.state, ['broadhead-place'])) d.trigger('broadheads-distance');
    return;
  }
  d.trigger('broadheads-distance');
  d.trigger('broadheads-long-break');
  // At the finish they only show that tightening moved nothing; else the bow may throw them elsewhere than before.
  if (d.state.notes.purpose !== 'tightened') d.trigger('broadheads-again');
}

function withoutBroadheads(d: Deciding): void {
  const { of } = d.state.notes;
  if (headsOn(d.state)) d.trigger('broadheads-away');
  if (!lookedAt(d.state, ['backstop', 'range'])) d.trigger('distance-changed');
  const own = of === 'unfletched' ? 'unfletched-ready' : of === 'plumb' ? 'plumb-ready' : null;
  if (own !== null && !lookedAt(d.state, [own])) d.add({ due: [own] });
}

/** Whether all of these were answered since the last shot, or that was shot at the same target from the same distance. */
function lookedAt({ sets, notes, answers }: State, steps: readonly string[]): boolean {
  const last = sets.findLast((set) => set.shots.length > 0);
  const subject = (of: string): string => (of === 'arrows' ? 'paper' : of);
  if (last === undefined || (subject(last.of) === subject(notes.of) && last.distance === notes.distance)) return true;
  const shot = last.shots.at(-1)?.seq ?? 0;
  return steps.every((step) => (answers[step]?.seq ?? 0) > shot);
}

/** Arrows that were shown to carry broadheads carry them until field points are on again, whatever answers count now. */
export function headsOn({ facts }: State): boolean {
  const last = facts.findLast((fact) => fact.kind === 'answered' && (fact.step === 'broadhead-arrows' || fact.step === 'points-back'));
  return last?.kind === 'answered' && last.step === 'broadhead-arrows';
}
