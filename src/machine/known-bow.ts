// Bows that were tuned here before: which one it is, and what of it still holds.

import type { Content } from '../content/types.ts';
import type { Answer, Answered, Carried, Fact } from './types.ts';

/** The part of the state that tells which bow it is. */
interface Told { readonly facts: readonly Fact[]; readonly answers: Readonly<Record<string, Answered>> }

/** The same bow and archer; the same bow with a part replaced; the same bow in other hands. */
export type Picked = { readonly carried: Carried; readonly as: 'same' | 'replaced' | 'other-archer' };

export function knownBows(state: Pick<Told, 'facts'>): readonly Carried[] {
  const begun = state.facts[0];
  return begun?.kind === 'begun' ? begun.known : [];
}

const valueOf = (answer: Answer | undefined): string | undefined => (answer?.kind === 'choice' ? answer.values[0] : undefined);

/** The bow that was picked; null for one that is new here, or while it was not told which one. */
export function pickedBow(state: Told): Picked | null {
  const known = knownBows(state);
  const value = (step: string): string | undefined => valueOf(state.answers[step]?.answer);
  const how = value('bow');
  const as = how === 'replaced' || how === 'other-archer' ? how : 'same';
  const from = as === 'same' ? how : known.length === 1 ? known[0]?.from : value('which-bow');
  const carried = known.find((bow) => bow.from === from);
  return carried === undefined ? null : { carried, as };
}

/** What another string, cable, rest or arrow does not touch. Everything that is measured is measured anew. */
const KEPT_AFTER_REPLACING: readonly string[] = ['hand', 'release', 'growing', 'cams', 'press', 'rated-weight', 'use', 'bow-name', 'archer-name'];
/** What is the archer's and not the bow's. The draw length is, and with it how far the shaft reaches. */
export const OF_THE_ARCHER: readonly string[] = ['release', 'growing', 'shaft-ahead', 'draw-mark', 'use', 'archer-name'];
/** What changes with a draw that still grows. */
const OF_THE_REACH: readonly string[] = ['shaft-ahead', 'draw-mark'];

/** The answers that the picked bow brings along, but for those that every tune asks anew. */
export function carriedAnswers(content: Content, { carried, as }: Picked, stamp: Answered): Record<string, Answered> {
  // Who still grows draws farther by now: how far that and the shaft reach is measured anew.
  const growing = valueOf(carried.answers['growing']) === 'growing';
  const brings = (id: string): boolean => {
    if (as === 'replaced') return KEPT_AFTER_REPLACING.includes(id);
    return as === 'other-archer' ? !OF_THE_ARCHER.includes(id) : !(growing && OF_THE_REACH.includes(id));
  };
  const entries = Object.entries(carried.answers).filter(([id]) => content.steps[id]?.everyTune === false && brings(id));
  return Object.fromEntries(entries.map(([id, answer]: [string, Answer]) => [id, { ...stamp, answer }]));
}

/** What it is called where it is told: by its label in the list of bows. */
export const labelOfBow = (state: Pick<Told, 'facts'>, from: string | undefined): string | null =>
  knownBows(state).find((bow) => bow.from === from)?.bow ?? null;
