// What is still to be asked, in which order. Derived from facts, so that a correction, a resume or a press job opens
// exactly the questions that it should.

import type { Check, Content, Step } from '../content/types.ts';
import { holds } from './guards.ts';
import type { State } from './state.ts';
import { CHAPTERS, type Chapter } from './types.ts';
import { chapterOfPlace, placeOf, placeUnder } from './walk.ts';

export interface Pending { readonly id: string; readonly step: Step; readonly check?: Check }

// Undrawn first, then what draws, then what shoots: whatever order the questions were raised in. At the finish the bow is
// known, and its own order counts (the sight before the calendar).
const RANK = { talk: 0, undrawn: 0, draw: 1, shoot: 2 } as const;

/** The step (and its check, for `chunk/check`) behind an id; null where content has none. */
export function lookUp(content: Content, id: string): Pending | null {
  const [stepId = '', checkId] = id.split('/');
  const step = content.steps[stepId];
  if (step === undefined) return null;
  if (checkId === undefined) return { id, step };
  const check = step.kind === 'chunk' ? step.checks.find((c) => c.id === checkId) : undefined;
  return check === undefined ? null : { id, step, check };
}

/** The chapter that the walk is in; an interruption belongs to the chapter it interrupts. */
export const chapterOf = (state: State): Chapter => chapterOfPlace(placeUnder(state.walk)) ?? 'safety';

/** True of a step of the finish, which keeps an order of its own. */
export const isOfFinish = (content: Content, step: string): boolean =>
  content.chapters.some((chapter) => chapter.id === 'finish' && chapter.blocks.some((block) => block.steps.includes(step)));

/** What must be answered before the walk may go on from here, first one first. */
export function agenda(content: Content, state: State): readonly Pending[] {
  // Between two put-backs nothing is drawn or shot: what the moves ask for is asked once the bow is back.
  const half = state.notes.undo.length > 0 && state.advice?.kind === 'put-back';
  const waits = (step: Step): boolean => half && (step.pause === 'draw' || step.pause === 'shoot');
  const due = state.due.flatMap((id) => lookUp(content, id) ?? []).filter((p) => holds(state, p.step.when) && !waits(p.step));
  const seen = new Set(due.map((p) => p.id));
  const fresh = routeSoFar(content, state)
    .filter((id) => !seen.has(id) && state.answers[id] === undefined)
    .flatMap((id) => lookUp(content, id) ?? [])
    .filter((p) => !p.step.onDemand && holds(state, p.step.when));
  const all = [...due, ...fresh];
  // A screw that is not tight comes before any draw, at the finish as well.
  const rank = (p: Pending): number => (p.step.pause === 'talk' && isOfFinish(content, p.step.id) ? RANK.shoot : RANK[p.step.pause]);
  // A stable sort keeps due ones in the order in which they were raised.
  return all
    .map((p, i) => ({ p, i }))
    .sort((a, b) => rank(a.p) - rank(b.p) || a.i - b.i)
    .map(({ p }) => p);
}

/** Step ids of all chapters up to where the walk stands; in `finish`, only up to the block that is under way. */
export function routeSoFar(content: Content, state: State): readonly string[] {
  const chapter = chapterOf(state);
  const reach = CHAPTERS.indexOf(chapter);
  const closing = chapter === 'record' || placeOf(state.walk) === 'finish.closing';
  return content.chapters
    .filter((plan) => CHAPTERS.indexOf(plan.id as Chapter) <= reach)
    .flatMap((plan) => (plan.id === 'finish' && !closing ? plan.blocks.slice(0, 1) : plan.blocks))
    .flatMap((block) => block.steps);
}

/** True where the step is answered, up to date and on the route. */
export const isSettled = (state: State, id: string): boolean =>
  state.answers[id] !== undefined && !state.due.some((d) => d === id || d.startsWith(`${id}/`));
