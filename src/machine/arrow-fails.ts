// An arrow that fails a look, a feel or a flex is set aside. Those kept and those set aside are counted again, so that they add
// up and enough are left; "true now" says only that what is shot on is sound.

import type { Deciding } from './deciding.ts';
import { effectiveFacts, type State } from './state.ts';
import type { Answer } from './types.ts';

/** Checks whose failing takes an arrow out of the set. A nock, a point, a vane is mended, and that arrow is shot on. */
const TAKES_ONE_OUT: ReadonlySet<string> = new Set([
  'arrows-feel', 'arrows-twist', 'recorded-arrows', 'arrow-feel', 'arrow-flexed', 'shot-arrow', 'bench-flexed',
  'heads-sound', 'first-head-arrow', 'swap-looked', 'points-shafts',
]);

/** Whether this answer says of an arrow that it failed, or that nobody knows. */
export function failsAnArrow(step: string, answer: Answer): boolean {
  const [, check] = step.split('/');
  if (check !== undefined) return TAKES_ONE_OUT.has(check) && !(answer.kind === 'choice' && answer.values[0] === 'true');
  return answer.kind === 'choice' && answer.values.some((value) => TAKES_ONE_OUT.has(value));
}

/** Kept and set aside are counted again; what was not counted yet is counted in its own place. */
export function countArrowsAgain(d: Deciding): void {
  const due = ['arrow-count', 'arrows-flexed'].filter((id) => d.state.answers[id] !== undefined);
  if (due.length > 0) d.add({ due });
}

/** Whether an arrow failed in this tune, at whatever look, as the answers read now. */
export const oneFailed = ({ facts, notes }: State): boolean =>
  Object.values(notes.arrows.classes).some((one) => one.class === 'never again')
  || effectiveFacts(facts).some((fact) => fact.kind === 'answered' && failsAnArrow(fact.step, fact.answer));
