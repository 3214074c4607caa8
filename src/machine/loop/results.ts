// How each axis ended in the chapter under way: paper (or what stands in for it) and broadheads are kept apart.

import { AXES, type Axis } from '../../content/types.ts';
import type { AxisResult, LoopNotes } from '../notes.ts';
import { settingsOf, type ShotSet, type State } from '../state.ts';
import type { Chapter, Fact, Finding } from '../types.ts';
import { settingKey, subjectOf } from './sets.ts';

type Results = LoopNotes['axis'];
type AxisEnd = NonNullable<Results[Axis]>;

export const axisResults = (state: State): Results => (subjectOf(state) === 'broadheads' ? state.notes.broadAxis : state.notes.axis);

export const chapterNow = (state: State): Chapter => (subjectOf(state) === 'broadheads' ? 'broadheads' : 'paper');

/** Notes in which these axes end so; the others stay as they were. */
export function endAxes(state: State, ended: Results): Partial<LoopNotes> {
  const results = { ...axisResults(state), ...ended };
  return subjectOf(state) === 'broadheads' ? { broadAxis: results } : { axis: results };
}

/** Axes that end without being shown in tolerance: what is found of them, and the notes. */
export function endedWithout(state: State, axes: readonly Axis[], result: Exclude<AxisResult, 'tuned'>): { readonly findings: readonly Finding[]; readonly notes: Partial<LoopNotes> } {
  return { findings: axes.map((axis) => axisFinding(state, axis, result)), notes: endAxes(state, Object.fromEntries(axes.map((axis) => [axis, { result, chance: 0 }]))) };
}

/** Results without that of one axis: it is to be judged anew. */
export const withoutAxis = (results: Results, axis: Axis): Results =>
  Object.fromEntries(Object.entries(results).filter(([id]) => id !== axis));

/** Notes in which nothing is said of this axis any more, in the chapter under way. */
export function unsaid(state: State, axis: Axis): Partial<LoopNotes> {
  const results = withoutAxis(axisResults(state), axis);
  return subjectOf(state) === 'broadheads' ? { broadAxis: results } : { axis: results };
}

/** What was last said of an axis in a chapter, and by which line; null where nothing was. */
export function lastWord({ facts }: State, axis: Axis, chapter: Chapter): (AxisEnd & { readonly seq: number }) | null {
  const of = ({ decided }: Fact) => decided.findings.findLast((f) => f.kind === 'axis' && f.axis === axis && f.chapter === chapter);
  const line = facts.findLast((fact) => of(fact) !== undefined);
  const word = line === undefined ? undefined : of(line);
  return line === undefined || word?.kind !== 'axis' ? null : { seq: line.seq, result: word.result, chance: word.chance ?? 0 };
}

/**
 * Whether an axis is tuned, and that was said by shots at the very setting at which the bow stands now, with nothing found or replaced since: a
 * word that rests on shots before a later change, of whatever, is none; nor is one by a set that went on to scatter.
 */
export function tunedHere(state: State, axis: Axis): boolean {
  const set = tunedBy(state, axis);
  return set?.epoch === state.notes.epoch && settingKey(set.settings) === settingKey(settingsOf(state.moves)) && !hasScattered(state, set);
}

/** Last called tuned by a set whose later shots scattered: none of them shows anything of the bow. */
export function tunedByScatter(state: State, axis: Axis, chapter: Chapter = chapterNow(state)): boolean {
  const said = lastWord(state, axis, chapter);
  const set = said?.result === 'tuned' ? setBefore(state, said.seq) : undefined;
  return set !== undefined && hasScattered(state, set);
}

const hasScattered = ({ notes: { scattered, strayed } }: State, { id }: ShotSet): boolean => scattered.includes(id) || strayed.includes(id);

/** The same, and from where it is shot now. */
export const tunedFromHere = (state: State, axis: Axis): boolean => tunedHere(state, axis) && tunedBy(state, axis)?.distance === state.notes.distance;

/** The set whose last shot called an axis tuned. */
function tunedBy(state: State, axis: Axis): ShotSet | undefined {
  if (axisResults(state)[axis]?.result !== 'tuned') return undefined;
  return setBefore(state, lastWord(state, axis, chapterNow(state))?.seq ?? 0);
}

const setBefore = (state: State, seq: number): ShotSet | undefined => state.sets.findLast(({ shots }) => shots.some((shot) => shot.seq <= seq));

export const tunedAxes = (state: State): readonly Axis[] => AXES.filter((axis) => tunedHere(state, axis));

/** Called tuned, and something on the bow was changed since: to be judged by shots as it stands now. */
export const outdatedAxes = (state: State): readonly Axis[] => AXES.filter((axis) => axisResults(state)[axis]?.result === 'tuned' && !tunedHere(state, axis));

export const axisFinding = (state: State, axis: Axis, result: AxisResult, chance?: number): Finding =>
  ({ kind: 'axis', axis, chapter: chapterNow(state), result, ...(chance === undefined ? {} : { chance: Math.round(chance * 1000) / 1000 }) });
