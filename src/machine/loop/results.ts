// How each axis ended in the chapter under way: paper (or what stands in for it) and broadheads are kept apart.

import type { Axis } from '../../content/types.ts';
import type { AxisResult, LoopNotes } from '../notes.ts';
import type { State } from '../state.ts';
import type { Chapter, Finding } from '../types.ts';
import { subjectOf } from './sets.ts';

type Results = LoopNotes['axis'];

export const axisResults = (state: State): Results => (subjectOf(state) === 'broadheads' ? state.notes.broadAxis : state.notes.axis);

export const chapterNow = (state: State): Chapter => (subjectOf(state) === 'broadheads' ? 'broadheads' : 'paper');

/** Notes in which these axes end so; the others stay as they were. */
export function endAxes(state: State, ended: Results): Partial<LoopNotes> {
  const results = { ...axisResults(state), ...ended };
  return subjectOf(state) === 'broadheads' ? { broadAxis: results } : { axis: results };
}

/** Results without that of one axis: it is to be judged anew. */
export const withoutAxis = (results: Results, axis: Axis): Results =>
  Object.fromEntries(Object.entries(results).filter(([id]) => id !== axis));

/** Notes in which nothing is said of this axis any more, in the chapter under way. */
export function unsaid(state: State, axis: Axis): Partial<LoopNotes> {
  const results = withoutAxis(axisResults(state), axis);
  return subjectOf(state) === 'broadheads' ? { broadAxis: results } : { axis: results };
}

export const axisFinding = (state: State, axis: Axis, result: AxisResult, chance?: number): Finding =>
  ({ kind: 'axis', axis, chapter: chapterNow(state), result, ...(chance === undefined ? {} : { chance: Math.round(chance * 1000) / 1000 }) });
