// Before the next shot: what stops the arrow is looked at again where target or distance changed since the last one, no
// broadhead is on an arrow that goes through paper, and none is shot that was not looked at since it was put on.

import type { Content } from '../content/types.ts';
import { agenda } from './agenda.ts';
import type { Deciding } from './deciding.ts';
import { standingAsk } from './ask.ts';
import { holds } from './guards.ts';
import { subjectIn } from './bring-back.ts';
import { gaugeOf } from './loop/gauge.ts';
import { FIRST_AT_TARGET } from './loop/gauge-groups.ts';
import { shotsHere } from './loop/sets.ts';
import type { State } from './state.ts';
import { placeOf } from './walk.ts';

/** True where something is to be looked at before the shot that is asked for now. */
export function lookBeforeShot(d: Deciding): boolean {
  if (d.isAt('finish.closing') && bladesOff(d)) return true;
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

/** Thought better of, or not allowed any more: their gates are off the route, so no further one is shot. */
export const broadheadsAreOff = (state: State): boolean => state.notes.of === 'broadheads' && !holds(state, ['shoots-broadheads']);

/** Nobody ends with blades on: the sight is set, and the range left, with field points. True where they are to be put back on. */
export function bladesOff(d: Deciding): boolean {
  if (!headsOn(d.state) || d.state.due.includes('points-back')) return false;
  d.trigger('broadheads-away');
  return true;
}

/** Whoever may end here for today with blades on is told what to do with them: where that is asked, and where it is said. */
export function coverBlades(d: Deciding): void {
  const asks = (state: State): boolean => standingAsk(d.content, state)?.step === 'fit-to-shoot';
  const stops = d.place === 'stopped' && placeOf(d.before.walk) !== 'stopped';
  if (headsOn(d.state) && asks(d.state) && (stops || !asks(d.before))) d.say('cover-blades');
}

/**
 * After a warm-up of another day (or another place, a dealer's release, a replaced part), and after work on cables, such arrows
 * begin again with the one from near that is not counted.
 */
function fromNearAgain({ answers, notes }: State, first: 'first-broadhead' | 'first-unfletched'): boolean {
  const shot = answers[first]?.seq;
  return shot !== undefined && Math.max(answers['warm-up']?.seq ?? 0, notes.cablesAt) > shot;
}

function broadheadsNow(d: Deciding): void {
  if (fromNearAgain(d.state, 'first-broadhead')) beginNear(d);
  if (headsOn(d.state)) {
    if (!lookedAt(d.state, ['broadhead-place'])) d.trigger('broadheads-distance');
    return;
  }
  d.trigger('broadheads-distance');
  d.trigger('broadheads-long-break');
  // At the finish they only show that tightening moved nothing; else the bow may throw them elsewhere than before.
  if (d.state.notes.purpose !== 'tightened') d.trigger('broadheads-again');
}

// From the first distance on, too; the finish stays at what its shots can be held against.
function beginNear(d: Deciding): void {
  const { notes } = d.state;
  d.trigger('broadheads-again');
  if (notes.distance === FIRST_AT_TARGET) return;
  if (notes.purpose !== 'tightened') d.add({ loop: subjectIn(d.state, 'broadheads') });
  else if (shotsHere({ ...d.state, notes: { ...notes, distance: FIRST_AT_TARGET } }).length > 0) d.add({ loop: { distance: FIRST_AT_TARGET } });
  else return;
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
}

function withoutBroadheads(d: Deciding): void {
  const { of } = d.state.notes;
  if (headsOn(d.state)) d.trigger('broadheads-away');
  if (!lookedAt(d.state, ['backstop', 'range'])) d.trigger('distance-changed');
  const own = of === 'unfletched' ? 'unfletched-ready' : of === 'plumb' ? 'plumb-ready' : null;
  if (own !== null && !lookedAt(d.state, [own])) d.add({ due: [own] });
  if (of === 'unfletched' && fromNearAgain(d.state, 'first-unfletched')) d.add({ due: ['first-unfletched'] });
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
