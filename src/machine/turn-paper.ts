// What is particular to the first measuring chapter: stages with nothing to do, and what stands in where there is no paper.

import type { Feet } from '../maths/units.ts';
import type { Deciding } from './deciding.ts';
import { chosen, holds } from './guards.ts';
import { isSettled } from './agenda.ts';
import { gaugeOf } from './loop/gauge.ts';
import { FIRST_AT_TARGET } from './loop/gauge-groups.ts';
import { axisResults } from './loop/results.ts';
import { FIRST_DISTANCE, tunedAxes } from './loop/sets.ts';
import type { SetKind } from './notes.ts';
import type { Shooting } from './adopt-judgement.ts';
import { axisOf } from './walk.ts';

/** Leaves a stage that has nothing to do: scatter has ended the work, or nothing has changed since the axis was settled. */
export function skipStage(d: Deciding<Shooting>): boolean {
  return hasNothingToDo(d) && d.event({ type: 'settled' });
}

function hasNothingToDo(d: Deciding<Shooting>): boolean {
  const { cablesAt, heightAt } = d.state.notes;
  const { of, axes } = gaugeOf(d.state);
  const results = axisResults(d.state);
  if (axes.some((axis) => results[axis]?.result === 'inconsistent')) return true;
  if (d.isAt('paper.asFound.shooting')) return false;
  if (d.isAt('paper.second.shooting')) return of !== 'paper' || tunedAxes(d.state).length === 0 || d.state.notes.secondDistance !== null;
  const axis = axisOf(d.place);
  if (axis === null || !axes.includes(axis)) return axis !== null;
  if (d.isAt('paper.heightAgain.shooting')) return results.height !== undefined && (cablesAt <= heightAt || results.height.result !== 'tuned');
  const ended = results[axis]?.result;
  return ended === 'cannot' || ended === 'accepted';
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
  d.add({ advice: null, loop: { of, distance, axis: {}, purpose: 'judge', resumeSet: false } });
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
  return true;
}
