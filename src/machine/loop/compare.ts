// Did it come back? Three shots against what the same setting showed before.

import { studentQuantile } from '../../maths/student.ts';
import type { Content } from '../../content/types.ts';
import type { State } from '../state.ts';
import { phrase } from '../words.ts';
import { spreadOf } from './evidence.ts';
import { gaugeOf, taken } from './gauge.ts';
import { MOST_SHOTS, NEAR, SURE } from './gauge-paper.ts';
import { leavingInWords } from './leaving.ts';
import { judgement, shootOn, type Judgement } from './judgement.ts';
import { readingInWords } from './summary.ts';
import { currentSet, goodShots, shotsHere } from './sets.ts';

// One false alarm in a hundred per axis: a false "it did not return" sends the archer through the whole baseline again.
const PROVEN_DIFFERENT = 0.995;
// Already worth three more shots.
const DOUBTFUL = 0.95;

/** How far the present set lies from earlier shots at this very setting, in quantile terms; null where there are none. */
export function differs(state: State): { readonly proven: boolean; readonly doubtful: boolean } | null {
  const set = currentSet(state);
  if (set === null) return null;
  const { read, axes } = gaugeOf(state);
  const spread = spreadOf(state);
  const a = read(shotsHere(state, set.id), spread.sd);
  const b = read(goodShots(set), spread.sd);
  if (a === null || b === null) return null;
  const se = (axis: 'x' | 'y'): number => spread.sd * Math.sqrt(1 / a.count[axis] + 1 / b.count[axis]);
  const beyond = (p: number): boolean =>
    axes.map((axis) => (axis === 'side' ? 'x' : 'y')).some((axis) => Math.abs(a.mean[axis] - b.mean[axis]) > studentQuantile(p, spread.df) * se(axis));
  return { proven: beyond(PROVEN_DIFFERENT), doubtful: beyond(DOUBTFUL) };
}

/** After a put-back or after tightening. `Unknown before` counts as returned: there is nothing that it could contradict. */
export function judgeReturn(content: Content, state: State): Judgement<'returned' | 'not returned'> {
  const difference = differs(state);
  const tear = readingInWords(content, state);
  if (difference === null || !difference.proven) {
    return judgement('returned', { say: [phrase(content, 'returned', { tear })], notes: { purpose: 'judge' } });
  }
  return judgement('not returned', {
    say: [phrase(content, 'not-returned', { tear })],
    notes: { inspection: 'not-returned', inspections: state.notes.inspections + 1, purpose: 'judge' },
  });
}

/** The first set of another day against the last accepted one. Null verdict: shoot three more before anything is said. */
export function judgeResume(content: Content, state: State): Judgement<'returned'> {
  const difference = differs(state);
  const whole = 2 * gaugeOf(state).first;
  // Moved just before the break, and not yet shot: nothing to hold it against, so nothing is claimed.
  if (difference === null) return judgement('returned', { notes: { purpose: 'judge' } });
  if (!difference.doubtful) return judgement('returned', { say: [phrase(content, 'resume-same')], notes: { purpose: 'judge' } });
  if (taken(state) < whole) return shootOn({ say: [phrase(content, 'resume-doubtful')], notes: { wanted: whole } });
  if (!difference.proven) return judgement('returned', { say: [phrase(content, 'resume-same')], notes: { purpose: 'judge' } });
  // Learned responses stay; where the line stands is measured anew, and nothing is called tuned on yesterday's word.
  return judgement('returned', { say: [phrase(content, 'resume-different')], notes: { purpose: 'judge', wanted: gaugeOf(state).first, epoch: state.notes.epoch + 1, axis: {}, broadAxis: {} } });
}

/** The second close distance: only axes that were tuned at the first one, pass or fail. */
export function judgeSecond(content: Content, evidence: readonly { readonly within: number; readonly shots: number }[], state: State): Judgement<'in tolerance' | 'out'> {
  const within = Math.min(...evidence.map((e) => e.within));
  const shots = evidence[0]?.shots ?? 0;
  if (within >= SURE) return judgement('in tolerance', { say: [phrase(content, 'second-confirmed'), ...leavingInWords(content, state)], notes: { secondDistance: 'confirmed' } });
  if (within >= NEAR && shots < MOST_SHOTS) {
    return shootOn({ say: [phrase(content, 'one-more')], notes: { wanted: (currentSet(state) === null ? 0 : shots) + 1 } });
  }
  return judgement('out', { say: [phrase(content, 'second-not-confirmed'), ...leavingInWords(content, state)], notes: { secondDistance: 'not confirmed' } });
}
