// What is still to be asked, in which order. Derived from facts, so that a correction, a resume or a press job opens
// exactly the questions that it should.

import type { Check, Content, Step } from '../content/types.ts';
import { oneOf, tableOf } from '../maths/closed.ts';
import { holds } from './guards.ts';
import { heldOver } from './loop/inside.ts';
import { once, onceForBoth } from '../maths/once.ts';
import type { State } from './state.ts';
import { CHAPTERS, type Chapter } from './types.ts';
import { chapterOfPlace, placeOf, placeUnder } from './walk.ts';

export interface Pending { readonly id: string; readonly step: Step; readonly check?: Check }

// Undrawn first, then what draws, then what shoots: whatever order the questions were raised in. At the finish the bow is
// known, and its own order counts (the sight before the calendar).
const RANK = { talk: 0, undrawn: 0, draw: 1, shoot: 2 } as const;

/** The step (and its check, for `chunk/check`) behind an id; null where content has none. */
export const lookUp = (content: Content, id: string): Pending | null => pendings(content).get(id) ?? null;

const pendings = once((content: Content): ReadonlyMap<string, Pending> => new Map(Object.entries(content.steps).flatMap(([id, step]) => {
  const checks = step.kind === 'chunk' ? step.checks.map((check): [string, Pending] => [`${id}/${check.id}`, { id: `${id}/${check.id}`, step, check }]) : [];
  return [[id, { id, step }], ...checks] satisfies [string, Pending][];
})));

/** The chapter that the walk is in; an interruption belongs to the chapter it interrupts. */
export const chapterOf = (state: State): Chapter => chapterOfPlace(placeUnder(state.walk)) ?? 'safety';

/** True of a step of the finish, which keeps an order of its own. */
export const isOfFinish = (content: Content, step: string): boolean => finishSteps(content).has(step);

const finishSteps = once((content: Content): ReadonlySet<string> =>
  new Set(content.chapters.filter((chapter) => chapter.id === 'finish').flatMap((chapter) => chapter.blocks.flatMap((block) => block.steps))));

/** What must be answered before the walk may go on from here, first one first. */
export const agenda: (content: Content, state: State) => readonly Pending[] = onceForBoth((content: Content, state: State) => {
  // Between two put-backs nothing is drawn or shot: what the moves ask for is asked once the bow is back.
  const half = state.notes.undo.length > 0 && state.advice?.kind === 'put-back';
  const waits = (step: Step): boolean => half && (step.pause === 'draw' || step.pause === 'shoot');
  const raised = state.due.flatMap((id) => lookUp(content, id) ?? []).filter((p) => holds(state, p.step.when) && !waits(p.step));
  const due = [...raised, ...toldFirst(content, state, raised)];
  const seen = new Set(due.map((p) => p.id));
  const fresh = askedOfAll(content)[reachOf(state)]
    .filter((p) => state.answers[p.id] === undefined && !seen.has(p.id) && holds(state, p.step.when));
  if (due.length + fresh.length === 0) return NOTHING;
  // Nor while something stands beyond its hard limit: the bow is looked at undrawn, and that is brought back.
  const held = heldOver(content, state) !== null;
  const all = [...due, ...fresh].filter(({ step }) => !held || step.pause === 'talk' || step.pause === 'undrawn');
  // A screw that is not tight comes before any draw, at the finish as well.
  const rank = (p: Pending): number => (p.step.pause === 'talk' && isOfFinish(content, p.step.id) ? RANK.shoot : RANK[p.step.pause]);
  // A stable sort keeps due ones in the order in which they were raised.
  return all
    .map((p, i) => ({ p, i }))
    .sort((a, b) => rank(a.p) - rank(b.p) || a.i - b.i)
    .map(({ p }) => p);
});

const NOTHING: readonly Pending[] = [];

/** Which of its checks belong to this bow, only this other answer tells: unasked, they would be passed over. */
const TOLD_FIRST: Readonly<Record<string, string>> = { 'rest-check': 'rest' };

const toldFirst = (content: Content, state: State, raised: readonly Pending[]): readonly Pending[] =>
  [...new Set(raised.flatMap((p) => TOLD_FIRST[p.step.id] ?? []))]
    .filter((id) => state.answers[id] === undefined && !state.due.includes(id))
    .flatMap((id) => lookUp(content, id) ?? []);

/** Step ids of all chapters up to where the walk stands; in `finish`, only up to the block that is under way. */
export const routeSoFar = (content: Content, state: State): readonly string[] =>
  routes(content)[reachOf(state)];

type Reach = Chapter | 'closing';
const reachOf = (state: State): Reach => (placeOf(state.walk) === 'finish.closing' ? 'closing' : chapterOf(state));

const isChapter = oneOf(CHAPTERS);
const routes = once((content: Content): Readonly<Record<Reach, readonly string[]>> => {
  const upTo = (reach: Chapter, closing: boolean): readonly string[] =>
    content.chapters
      .filter(({ id }) => !isChapter(id) || CHAPTERS.indexOf(id) <= CHAPTERS.indexOf(reach))
      .flatMap((plan) => (plan.id === 'finish' && !closing ? plan.blocks.slice(0, 1) : plan.blocks))
      .flatMap((block) => block.steps);
  const each = tableOf(CHAPTERS, (chapter) => upTo(chapter, chapter === 'record'));
  return { ...each, closing: upTo('finish', true) };
});

/** Of each route what is asked without being called for. */
const askedOfAll = once((content: Content): Readonly<Record<Reach, readonly Pending[]>> => {
  const asked = (reach: Reach): readonly Pending[] => routes(content)[reach].flatMap((id) => lookUp(content, id) ?? []).filter(({ step }) => !step.onDemand);
  return { ...tableOf(CHAPTERS, asked), closing: asked('closing') };
});

/** True where the step is answered, up to date and on the route. */
export const isSettled = (state: State, id: string): boolean =>
  state.answers[id] !== undefined && !state.due.some((d) => d === id || d.startsWith(`${id}/`));
