// What is particular to the first measuring chapter: stages with nothing to do, and what stands in where there is no paper.

import type { Axis } from '../content/types.ts';
import type { Feet } from '../maths/units.ts';
import type { Deciding } from './deciding.ts';
import { chosen, holds } from './guards.ts';
import { isSettled } from './agenda.ts';
import { gaugeOf } from './loop/gauge.ts';
import { FIRST_AT_TARGET } from './loop/gauge-groups.ts';
import { axisResults, outdatedAxes, tunedAxes, tunedFromHere, withoutAxis } from './loop/results.ts';
import { FIRST_DISTANCE } from './loop/sets.ts';
import type { SetKind } from './notes.ts';
import type { Shooting } from './adopt-judgement.ts';
import { axisOf } from './walk.ts';
import { phrase } from './words.ts';

/** Two axes that pull at one another are gone through again so often; after that the record says what was moved since. */
export const MOST_ROUNDS = 2;

/** What was called tuned before something else was moved is judged by shots as the bow stands now: the height at its own stage, both at the end. */
export function onceMore(d: Deciding<Shooting>): boolean {
  const { rounds, secondDistance, axis, cablesAt, heightAt } = d.state.notes;
  const outdated = outdatedAxes(d.state);
  if (d.isAt('paper.heightAgain.shooting')) {
    if (axis.height?.result !== 'tuned' || (cablesAt <= heightAt && !outdated.includes('height'))) return false;
    d.add({ loop: { axis: withoutAxis(axis, 'height') } });
    sayOnceMore(d, ['height']);
    return true;
  }
  if (!d.isAt('paper.second.shooting') || outdated.length === 0 || rounds >= MOST_ROUNDS || secondDistance !== null) return false;
  sayOnceMore(d, outdated);
  return d.event({ type: 'return', to: 'paper' }, { loop: { axis: outdated.reduce(withoutAxis, axis), rounds: rounds + 1, purpose: 'judge' } });
}

export const sayOnceMore = (d: Deciding, axes: readonly Axis[]): void =>
  d.say('judge-once-more', { axes: axes.map((axis) => phrase(d.content, `axis-${axis}`).toLowerCase()).join(', ') });

/** Leaves a stage that has nothing to do: scatter has ended the work, or nothing has changed since the axis was settled. */
export function skipStage(d: Deciding<Shooting>): boolean {
  return hasNothingToDo(d) && d.event({ type: 'settled' });
}

function hasNothingToDo(d: Deciding<Shooting>): boolean {
  const { of, axes } = gaugeOf(d.state);
  const results = axisResults(d.state);
  if (axes.some((axis) => results[axis]?.result === 'inconsistent')) return true;
  if (d.isAt('paper.asFound.shooting')) return false;
  if (d.isAt('paper.second.shooting')) return of !== 'paper' || tunedAxes(d.state).length === 0 || d.state.notes.secondDistance !== null;
  const axis = axisOf(d.place);
  if (axis === null || !axes.includes(axis)) return axis !== null;
  if (d.isAt('paper.heightAgain.shooting')) return results.height !== undefined;
  const ended = results[axis]?.result;
  // Gone through once more for the other axis: this one was judged as the bow stands.
  const { rounds, resumeSet } = d.state.notes;
  return ended === 'cannot' || ended === 'accepted' || (rounds > 0 && !resumeSet && tunedFromHere(d.state, axis));
}

const METHODS: Readonly<Record<string, { readonly of: SetKind; readonly first: readonly string[] }>> = {
  'unfletched': { of: 'unfletched', first: ['unfletched-ready', 'group-at-20', 'first-unfletched'] },
  'plumb-line': { of: 'plumb', first: ['plumb-ready', 'group-at-20'] },
};

/** Takes up the way that stands in for paper, or paper again once it is there; true where something was decided. */
export function withoutPaper(d: Deciding): boolean {
  const { of } = d.state.notes;
  if (!holds(d.state, ['no-paper'])) return of !== 'paper' && takeUp(d, 'paper', FIRST_DISTANCE);
  const method = METHODS[chosen(d.state, 'method') ?? ''];
  if (method === undefined || !isSettled(d.state, 'method')) {
    // "I make a frame first": the walk waits here, and asks again.
    d.add({ due: ['method'] });
    return true;
  }
  const open = method.first.filter((id) => !isSettled(d.state, id));
  if (open.length > 0) { d.add({ due: open }); return true; }
  return of !== method.of && takeUp(d, method.of, FIRST_AT_TARGET);
}

// Another way of seeing it: what the first one called tuned is seen anew, and its shots are not mixed with these.
function takeUp(d: Deciding, of: SetKind, distance: Feet): true {
  d.add({ advice: null, loop: { of, distance, axis: {}, besidesTold: [], purpose: 'judge', resumeSet: false } });
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
  return true;
}
